using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text.Json;
using ToolLedger.Kits;
using ToolLedger.Reconciliation;
using ToolLedger.Records;

namespace ToolLedger.Reports;

/// <summary>Writes what a report says of one kit as JSON.</summary>
internal sealed class KitWriter(Utf8JsonWriter writer, ReportVoice voice, Func<DateTimeOffset, string> at)
{
    private static readonly (string Name, LineState State)[] States =
    [
        ("accounted", LineState.Accounted), ("weak", LineState.Weak), ("notRead", LineState.NotRead),
        ("notAssessed", LineState.NotAssessed), ("partial", LineState.Partial), ("conflict", LineState.Conflict),
    ];

    internal void Write(ReconciliationResult result, GateAnswer? gate)
    {
        writer.WriteStartObject();
        writer.WriteString("kit", result.Manifest.Id.Value);
        writer.WriteNumber("revision", result.Manifest.Revision);
        writer.WriteString("title", result.Manifest.Title);
        writer.WriteString("asOf", at(result.AsOf));
        writer.WriteString("state", StatusWords.Code(result.Kit.State));
        ShiftReportWriter.WriteReasons(writer, "reasons", result.Kit.Reasons, voice);
        WriteCounts(result);
        writer.WriteBoolean("noReadUsed", result.NoReadUsed);
        WriteSessions(result);
        writer.WriteStartArray("lines");
        foreach (LineConclusion line in result.Lines)
        {
            WriteLine(line);
        }

        writer.WriteEndArray();
        new PeopleWriter(writer, voice, at).WriteNotExpected(result.NotExpected);
        WriteLabels("chase", result.ChaseList.Select(static line => line.Label));
        WriteTotals(result.Totals);
        WriteUnseen(result);
        WriteCalibration(result);
        WriteFindings(result);
        new PeopleWriter(writer, voice, at).WriteUnlistedItems(result.UnlistedItems);
        new PeopleWriter(writer, voice, at).WriteOpenings(result.Openings);
        WriteGate(gate);
        WritePeople(result);
        WriteBasis(result);
        writer.WriteEndObject();
    }

    private void WriteCounts(ReconciliationResult result)
    {
        writer.WriteStartObject("counts");
        writer.WriteNumber("lines", result.Kit.LineCount);
        foreach ((string name, LineState state) in States)
        {
            writer.WriteNumber(name, result.Kit.CountOf(state));
        }

        writer.WriteEndObject();
    }

