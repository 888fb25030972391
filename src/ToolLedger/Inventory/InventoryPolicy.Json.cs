using System.Collections.Generic;
using System.Text.Json;
using ToolLedger.Records;

namespace ToolLedger.Inventory;

public sealed partial record InventoryPolicy
{
    /// <summary>Reads the part of a site policy; what is absent has its default value, everything wrong becomes an issue.</summary>
    internal static InventoryPolicy FromJson(JsonElement element, string place, List<RecordIssue> issues)
    {
        var fields = new JsonFields(element, place, issues);
        var policy = new InventoryPolicy
        {
            ManualInventoryAllowed = fields.Flag("manualInventoryAllowed", Default.ManualInventoryAllowed),
            ManualInventoryPersonsNeeded = fields.Int32("manualInventoryPersonsNeeded", Default.ManualInventoryPersonsNeeded, 1, MaxPersonsNeeded),
            EvidenceAgeMax = fields.Seconds("evidenceAgeMaxSeconds", Default.EvidenceAgeMax, ShortestAge, LongestAge),
        };
        fields.End();
        return policy;
    }

    /// <summary>Writes every setting, default or not, so that a stored policy says all of it.</summary>
    internal void WriteJson(Utf8JsonWriter writer)
    {
        writer.WriteStartObject();
        writer.WriteBoolean("manualInventoryAllowed", ManualInventoryAllowed);
        writer.WriteNumber("manualInventoryPersonsNeeded", ManualInventoryPersonsNeeded);
        writer.WriteNumber("evidenceAgeMaxSeconds", JsonFields.ToSeconds(EvidenceAgeMax));
        writer.WriteEndObject();
    }
}
