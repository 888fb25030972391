using System;
using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>What a rule says of a line: no objection, or the highest state it may have, why, and what would settle it.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class Verdict
{
    private Verdict(LineState state, IReadOnlyList<Reason> reasons, NextStep? next, bool isPositiveDifference, IReadOnlyList<Finding> findings)
    {
        State = state;
        Reasons = reasons;
        Next = next;
        IsPositiveDifference = isPositiveDifference;
        Findings = findings;
    }

    /// <summary>The rule has nothing against the line.</summary>
    public static Verdict NoObjection { get; } = new(LineState.Accounted, [], null, false, []);

    /// <summary>The highest state the line may have by this rule.</summary>
    public LineState State { get; }

    /// <summary>Why; empty exactly for no objection.</summary>
    public IReadOnlyList<Reason> Reasons { get; }

    /// <summary>What would settle it, or null for no objection.</summary>
    public NextStep? Next { get; }

    /// <summary>True where a difference was shown, rather than a silence.</summary>
    public bool IsPositiveDifference { get; }

    /// <summary>Findings to stand beside the conclusion.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>Withholds "accounted for" because the rule saw too little: the line may be no higher than <paramref name="state"/>.</summary>
    /// <param name="state">Any state but <see cref="LineState.Accounted"/>.</param>
    /// <param name="reason">Why.</param>
    /// <param name="next">What would settle it.</param>
    /// <returns>The verdict.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="state"/> is accounted or not defined.</exception>
    /// <exception cref="ArgumentNullException">A reason or step is null.</exception>
    public static Verdict Withhold(LineState state, Reason reason, NextStep next)
    {
        ArgumentNullException.ThrowIfNull(reason);
        return Withhold(state, [reason], next, isPositiveDifference: false);
    }

    /// <summary>Withholds "accounted for" for several reasons.</summary>
    /// <param name="state">Any state but <see cref="LineState.Accounted"/>.</param>
    /// <param name="reasons">Why, at least one.</param>
    /// <param name="next">What would settle it.</param>
    /// <param name="isPositiveDifference">True where the rule saw a difference (a kit with such a line is discrepant), false where it saw too little.</param>
    /// <returns>The verdict.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="state"/> is accounted or not defined.</exception>
    /// <exception cref="ArgumentNullException">The reasons or the step are null.</exception>
    /// <exception cref="ArgumentException">There is no reason.</exception>
    public static Verdict Withhold(LineState state, IReadOnlyList<Reason> reasons, NextStep next, bool isPositiveDifference)
    {
        ArgumentNullException.ThrowIfNull(reasons);
        ArgumentNullException.ThrowIfNull(next);
        if (state is < LineState.Conflict or >= LineState.Accounted)
        {
            throw new ArgumentOutOfRangeException(nameof(state), state, "A rule can withhold a state below accounted, never grant it.");
        }

        if (reasons.Count == 0)
        {
            throw new ArgumentException("A verdict that withholds needs at least one reason.", nameof(reasons));
        }

        return new Verdict(state, reasons, next, isPositiveDifference, []);
    }

    /// <summary>The same verdict with findings beside it.</summary>
    /// <param name="findings">The findings.</param>
    /// <returns>A new verdict.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="findings"/> is null.</exception>
    public Verdict WithFindings(params IReadOnlyList<Finding> findings)
    {
        ArgumentNullException.ThrowIfNull(findings);
        return new Verdict(State, Reasons, Next, IsPositiveDifference, findings);
    }

    /// <summary>For example "no objection", or "no higher than weak: the tag was not seen".</summary>
    /// <returns>One line of English text.</returns>
    public override string ToString() => (Reasons.Count == 0 ? "no objection" : $"no higher than {Words.Of(State)}: {string.Join("; ", Reasons)}")
        + (Findings.Count == 0 ? "" : $" (and finds: {string.Join("; ", Findings)})");
}
