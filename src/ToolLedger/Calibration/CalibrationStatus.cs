using System;
using System.Collections.Generic;
using System.Globalization;
using ToolLedger.Records;

namespace ToolLedger.Calibration;

/// <summary>The calibration status of a tool, or of one function of it, at an instant, by the site's calendar and a stated convention.</summary>
/// <remarks>Computed from entered records only: the label and the responsible laboratory decide. Immutable and thread-safe.</remarks>
public sealed class CalibrationStatus
{
    internal CalibrationStatus(in CalibrationVerdict verdict, Reason reason, IReadOnlyList<Reason> warnings, IReadOnlyList<CalibrationStatus> parts)
    {
        State = verdict.State;
        DueOn = verdict.Until;
        SiteDate = verdict.SiteDate;
        Function = verdict.Function;
        Record = verdict.Record;
        Event = verdict.Event;
        IsFit = verdict.IsFit;
        LapsesDuring = verdict.LapsesDuring;
        Reason = reason;
        Warnings = warnings;
        Parts = parts;
    }

    /// <summary>The status.</summary>
    public CalibrationState State { get; }

    /// <summary>The last day on which the tool is in date by the convention; null where no record says so.</summary>
    public DateOnly? DueOn { get; }

    /// <summary>The day at the site at the instant asked about.</summary>
    public DateOnly SiteDate { get; }

    /// <summary>The function that the answer is about, or that decided about the whole tool; null where the tool is one thing.</summary>
    public string? Function { get; }

    /// <summary>Why; the convention is among the values where it matters.</summary>
    public Reason Reason { get; }

    /// <summary>What else a user must know: that it lapses during a planned use, or a limitation that the use keeps. Empty if nothing.</summary>
    public IReadOnlyList<Reason> Warnings { get; }

    /// <summary>The status of each function, where the question was about the whole tool and it has several; otherwise empty.</summary>
    public IReadOnlyList<CalibrationStatus> Parts { get; }

    /// <summary>The calibration that counts; null if none does, or if it did not decide.</summary>
    public CalibrationRecord? Record { get; }

    /// <summary>The label, report, check or extension that decided; null if none did.</summary>
    public CalibrationEvent? Event { get; }

    /// <summary>Whether the tool is in date: <see cref="CalibrationState.Current"/> or <see cref="CalibrationState.DueSoon"/>.</summary>
    public bool IsInDate => State is CalibrationState.Current or CalibrationState.DueSoon;

    /// <summary>Whether the tool is fit for the use that was asked about, by entered records.</summary>
    public bool IsFit { get; }

    /// <summary>Whether a planned use ends after the last day in date.</summary>
    public bool LapsesDuring { get; }

    /// <summary>The status of a tool that nobody can tell from another.</summary>
    internal static CalibrationStatus OfUnknownIdentity(DateOnly siteDate) => new(
        new CalibrationVerdict { State = CalibrationState.Unknown, SiteDate = siteDate, Kind = CalibrationReasons.IdentityUnknown }, new Reason(CalibrationReasons.IdentityUnknown), [], []);

    /// <summary>The status in words, with the reason.</summary>
    /// <returns>For example "Overdue: Was in date only through 2026-03-31 ...".</returns>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Word(State)}: {Reason}");

    internal static string Word(CalibrationState state) => state switch
    {
        CalibrationState.NotRequired => "Not required",
        CalibrationState.Current => "Current",
        CalibrationState.DueSoon => "Due soon",
        CalibrationState.Overdue => "Overdue",
        CalibrationState.Limited => "Limited",
        CalibrationState.Suspended => "Suspended",
        CalibrationState.Rejected => "Rejected",
        CalibrationState.Inactive => "Inactive",
        _ => "Unknown",
    };
}
