using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Calibration;

/// <summary>Why a traced use is judged as it is, and what is refused in a trace; the code of a reason never changes its meaning.</summary>
/// <remarks>Thread-safe: immutable.</remarks>
public static class TraceReasons
{
    /// <summary>Within tolerance.</summary>
    public static ReasonKind Within { get; } = new("trace.within", "The error found, {error} with uncertainty {uncertainty}, stays within the tolerance of the work, {tolerance}.");

    /// <summary>Perhaps outside.</summary>
    public static ReasonKind Unclear { get; } = new("trace.unclear", "The error found, {error} with uncertainty {uncertainty}, reaches the tolerance of the work, {tolerance}.");

    /// <summary>Outside.</summary>
    public static ReasonKind Outside { get; } = new("trace.outside", "The error found, {error} with uncertainty {uncertainty}, exceeds the tolerance of the work, {tolerance}.");

    /// <summary>The use has no value.</summary>
    public static ReasonKind NoValue { get; } = new("trace.no-value", "The record of use gives no value.");

    /// <summary>The use has no tolerance.</summary>
    public static ReasonKind NoTolerance { get; } = new("trace.no-tolerance", "The error found is {error}; the record of use gives no tolerance of the work.");

    /// <summary>Nothing was recorded as found.</summary>
    public static ReasonKind NoFoundData { get; } = new("trace.no-found-data", "No values were recorded as found, so the error at this use is not known.");

    /// <summary>The value lies outside of what was measured.</summary>
    public static ReasonKind BeyondPoints { get; } = new("trace.beyond-points", "The value {value} lies outside of the points as found, {from} to {to}; nothing is carried beyond them.");

    /// <summary>The unit differs.</summary>
    public static ReasonKind OtherUnit { get; } = new("trace.other-unit", "The use is in {found}, the function measures in {unit}; nothing is converted.");

    /// <summary>A decision about a use that is not in the trace.</summary>
    public static ReasonKind UseNotTraced { get; } = new("trace.use-not-traced", "The use {use} is not in this trace.");

    /// <summary>A decision was made before the tool was found out of tolerance.</summary>
    public static ReasonKind DecidedTooEarly { get; } = new("trace.decided-too-early", "The decision about {use} is dated {at}, before the tool was found out of tolerance.");

    /// <summary>Two decisions about one use are signed at the same instant.</summary>
    public static ReasonKind DecidedTwice { get; } = new("trace.decided-twice", "Two decisions about {use} are signed at the same instant, {at}.");

    /// <summary>All reasons, in the order above.</summary>
    public static IReadOnlyList<ReasonKind> All { get; } =
        [Within, Unclear, Outside, NoValue, NoTolerance, NoFoundData, BeyondPoints, OtherUnit, UseNotTraced, DecidedTooEarly, DecidedTwice];
}
