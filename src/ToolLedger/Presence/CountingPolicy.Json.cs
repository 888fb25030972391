using System;
using System.Text.Json;
using ToolLedger.Records;

namespace ToolLedger.Presence;

public sealed partial class CountingPolicy
{
    internal static CountingPolicy FromJsonObject(JsonElement element, string place, IssueList issues)
    {
        var fields = new JsonFields(element, place, issues);
        var fallback = new CountingPolicy();
        fields.Word("kind", true, ("counting", true), ("stated-risk", true));
        var policy = new CountingPolicy
        {
            LooksNeeded = fields.Int32("looksNeeded", fallback.LooksNeeded, 1, 100),
            AntennasNeeded = fields.Int32("antennasNeeded", fallback.AntennasNeeded, 1, 64),
            PassesNeeded = fields.Int32("passesNeeded", fallback.PassesNeeded, 1, 100),
            DegradedPassesNeeded = fields.Int32("degradedPassesNeeded", fallback.DegradedPassesNeeded, 1, 100),
            EpcOnlyAccepted = fields.Flag("epcOnlyAccepted", fallback.EpcOnlyAccepted),
        };
        fields.End();
        return policy;
    }

    internal override void WriteJson(Utf8JsonWriter writer)
    {
        ArgumentNullException.ThrowIfNull(writer);
        writer.WriteStartObject();
        writer.WriteString("kind"u8, Kind);
        writer.WriteNumber("looksNeeded"u8, LooksNeeded);
        writer.WriteNumber("antennasNeeded"u8, AntennasNeeded);
        writer.WriteNumber("passesNeeded"u8, PassesNeeded);
        writer.WriteNumber("degradedPassesNeeded"u8, DegradedPassesNeeded);
        writer.WriteBoolean("epcOnlyAccepted"u8, EpcOnlyAccepted);
        writer.WriteEndObject();
    }
}
