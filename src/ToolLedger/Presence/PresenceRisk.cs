using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Presence;

/// <summary>The probability a line rests on, with all that it was made of.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class PresenceRisk
{
    /// <summary>The decision with its risk and its cut.</summary>
    public required PresenceDecision Decision { get; init; }

    /// <summary>The probability that the tool is not there at the model's own parameters, without the bound; it may rise with a first read.</summary>
    public required double ExactRisk { get; init; }

    /// <summary>The lines of the kit, each counted once for every tag that could have shown this tool.</summary>
    public required int LineCount { get; init; }

    /// <summary>The probability before the session that it is not there.</summary>
    public required decimal AbsentShare { get; init; }

    /// <summary>What that probability rests on, such as an open receipt; null where it is the policy's own.</summary>
    public Reason? AbsentShareWhy { get; init; }

    /// <summary>The obscured share of the cautious corner: that of the first pass, where several models are weighed (each term states its own).</summary>
    public required double ObscuredShare { get; init; }

    /// <summary>The stray share of the cautious corner: of several models the cautious one.</summary>
    public required double StrayShare { get; init; }

    /// <summary>The terms that add up to <see cref="PresenceDecision.LogOdds"/> exactly.</summary>
    public required IReadOnlyList<PresenceTerm> Terms { get; init; }

    /// <summary>What settles the line; null where it is accounted for.</summary>
    public PresenceAdvice? Advice { get; init; }
}
