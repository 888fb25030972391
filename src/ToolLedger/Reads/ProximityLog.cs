using System;
using System.Collections.Generic;

namespace ToolLedger.Reads;

/// <summary>Notes the tags heard at a station while no session is open: hints, never evidence.</summary>
/// <remarks>What is kept grows with the number of different tags, never with the number of reads, and neither order nor
/// repeats change a note, but for reads further apart than a log reaches: a read that far ahead of those noted starts the log
/// anew, so that a reader whose clock had not been set yet does not shut out what it hears afterwards. For the same reason a read
/// from the future is not kept. Not thread-safe.</remarks>
public sealed class ProximityLog
{
    /// <summary>How far ahead of the host's own time a read may be stamped to be noted: clocks differ, and a reader that runs further ahead shows no time at all.</summary>
    public static TimeSpan MaxAhead { get; } = TimeSpan.FromHours(1);

    private readonly StationId _station;
    private readonly SessionPolicy _policy;
    private readonly long _slotLength;
    private readonly long _reach;
    private EvidenceStore? _store;
    private long _baseSlot;
    private long _keptCount;

    /// <summary>Opens a log.</summary>
    /// <param name="station">The station.</param>
    /// <param name="policy">The length of a slot and the limits of what is kept.</param>
    /// <exception cref="ArgumentNullException">The policy is null.</exception>
    public ProximityLog(StationId station, SessionPolicy policy)
    {
        ArgumentNullException.ThrowIfNull(policy);
        _station = station;
        _policy = policy;
        _slotLength = policy.SlotLength.Ticks;
        _reach = Math.Min(LookKey.SlotLimit / 2, (1L << 47) / _slotLength);
    }

    /// <summary>The notes, in order of the tags.</summary>
    public IReadOnlyList<ProximityNote> Notes
    {
        get
        {
            List<ProximityNote> notes = [];
            foreach (TagEvidence tag in _store is null ? [] : (IEnumerable<TagEvidence>)new SortedTags(_store, new EvidenceCache(_store)))
            {
                if (tag.LookCount > 0)
                {
                    notes.Add(new ProximityNote(tag.Tag, _station, tag.FirstSeen!.Value, tag.LastSeen!.Value, tag.LookCount));
                }
            }

            return notes;
        }
    }

    /// <summary>How many reads could not be kept because a limit was reached, because they name no tag, because they lie more than <see cref="MaxAhead"/> in the future, or because they lie over 33,554,431 slots before or behind others: half a year of the default slot length, four days of the shortest. Of two reads that far apart the earlier is not kept.</summary>
    public long NotKeptCount { get; private set; }

    /// <summary>Adds a read. Any order is fine.</summary>
    /// <param name="read">The read.</param>
    /// <param name="receivedAt">The host's own time when it was received.</param>
    public void Add(in TagRead read, DateTimeOffset receivedAt)
    {
        if (read.Tag.IsEmpty || read.LastTicks - receivedAt.UtcTicks > MaxAhead.Ticks)
        {
            NotKeptCount++;
            return;
        }

        long first = read.FirstTicks / _slotLength;
        long last = read.LastTicks / _slotLength;
        if (_store is null || first - _baseSlot - _reach >= _reach)
        {
            NotKeptCount += _keptCount;
            _keptCount = 0;

            // Slots are counted from far before that read, on a grid that does not depend on it.
            _baseSlot = first - _reach;
            _store = new EvidenceStore(_policy, _baseSlot * _slotLength, []);
        }

        int index = IsNear(first) && IsNear(last) ? _store.Tags.FindOrAdd(read.Tag) : -1;
        if (index < 0)
        {
            NotKeptCount++;
            return;
        }

        ref TagEntry entry = ref _store.Tags[index];
        bool kept = _store.AddLook(index, ref entry, 1, read.AntennaNumber, (int)(first - _baseSlot), true, read.FirstTicks);
        kept &= first == last || _store.AddLook(index, ref entry, 1, read.AntennaNumber, (int)(last - _baseSlot), true, read.LastTicks);
        NotKeptCount += kept ? 0 : 1;
        _keptCount += kept ? 1 : 0;
    }

    private bool IsNear(long slot) => Math.Abs(slot - _baseSlot - _reach) < _reach;
}
