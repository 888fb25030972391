using System;
using System.Globalization;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Calibration;

/// <summary>A tool was calibrated on a day, and is due again on a day, in a month, or after an interval.</summary>
/// <remarks>At most one of <see cref="DueOn"/>, <see cref="DueMonth"/> and <see cref="IntervalMonths"/> is given, and one of them unless <see cref="Interval"/>, a <see cref="CalibrationPlan"/> or
/// a failed <see cref="Result"/> makes it needless; a <see cref="CalibrationRegister"/> refuses a record that breaks this or another rule of <see cref="CalibrationRules"/> and
/// <see cref="CalibrationEventRules"/>. Immutable and thread-safe.</remarks>
public sealed partial class CalibrationRecord
{
    /// <summary>The longest interval, in months.</summary>
    public const int MaxIntervalMonths = 120;

    internal const int MaxCertificateLength = 100;

    /// <summary>The tool.</summary>
    public required ToolId Tool { get; init; }

    /// <summary>The day of calibration, by the calendar of the place where it was done.</summary>
    public required DateOnly CalibratedOn { get; init; }

    /// <summary>The due day printed on label or certificate; null if it gives none.</summary>
    public DateOnly? DueOn { get; init; }

    /// <summary>The due month, where label or certificate gives a month and no day; null otherwise. Any day of the month may be handed in; the first is kept.</summary>
    public DateOnly? DueMonth
    {
        get;
        init => field = value is { } day ? new DateOnly(day.Year, day.Month, 1) : null;
    }

    /// <summary>The interval to the next calibration; null if a due day or month is given.</summary>
    /// <value>Months; 1 to 120.</value>
    public int? IntervalMonths { get; init; }

    /// <summary>When the record was entered: before that instant it does not count.</summary>
    public required DateTimeOffset RecordedAt { get; init; }

    /// <summary>Who entered the record; empty (the default) if not stated.</summary>
    public PersonId RecordedBy { get; init; }

    /// <summary>The number of the certificate; null if there is none.</summary>
    /// <value>1 to 100 characters, no control or format character, no white space at either end.</value>
    public string? Certificate { get; init; }

    /// <summary>The due day, counted from the day of calibration where an interval is given; null where only a month is known, or nothing.</summary>
    /// <value>Months are added to the day of calibration itself, and a day that the month does not have becomes its last day: 2024-02-29 + 12 months = 2025-02-28.
    /// If a register has not checked the record and it gives a day and an interval, the earlier of the two.</value>
    public DateOnly? Due => DueOn is { } printed && DueByInterval is { } counted ? Earlier(printed, counted) : DueOn ?? DueByInterval;

    private DateOnly? DueByInterval => IntervalMonths is >= 1 and <= MaxIntervalMonths && CalibratedOn.Year <= 2999 ? CalibratedOn.AddMonths(IntervalMonths.Value) : null;

    /// <summary>The last day on which the tool is in date by a convention.</summary>
    /// <param name="convention">The convention.</param>
    /// <returns>The day; null if the record and the convention do not settle it.</returns>
    public DateOnly? LastDay(DueConvention convention) => convention switch
    {
        DueConvention.MonthEnd => (Due ?? DueMonth) is { } due ? EndOfMonth(due) : null,
        _ => DueMonth is null ? Due : null,
    };

    internal void AddIssues(string place, IssueList issues, bool isPlanned = false)
    {
        void Note(string member, ReasonKind rule, params ReadOnlySpan<(string Name, string Value)> values) =>
            issues.Report($"{place}.{member}", new Reason(rule, values));

        if (Tool.IsEmpty)
        {
            Note("tool", CalibrationRules.WithoutTool);
        }

        if (CalibratedOn.Year is < 1970 or > 2999)
        {
            Note("calibratedOn", CalibrationRules.WithoutDay);
        }

        if (!RecordTime.IsInRange(RecordedAt))
        {
            Note("recordedAt", CalibrationRules.WithoutRecordedTime);
        }
        else if (CalibratedOn > DateOnly.FromDateTime(RecordedAt.UtcDateTime.AddHours(14)))
        {
            // 14 hours ahead of UTC is the earliest calendar on Earth (from memory).
            Note("calibratedOn", CalibrationRules.CalibratedInFuture, ("day", Text(CalibratedOn)), ("recordedAt", RecordTime.ToText(RecordedAt)));
        }

        if (Certificate is not null && RecordText.Check(Certificate, MaxCertificateLength) is { } fault)
        {
            Note("certificate", CalibrationRules.BadCertificate, ("fault", fault.ToString()));
        }

        AddDueIssues(place, issues, isPlanned);
        AddResultIssues(place, issues);
    }

    internal static string Text(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static DateOnly Earlier(DateOnly one, DateOnly other) => one < other ? one : other;

    private static DateOnly EndOfMonth(DateOnly day) => new(day.Year, day.Month, DateTime.DaysInMonth(day.Year, day.Month));

    private void AddDueIssues(string place, IssueList issues, bool isPlanned)
    {
        int given = (DueOn is null ? 0 : 1) + (DueMonth is null ? 0 : 1) + (IntervalMonths is null ? 0 : 1);
        bool isGivenElsewhere = Interval is { IsEmpty: false } || Result == CalibrationResult.Failed || isPlanned;
        if (given > 1 || (given == 0 && !isGivenElsewhere))
        {
            issues.Add(new RecordIssue(place, new Reason(CalibrationRules.OneDueNeeded, ("count", given.ToString(CultureInfo.InvariantCulture)))));
        }

        if (IntervalMonths is < 1 or > MaxIntervalMonths)
        {
            issues.Add(new RecordIssue($"{place}.intervalMonths", new Reason(CalibrationRules.IntervalOutOfRange, ("months", IntervalMonths.Value.ToString(CultureInfo.InvariantCulture)))));
        }

        DateOnly? last = DueOn ?? (DueMonth is { } month ? EndOfMonth(month) : null);
        if (last < CalibratedOn)
        {
            issues.Add(new RecordIssue(
                DueOn is null ? $"{place}.dueMonth" : $"{place}.dueOn",
                new Reason(CalibrationRules.DueBeforeCalibrated, ("due", Text(last.Value)), ("day", Text(CalibratedOn)))));
        }
    }
}
