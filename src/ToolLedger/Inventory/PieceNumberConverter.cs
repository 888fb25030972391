using System;
using System.Text.Json;
using System.Text.Json.Serialization;
using ToolLedger.Records;

namespace ToolLedger.Inventory;

/// <summary>Reads and writes a number of pieces, where null is a statement of its own: the number is not known.</summary>
internal sealed class PieceNumberConverter : JsonConverter<JsonNumber>
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

    public override void Write(Utf8JsonWriter writer, JsonNumber value, JsonSerializerOptions options)
    {
        if (value.Value is { } pieces)
        {
            writer.WriteNumberValue(pieces);
        }
        else
        {
            writer.WriteNullValue();
        }
    }
}
