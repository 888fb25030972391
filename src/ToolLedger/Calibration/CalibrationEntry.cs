using System;
using System.Globalization;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Calibration;

/// <summary>A calibration record as stored: {"tool", "calibratedOn", "dueOn" or "dueMonth" or "intervalMonths", "recordedAt", "recordedBy"?, "certificate"?}, and in the second form what was found and left.</summary>
internal sealed partial class CalibrationEntry : JsonRecord
{
    private const string DayForm = "yyyy-MM-dd";
    private const string MonthForm = "yyyy-MM";

    public JsonText Tool { get; set; }

    public JsonText CalibratedOn { get; set; }

    public JsonText DueOn { get; set; }

    public JsonText DueMonth { get; set; }

    public JsonNumber IntervalMonths { get; set; }

    public JsonText RecordedAt { get; set; }

    public JsonText RecordedBy { get; set; }

    public JsonText Certificate { get; set; }

    internal static CalibrationEntry Of(CalibrationRecord record)
    {
        var entry = new CalibrationEntry
        {
            Tool = new JsonText(record.Tool.Value),
            CalibratedOn = new JsonText(CalibrationRecord.Text(record.CalibratedOn)),
            DueOn = new JsonText(record.DueOn?.ToString(DayForm, CultureInfo.InvariantCulture)),
            DueMonth = new JsonText(record.DueMonth?.ToString(MonthForm, CultureInfo.InvariantCulture)),
            IntervalMonths = record.IntervalMonths is { } months ? new JsonNumber(months) : default,
            RecordedAt = new JsonText(RecordTime.ToText(record.RecordedAt)),
            RecordedBy = new JsonText(record.RecordedBy.IsEmpty ? null : record.RecordedBy.Value),
            Certificate = new JsonText(record.Certificate),
        };
        entry.WriteResult(record);
        return entry;
    }

    internal CalibrationRecord? Read(RecordReader reader, string place, bool isFirstForm)
    {
        reader.RefuseUnknown(this, place);
        int issuesBefore = reader.Issues.Reported;
        string? tool = reader.Text(Tool, place, "tool", IdText.MaxLength);
        DateOnly? calibratedOn = Day(reader, CalibratedOn, place, "calibratedOn");
        if (CalibratedOn.IsAbsent)
        {
            reader.Missing(place, "calibratedOn");
        }

        DateOnly? dueOn = Day(reader, DueOn, place, "dueOn");
        DateOnly? dueMonth = Day(reader, DueMonth, place, "dueMonth", isMonth: true);
        int? months = reader.OptionalInt32(IntervalMonths, place, "intervalMonths", 1, CalibrationRecord.MaxIntervalMonths);
        DateTimeOffset? recordedAt = reader.Time(RecordedAt, place, "recordedAt");
        string? recordedBy = isFirstForm
            ? reader.OptionalText(RecordedBy, place, "recordedBy", IdText.MaxLength)
            : reader.Text(RecordedBy, place, "recordedBy", IdText.MaxLength);
        string? certificate = reader.OptionalText(Certificate, place, "certificate", CalibrationRecord.MaxCertificateLength);
        ResultMembers result = isFirstForm ? RefuseResult(reader, place) : ReadResult(reader, place);
        if (reader.Issues.Reported > issuesBefore || tool is null || calibratedOn is null || recordedAt is null)
        {
            return null;
        }

        return new CalibrationRecord
        {
            Tool = new ToolId(tool),
            CalibratedOn = calibratedOn.Value,
            DueOn = dueOn,
            DueMonth = dueMonth,
            IntervalMonths = months,
            RecordedAt = recordedAt.Value,
            RecordedBy = recordedBy is null ? default : new PersonId(recordedBy),
            Certificate = certificate,
            Function = result.Function,
            Result = result.Result,
            Interval = result.Interval,
            CompletedAt = result.CompletedAt,
            CertifiedOn = result.CertifiedOn,
            Laboratory = result.Laboratory,
            Standards = result.Standards,
            FoundInTolerance = result.FoundInTolerance,
            AsFound = result.AsFound,
            AsLeft = result.AsLeft,
            Limitations = result.Limitations,
        };
    }

    /// <summary>A day or month that may be absent; anything else becomes an issue.</summary>
    private static DateOnly? Day(RecordReader reader, JsonText text, string place, string member, bool isMonth = false)
    {
        if (!reader.IsString(text, place, member))
        {
            return null;
        }

        if (DateOnly.TryParseExact(text.Value, isMonth ? MonthForm : DayForm, CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day)
            && day.Year is >= RecordTime.FirstYear and <= RecordTime.LastYear)
        {
            return day;
        }

        reader.Report($"{place}.{member}", new Reason(
            RecordRules.BadForm,
            ("expected", isMonth ? "a month such as 2026-04, years 1970 to 2999" : "a day such as 2026-03-31, years 1970 to 2999"),
            ("found", SafeText.Excerpt(text.Value))));
        return null;
    }
}
