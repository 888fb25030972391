using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.Json;
using ToolLedger.Inventory;
using ToolLedger.Reconciliation;
using ToolLedger.Records;

namespace ToolLedger.Reports;

/// <summary>Writes what people recorded beside sightings and counts as JSON.</summary>
internal sealed class PeopleWriter(Utf8JsonWriter writer, ReportVoice voice, Func<DateTimeOffset, string> at)
{
    internal static void WriteBalance(Utf8JsonWriter writer, ConsumableBalance balance)
    {
        writer.WriteStartObject("balance");
        writer.WriteString("unit", balance.Unit.Value);
        writer.WriteNumber("issued", balance.Issued);
        writer.WriteNumber("used", balance.Used);
        writer.WriteNumber("returned", balance.Returned);
        writer.WriteNumber("scrapped", balance.Scrapped);
        writer.WriteNumber("unexplained", balance.Unexplained);
        writer.WriteNumber("jobs", balance.JobCount);
        writer.WriteEndObject();
    }

    internal void WriteNotExpected(IReadOnlyList<LineNotExpected> lines)
    {
        writer.WriteStartArray("notExpected");
        foreach (LineNotExpected line in lines)
        {
            writer.WriteStartObject();
            writer.WriteString("line", line.Label);
            writer.WriteString("description", line.Line.Description);
            writer.WritePropertyName("reason");
            ShiftReportWriter.WriteReason(writer, line.Reason, voice);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    internal void WriteUnlistedItems(IReadOnlyList<UnlistedItemReport> reports)
    {
        writer.WriteStartArray("unlistedItems");
        foreach (UnlistedItemReport report in reports)
        {
            writer.WriteStartObject();
            writer.WriteString("description", report.Description);
            WriteIf("owner", report.Owner.Value);
            writer.WriteString("by", report.By.Value);
            writer.WriteString("at", at(report.At));
            WriteIf("kit", report.Kit.Value);
            WriteIf("lastSeenAt", report.LastSeenAt is { } seen ? at(seen) : "");
            WriteIf("lastSeenWhere", report.LastSeenWhere.Value);
            writer.WriteStartArray("touchedSince");
            foreach (Place place in report.TouchedSince)
            {
                writer.WriteStringValue(place.Value);
            }

            writer.WriteEndArray();
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    internal void WriteOpenings(IReadOnlyList<KitOpening> openings)
    {
        writer.WriteStartArray("openings");
        foreach (KitOpening opening in openings)
        {
            writer.WriteStartObject();
            writer.WriteString("kit", opening.Kit.Value);
            writer.WriteString("by", opening.By.Value);
            writer.WriteString("at", at(opening.At));
            WriteIf("where", opening.Where.Value);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    /// <summary>What is later than the first signature that counts.</summary>
    internal void WriteChanges(ReconciliationResult result)
    {
        writer.WriteStartObject("changes");
        DateTimeOffset? signed = result.Signatures.Min(static signature => (DateTimeOffset?)signature.At);
        WriteIf("signedAt", signed is { } first ? at(first) : "");
        ShiftReportWriter.WriteReasons(writer, "later", signed is { } since ? [.. LaterEvents.Than(since, voice, result)] : [], voice);
        writer.WriteEndObject();
    }

    private void WriteIf(string name, string value)
    {
        if (value.Length > 0)
        {
            writer.WriteString(name, value);
        }
    }
}
