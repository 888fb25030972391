using System.Collections.Generic;
using System.Linq;
using System.Text.Json;
using ToolLedger.Reconciliation;
using ToolLedger.Records;

namespace ToolLedger.Reports;

/// <summary>Writes a report as JSON.</summary>
internal sealed class ShiftReportWriter(ShiftReportInput input, IReadOnlyList<SessionTally> sessions, IReadOnlyList<Reads.ReadSession> foreign)
{
    private readonly ReportVoice voice = new(input.Wording, input.Calendar);

    internal void Write(Utf8JsonWriter writer)
    {
        writer.WriteStartObject();
        writer.WriteString("schema", ShiftReport.Schema);
        writer.WriteString("madeAt", At(input.MadeAt));
        writer.WriteString("calendar", input.Calendar.Name);
        WritePolicy(writer);
        WriteSources(writer);
        WriteRefused(writer);
        WriteSessions(writer);
        WriteSessionsOfOthers(writer);
        writer.WriteStartArray("kits");
        foreach (ReconciliationResult result in input.Results)
        {
            new KitWriter(writer, voice, At).Write(result, input.Gates.FirstOrDefault(gate => gate.Kit == result.Manifest.Id), input.Ledger);
        }

        writer.WriteEndArray();
        WriteOtherReads(writer);
        writer.WriteStartArray("cautions");
        foreach (ReasonKind caution in ReportCautions.All)
        {
            WriteReason(writer, new Reason(caution), voice);
        }

        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    internal static void WriteReason(Utf8JsonWriter writer, Reason reason, ReportVoice voice)
    {
        writer.WriteStartObject();
        writer.WriteString("code", reason.Code);
        writer.WriteString("text", voice.Say(reason));
        if (reason.Values.Count > 0)
        {
            writer.WriteStartObject("values");
            foreach ((string name, string value) in reason.Values.DistinctBy(static pair => pair.Key, System.StringComparer.Ordinal))
            {
                writer.WriteString(name, value);
            }

            writer.WriteEndObject();
        }

        writer.WriteEndObject();
    }

    internal static void WriteReasons(Utf8JsonWriter writer, string name, IEnumerable<Reason> reasons, ReportVoice voice)
    {
        writer.WriteStartArray(name);
        foreach (Reason reason in reasons)
        {
            WriteReason(writer, reason, voice);
        }

        writer.WriteEndArray();
    }

    private string At(System.DateTimeOffset at) => RecordTime.ToText(input.Calendar.ToSite(at));

    private void WritePolicy(Utf8JsonWriter writer)
    {
        writer.WriteStartObject("policy");
        if (input.PolicyName is { } name)
        {
            writer.WriteString("name", name);
        }

        if (!input.PolicyDigest.IsEmpty)
        {
            writer.WriteString("digest", input.PolicyDigest.ToString());
        }

        writer.WriteBoolean("isDefault", input.IsPolicyDefault);
        writer.WriteStartArray("rules");
        foreach (IReconciliationRule rule in PolicyRules.InOrder(input.Rules))
        {
            writer.WriteStartObject();
            writer.WriteString("name", rule.Name);
            writer.WriteString("version", rule.Version);
            writer.WriteString("settings", rule.Settings);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteBoolean("hasOtherRules", input.Rules.Count == 0 && !PolicyRules.AreThoseOf(input.Results, []));
        writer.WriteEndObject();
    }

    private void WriteSources(Utf8JsonWriter writer)
    {
        writer.WriteStartArray("sources");
        foreach (SourceDigest source in input.Sources)
        {
            writer.WriteStartObject();
            writer.WriteString("name", source.Name);
            writer.WriteString("digest", source.Digest.ToString());
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private void WriteRefused(Utf8JsonWriter writer)
    {
        writer.WriteStartArray("refusedRows");
        foreach (RefusedRows refused in input.Refused)
        {
            writer.WriteStartObject();
            writer.WriteString("source", refused.Source);
            writer.WriteNumber("count", refused.Count);
            writer.WriteStartArray("first");
            foreach (RefusedRow row in refused.First)
            {
                writer.WriteStartObject();
                writer.WriteNumber("line", row.LineNumber);
                writer.WritePropertyName("reason");
                WriteReason(writer, row.Reason, voice);
                writer.WriteEndObject();
            }

            writer.WriteEndArray();
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private void WriteSessions(Utf8JsonWriter writer)
    {
        writer.WriteStartArray("sessions");
        foreach (SessionTally tally in sessions)
        {
            Reads.ReadSession session = tally.Session;
            writer.WriteStartObject();
            writer.WriteString("id", session.Id.Value);
            writer.WriteString("station", session.Presentation.Station.Id.Value);
            writer.WriteString("from", At(session.From));
            writer.WriteString("to", At(session.To));
            writer.WriteNumber("passes", session.Passes.Count);
            writer.WriteString("health", StatusWords.Code(session.Health.State));
            WriteReasons(writer, "reasons", session.Health.Reasons, voice);
            writer.WriteStartArray("liveAntennas");
            foreach (Reads.AntennaPort antenna in session.LiveAntennas)
            {
                writer.WriteNumberValue(antenna.Number);
            }

            writer.WriteEndArray();
            writer.WriteNumber("clockCorrectionSeconds", JsonFields.ToSeconds(session.ClockCorrection));
            WriteTally(writer, tally);
            WriteReasons(writer, "findings", tally.Findings.Select(static finding => finding.Reason), voice);
            writer.WriteString("digest", session.Digest.ToString());
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private void WriteSessionsOfOthers(Utf8JsonWriter writer)
    {
        writer.WriteStartArray("sessionsOfOtherKits");
        foreach (Reads.ReadSession session in foreign)
        {
            writer.WriteStartObject();
            writer.WriteString("id", session.Id.Value);
            writer.WriteString("station", session.Presentation.Station.Id.Value);
            writer.WriteString("from", At(session.From));
            writer.WriteString("to", At(session.To));
            writer.WriteStartArray("kits");
            foreach (Kits.KitId kit in session.Presentation.Kits)
            {
                writer.WriteStringValue(kit.Value);
            }

            writer.WriteEndArray();
            writer.WriteString("health", StatusWords.Code(session.Health.State));
            WriteReasons(writer, "reasons", session.Health.Reasons, voice);
            writer.WriteNumber("reads", session.ReadCount);
            writer.WriteString("digest", session.Digest.ToString());
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private static void WriteTally(Utf8JsonWriter writer, SessionTally tally)
    {
        writer.WriteStartObject("reads");
        writer.WriteNumber("total", tally.Session.ReadCount);
        writer.WriteNumber("expected", tally.CountOf(ReadExplanationKind.Expected));
        writer.WriteNumber("unexpected", tally.CountOf(ReadExplanationKind.Unexpected));
        writer.WriteNumber("unknown", tally.CountOf(ReadExplanationKind.Unknown));
        writer.WriteNumber("outsideWindow", tally.CountOf(ReadExplanationKind.OutsideWindow));
        writer.WriteNumber("repeat", tally.CountOf(ReadExplanationKind.Repeat));
        writer.WriteEndObject();
    }

    private void WriteOtherReads(Utf8JsonWriter writer)
    {
        writer.WriteStartArray("otherReads");
        foreach (SessionTally tally in sessions)
        {
            foreach (ReadExplanation read in tally.Others)
            {
                writer.WriteStartObject();
                writer.WriteString("session", read.Session.Value);
                writer.WriteString("tag", read.Tag.ToString());
                writer.WriteString("explanation", StatusWords.Code(read.Kind));
                writer.WriteNumber("reads", read.ReadCount);
                if (read.Tool is { } tool)
                {
                    writer.WriteString("tool", tool.Value);
                }

                if (read.Kit is { } kit)
                {
                    writer.WriteString("kit", kit.Value);
                }

                writer.WritePropertyName("reason");
                WriteReason(writer, read.Reason, voice);
                writer.WriteEndObject();
            }
        }

        writer.WriteEndArray();
    }
}
