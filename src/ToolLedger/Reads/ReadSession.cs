using System;
using System.Collections.Generic;
using System.Collections.ObjectModel;
using System.Linq;
using System.Threading;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reads;

/// <summary>A closed presentation: its health, and the evidence about every tag that was read. Made by
/// <see cref="ReadSessionBuilder"/>.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class ReadSession
{
    private readonly SessionFacts _facts;
    private readonly SessionJudge _judge;
    private readonly ReadOnlyCollection<ReadPass> _passes;
    private readonly EvidenceCache _evidence;
    private SortedTags? _sorted;
    private object? _digest;

    internal ReadSession(SessionFacts facts)
    {
        _facts = facts;
        _judge = new SessionJudge(facts);
        _passes = Array.AsReadOnly(PassesOf(facts));
        _evidence = new EvidenceCache(facts.Store);
        NearbyKits = NearbyOf(facts);
        SurroundingsChanges = ChangesOf(facts);
    }

    /// <summary>The policy the session was built under; a reconciliation under another one does not use its looks.</summary>
    public SessionPolicy Policy => _facts.Policy;

    /// <summary>What was presented, where and from when.</summary>
    public Presentation Presentation => _facts.Presentation;

    /// <summary>The name of the session.</summary>
    public SessionId Id => _facts.Presentation.Id;

    /// <summary>The start, included.</summary>
    public DateTimeOffset From => _facts.Presentation.From;

    /// <summary>The end, excluded.</summary>
    public DateTimeOffset To => _facts.To;

    /// <summary>The passes that began before the end, in order. Reads of later ones make the session invalid (<see cref="SessionReasons.ReadAfterClose"/>), and are told by <see cref="LooksOf"/>.</summary>
    public IReadOnlyList<ReadPass> Passes => _passes;

    /// <summary>Whether the session can be used as evidence.</summary>
    public SessionHealth Health => _judge.Health;

    /// <summary>Whether it can be used: valid or degraded.</summary>
    public bool IsUsable => Health.State != SessionState.Invalid;

    /// <summary>The evidence of every tag that was read, inside or outside the presentation, in order of the tags.</summary>
    /// <remarks>Sorted at the first use; each element is made when it is asked for.</remarks>
    public IReadOnlyCollection<TagEvidence> Tags => Sorted;

    /// <summary>How many different tags were read, inside or outside the presentation.</summary>
    public int TagCount => _facts.Store.Tags.Count;

    /// <summary>How many reads were delivered.</summary>
    public long ReadCount => _facts.ReadCount;

    /// <summary>How many of them were recognised as repeats.</summary>
    public long RepeatCount => _facts.RepeatCount;

    /// <summary>How many of them lay outside the presentation.</summary>
    public long OutsideCount => _facts.OutsideCount;

    /// <summary>Those of <see cref="OutsideCount"/> on an antenna that the station does not list, whenever they were stamped.</summary>
    internal long UnlistedCount => _facts.UnlistedCount;

    /// <summary>The antennas that were read on and that the station does not list, by number.</summary>
    internal IEnumerable<int> UnlistedAntennas => Enumerable.Range(1, _facts.Unlisted.Length - 1).Where(number => _facts.Unlisted[number]);

    /// <summary>How many of them could not be kept because a limit was reached.</summary>
    public long OverLimitCount => _facts.OverLimitCount;

    /// <summary>How many of them were taken as evidence: all but the other three counts.</summary>
    public long AcceptedCount => ReadCount - RepeatCount - OutsideCount - OverLimitCount;

    /// <summary>What was taken off the reader's times: how far its clock was ahead.</summary>
    public TimeSpan ClockCorrection => _facts.Presentation.ReaderClockOffset.GetValueOrDefault();

    /// <summary>How far the reader's clock was ahead after the last read; null when unknown.</summary>
    public TimeSpan? ClockOffsetAfter => _facts.ClockOffsetAfter;

    /// <summary>The antennas known to have worked: every control tag of theirs was seen near both ends, or, for an antenna
    /// without control tags, something was heard; and no disconnection was reported.</summary>
    public IReadOnlyList<AntennaPort> LiveAntennas => _judge.LiveAntennas;

    /// <summary>What was reported lost: of each kind and antenna the first. Reads
    /// that are kept without them would look more complete than they were; a presentation that lists them makes a replay conclude the same.</summary>
    public IReadOnlyList<ReportedLoss> Losses => [.. _facts.Losses.All.Select(loss => loss.First)];

    /// <summary>Kits that stood within reach without being presented, as the presentation states and as was noted while the session was open, in order of kit
    /// and start.</summary>
    public IReadOnlyList<NearbyKit> NearbyKits { get; }

    /// <summary>When people changed what stood around the station, as the presentation states and as was noted while the session was open, in time order.</summary>
    public IReadOnlyList<SurroundingsChange> SurroundingsChanges { get; }

    /// <summary>The digest of the evidence: SHA-256 over its canonical JSON (RFC 8785), which covers the presentation, the
    /// end, the clock check, losses, passes, and of every tag the looks and extremes. Counts of delivered reports are not
    /// part of it, so order and repeats do not change it.</summary>
    public Digest Digest
    {
        get
        {
            object? digest = Volatile.Read(ref _digest);
            if (digest is null)
            {
                digest = EvidenceDigest.Of(_facts, Sorted);
                Volatile.Write(ref _digest, digest);
            }

            return (Digest)digest;
        }
    }

    private SortedTags Sorted
    {
        get
        {
            SortedTags? sorted = Volatile.Read(ref _sorted);
            if (sorted is null)
            {
                sorted = new SortedTags(_facts.Store, _evidence);
                Volatile.Write(ref _sorted, sorted);
            }

            return sorted;
        }
    }

    /// <summary>What the session has to say about a tag.</summary>
    /// <param name="tag">The tag.</param>
    /// <returns>The evidence; null when the tag was not read at all.</returns>
    public TagEvidence? Find(TagId tag)
    {
        int index = _facts.Store.Tags.Find(tag);
        return index < 0 ? null : _evidence.Of(index);
    }

    /// <summary>The looks at a tag one by one, to draw or to list them; <see cref="TagEvidence.Cells"/> counts them.</summary>
    /// <param name="tag">The tag.</param>
    /// <returns>The looks in order of pass, antenna and slot; none when no read of the tag lay in the presentation. Of one pass and antenna at most
    /// <see cref="SessionPolicy.LooksKept"/>, the earliest ones. Looks at or after the end of a session that was closed too early, which is invalid, keep the pass in which they were read, also one that
    /// <see cref="Passes"/> does not list since it began too late. Made anew at each call.</returns>
    public IReadOnlyList<Look> LooksOf(TagId tag)
    {
        int index = _facts.Store.Tags.Find(tag);
        ReadOnlySpan<ulong> keys = index < 0 ? [] : _facts.Store.LooksOf(index);
        var looks = new Look[keys.Length];
        for (int i = 0; i < looks.Length; i++)
        {
            int slot = LookKey.Slot(keys[i]);
            looks[i] = new Look(
                LookKey.Pass(keys[i]),
                AntennaPort.FromNumber(LookKey.Antenna(keys[i])),
                slot,
                new DateTimeOffset(From.UtcTicks + (slot * Policy.SlotLength.Ticks), TimeSpan.Zero));
        }

        return Array.AsReadOnly(looks);
    }

    /// <summary>Whether a tag was heard inside the presentation: whether <see cref="Find"/> gives evidence that is <see cref="TagEvidence.IsHeard"/>.</summary>
    internal bool Heard(in TagId tag)
    {
        int index = _facts.Store.Tags.Find(tag);
        return index >= 0 && _facts.Store.TryGetSpan(index, null, out _, out _);
    }

    /// <summary>The plain figures of a tag; false when it was not read at all. Only for a session of one pass.</summary>
    internal bool TryGetPlain(in TagId tag, out PlainLooks looks)
    {
        int index = _facts.Store.Tags.Find(tag);
        looks = index < 0 ? default : _facts.Store.PlainOf(index);
        return index >= 0;
    }

    /// <summary>Whether every tag heard inside the presentation passes a test, which gets the tag and when it was last heard.</summary>
    internal bool AllHeard<TState>(TState state, Func<TState, TagId, DateTimeOffset, bool> test)
    {
        TagTable tags = _facts.Store.Tags;
        for (int i = 0; i < tags.Count; i++)
        {
            if (_facts.Store.TryGetSpan(i, null, out _, out long last) && !test(state, tags.TagOf(tags[i]), new DateTimeOffset(last, TimeSpan.Zero)))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Whether a kit was presented in this session.</summary>
    /// <param name="kit">The kit.</param>
    /// <returns>The answer.</returns>
    public bool Presents(KitId kit) => _facts.Presentation.Presents(kit);

    /// <summary>For example "session S1 of kits B-07, B-09 at station 4 from 2026-03-02T14:50:00Z to 2026-03-02T14:55:00Z: Valid, 15 tags in 912 reads".</summary>
    /// <returns>One line of English text.</returns>
    public override string ToString() => FormattableString.Invariant($"{Presentation} to {RecordTime.ToText(To)}: {Health.State}, {TagCount} {(TagCount == 1 ? "tag" : "tags")} in {ReadCount} {(ReadCount == 1 ? "read" : "reads")}");

    // A stay that was stated without its end and again with it is one stay.
    private static ReadOnlyCollection<NearbyKit> NearbyOf(SessionFacts facts)
    {
        if (facts.NearbyKits.Count + facts.Presentation.NearbyKits.Count == 0)
        {
            return ReadOnlyCollection<NearbyKit>.Empty;
        }

        return Array.AsReadOnly<NearbyKit>([.. facts.NearbyKits.Concat(facts.Presentation.NearbyKits)
            .DistinctBy(static nearby => (nearby.Kit, nearby.From.UtcTicks))
            .OrderBy(static nearby => nearby.Kit.Value, StringComparer.Ordinal)
            .ThenBy(static nearby => nearby.From)]);
    }

    private static ReadOnlyCollection<SurroundingsChange> ChangesOf(SessionFacts facts)
    {
        if (facts.SurroundingsChanges.Count + facts.Presentation.SurroundingsChanges.Count == 0)
        {
            return ReadOnlyCollection<SurroundingsChange>.Empty;
        }

        SurroundingsChange[] changes = [.. facts.SurroundingsChanges.Concat(facts.Presentation.SurroundingsChanges).Distinct()];
        Array.Sort(changes, SurroundingsChange.Compare);
        return Array.AsReadOnly(changes);
    }

    private static ReadPass[] PassesOf(SessionFacts facts)
    {
        List<ReadPass> passes = [];
        long from = facts.Presentation.From.UtcTicks;
        long slot = facts.Policy.SlotLength.Ticks;
        for (int i = 0; i < facts.PassStarts.Count && facts.PassStarts[i] < facts.To.UtcTicks; i++)
        {
            long start = facts.PassStarts[i];
            long end = Math.Min(facts.To.UtcTicks, i + 1 < facts.PassStarts.Count ? facts.PassStarts[i + 1] : long.MaxValue);
            long slots = ((end - 1 - from) / slot) - ((start - from) / slot) + 1;
            passes.Add(new ReadPass(
                i + 1,
                new DateTimeOffset(start, TimeSpan.Zero),
                new DateTimeOffset(end, TimeSpan.Zero),
                slots * facts.Presentation.Station.Antennas.Count));
        }

        return [.. passes];
    }
}
