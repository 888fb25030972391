using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text.Json;
using ToolLedger.Custody;
using ToolLedger.Holds;
using ToolLedger.Inventory;
using ToolLedger.Ledger;
using ToolLedger.Reconciliation;
using ToolLedger.Records;

namespace ToolLedger.Reports;

/// <summary>Writes which equipment may be concerned, and since when, as JSON: what the fifth section of the text says.</summary>
internal sealed class ExposureWriter(Utf8JsonWriter writer, ReportVoice voice, Func<DateTimeOffset, string> at)
{
    /// <summary>What the kit was used on, which lines are open and what was last known of them; with a ledger who answers, what they were near and what is held. Openings and items on no list stand beside it.</summary>
    internal void Write(ReconciliationResult result, LedgerState? known)
    {
        writer.WriteStartObject("exposure");
        WriteJobs(result);
        writer.WriteStartArray("openLines");
        foreach (LineConclusion line in result.ChaseList)
        {
            writer.WriteStartObject();
            writer.WriteString("line", line.Label);
            WriteTime("tagLastHeard", line.Evidence.LastSeen);
            WriteTime("lastSaidAt", line.Evidence.LatestAt);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        WriteTime("settledSince", result.AllLines.Min(static line => line.Evidence.OldestAt));
        if (known is not null)
        {
            writer.WriteStartObject("ledger");
            WriteCustody(KitExposure.HolderOf(known, result));
            WriteExposed(KitExposure.OpenLines(known, result));
            WriteHolds(KitExposure.Holds(known, result));
            writer.WriteEndObject();
        }

        writer.WriteEndObject();
    }

    private void WriteJobs(ReconciliationResult result)
    {
        writer.WriteStartArray("jobs");
        foreach (ConsumableUse use in result.JobRecords)
        {
            writer.WriteStartObject();
            writer.WriteString("job", use.Job);
            writer.WriteString("kit", use.Kit.Value);
            writer.WriteNumber("line", use.LineNumber);
            writer.WriteNumber("used", use.Used);
            writer.WriteNumber("scrapped", use.Scrapped);
            writer.WriteString("unit", use.Unit.Value);
            writer.WriteString("by", use.By.Value);
            writer.WriteString("at", at(use.At));
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private void WriteCustody(CustodySpan? span)
    {
        if (span is null)
        {
            return;
        }

        writer.WriteStartObject("custody");
        WriteHolder(span.Holder);
        writer.WriteString("since", at(span.From));
        writer.WriteEndObject();
    }

    /// <summary>Lines with the same exposure stand together, so that the size does not grow with lines times visits.</summary>
    private void WriteExposed(IEnumerable<(string Label, Exposure Exposure)> lines)
    {
        writer.WriteStartArray("exposed");
        foreach (var alike in lines.GroupBy(static one => (one.Exposure.Since, Text: string.Join('\n', one.Exposure.Items.Select(static item => $"{item} {item.Holder} {item.Entry}")))))
        {
            writer.WriteStartObject();
            writer.WriteStartArray("lines");
            foreach ((string label, _) in alike)
            {
                writer.WriteStringValue(label);
            }

            writer.WriteEndArray();
            Exposure exposure = alike.First().Exposure;
            WriteTime("lastAccountedFor", exposure.Since);
            writer.WriteStartArray("items");
            foreach (ExposureItem item in exposure.Items)
            {
                WriteItem(item);
            }

            writer.WriteEndArray();
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private void WriteItem(ExposureItem item)
    {
        writer.WriteStartObject();
        writer.WriteString("kind", StatusWords.Code(item.Kind));
        WriteThing(item.Thing);
        writer.WriteString("from", at(item.From));
        WriteTime("until", item.Until);
        WriteHolder(item.Holder);
        writer.WriteIfGiven("entry", item.Entry.Value);
        writer.WriteEndObject();
    }

    private void WriteHolds(IEnumerable<HoldStatus> holds)
    {
        writer.WriteStartArray("holds");
        foreach (HoldStatus hold in holds)
        {
            MissingDeclaration declared = hold.Declaration;
            writer.WriteStartObject();
            writer.WriteString("hold", declared.Id.Value);
            writer.WriteString("what", declared.Description);
            writer.WriteIfGiven("tool", declared.Tool.Value);
            writer.WriteIfGiven("line", declared.LineNumber?.ToString(CultureInfo.InvariantCulture));
            writer.WriteString("by", declared.By.Value);
            writer.WriteString("declaredAt", at(declared.At));
            writer.WriteBoolean("isImpound", hold.IsImpound);
            writer.WriteBoolean("isDeclaredFound", hold.Found is not null);
            writer.WriteNumber("secondsSinceDeclared", JsonFields.ToSeconds(hold.SinceDeclaration));
            if (hold.SinceAccounting is { } elapsed)
            {
                writer.WriteNumber("secondsSinceAccountedFor", JsonFields.ToSeconds(elapsed));
            }

            writer.WriteStartArray("affected");
            foreach (AffectedThing thing in hold.Affected)
            {
                writer.WriteStartObject();
                WriteThing(thing);
                writer.WriteEndObject();
            }

            writer.WriteEndArray();
            WriteTexts("toBeTold", hold.NotTold);
            WriteTexts("toBeSearched", hold.NotSearched);
            ShiftReportWriter.WriteReasons(writer, "late", hold.Late, voice);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private void WriteThing(AffectedThing thing)
    {
        writer.WriteIfGiven("equipment", thing.Equipment.Value);
        writer.WriteIfGiven("job", thing.Job.Value);
        writer.WriteIfGiven("place", thing.Place.Value);
    }

    private void WriteHolder(CustodyHolder holder)
    {
        writer.WriteIfGiven("holder", holder.Person.Value);
        writer.WriteIfGiven("keptAt", holder.Place.Value);
    }

    private void WriteTexts(string name, IReadOnlyList<string> texts)
    {
        writer.WriteStartArray(name);
        foreach (string text in texts)
        {
            writer.WriteStringValue(text);
        }

        writer.WriteEndArray();
    }

    private void WriteTime(string name, DateTimeOffset? time)
    {
        if (time is { } known)
        {
            writer.WriteString(name, at(known));
        }
    }
}
