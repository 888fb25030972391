using System.Collections.Generic;
using System.Linq;
using System.Text.Json;
using ToolLedger.Records;

namespace ToolLedger.Inventory;

public sealed partial record InventoryPolicy
{
    /// <summary>Reads the part of a site policy; what is absent has its default value, everything wrong becomes an issue.</summary>
    internal static InventoryPolicy FromJson(JsonElement element, string place, IssueList issues)
    {
        var fields = new JsonFields(element, place, issues);
        var policy = new InventoryPolicy
        {
            ManualInventoryAllowed = fields.Flag("manualInventoryAllowed", Default.ManualInventoryAllowed),
            ManualInventoryPersonsNeeded = fields.Int32("manualInventoryPersonsNeeded", Default.ManualInventoryPersonsNeeded, 1, MaxPersonsNeeded),
            EvidenceAgeMax = fields.Seconds("evidenceAgeMaxSeconds", Default.EvidenceAgeMax, ShortestAge, LongestAge),
            JobRecordAgeMax = fields.Seconds("jobRecordAgeMaxSeconds", Default.JobRecordAgeMax, ShortestAge, LongestAge),
            ReconstructionPersonsNeeded = fields.Int32("reconstructionPersonsNeeded", Default.ReconstructionPersonsNeeded, 1, 2),
            SightingWitnessNeeded = fields.Flag("sightingWitnessNeeded", Default.SightingWitnessNeeded),
            SightingsWithoutKitAccepted = fields.Flag("sightingsWithoutKitAccepted", Default.SightingsWithoutKitAccepted),
            CountWitnessNeeded = fields.Flag("countWitnessNeeded", Default.CountWitnessNeeded),
            CounterMaySign = fields.Flag("counterMaySign", Default.CounterMaySign),
            RolesThatMaySign = [.. fields.Texts("rolesThatMaySign", MaxListCount, IdText.MaxLength).Select(static text => new Role(text))],
            FurtherIdentificationAccepted = fields.Flag("furtherIdentificationAccepted", Default.FurtherIdentificationAccepted),
            UnitsNotCounted = [.. fields.Texts("unitsNotCounted", MaxListCount, IdText.MaxLength).Select(static text => new Unit(text))],
            SealsAccepted = fields.Flag("sealsAccepted", Default.SealsAccepted),
            SealAgeMax = fields.Seconds("sealAgeMaxSeconds", Default.SealAgeMax, ShortestAge, LongestAge),
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
        writer.WriteNumber("jobRecordAgeMaxSeconds", JsonFields.ToSeconds(JobRecordAgeMax));
        writer.WriteNumber("reconstructionPersonsNeeded", ReconstructionPersonsNeeded);
        writer.WriteBoolean("sightingWitnessNeeded", SightingWitnessNeeded);
        writer.WriteBoolean("sightingsWithoutKitAccepted", SightingsWithoutKitAccepted);
        writer.WriteBoolean("countWitnessNeeded", CountWitnessNeeded);
        writer.WriteBoolean("counterMaySign", CounterMaySign);
        WriteTexts(writer, "rolesThatMaySign", RolesThatMaySign.Select(static role => role.Value));
        writer.WriteBoolean("furtherIdentificationAccepted", FurtherIdentificationAccepted);
        WriteTexts(writer, "unitsNotCounted", UnitsNotCounted.Select(static unit => unit.Value));
        writer.WriteBoolean("sealsAccepted", SealsAccepted);
        writer.WriteNumber("sealAgeMaxSeconds", JsonFields.ToSeconds(SealAgeMax));
        writer.WriteEndObject();
    }

    private static void WriteTexts(Utf8JsonWriter writer, string name, IEnumerable<string> texts)
    {
        writer.WriteStartArray(name);
        foreach (string text in texts)
        {
            writer.WriteStringValue(text);
        }

        writer.WriteEndArray();
    }
}
