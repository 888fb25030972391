using System;
using ToolLedger.Tools;

namespace ToolLedger.Reads;

/// <summary>A tag heard at a station outside any presentation of its kit: a hint where to look, never evidence.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class ProximityNote
{
    /// <summary>Notes a tag.</summary>
    /// <param name="tag">The tag.</param>
    /// <param name="station">Where.</param>
    /// <param name="firstSeen">The first instant it was heard.</param>
    /// <param name="lastSeen">The last instant it was heard, not before the first.</param>
    /// <param name="lookCount">In how many time slots and on how many antennas together, 1 or more.</param>
    /// <param name="session">The session of another kit in which it was heard; null when none was open.</param>
    /// <exception cref="ArgumentException">The last instant is before the first.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The count is less than 1.</exception>
    public ProximityNote(
        TagId tag, StationId station, DateTimeOffset firstSeen, DateTimeOffset lastSeen, int lookCount, SessionId? session = null)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(lookCount, 1);
        Tag = tag;
        Station = station;
        FirstSeen = firstSeen;
        LastSeen = lastSeen >= firstSeen ? lastSeen
            : throw new ArgumentException("A note cannot end before it begins.", nameof(lastSeen));
        LookCount = lookCount;
        Session = session;
    }

    /// <summary>The tag.</summary>
    public TagId Tag { get; }

    /// <summary>Where it was heard.</summary>
    public StationId Station { get; }

    /// <summary>The first instant it was heard.</summary>
    public DateTimeOffset FirstSeen { get; }

    /// <summary>The last instant it was heard.</summary>
    public DateTimeOffset LastSeen { get; }

    /// <summary>The number of looks; it saturates at the policy's limit for each antenna.</summary>
    public int LookCount { get; }

    /// <summary>The session of another kit in which it was heard; null when none was open.</summary>
    public SessionId? Session { get; }
}
