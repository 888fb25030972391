using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Calibration;

/// <summary>The rules that a <see cref="CalibrationEvent"/>, and what a calibration found, must keep to stand in a register; the code of a rule never changes its meaning.</summary>
/// <remarks>Thread-safe: immutable.</remarks>
public static class CalibrationEventRules
{
    /// <summary>An event names no tool.</summary>
    public static ReasonKind WithoutTool { get; } = new("calibration.event-without-tool", "The entry must name the tool.");

    /// <summary>An event does not say when it was entered.</summary>
    public static ReasonKind WithoutRecordedTime { get; } = new("calibration.event-without-recorded-time", "The entry must say when it was made, in the years 1970 to 2999.");

    /// <summary>An event does not say when it happened.</summary>
    public static ReasonKind WithoutTime { get; } = new("calibration.event-without-time", "The entry must say when it happened, in the years 1970 to 2999.");

    /// <summary>Nobody signed.</summary>
    public static ReasonKind NotSigned { get; } = new("calibration.not-signed", "Nobody signed this. It must say who entered it.");

    /// <summary>Something is said to have happened after its entry.</summary>
    public static ReasonKind InFuture { get; } = new("calibration.event-in-future", "{at} lies after the entry at {recordedAt}.");

    /// <summary>The same entry stands twice.</summary>
    public static ReasonKind SameEventTwice { get; } = new("calibration.same-event-twice", "The tool {tool} has the same {kind} twice, entered at the same instant, {recordedAt}.");

    /// <summary>A plan holds no function, or too many.</summary>
    public static ReasonKind PlanWithoutFunction { get; } = new("calibration.plan-without-function", "A plan holds 1 to {limit} functions.");

    /// <summary>A plan is for the whole tool.</summary>
    public static ReasonKind PlanOfOneFunction { get; } = new("calibration.plan-of-one-function", "A plan is for the whole tool; its functions stand inside.");

    /// <summary>Two functions of a plan have one name.</summary>
    public static ReasonKind SameFunctionTwice { get; } = new("calibration.same-function-twice", "Two functions of the plan have the same name.");

    /// <summary>An interval is empty or outside its range.</summary>
    public static ReasonKind BadInterval { get; } = new("calibration.bad-interval", "An interval is 1 to 120 months, whole cycles or hours up to 100,000,000, or 1 to 3,660 days for a check by the user, and not empty.");

    /// <summary>A range ends before it starts.</summary>
    public static ReasonKind BadRange { get; } = new("calibration.bad-range", "The range from {from} to {to} ends before it starts.");

    /// <summary>A limitation says nothing.</summary>
    public static ReasonKind EmptyLimitation { get; } = new("calibration.empty-limitation", "A limitation must give a range, exclude a function or say in words what is limited.");

    /// <summary>Limited, but by nothing.</summary>
    public static ReasonKind LimitedByNothing { get; } = new("calibration.limited-by-nothing", "What is limited must say to what.");

    /// <summary>A rejected label does not say why.</summary>
    public static ReasonKind RejectedWithoutReason { get; } = new("calibration.rejected-without-reason", "A rejected label must say why.");

    /// <summary>A rejection is ended without a reason.</summary>
    public static ReasonKind ClearedWithoutReason { get; } = new("calibration.cleared-without-reason", "The tool {tool} was rejected on {since}; the label that ends that must say why.");

    /// <summary>More points, limitations or texts than one entry may hold.</summary>
    public static ReasonKind TooMany { get; } = new("calibration.too-many", "At most {limit}.");

    /// <summary>An uncertainty is negative, or its coverage factor no factor.</summary>
    public static ReasonKind BadUncertainty { get; } = new("calibration.bad-uncertainty", "An expanded uncertainty is 0 or more, its coverage factor above 0 and at most 10.");

    /// <summary>Passed, but a point lies outside its limits.</summary>
    public static ReasonKind PassedOutsideLimits { get; } = new("calibration.passed-outside-limits", "It says passed, but a measured value lies outside its limits.");

    /// <summary>Found in tolerance, but a point as found lies outside its limits.</summary>
    public static ReasonKind FoundContradicted { get; } = new("calibration.found-contradicted", "What it says about the state as found contradicts the values as found.");

    /// <summary>A certificate is dated before the calibration it is about.</summary>
    public static ReasonKind CertifiedTooEarly { get; } = new("calibration.certified-too-early", "The certificate of {certifiedOn} is older than the calibration of {day}.");

    /// <summary>A certificate is dated after the entry of the record.</summary>
    public static ReasonKind CertifiedInFuture { get; } = new("calibration.certified-in-future", "The certificate is dated {certifiedOn}, after the entry at {recordedAt}.");

    /// <summary>The instant of completion belongs to another day than the calibration, or lies after the entry.</summary>
    public static ReasonKind CompletedElsewhen { get; } = new("calibration.completed-elsewhen", "Completed at {completedAt}, which is not on {day} or lies after the entry.");

    /// <summary>A failed calibration gives a due date.</summary>
    public static ReasonKind FailedWithDue { get; } = new("calibration.failed-with-due", "A failed calibration has no due date.");

    /// <summary>An extension says no reason.</summary>
    public static ReasonKind ExtensionWithoutReason { get; } = new("calibration.extension-without-reason", "An extension must say why.");

    /// <summary>An extension ends before it was entered.</summary>
    public static ReasonKind ExtensionInPast { get; } = new("calibration.extension-in-past", "The extension through {through} ends before it was entered, or outside the years 1970 to 2999.");

    /// <summary>A period of use ends before it starts.</summary>
    public static ReasonKind PeriodBackwards { get; } = new("calibration.period-backwards", "The period from {from} through {through} ends before it starts, or lies outside the years 1970 to 2999.");

    /// <summary>An amount of use is negative, too large or not whole.</summary>
    public static ReasonKind BadAmount { get; } = new("calibration.bad-amount", "An amount of use is 0 to 100,000,000, whole for cycles; this is {amount}.");

    /// <summary>A word that is not one of its enumeration.</summary>
    public static ReasonKind BadWord { get; } = new("calibration.bad-word", "The value is not one of its enumeration.");

    /// <summary>More events than a register holds.</summary>
    public static ReasonKind TooManyEvents { get; } = new("calibration.too-many-events", "A register holds at most {limit} events; here are {count}.");

    /// <summary>All rules, in the order above.</summary>
    public static IReadOnlyList<ReasonKind> All { get; } =
    [
        WithoutTool, WithoutRecordedTime, WithoutTime, NotSigned, InFuture, SameEventTwice, PlanWithoutFunction, PlanOfOneFunction, SameFunctionTwice, BadInterval, BadRange,
        EmptyLimitation, LimitedByNothing, RejectedWithoutReason, ClearedWithoutReason, TooMany, BadUncertainty, PassedOutsideLimits, FoundContradicted, CertifiedTooEarly,
        CertifiedInFuture, CompletedElsewhen, FailedWithDue, ExtensionWithoutReason, ExtensionInPast, PeriodBackwards, BadAmount, BadWord, TooManyEvents,
    ];
}
