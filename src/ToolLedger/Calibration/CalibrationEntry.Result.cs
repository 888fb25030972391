using System;
using System.Collections.Generic;
using System.Text.Json;
using ToolLedger.Records;

namespace ToolLedger.Calibration;

/// <content>The members of the second form; lists and objects inside are kept as JSON and read by name.</content>
internal sealed partial class CalibrationEntry
{
    private static readonly (string Word, CalibrationResult Value)[] Results =
        [("passed", CalibrationResult.Passed), ("limited", CalibrationResult.Limited), ("failed", CalibrationResult.Failed)];

    /// <summary>What the second form adds: {"function"?, "result"?, "cycles"?, "hours"?, "completedAt"?, "certifiedOn"?, "laboratory"?, "standards"?, "foundInTolerance"?, "asFound"?, "asLeft"?, "limitations"?}.</summary>
    public JsonElement Details { get; set; }

    private void WriteResult(CalibrationRecord record)
    {
        if (record.IsPlain)
        {
            return;
        }

        using JsonDocument document = JsonDocument.Parse(RecordJson.Write(writer =>
        {
            writer.WriteStartObject();
            EventJson.WriteText(writer, "function", record.Function);
            EventJson.WriteText(writer, "result", record.Result == CalibrationResult.NotStated ? null : Array.Find(Results, one => one.Value == record.Result).Word);
            EventJson.WriteNumber(writer, "cycles", record.Interval?.Cycles);
            EventJson.WriteNumber(writer, "hours", record.Interval?.Hours);
            EventJson.WriteText(writer, "completedAt", record.CompletedAt is { } at ? RecordTime.ToText(at) : null);
            EventJson.WriteText(writer, "certifiedOn", record.CertifiedOn is { } day ? CalibrationRecord.Text(day) : null);
            EventJson.WriteText(writer, "laboratory", record.Laboratory);
            if (record.Standards.Count > 0)
            {
                writer.WriteStartArray("standards");
                foreach (string standard in record.Standards)
                {
                    writer.WriteStringValue(standard);
                }

                writer.WriteEndArray();
            }

            if (record.FoundInTolerance is { } found)
            {
                writer.WriteBoolean("foundInTolerance"u8, found);
            }

            EventJson.WritePoints(writer, "asFound", record.AsFound);
            EventJson.WritePoints(writer, "asLeft", record.AsLeft);
            EventJson.WriteLimitations(writer, record.Limitations);
            writer.WriteEndObject();
        }));
        Details = document.RootElement.Clone();
    }

    /// <summary>The first form has no details: there they are a member that nobody knows.</summary>
    private ResultMembers RefuseResult(RecordReader reader, string place)
    {
        if (Details.ValueKind != JsonValueKind.Undefined)
        {
            reader.Report(place, new Reason(RecordRules.UnknownMember, ("member", "details")));
        }

        return default;
    }

    private ResultMembers ReadResult(RecordReader reader, string place)
    {
        if (Details.ValueKind == JsonValueKind.Undefined)
        {
            return default;
        }

        var fields = new JsonFields(Details, place + ".details", reader.Issues);
        var read = new ResultMembers
        {
            Function = fields.Text("function", null, IdText.MaxLength),
            Result = fields.Word("result", CalibrationResult.NotStated, Results),
            Interval = fields.IsThere("cycles") | fields.IsThere("hours")
                ? new CalibrationInterval { Cycles = EventJson.Number(fields, "cycles"), Hours = EventJson.Number(fields, "hours") }
                : null,
            CompletedAt = fields.Time("completedAt"),
            CertifiedOn = EventJson.Day(fields, "certifiedOn"),
            Laboratory = fields.Text("laboratory", null, CalibrationRecord.MaxCertificateLength),
            Standards = fields.Texts("standards", CalibrationRecord.MaxStandardCount, CalibrationRecord.MaxCertificateLength),
            FoundInTolerance = fields.IsThere("foundInTolerance") ? fields.Flag("foundInTolerance", fallback: false) : null,
            AsFound = EventJson.Points(fields, "asFound", reader.Issues),
            AsLeft = EventJson.Points(fields, "asLeft", reader.Issues),
            Limitations = EventJson.Limitations(fields, reader.Issues),
        };
        fields.End();
        return read;
    }

    [System.Runtime.InteropServices.StructLayout(System.Runtime.InteropServices.LayoutKind.Auto)]
    private readonly record struct ResultMembers
    {
        public string? Function { get; init; }

        public CalibrationResult Result { get; init; }

        public CalibrationInterval? Interval { get; init; }

        public DateTimeOffset? CompletedAt { get; init; }

        public DateOnly? CertifiedOn { get; init; }

        public string? Laboratory { get; init; }

        public IReadOnlyList<string> Standards { get => field ?? []; init; }

        public bool? FoundInTolerance { get; init; }

        public IReadOnlyList<CalibrationPoint> AsFound { get => field ?? []; init; }

        public IReadOnlyList<CalibrationPoint> AsLeft { get => field ?? []; init; }

        public IReadOnlyList<CalibrationLimitation> Limitations { get => field ?? []; init; }
    }
}
