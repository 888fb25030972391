using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Reads;

/// <summary>A deliberate presentation of kits at a read station: what the host states about a session, apart from its reads.</summary>
/// <remarks>A live host states what it knows at the start; for a replay everything may be stated beforehand. Immutable and
/// thread-safe.</remarks>
public sealed partial class Presentation
{
    /// <summary>The most kits one presentation can name.</summary>
    public const int MaxKitCount = 100_000;

    /// <summary>The most passes of a presentation, the first included.</summary>
    public const int MaxPassCount = 100;

    /// <summary>The most losses one presentation can list.</summary>
    public const int MaxLossCount = 10_000;

    /// <summary>The most kits nearby that one presentation can list.</summary>
    public const int MaxNearbyKitCount = 1_000;

    /// <summary>The most changes of the surroundings that one presentation can list.</summary>
    public const int MaxSurroundingsChangeCount = 1_000;

    private const int KitsNamed = 5;

    private static readonly TimeSpan OffsetLimit = TimeSpan.FromDays(36_525);

    private readonly HashSet<KitId> _kitSet = [];

    /// <summary>The name of the session.</summary>
    /// <exception cref="ArgumentException">It is set to the empty default value.</exception>
    public required SessionId Id
    {
        get;
        init => field = !value.IsEmpty ? value : throw new ArgumentException("A presentation needs a session id.", nameof(value));
    }

    /// <summary>Where.</summary>
    /// <exception cref="ArgumentNullException">It is set to null.</exception>
    public required ReadStation Station
    {
        get;
        init => field = value ?? throw new ArgumentNullException(nameof(value));
    }

    /// <summary>The kits presented, 0 to 100,000 different ones. None is legal: then no kit's lines are settled by it.</summary>
    /// <exception cref="ArgumentNullException">It is set to null.</exception>
    /// <exception cref="ArgumentException">There are too many, one twice, or an empty one.</exception>
    public required IReadOnlyList<KitId> Kits
    {
        get;
        init
        {
            ArgumentNullException.ThrowIfNull(value);
            KitId[] copy = [.. value.Take(MaxKitCount + 1)];
            _kitSet = [.. copy];
            field = copy.Length <= MaxKitCount && _kitSet.Count == copy.Length && !_kitSet.Contains(default)
                ? Array.AsReadOnly(copy)
                : throw new ArgumentException("A presentation names at most 100,000 different kits, none empty.", nameof(value));
        }
    }

    /// <summary>The start, included: the start of pass 1.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is set to a time outside the years 1970 to 2999.</exception>
    public required DateTimeOffset From
    {
        get;
        init => field = RecordTime.Require(value, nameof(value));
    }

    /// <summary>The end, excluded, where it is known beforehand; null in a live session.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is set to a time outside the years 1970 to 2999.</exception>
    public DateTimeOffset? Until
    {
        get;
        init => field = RecordTime.RequireOrNull(value, nameof(value));
    }

    /// <summary>The starts of pass 2 and further passes, each later than the one before; at most 99.</summary>
    /// <exception cref="ArgumentNullException">It is set to null.</exception>
    /// <exception cref="ArgumentException">There are too many or they do not ascend.</exception>
    public IReadOnlyList<DateTimeOffset> PassStarts
    {
        get;
        init
        {
            ArgumentNullException.ThrowIfNull(value);
            DateTimeOffset[] copy = [.. value.Take(MaxPassCount)];
            bool ascending = copy.Zip(copy.Skip(1)).All(pair => pair.First < pair.Second) && copy.All(RecordTime.IsInRange);
            field = copy.Length < MaxPassCount && ascending ? Array.AsReadOnly(copy)
                : throw new ArgumentException("Pass starts ascend, and a presentation has at most 100 passes.", nameof(value));
        }
    } = [];

    /// <summary>How far the reader's clock is ahead of true time, measured before the first read; null when unknown, which
    /// makes the session invalid: nothing can be placed in time. Times of reads are corrected by it. It is needed after the last
    /// read too (<see cref="ReaderClockOffsetAfter"/>, or when the session is closed).</summary>
    /// <value>At most 36,525 days in either direction.</value>
    /// <exception cref="ArgumentOutOfRangeException">It is set out of range.</exception>
    public TimeSpan? ReaderClockOffset
    {
        get;
        init => field = CheckOffset(value);
    }

