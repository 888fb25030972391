using System;
using System.Collections.Generic;
using System.IO;
using System.Text.Encodings.Web;
using System.Text.Json;
using ToolLedger.Identifiers;

namespace TagInspect;

/// <summary>One JSON object a line, in and out.</summary>
internal static class JsonLines
{
    private static readonly JsonWriterOptions Written = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Answers one line. Whatever the line holds, there is an answer.</summary>
    /// <returns>Whether the item was read.</returns>
    internal static bool Answer(string line, Stream output)
    {
        using var buffer = new MemoryStream();
        Answer answer;
        using (var writer = new Utf8JsonWriter(buffer, Written))
        {
            writer.WriteStartObject();
            answer = Read(line, writer);
            Write(writer, answer);
            writer.WriteEndObject();
        }

        buffer.WriteByte((byte)'\n');
        buffer.WriteTo(output);
        return answer.Rule is null;
    }

    internal static void WriteTooLong(Stream output)
    {
        output.Write("{\"error\":{\"rule\":\"TextLength\",\"message\":\"The line is too long.\"}}\n"u8);
    }

    private static Answer Read(string line, Utf8JsonWriter writer)
    {
        try
        {
            using JsonDocument document = JsonDocument.Parse(line);
            JsonElement root = document.RootElement;
            if (root.ValueKind != JsonValueKind.Object)
            {
                return TagInspect.Answer.Refused("Json", "The line is not a JSON object.");
            }

            if (root.TryGetProperty("id", out JsonElement id) && id.ValueKind is JsonValueKind.String or JsonValueKind.Number)
            {
                writer.WritePropertyName("id");
                id.WriteTo(writer);
            }

            return Inspector.Inspect(ReadRequest(root));
        }
        catch (JsonException broken)
        {
            return TagInspect.Answer.Refused("Json", "The line is not JSON: byte " + broken.BytePositionInLine?.ToString(System.Globalization.CultureInfo.InvariantCulture) + ".");
        }
        catch (InvalidOperationException)
        {
            // Half of a surrogate pair, or a value of another type than expected.
            return TagInspect.Answer.Refused("Json", "A value is not text where text is expected.");
        }
    }

    private static Request ReadRequest(JsonElement root)
    {
        JsonElement value = root.TryGetProperty("value", out JsonElement found) ? found : default;
        var elements = new List<Gs1Element>();
        if (value.ValueKind == JsonValueKind.Object)
        {
            foreach (JsonProperty element in value.EnumerateObject())
            {
                elements.Add(new Gs1Element(element.Name, element.Value.GetString() ?? string.Empty));
            }
        }

        return new Request
        {
            Input = Text(root, "input") ?? string.Empty,
            Value = value.ValueKind == JsonValueKind.String ? value.GetString()! : string.Empty,
            Elements = elements,
            Bits = Number(root, "bits"),
            PrefixLength = Number(root, "gcpLength"),
            Scheme = Text(root, "scheme"),
            Filter = Number(root, "filter") ?? 0,
        };
    }

    private static string? Text(JsonElement root, string name) =>
        root.TryGetProperty(name, out JsonElement value) && value.ValueKind == JsonValueKind.String ? value.GetString() : null;

    private static int? Number(JsonElement root, string name) =>
        root.TryGetProperty(name, out JsonElement value) && value.ValueKind == JsonValueKind.Number && value.TryGetInt32(out int number)
            ? number
            : null;

    private static void Write(Utf8JsonWriter writer, Answer answer)
    {
        if (answer.Fields is { } fields)
        {
            Epc epc = fields.ToEpc();
            writer.WriteString("scheme", EpcSchemeName.Of(fields.Scheme));
            writer.WriteNumber("bits", epc.BitCount);
            writer.WriteString("hex", epc.ToString());
            writer.WriteString("memoryHex", epc.ToWholeWords().ToString());
            writer.WriteString("tagUri", fields.ToTagUri());
        }

        if (answer.Identity is { } identity)
        {
            writer.WriteString("pureIdentity", identity.ToUri());
            WriteGs1(writer, identity);
        }

        if (answer.Fields is { FilterName.Length: > 0 } filtered)
        {
            writer.WriteNumber("filter", filtered.Filter);
        }

        if (answer.RawUri is not null)
        {
            writer.WriteString("rawUri", answer.RawUri);
        }

        if (answer.Rule is not null)
        {
            WriteError(writer, answer);
        }
    }

    private static void WriteGs1(Utf8JsonWriter writer, EpcIdentity identity)
    {
        Gs1Element[] elements = identity.ToElements();
        if (elements.Length == 0)
        {
            return;
        }

        writer.WriteString("elementString", identity.ToElementString());
        writer.WriteStartObject("ai");
        foreach (Gs1Element element in elements)
        {
            writer.WriteString(element.ApplicationIdentifier, element.Value);
        }

        writer.WriteEndObject();
        writer.WriteString("digitalLink", identity.ToDigitalLink());
    }

    private static void WriteError(Utf8JsonWriter writer, Answer answer)
    {
        writer.WriteStartObject("error");
        writer.WriteString("rule", answer.Rule);
        if (answer.Fault.Field != EpcField.None)
        {
            writer.WriteString("field", answer.Fault.Field.ToString());
        }

        if (answer.Fault.PositionUnit != EpcPositionUnit.None)
        {
            writer.WriteNumber("position", answer.Fault.Position);
        }

        writer.WriteString("message", answer.Message);
        writer.WriteEndObject();
    }
}
