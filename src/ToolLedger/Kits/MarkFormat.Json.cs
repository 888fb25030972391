using System.Text.Json;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Kits;

public sealed partial record MarkFormat
{
    /// <summary>Reads the part of a site policy; what is absent has its default value, everything wrong becomes an issue.</summary>
    internal static MarkFormat FromJson(JsonElement element, string place, IssueList issues)
    {
        var fields = new JsonFields(element, place, issues);
        int least = fields.Int32("minLength", Any.MinLength, 1, Tool.MaxMarkLength);
        var format = new MarkFormat
        {
            MinLength = least,
            MaxLength = fields.Int32("maxLength", Any.MaxLength, least, Tool.MaxMarkLength),
            Characters = fields.Text("characters", null, MaxCharacterCount),
            Beginnings = fields.Texts("beginnings", MaxBeginningCount, Tool.MaxMarkLength),
            IsRequired = fields.Flag("isRequired", Any.IsRequired),
        };
        fields.End();
        return format;
    }

    /// <summary>Writes every setting, default or not, so that a stored policy says all of it; only where any character will do none are named.</summary>
    internal void WriteJson(Utf8JsonWriter writer)
    {
        writer.WriteStartObject();
        writer.WriteNumber("minLength", MinLength);
        writer.WriteNumber("maxLength", MaxLength);
        if (Characters is not null)
        {
            writer.WriteString("characters", Characters);
        }

        writer.WriteStartArray("beginnings");
        foreach (string beginning in Beginnings)
        {
            writer.WriteStringValue(beginning);
        }

        writer.WriteEndArray();
        writer.WriteBoolean("isRequired", IsRequired);
        writer.WriteEndObject();
    }
}
