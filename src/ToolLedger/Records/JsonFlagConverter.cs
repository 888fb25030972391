using System;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace ToolLedger.Records;

/// <summary>Reads a <see cref="JsonFlag"/> and notes what it found instead of failing at the first wrong type.</summary>
internal sealed class JsonFlagConverter : JsonConverter<JsonFlag>
{
    public override bool HandleNull => true;

    public override JsonFlag Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        JsonTokenType found = reader.TokenType;
        reader.Skip();
        return new JsonFlag(found == JsonTokenType.True, found);
    }

    public override void Write(Utf8JsonWriter writer, JsonFlag value, JsonSerializerOptions options) => writer.WriteBooleanValue(value.Value);
}
