using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Calibration;

/// <summary>Why a calibration status is what it is; the code of a reason never changes its meaning.</summary>
/// <remarks>Thread-safe: immutable.</remarks>
public static class CalibrationReasons
{
    /// <summary>The tool needs none.</summary>
    public static ReasonKind NotRequired { get; } = new("calibration.not-required", "The tool needs no calibration and must not be used for a measurement that counts.");

    /// <summary>In date.</summary>
    public static ReasonKind Current { get; } = new("calibration.current", "In date through {until}, by {convention}.");

    /// <summary>In date, but not for long.</summary>
    public static ReasonKind DueSoon { get; } = new("calibration.due-soon", "In date through {until}, by {convention}; due soon.");

    /// <summary>Past the due date.</summary>
    public static ReasonKind Overdue { get; } = new("calibration.overdue", "In date only through {until}, by {convention}; site date {siteDate}. Not fit for use.");

    /// <summary>No record that counts at the instant.</summary>
    public static ReasonKind NoRecord { get; } = new("calibration.no-record", "The tool needs calibration and no record of one counts on {siteDate}. Not fit for use.");

    /// <summary>The record gives a month, and the convention does not say which day of it.</summary>
    public static ReasonKind MonthOnly { get; } = new("calibration.month-only", "The record says {month} and no day, and the convention \"by {convention}\" does not say which day is meant. Not fit for use until the day is known.");

    /// <summary>The record does not say when the tool is due.</summary>
    public static ReasonKind NoDueDate { get; } = new("calibration.no-due-date", "The record says neither a due date nor an interval. Not fit for use.");

    /// <summary>It is not settled which tool this is, so no record is known to be its own.</summary>
    public static ReasonKind IdentityUnknown { get; } = new("calibration.identity-unknown", "It is not settled which tool this is, so no record is known to be its own. Not fit for use until it is.");

    /// <summary>In date by an extension.</summary>
    public static ReasonKind Extended { get; } = new("calibration.extended", "In date through {until} by an extension that {person} allowed: {reason}. Without it, through {due}, by {convention}.");

    /// <summary>In date, and nothing but uses limits it.</summary>
    public static ReasonKind CurrentByUse { get; } = new("calibration.current-by-use", "{used} of {limit} {measure} since {day}.");

    /// <summary>In date, and the limit of uses is near.</summary>
    public static ReasonKind DueSoonByUse { get; } = new("calibration.due-soon-by-use", "{used} of {limit} {measure} since {day}; due soon.");

    /// <summary>The limit of uses is reached.</summary>
    public static ReasonKind OverdueByUse { get; } = new("calibration.overdue-by-use", "{used} of {limit} {measure} since {day}. Not fit for use.");

    /// <summary>The limit is one of uses, and they were not counted without a gap.</summary>
    public static ReasonKind UseUnknown { get; } = new("calibration.use-unknown", "The limit is {limit} {measure}, and the uses since {day} are not entered without a gap. Unknown is not zero: not fit for use.");

    /// <summary>A label says rejected.</summary>
    public static ReasonKind LabelRejected { get; } = new("calibration.label-rejected", "Labelled rejected on {day}: {note}. Must not be used, whatever its date.");

    /// <summary>A label says inactive.</summary>
    public static ReasonKind LabelInactive { get; } = new("calibration.label-inactive", "Labelled inactive on {day}: calibration postponed. Not usable until recalibrated.");

    /// <summary>A label says that no calibration is required.</summary>
    public static ReasonKind LabelNotRequired { get; } = new("calibration.label-not-required", "Labelled \"no calibration required\" on {day}: not for quantitative measurement.");

    /// <summary>The last calibration failed.</summary>
    public static ReasonKind CalibrationFailed { get; } = new("calibration.failed", "The calibration of {day} failed. Must not be used.");

    /// <summary>Something happened to the tool.</summary>
    public static ReasonKind Suspended { get; } = new("calibration.suspended", "Reported {condition} at {at} and not cleared since. Not fit for use.");

    /// <summary>The seal is broken.</summary>
    public static ReasonKind Void { get; } = new("calibration.void", "The seal was broken at {at}: the calibration is void. Not fit for use.");

    /// <summary>A check failed.</summary>
    public static ReasonKind CheckFailed { get; } = new("calibration.check-failed", "A check at {at} failed, and no calibration was done since. Not fit for use.");

    /// <summary>A check by the user is needed and not recorded.</summary>
    public static ReasonKind NoUserCheck { get; } = new("calibration.no-user-check", "Needs a passed check by its user every {days} {days:day|days}, and none counts on {siteDate}. Not fit for use.");

    /// <summary>A check by the user holds.</summary>
    public static ReasonKind UserChecked { get; } = new("calibration.user-checked", "Checked by its user at {at}; that holds through {until}.");

    /// <summary>The value lies outside of what is covered.</summary>
    public static ReasonKind OutsideRange { get; } = new("calibration.outside-range", "Covered from {from} to {to}; {value} lies outside. Not fit for this use, although in date through {until}.");

    /// <summary>The calibration is limited, and the question gives no value.</summary>
    public static ReasonKind LimitedRange { get; } = new("calibration.limited-range", "Limited: {limits}. In date through {until}, by {convention}; which value is used decides.");

    /// <summary>The function is excluded.</summary>
    public static ReasonKind FunctionExcluded { get; } = new("calibration.function-excluded", "This function is excluded: {limits}. Not fit for this use.");

    /// <summary>Some functions are fit and some are not.</summary>
    public static ReasonKind PartlyFit { get; } = new("calibration.partly-fit", "Fit in part: {fit} {fit:function|functions} fit, {unfit} {unfit:function|functions} not, first {function}: {state}.");

    /// <summary>The plan has no such function.</summary>
    public static ReasonKind FunctionUnknown { get; } = new("calibration.function-unknown", "The plan of this tool has no function {function}. Not fit for this use.");

    /// <summary>The value is in another unit.</summary>
    public static ReasonKind UnitMismatch { get; } = new("calibration.unit-mismatch", "The value is in {found}, the function measures in {unit}; nothing is converted. Not fit for this use.");

    /// <summary>The calibration lapses before a planned use ends.</summary>
    public static ReasonKind LapsesDuring { get; } = new("calibration.lapses-during", "In date only through {until}, and the planned use ends on {end}.");

    /// <summary>The status rests on an extension or a limitation that the user must know of.</summary>
    public static ReasonKind LimitationNote { get; } = new("calibration.limitation-note", "Limited: {limits}.");

    /// <summary>All reasons of this room, in the order above.</summary>
    public static IReadOnlyList<ReasonKind> All { get; } =
    [
        NotRequired, Current, DueSoon, Overdue, NoRecord, MonthOnly, NoDueDate, IdentityUnknown, Extended, CurrentByUse, DueSoonByUse, OverdueByUse, UseUnknown, LabelRejected, LabelInactive,
        LabelNotRequired, CalibrationFailed, Suspended, Void, CheckFailed, NoUserCheck, UserChecked, OutsideRange, LimitedRange, FunctionExcluded, PartlyFit, FunctionUnknown, UnitMismatch,
        LapsesDuring, LimitationNote,
    ];
}
