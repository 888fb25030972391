using ToolLedger.Reads;

namespace ToolLedger.Presence;

/// <summary>One of the terms that add up to the log-odds of a line.</summary>
/// <param name="Kind">What it stands for.</param>
/// <param name="LogOdds">Its natural log-odds, in whole steps of 1/256; above 0 speaks for the tool.</param>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed record PresenceTerm(PresenceTermKind Kind, double LogOdds)
{
    /// <summary>The session of a pass; empty for other terms.</summary>
    public SessionId Session { get; init; }

    /// <summary>The number of a pass, from 1; 0 for other terms.</summary>
    public int Pass { get; init; }

    /// <summary>The looks of the pass or passes; 0 for other terms.</summary>
    public int Looks { get; init; }

    /// <summary>The reads of the pass; 0 for other terms.</summary>
    public int Reads { get; init; }

    /// <summary>True where a silent pass was counted for no more than a pass with one read.</summary>
    public bool IsBounded { get; init; }

    /// <summary>The model that weighed the pass: 0 for the policy's own, n for the n-th of <see cref="StatedRiskPolicy.Models"/>; 0 for other terms.</summary>
    public int Model { get; init; }

    /// <summary>The obscured share of that model at the cautious corner; 0 for other terms.</summary>
    public double ObscuredShare { get; init; }

    /// <summary>True for a pass of a degraded session, whose reads never speak for the tool.</summary>
    public bool IsDegraded { get; init; }
}
