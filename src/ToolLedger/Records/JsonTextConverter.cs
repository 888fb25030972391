using System;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace ToolLedger.Records;

/// <summary>Reads a <see cref="JsonText"/> and notes what it found instead of failing at the first wrong type.</summary>
internal sealed class JsonTextConverter : JsonConverter<JsonText>
{
    public override bool HandleNull => true;

    public override JsonText Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        JsonTokenType found = reader.TokenType;
        if (found == JsonTokenType.String)
        {
            return new JsonText(reader.GetString(), found);
        }

        reader.Skip();
        return new JsonText(null, found);
    }

    public override void Write(Utf8JsonWriter writer, JsonText value, JsonSerializerOptions options) => writer.WriteStringValue(value.Value);
}
