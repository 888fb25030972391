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

    /// <summary>Usual strength of its strongest look, or null.</summary>
    public Rssi? StrengthBaseline { get; }
}