    private void WriteSessions(ReconciliationResult result)
    {
        writer.WriteStartArray("sessions");
        foreach (SessionSummary summary in result.Sessions)
        {
            writer.WriteStartObject();
            writer.WriteString("id", summary.Session.Id.Value);
            writer.WriteBoolean("isUsed", summary.IsUsed);
            if (summary.LeftOut is { } leftOut)
            {
                writer.WritePropertyName("leftOut");
                ShiftReportWriter.WriteReason(writer, leftOut, voice);
            }

            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private void WriteLine(LineConclusion line)
    {
        writer.WriteStartObject();
        writer.WriteString("line", line.Label);
        writer.WriteString("description", line.Line.Description);
        WriteIf("tool", line.Line.Tool?.Id.Value);
        WriteIf("mark", line.Line.Tool?.Mark);
        WriteIf("location", line.Line.Location);
        writer.WriteNumber("expected", line.Line.Expected.Amount);
        writer.WriteString("unit", line.Line.Expected.Unit.Value);
        writer.WriteString("state", StatusWords.Code(line.State));
        writer.WriteString("basis", StatusWords.Code(line.Basis));
        writer.WriteStartArray("otherBases");
        foreach (AccountingBasis basis in line.OtherBases)
        {
            writer.WriteStringValue(StatusWords.Code(basis));
        }

        writer.WriteEndArray();
        writer.WriteBoolean("isEpcOnly", line.IsEpcOnly);
        ShiftReportWriter.WriteReasons(writer, "reasons", line.Reasons, voice);
        if (line.Next is { } next)
        {
            WriteNext(next);
        }

        WriteEvidence(line.Evidence);
        if (line.Inner.Count > 0)
        {
            writer.WriteStartArray("inner");
            foreach (LineConclusion inner in line.Inner)
            {
                WriteLine(inner);
            }

            writer.WriteEndArray();
        }

        writer.WriteEndObject();
    }

    private void WriteNext(NextStep next)
    {
        writer.WriteStartObject("next");
        writer.WriteString("kind", StatusWords.Code(next.Kind));
        writer.WritePropertyName("reason");
        ShiftReportWriter.WriteReason(writer, next.Reason, voice);
        writer.WriteEndObject();
    }

    private void WriteGate(GateAnswer? gate)
    {
        if (gate is null)
        {
            return;
        }

        writer.WriteStartObject("beforeOperation");
        writer.WriteString("asOf", at(gate.AsOf));
        writer.WriteBoolean("isSatisfied", gate.IsSatisfied);
        ShiftReportWriter.WriteReasons(writer, "reasons", gate.Reasons, voice);
        if (gate.Next is { } next)
        {
            WriteNext(next);
        }

        writer.WriteEndObject();
    }

    private void WriteEvidence(LineEvidence evidence)
    {
        writer.WriteStartObject("evidence");
        writer.WriteNumber("liveTags", evidence.LiveTagCount);
        writer.WriteNumber("looks", evidence.LookCount);
        if (evidence.LooksNotCounted > 0)
        {
            writer.WriteNumber("looksNotCounted", evidence.LooksNotCounted);
        }

        writer.WriteNumber("antennas", evidence.AntennaCount);
        writer.WriteNumber("passes", evidence.PassCount);
        if (evidence.Strongest is { } strongest)
        {
            writer.WriteNumber("strongestDbm", strongest.CentiDbm / 100m);
        }

        if (evidence.LastSeen is { } lastSeen)
        {
            writer.WriteString("lastSeen", at(lastSeen));
        }

        if (evidence.Counted is { } counted)
        {
            writer.WriteNumber("counted", counted.Amount);
            writer.WriteString("countedUnit", counted.Unit.Value);
        }

        if (evidence.KnownShort > 0)
        {
            writer.WriteNumber("knownShort", evidence.KnownShort);
        }

        if (evidence.Balance is { } balance)
        {
            PeopleWriter.WriteBalance(writer, balance);
        }

        WriteTime("latestAt", evidence.LatestAt);
        WriteTime("oldestAt", evidence.OldestAt);
        WriteTime("openedSince", evidence.OpenedSince);
        writer.WriteStartArray("persons");
        foreach (PersonId person in evidence.Persons)
        {
            writer.WriteStringValue(person.Value);
        }

        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    private void WriteUnseen(ReconciliationResult result)
    {
        writer.WriteStartArray("unseen");
        foreach (UnseenPart part in UnseenPart.Of(result))
        {
            writer.WriteStartObject();
            writer.WriteString("line", part.Conclusion.Label);
            writer.WritePropertyName("what");
            ShiftReportWriter.WriteReason(writer, part.What, voice);
            ShiftReportWriter.WriteReasons(writer, "said", part.Said, voice);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private void WriteCalibration(ReconciliationResult result)
    {
        writer.WriteStartArray("calibration");
        foreach (LineConclusion line in result.AllLines)
        {
            if (line.Calibration is { } status)
            {
                writer.WriteStartObject();
                writer.WriteString("line", line.Label);
                writer.WriteString("state", StatusWords.Code(status.State));
                WriteIf("dueOn", status.DueOn?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
                writer.WriteString("siteDate", status.SiteDate.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
                writer.WritePropertyName("reason");
                ShiftReportWriter.WriteReason(writer, status.Reason, voice);
                writer.WriteEndObject();
            }
        }

        writer.WriteEndArray();
    }

    private void WriteFindings(ReconciliationResult result)
    {
        writer.WriteStartArray("findings");
        foreach (Finding finding in result.Findings)
        {
            writer.WriteStartObject();
            writer.WriteString("level", StatusWords.Code(finding.Level));
            writer.WritePropertyName("reason");
            ShiftReportWriter.WriteReason(writer, finding.Reason, voice);
            WriteLabels("lines", finding.LineLabels);
            WriteIf("session", finding.Session?.Value);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private void WritePeople(ReconciliationResult result)
    {
        writer.WriteStartArray("persons");
        foreach (PersonId person in result.Persons)
        {
            writer.WriteStringValue(person.Value);
        }

        writer.WriteEndArray();
        writer.WriteStartArray("signatures");
        foreach (Signature signature in result.Signatures)
        {
            writer.WriteStartObject();
            writer.WriteString("person", signature.By.Value);
            writer.WriteString("at", at(signature.At));
            WriteIf("role", signature.Role.IsEmpty ? null : signature.Role.Value);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private void WriteBasis(ReconciliationResult result)
    {
        writer.WriteString("policyDigest", result.PolicyDigest.ToString());
        writer.WriteString("libraryVersion", result.LibraryVersion);
        writer.WriteStartArray("inputs");
        foreach (InputDigest input in result.Inputs)
        {
            writer.WriteStartObject();
            writer.WriteString("name", input.Name);
            writer.WriteString("digest", input.Digest.ToString());
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private void WriteTotals(ManifestTotals totals)
    {
        writer.WriteStartObject("totals");
        writer.WritePropertyName("kit");
        WriteTotal(totals.Kit);
        writer.WriteStartArray("places");
        foreach (ManifestTotal total in totals.Locations)
        {
            WriteTotal(total);
        }

        writer.WriteEndArray();
        WriteLabels("notAddedUp", totals.Unresolved.Select(static line => line.Description));
        writer.WriteEndObject();
    }

    private void WriteTotal(ManifestTotal total)
    {
        writer.WriteStartObject();
        WriteIf("location", total.Location);
        writer.WriteNumber("lines", total.LineCount);
        writer.WriteNumber("taggedLines", total.TaggedLineCount);
        writer.WriteNumber("peopleLines", total.PeopleLineCount);
        writer.WriteNumber("pieces", total.PieceCount);
        writer.WriteStartArray("items");
        foreach (ItemTotal item in total.Items)
        {
            writer.WriteStartObject();
            writer.WriteNumber("amount", item.Amount);
            writer.WriteString("unit", item.Unit.Value);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    private void WriteLabels(string name, IEnumerable<string> labels)
    {
        writer.WriteStartArray(name);
        foreach (string label in labels)
        {
            writer.WriteStringValue(label);
        }

        writer.WriteEndArray();
    }

    private void WriteTime(string name, DateTimeOffset? time) => WriteIf(name, time is { } known ? at(known) : null);

    private void WriteIf(string name, string? value)
    {
        if (value is not null)
        {
            writer.WriteString(name, value);
        }
    }
}
