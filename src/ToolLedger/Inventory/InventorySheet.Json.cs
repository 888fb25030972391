using System;
using System.Buffers;
using System.Text.Json;
using ToolLedger.Records;

namespace ToolLedger.Inventory;

public sealed partial class InventorySheet
{
    /// <summary>The schema a stored sheet names.</summary>
    public const string Schema = "toolledger/inventory-sheet/1";

    /// <summary>Writes the sheet as JSON: indented UTF-8 in a fixed order of members.</summary>
    /// <returns>The bytes; the same sheet gives the same bytes.</returns>
    public byte[] ToJson()
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var writer = new Utf8JsonWriter(buffer, new JsonWriterOptions { Indented = true, NewLine = "\n" }))
        {
            writer.WriteStartObject();
            writer.WriteString("schema", Schema);
            WriteSightings(writer);
            WriteCounts(writer);
            WritePieceCounts(writer);
            WriteSignatures(writer);
            writer.WriteEndObject();
        }

        return buffer.WrittenSpan.ToArray();
    }

    private static void WriteWho(Utf8JsonWriter writer, PersonId by, DateTimeOffset at, PersonId witness)
    {
        writer.WriteString("by", by.Value);
        writer.WriteString("at", RecordTime.ToText(at));
        if (!witness.IsEmpty)
        {
            writer.WriteString("witness", witness.Value);
        }
    }

    private void WriteSightings(Utf8JsonWriter writer)
    {
        writer.WriteStartArray("sightings");
        foreach (Sighting sighting in Sightings)
        {
            writer.WriteStartObject();
            writer.WriteString("tool", sighting.Tool.Value);
            writer.WriteString("markRead", sighting.MarkRead);
            WriteWho(writer, sighting.By, sighting.At, default);
            writer.WriteString("where", sighting.Where.Value);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private void WriteCounts(Utf8JsonWriter writer)
    {
        writer.WriteStartArray("counts");
        foreach (LineCount count in Counts)
        {
            writer.WriteStartObject();
            writer.WriteString("kit", count.Kit.Value);
            writer.WriteNumber("line", count.LineNumber);
            writer.WriteNumber("quantity", count.Quantity.Amount);
            writer.WriteString("unit", count.Quantity.Unit.Value);
            WriteWho(writer, count.By, count.At, count.Witness);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private void WritePieceCounts(Utf8JsonWriter writer)
    {
        writer.WriteStartArray("pieceCounts");
        foreach (PieceCount count in PieceCounts)
        {
            writer.WriteStartObject();
            writer.WriteString("tool", count.Tool.Value);
            if (count.Pieces is { } pieces)
            {
                writer.WriteNumber("pieces", pieces);
            }
            else
            {
                writer.WriteNull("pieces");
            }

            WriteWho(writer, count.By, count.At, count.Witness);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private void WriteSignatures(Utf8JsonWriter writer)
    {
        writer.WriteStartArray("signatures");
        foreach (Signature signature in Signatures)
        {
            writer.WriteStartObject();
            writer.WriteString("person", signature.By.Value);
            writer.WriteString("at", RecordTime.ToText(signature.At));
            if (!signature.Role.IsEmpty)
            {
                writer.WriteString("role", signature.Role.Value);
            }

            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }
}