    /// <summary>The same, measured after the last read, where a replay knows it beforehand; null when unknown.</summary>
    /// <value>At most 36,525 days in either direction.</value>
    /// <exception cref="ArgumentOutOfRangeException">It is set out of range.</exception>
    public TimeSpan? ReaderClockOffsetAfter
    {
        get;
        init => field = CheckOffset(value);
    }

    /// <summary>Losses that a replay knows beforehand, at most 10,000.</summary>
    /// <exception cref="ArgumentNullException">It is set to null.</exception>
    /// <exception cref="ArgumentException">There are too many.</exception>
    public IReadOnlyList<ReportedLoss> Losses
    {
        get;
        init
        {
            ArgumentNullException.ThrowIfNull(value);
            ReportedLoss[] copy = [.. value.Take(MaxLossCount + 1)];
            field = copy.Length <= MaxLossCount ? Array.AsReadOnly(copy)
                : throw new ArgumentException("A presentation lists at most 10,000 losses.", nameof(value));
        }
    } = [];

    /// <summary>Kits that were not presented but stood within reach, at most 1,000 entries; none where nobody noted any.</summary>
    /// <exception cref="ArgumentNullException">It is set to null.</exception>
    /// <exception cref="ArgumentException">There are too many, or one names no kit.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A time is outside the years 1970 to 2999.</exception>
    public IReadOnlyList<NearbyKit> NearbyKits
    {
        get;
        init
        {
            ArgumentNullException.ThrowIfNull(value);
            NearbyKit[] copy = [.. value.Take(MaxNearbyKitCount + 1).Select(CheckNearby)];
            field = copy.Length <= MaxNearbyKitCount ? Array.AsReadOnly(copy)
                : throw new ArgumentException("A presentation lists at most 1,000 kits nearby.", nameof(value));
        }
    } = [];

    /// <summary>When people changed what stood around the station, before or during the session, at most 1,000 entries; none where nobody noted any.</summary>
    /// <exception cref="ArgumentNullException">It, or an entry, is set to null.</exception>
    /// <exception cref="ArgumentException">There are too many.</exception>
    public IReadOnlyList<SurroundingsChange> SurroundingsChanges
    {
        get;
        init
        {
            ArgumentNullException.ThrowIfNull(value);
            SurroundingsChange[] copy = [.. value.Take(MaxSurroundingsChangeCount + 1)];
            foreach (SurroundingsChange change in copy)
            {
                ArgumentNullException.ThrowIfNull(change, nameof(value));
            }

            field = copy.Length <= MaxSurroundingsChangeCount ? Array.AsReadOnly(copy)
                : throw new ArgumentException("A presentation lists at most 1,000 changes of the surroundings.", nameof(value));
        }
    } = [];

    /// <summary>Whose clock stamped the reads. The default is the reader's.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is set to a value that is not defined.</exception>
    public ReadTimeSource TimeSource
    {
        get;
        init => field = Enum.IsDefined(value) ? value
            : throw new ArgumentOutOfRangeException(nameof(value), value, "There is no such source of times.");
    }

    /// <summary>Whether a kit is one of those presented.</summary>
    /// <param name="kit">The kit.</param>
    /// <returns>The answer.</returns>
    public bool Presents(KitId kit) => _kitSet.Contains(kit);

    /// <summary>For example "session S1 of kits B-07, B-09 at station 4 from 2026-03-02T14:50:00Z"; of many kits the first five and how many more.</summary>
    /// <returns>One line of English text.</returns>
    public override string ToString() => FormattableString.Invariant(
        $"session {Id.Value} of {(Kits.Count == 1 ? "kit" : "kits")} {(Kits.Count == 0 ? "none" : string.Join(", ", Kits.Take(KitsNamed).Select(static kit => kit.Value)))}{(Kits.Count > KitsNamed ? FormattableString.Invariant($" and {Kits.Count - KitsNamed} more") : "")} at station {Station.Id.Value} from {RecordTime.ToText(From)}");

    internal static NearbyKit CheckNearby(NearbyKit nearby)
    {
        RecordTime.Require(nearby.From, nameof(nearby));
        RecordTime.RequireOrNull(nearby.Until, nameof(nearby));
        return !nearby.Kit.IsEmpty ? nearby : throw new ArgumentException("A kit nearby needs a name.", nameof(nearby));
    }

    internal static TimeSpan? CheckOffset(TimeSpan? value) => value is null || (value <= OffsetLimit && value >= -OffsetLimit)
        ? value
        : throw new ArgumentOutOfRangeException(nameof(value), value, "A clock offset is at most 36,525 days.");
}
