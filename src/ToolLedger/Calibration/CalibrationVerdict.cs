using System;
using System.Runtime.InteropServices;
using ToolLedger.Records;

namespace ToolLedger.Calibration;

/// <summary>The calibration status without its words: what a loop over a million tools needs. <see cref="CalibrationRegister.StatusOf(Tools.Tool, in IntendedUse, CalibrationPolicy, Reads.SiteCalendar)"/> says why.</summary>
/// <remarks>The default value is <see cref="CalibrationState.NotRequired"/> and not fit. Immutable and thread-safe.</remarks>
[StructLayout(LayoutKind.Auto)]
public readonly record struct CalibrationVerdict
{
    /// <summary>The status.</summary>
    public CalibrationState State { get; internal init; }

    /// <summary>Whether the tool is fit for the use that was asked about, by entered records.</summary>
    public bool IsFit { get; internal init; }

    /// <summary>The last day on which it is in date; null where no record says so or only uses limit it.</summary>
    public DateOnly? Until { get; internal init; }

    /// <summary>The day at the site at the instant of use.</summary>
    public DateOnly SiteDate { get; internal init; }

    /// <summary>Whether a planned use ends after the last day in date.</summary>
    public bool LapsesDuring { get; internal init; }

    /// <summary>The function that decided; null for the tool as a whole.</summary>
    public string? Function { get; internal init; }

    /// <summary>The stable code of the reason; empty for the default value.</summary>
    public string Code => Kind?.Code ?? "";

    internal ReasonKind? Kind { get; init; }

    /// <summary>The record that counts.</summary>
    internal CalibrationRecord? Record { get; init; }

    /// <summary>The event that decides: a label, a condition, a check or an extension.</summary>
    internal CalibrationEvent? Event { get; init; }

    /// <summary>The last day without an extension.</summary>
    internal DateOnly? PlainUntil { get; init; }

    internal decimal Used { get; init; }

    internal decimal Limit { get; init; }

    internal UseMeasure Measure { get; init; }

    internal int FitCount { get; init; }

    internal int UnfitCount { get; init; }

    /// <summary>The state of the first function that is not fit, where some are.</summary>
    internal CalibrationState WorstState { get; init; }

    internal CalibrationLimitation? Limitation { get; init; }

    /// <summary>What is covered, where the value asked about lies outside.</summary>
    internal decimal? From { get; init; }

    internal decimal? To { get; init; }

    internal Unit PlannedUnit { get; init; }

    /// <summary>How far a state is from fit; the higher of two is the safer answer.</summary>
    internal int Severity => State switch
    {
        CalibrationState.Current => 0,
        CalibrationState.DueSoon => 1,
        CalibrationState.Limited => 2,
        CalibrationState.NotRequired => 3,
        CalibrationState.Overdue => 4,
        CalibrationState.Unknown => 5,
        CalibrationState.Suspended => 6,
        CalibrationState.Inactive => 7,
        _ => 8,
    };
}
