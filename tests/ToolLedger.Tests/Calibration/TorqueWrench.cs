using System;
using System.Globalization;
using ToolLedger.Calibration;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Tests.Calibration;

/// <summary>The invented torque wrench T4 of the scenarios, and short ways to record things about it.</summary>
internal static class TorqueWrench
{
    public static readonly Tool T4 = new() { Id = new ToolId("T4"), Description = "Torque wrench", NeedsCalibration = true };
    public static readonly Tool T1 = new() { Id = new ToolId("T1"), Description = "Spanner" };
    public static readonly CalibrationPolicy P0 = CalibrationPolicy.Default;
    public static readonly PersonId Q = new("Q");

    /// <summary>A passed calibration, entered at ten o'clock of its day unless said otherwise.</summary>
    public static CalibrationRecord Passed(string day, string? dueOn = null, int? months = null, string? function = null, string? recordedAt = null, CalibrationInterval? interval = null,
        CalibrationResult result = CalibrationResult.Passed) => new()
        {
            Tool = T4.Id,
            CalibratedOn = Day(day),
            DueOn = dueOn is null ? null : Day(dueOn),
            IntervalMonths = months,
            Interval = interval,
            Function = function,
            Result = result,
            RecordedAt = At(recordedAt ?? day + "T10:00:00Z"),
            RecordedBy = Q,
        };

    public static CalibrationLabel Label(LabelKind kind, string at, params CalibrationLimitation[] limitations) =>
        new() { Tool = T4.Id, Label = kind, RecordedAt = At(at), RecordedBy = Q, Note = "by the laboratory", Limitations = limitations };

    public static ConditionReport Happened(ConditionKind kind, string at, string? recordedAt = null) =>
        new() { Tool = T4.Id, Condition = kind, At = At(at), RecordedAt = At(recordedAt ?? at), RecordedBy = Q };

    public static CalibrationCheck Checked(CheckKind kind, string at, bool isPassed = true, string? recordedAt = null) =>
        new() { Tool = T4.Id, Check = kind, At = At(at), IsPassed = isPassed, RecordedAt = At(recordedAt ?? at), RecordedBy = Q };

    public static UsePeriod Used(string from, string through, decimal amount, UseMeasure measure = UseMeasure.Cycles) =>
        new() { Tool = T4.Id, Measure = measure, From = Day(from), Through = Day(through), Amount = amount, RecordedAt = At(through + "T20:00:00Z"), RecordedBy = Q };

    public static CalibrationExtension Extension(string through, string at, string? job = null) => new()
    {
        Tool = T4.Id,
        Through = Day(through),
        Job = job is null ? default : new JobId(job),
        Reason = "test in progress",
        AllowedBy = new Signature { By = new PersonId("A"), At = At(at), Role = new Role("authority") },
        RecordedAt = At(at),
        RecordedBy = Q,
    };

    public static CalibrationPlan Plan(string at, params PlannedFunction[] functions) => new() { Tool = T4.Id, Functions = functions, RecordedAt = At(at), RecordedBy = Q };

    public static CalibrationRegister Register(CalibrationRecord[] records, params CalibrationEvent[] events) => new(records, events);

    public static CalibrationStatus Ask(this CalibrationRegister register, string at, CalibrationPolicy? policy = null) => register.StatusOf(T4, At(at), policy ?? P0, SiteCalendar.Utc);

    public static CalibrationStatus Ask(this CalibrationRegister register, in IntendedUse use, CalibrationPolicy? policy = null, SiteCalendar? calendar = null) =>
        register.StatusOf(T4, use, policy ?? P0, calendar ?? SiteCalendar.Utc);

    public static DateTimeOffset At(string text) => DateTimeOffset.ParseExact(text, "yyyy-MM-dd'T'HH:mm:ssK", CultureInfo.InvariantCulture);

    public static DateOnly Day(string text) => DateOnly.ParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture);
}
