using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text.Json;
using ToolLedger.Ledger;
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

    private readonly LineWriter lineWriter = new(writer, voice, at);
    private readonly PeopleWriter people = new(writer, voice, at);

    internal void Write(ReconciliationResult result, GateAnswer? gate, LedgerState? ledger)
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
        if (result.Kit.Risk is { } risk)
        {
            new RiskWriter(writer, voice).Write(risk);
        }

        WriteSessions(result);
        writer.WriteStartArray("lines");
        foreach (LineConclusion line in result.Lines)
        {
            lineWriter.Write(line);
        }

        writer.WriteEndArray();
        people.WriteNotExpected(result.NotExpected);
        WriteLabels("chase", result.ChaseList.Select(static line => line.Label));
        new TotalsWriter(writer).Write(result.Totals);
        WriteUnseen(result);
        WriteCalibration(result, ledger);
        WriteFindings(result);
        people.WriteUnlistedItems(result.UnlistedItems);
        people.WriteOpenings(result.Openings);
        new ExposureWriter(writer, voice, at).Write(result, ledger);
        WriteGate(gate);
        WritePeople(result);
        people.WriteChanges(result);
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
            lineWriter.WriteNext(next);
        }

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

    private void WriteCalibration(ReconciliationResult result, LedgerState? ledger)
    {
        IReadOnlyList<ToolUses>? uses = ToolUses.Of(result, ledger);
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
                if (uses?.FirstOrDefault(one => one.Line == line) is { } used)
                {
                    WriteUses(used);
                }

                writer.WriteEndObject();
            }
        }

        writer.WriteEndArray();
    }

    private void WriteUses(ToolUses used)
    {
        writer.WriteNumber("usesOnRecord", used.Count);
        writer.WriteStartArray("usesInQuestion");
        foreach (UseInQuestion one in used.InQuestion)
        {
            writer.WriteStartObject();
            writer.WriteString("entry", one.Use.Id.Value);
            writer.WriteString("at", at(one.Use.At));
            WriteIf("until", one.Use.Until is { } until ? at(until) : null);
            writer.WriteString("job", one.Use.Job.Value);
            WriteIf("equipment", one.Use.Equipment.IsEmpty ? null : one.Use.Equipment.Value);
            WriteIf("function", one.Use.Function);
            if (one.Use.Value is { } value)
            {
                writer.WriteNumber("value", value);
                WriteIf("unit", one.Use.Unit.IsEmpty ? null : one.Use.Unit.Value);
            }

            writer.WriteString("by", one.Use.By.Value);
            ShiftReportWriter.WriteReasons(writer, "why", one.Why, voice);
            writer.WriteEndObject();
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

    private void WriteLabels(string name, IEnumerable<string> labels)
    {
        writer.WriteStartArray(name);
        foreach (string label in labels)
        {
            writer.WriteStringValue(label);
        }

        writer.WriteEndArray();
    }

    private void WriteIf(string name, string? value)
    {
        if (value is not null)
        {
            writer.WriteString(name, value);
        }
    }
}
