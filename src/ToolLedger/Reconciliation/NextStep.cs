using System;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>The one thing that would settle a line fastest.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class NextStep
{
    /// <summary>Makes a step.</summary>
    /// <param name="kind">What to do.</param>
    /// <param name="reason">The sentence that says it.</param>
    /// <exception cref="ArgumentNullException"><paramref name="reason"/> is null.</exception>
    public NextStep(NextStepKind kind, Reason reason)
    {
        ArgumentNullException.ThrowIfNull(reason);
        Kind = kind;
        Reason = reason;
    }

    /// <summary>What to do.</summary>
    public NextStepKind Kind { get; }

    /// <summary>The sentence that says it, with its stable code.</summary>
    public Reason Reason { get; }

    /// <summary>The sentence.</summary>
    /// <returns>An English sentence.</returns>
    public override string ToString() => Reason.ToString();
}
