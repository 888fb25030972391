using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Calibration;

/// <summary>The rules a <see cref="CalibrationRecord"/> must keep to stand in a register; the code of a rule never changes its meaning.</summary>
/// <remarks>Thread-safe: immutable.</remarks>
public static class CalibrationRules
{
    /// <summary>A record names no tool.</summary>
    public static ReasonKind WithoutTool { get; } = new("calibration.record-without-tool", "A calibration record must name the tool.");

    /// <summary>A record has no day of calibration, or one outside the years 1970 to 2999.</summary>
    public static ReasonKind WithoutDay { get; } = new("calibration.record-without-day", "A calibration record must say on which day the tool was calibrated, in the years 1970 to 2999.");

    /// <summary>A record does not say when it was entered.</summary>
    public static ReasonKind WithoutRecordedTime { get; } = new("calibration.record-without-recorded-time", "A calibration record must say when it was entered, in the years 1970 to 2999.");

    /// <summary>A record says neither when the tool is due nor its interval, or says both.</summary>
    public static ReasonKind OneDueNeeded { get; } = new("calibration.one-due-needed", "A calibration record must give exactly one of due day, due month and interval; this one gives {count}.");

    /// <summary>An interval is outside 1 to 120 months.</summary>
    public static ReasonKind IntervalOutOfRange { get; } = new("calibration.interval-out-of-range", "A calibration interval must be 1 to 120 whole months; this is {months}.");

    /// <summary>The due date lies before the day of calibration.</summary>
    public static ReasonKind DueBeforeCalibrated { get; } = new("calibration.due-before-calibrated", "The due date {due} lies before the day of calibration, {day}.");

    /// <summary>The day of calibration had begun nowhere on Earth when the record was entered.</summary>
    public static ReasonKind CalibratedInFuture { get; } = new("calibration.calibrated-in-future", "The day of calibration, {day}, lies after the entry of the record at {recordedAt}.");

    /// <summary>Two records of one tool with the same day were entered at the same instant.</summary>
    public static ReasonKind SameRecordTwice { get; } = new("calibration.same-record-twice", "The tool {tool} has two records of {day} entered at the same instant, {recordedAt}.");

    /// <summary>A certificate number is not usable text.</summary>
    public static ReasonKind BadCertificate { get; } = new("calibration.bad-certificate", "A certificate number must be 1 to 100 printable characters: {fault}");

    /// <summary>A register holds more records than it may.</summary>
    public static ReasonKind TooManyRecords { get; } = new("calibration.too-many-records", "A register holds at most {limit} records; here are {count}.");

    /// <summary>All rules of this room, in the order above.</summary>
    public static IReadOnlyList<ReasonKind> All { get; } =
    [
        WithoutTool, WithoutDay, WithoutRecordedTime, OneDueNeeded, IntervalOutOfRange, DueBeforeCalibrated,
        CalibratedInFuture, SameRecordTwice, BadCertificate, TooManyRecords,
    ];
}
