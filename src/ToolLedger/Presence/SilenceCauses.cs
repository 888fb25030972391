using System;
using ToolLedger.Statistics;

namespace ToolLedger.Presence;

/// <summary>Why a whole kit was silent, or nearly: the exact posterior of its common causes. Silent tools that share a cause are one observation; their misses are never multiplied as if each were one.</summary>
/// <remarks>It explains silence and never says of any tool that it is there, or not. Immutable and thread-safe.</remarks>
public sealed record SilenceCauses
{
    /// <summary>Weighs the causes.</summary>
    /// <param name="kitAwayShare">The probability before the session that the whole kit is somewhere else; 0 to 1.</param>
    /// <param name="readerDownShare">The probability before the session that the reader hears nothing of the kit; 0 to 1; 0 where a control tag or another kit was heard in the same window.</param>
    /// <param name="logIfThere">The logarithm of the probability of what was read of all its tools, if the kit is there and the reader works; 0 or below.</param>
    /// <param name="logIfAway">The same if the kit is away; 0 or below.</param>
    /// <param name="isSilent">True where nothing of the kit was read: only then may the reader be down.</param>
    /// <returns>The posterior.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of its range.</exception>
    public static SilenceCauses Of(double kitAwayShare, double readerDownShare, double logIfThere, double logIfAway, bool isSilent)
    {
        Check(kitAwayShare, nameof(kitAwayShare));
        Check(readerDownShare, nameof(readerDownShare));
        CheckLog(logIfThere, nameof(logIfThere));
        CheckLog(logIfAway, nameof(logIfAway));

        // Both may be too small for a number: only their ratio counts, and a reader that is down makes silence certain.
        double largest = isSilent && readerDownShare > 0 ? 0 : Math.Max(logIfThere, logIfAway);
        largest = double.IsNegativeInfinity(largest) ? 0 : largest;
        double there = Elementary.Exp(logIfThere - largest), away = Elementary.Exp(logIfAway - largest), down = isSilent ? 1 : 0;
        double missed = (1 - kitAwayShare) * (1 - readerDownShare) * there;
        double kitAway = kitAwayShare * (1 - readerDownShare) * away;
        double readerDown = (1 - kitAwayShare) * readerDownShare * down;
        double both = kitAwayShare * readerDownShare * down;
        double sum = missed + kitAway + readerDown + both;
        return sum > 0
            ? new SilenceCauses { AllMissed = missed / sum, KitAway = kitAway / sum, ReaderDown = readerDown / sum, Both = both / sum }
            : new SilenceCauses { AllMissed = 1 };
    }

    /// <summary>The kit is there, the reader works, and every tool was missed by itself (or read as often as it was).</summary>
    public double AllMissed { get; private init; }

    /// <summary>The kit is away and the reader works.</summary>
    public double KitAway { get; private init; }

    /// <summary>The kit is there and the reader is down.</summary>
    public double ReaderDown { get; private init; }

    /// <summary>The kit is away and the reader is down.</summary>
    public double Both { get; private init; }

    private static void Check(double share, string name)
    {
        if (!(share is >= 0 and <= 1))
        {
            throw new ArgumentOutOfRangeException(name, share, "A probability must be 0 to 1.");
        }
    }

    private static void CheckLog(double log, string name)
    {
        if (!(log <= 0))
        {
            throw new ArgumentOutOfRangeException(name, log, "The logarithm of a probability is 0 or below.");
        }
    }
}
