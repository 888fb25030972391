using System;
using ToolLedger.Reads;

namespace ToolLedger.Presence;

/// <summary>What past sessions say about one tag. It orders a search and explains silence; it never accounts for a tool.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class TagHistory
{
    /// <summary>Makes a history.</summary>
    /// <param name="sessionsPresented">Past sessions in which the tag was certainly presented, 0 or more.</param>
    /// <param name="sessionsRead">Those of them in which it was read, 0 to <paramref name="sessionsPresented"/>.</param>
    /// <param name="strengthBaseline">Its usual strongest look, or null where not known.</param>
    /// <exception cref="ArgumentOutOfRangeException">A count is negative, or more were read than presented.</exception>
    public TagHistory(int sessionsPresented, int sessionsRead, Rssi? strengthBaseline = null)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(sessionsPresented);
        ArgumentOutOfRangeException.ThrowIfNegative(sessionsRead);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(sessionsRead, sessionsPresented);
        SessionsPresented = sessionsPresented;
        SessionsRead = sessionsRead;
        StrengthBaseline = strengthBaseline;
    }

    /// <summary>Past sessions in which the tag was certainly presented.</summary>
    public int SessionsPresented { get; }

    /// <summary>Past sessions in which it was presented and read.</summary>
    public int SessionsRead { get; }

    /// <summary>The sum of a <see cref="TagFadingWatch"/> over those sessions: at the limit of the watch the tag is fading. 0 (the default) where nothing was watched.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is set below 0 or over 1,000.</exception>
    public int FadingSum
    {
        get;
        init => field = value is >= 0 and <= TagFadingWatch.MaxLimit ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "The sum must be 0 to 1,000.");
    }

    /// <summary>Usual strength of its strongest look, or null.</summary>
    public Rssi? StrengthBaseline { get; }
}
