using System;
using ToolLedger.Records;

namespace ToolLedger.Calibration;

/// <summary>The calibration status of a tool at an instant, by the site's calendar and a stated convention.</summary>
/// <remarks>Computed from entered records only: the label and the responsible laboratory decide. Immutable and thread-safe.</remarks>
public sealed class CalibrationStatus
{
    internal CalibrationStatus(CalibrationState state, DateOnly? dueOn, DateOnly siteDate, Reason reason)
    {
        State = state;
        DueOn = dueOn;
        SiteDate = siteDate;
        Reason = reason;
    }

    /// <summary>The status.</summary>
    public CalibrationState State { get; }

    /// <summary>The last day on which the tool is in date by the convention; null where no record says so.</summary>
    public DateOnly? DueOn { get; }

    /// <summary>The day at the site at the instant asked about.</summary>
    public DateOnly SiteDate { get; }

    /// <summary>Why; the convention is among the values where it matters.</summary>
    public Reason Reason { get; }

    /// <summary>Whether the tool is in date: <see cref="CalibrationState.Current"/> or <see cref="CalibrationState.DueSoon"/>.</summary>
    public bool IsInDate => State is CalibrationState.Current or CalibrationState.DueSoon;

    /// <summary>The status of a tool that nobody can tell from another.</summary>
    internal static CalibrationStatus OfUnknownIdentity(DateOnly siteDate) =>
        new(CalibrationState.Unknown, null, siteDate, new Reason(CalibrationReasons.IdentityUnknown));

    /// <summary>The status in words, with the reason.</summary>
    /// <returns>For example "Overdue: Was in date only through 2026-03-31 ...".</returns>
    public override string ToString() => $"{Word(State)}: {Reason}";

    private static string Word(CalibrationState state) => state switch
    {
        CalibrationState.NotRequired => "Not required",
        CalibrationState.Current => "Current",
        CalibrationState.DueSoon => "Due soon",
        CalibrationState.Overdue => "Overdue",
        _ => "Unknown",
    };
}
