using System;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace ToolLedger.Records;

/// <summary>Reads a <see cref="JsonNumber"/> and notes what it found instead of failing at the first wrong type.</summary>
internal sealed class JsonNumberConverter : JsonConverter<JsonNumber>
{
    public override bool HandleNull => true;

    public override JsonNumber Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        JsonTokenType found = reader.TokenType;
        if (found == JsonTokenType.Number)
        {
            return ExactDecimal.Read(ref reader);
        }

        reader.Skip();
        return new JsonNumber(null, found);
    }

    public override void Write(Utf8JsonWriter writer, JsonNumber value, JsonSerializerOptions options) =>
        writer.WriteNumberValue(value.Value.GetValueOrDefault());
}
