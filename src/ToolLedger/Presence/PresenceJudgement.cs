using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Presence;

/// <summary>A presence policy's answer for one tag.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class PresenceJudgement
{
    /// <summary>Makes an answer.</summary>
    /// <param name="state">What the reads say.</param>
    /// <param name="reasons">Why, at least one.</param>
    public PresenceJudgement(PresenceState state, IReadOnlyList<Reason> reasons)
    {
        State = state;
        Reasons = reasons;
    }

    /// <summary>What the reads say.</summary>
    public PresenceState State { get; }

    /// <summary>Why.</summary>
    public IReadOnlyList<Reason> Reasons { get; }

    /// <summary>The probability behind the answer; null where the policy states none, or could not.</summary>
    public PresenceRisk? Risk { get; init; }

    /// <summary>The state, and why.</summary>
    /// <returns>One line of English text.</returns>
    public override string ToString() => Reasons.Count == 0 ? State.ToString() : $"{State}: {string.Join("; ", Reasons)}";
}
