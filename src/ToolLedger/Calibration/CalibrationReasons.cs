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

    /// <summary>All reasons of this room, in the order above.</summary>
    public static IReadOnlyList<ReasonKind> All { get; } = [NotRequired, Current, DueSoon, Overdue, NoRecord, MonthOnly, NoDueDate, IdentityUnknown];
}
