using System;
using System.Text.Json;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;

namespace ToolLedger.Reports;

/// <summary>Writes what a report says of one line as JSON, with the lines inside it.</summary>
internal sealed class LineWriter(Utf8JsonWriter writer, ReportVoice voice, Func<DateTimeOffset, string> at)
{
    internal void Write(LineConclusion line)
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
                Write(inner);
            }

            writer.WriteEndArray();
        }

        writer.WriteEndObject();
    }

    internal void WriteNext(NextStep next)
    {
        writer.WriteStartObject("next");
        writer.WriteString("kind", StatusWords.Code(next.Kind));
        writer.WritePropertyName("reason");
        ShiftReportWriter.WriteReason(writer, next.Reason, voice);
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
        writer.WriteStartArray("sessions");
        foreach (SessionId session in evidence.Sessions)
        {
            writer.WriteStringValue(session.Value);
        }

        writer.WriteEndArray();
        if (evidence.Strongest is { } strongest)
        {
            writer.WriteNumber("strongestDbm", strongest.CentiDbm / 100m);
        }

        if (evidence.Risk is { } risk)
        {
            new RiskWriter(writer, voice).Write(risk);
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

    private void WriteTime(string name, DateTimeOffset? time) => WriteIf(name, time is { } known ? at(known) : null);

    private void WriteIf(string name, string? value)
    {
        if (value is not null)
        {
            writer.WriteString(name, value);
        }
    }
}
