using System;
using System.Runtime.CompilerServices;
using System.Threading;

namespace ToolLedger.Reads;

/// <content>Reads of which nothing has to be asked any more: the hottest code of the library.</content>
internal sealed partial class EvidenceStore
{
    private const int ReadsAhead = 32;
    private const int ManyBatches = 32;
    private const int SomeBatches = 8;

    private readonly byte[] _waiting = new byte[TagTable.BatchLength];
    private RecentTag[] _recent = [];
    private uint _batchesWithoutRecent;

    /// <summary>Adds the reads from the first on that are plain, and gives how many they are; all of them count as accepted.</summary>
    /// <param name="reads">The reads, of which at most <see cref="TagTable.BatchLength"/> are added.</param>
    /// <param name="slot">Where reads are plain.</param>
    /// <param name="reports">Room for what the repeat check keeps of each; no more reads are added than it has places.</param>
    internal int TakePlain(ReadOnlySpan<TagRead> reads, in PlainSlot slot, Span<ReportEntry> reports)
    {
        int most = Math.Min(Math.Min(reads.Length, reports.Length), TagTable.BatchLength);
        Span<ulong> looks = _looks.FreePlaces(most);
        if (looks.IsEmpty || !_tags.HasRoomFor(most))
        {
            return 0;
        }

        if (_recent.Length == 0)
        {
            _recent = new RecentTag[1 << RecentTag.PlaceBits];
            _recent.AsSpan().Fill(RecentTag.None);
        }

        int count = TakeRecent(reads, in slot, reports[..most], looks, out int lookCount, out int waiting);
        if (waiting > 0)
        {
            _tags.FindTogether(reads, _waiting.AsSpan(0, waiting));
            lookCount = AddWaiting(reads, count, _waiting.AsSpan(0, waiting), in slot, reports, looks, lookCount);
        }

        if (lookCount > 0)
        {
            _looks.Take(lookCount);
            Volatile.Write(ref _index, null);
        }

        return count;
    }

    /// <summary>Adds to the entries what is only kept among the recent tags, and forgets these. Before it entries do not say all.</summary>
    internal void SettleRecent()
    {
        foreach (ref RecentTag recent in _recent.AsSpan())
        {
            Settle(ref recent);
        }

        _recent = [];
    }

    // Most reads are of a tag that was read shortly before, and are done with here; the others wait for their entries, each with a place for its look.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private int TakeRecent(ReadOnlySpan<TagRead> reads, in PlainSlot slot, Span<ReportEntry> reports, Span<ulong> looks, out int lookCount, out int waitingCount)
    {
        RecentTag[] recent = _recent;
        byte[] waiting = _waiting;
        PlainSlot plain = slot;
        long latest = plain.Latest;
        long from = Origin + plain.Correction;
        int added = 0;
        int waits = 0;
        int count = 0;
        for (; count < reports.Length; count++)
        {
            if (count + ReadsAhead < reads.Length)
            {
                Prefetch.Line(in reads[count + ReadsAhead]);
            }

            ref readonly TagRead read = ref reads[count];
            if (!plain.IsPlain(in read, latest) || added + waits == looks.Length)
            {
                break;
            }

            latest = read.FirstTicks;
            read.TagInPlace.TryGetShort(out ulong first, out ulong second, out byte form);
            ref RecentTag known = ref recent[RecentTag.PlaceOf(first, second)];
            if (!known.IsOf(first, second, form))
            {
                waiting[waits++] = (byte)count;
                continue;
            }

            uint look = LookOf(read.AntennaNumber, plain.Slot);
            if (known.Look != look)
            {
                known.Look = look;
                looks[added++] = LookKey.Of(known.Index, plain.Pass, read.AntennaNumber, plain.Slot);
            }

            if (read.HasTid)
            {
                AddTid(known.Index, read.Tid);
            }

            known.Add(latest - from, in read);
            reports[count] = ReportEntry.OfInstant(known.Index, in read);
        }

        (lookCount, waitingCount) = (added, waits);
        return count;
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private int AddWaiting(ReadOnlySpan<TagRead> reads, int count, ReadOnlySpan<byte> positions, in PlainSlot slot, Span<ReportEntry> reports, Span<ulong> looks, int lookCount)
    {
        TagEntryList entries = _tags.Entries;
        long from = Origin + slot.Correction;
        long slotStart = from + (slot.Slot * _slotLength);
        bool isNoted = IsNoted(positions.Length == count);
        foreach (byte i in positions)
        {
            ref readonly TagRead read = ref reads[i];
            int index = _tags.Confirm(in read.TagInPlace, i);
            ref TagEntry entry = ref entries[index];
            uint look = LookOf(read.AntennaNumber, slot.Slot);
            if (entry.Accepted == 0)
            {
                _tags.StartOf(index).Include(read.FirstTicks - from);
            }

            if (entry.Look != look)
            {
                looks[lookCount++] = LookKey.Of(index, slot.Pass, read.AntennaNumber, slot.Slot);
            }

            entry.MoveTo(look, read.FirstTicks - slotStart);
            AddDetails(index, ref entry, in read);
            CountAccepted(index, ref entry);
            reports[i] = ReportEntry.OfInstant(index, in read);
            if (TagTable.IsControl(entry))
            {
                AddControlSpan(index, read.AntennaNumber, read.FirstTicks - from);
            }
            else if (isNoted)
            {
                NoteRecent(in read, index, look);
            }
        }

        return lookCount;
    }

    // Where hardly a tag is read twice within some hundred reads, only now and then some are noted, to see whether it is still so.
    private bool IsNoted(bool allWait)
    {
        _batchesWithoutRecent = allWait ? _batchesWithoutRecent + 1 : 0;
        return _batchesWithoutRecent < ManyBatches || _batchesWithoutRecent % SomeBatches == 0;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void NoteRecent(in TagRead read, int index, uint look)
    {
        if (!read.TagInPlace.TryGetShort(out ulong first, out ulong second, out byte form))
        {
            return;
        }

        ref RecentTag recent = ref _recent[RecentTag.PlaceOf(first, second)];
        if (recent.Index != index)
        {
            Settle(ref recent);
            recent.Become(first, second, form, index);
        }

        recent.Look = look;
    }

    private void Settle(ref RecentTag recent)
    {
        if (recent.Count == 0)
        {
            return;
        }

        ref TagEntry entry = ref _tags[recent.Index];
        int slot = (int)recent.Look & (LookKey.SlotLimit - 1);
        if (recent.Last >= entry.Last(_slotLength))
        {
            entry.MoveTo(recent.Look, recent.Last - (slot * _slotLength));
        }

        entry.IncludeStrengths(recent.Strengths);
        long rounds = entry.Count(recent.Count);
        if (rounds > 0)
        {
            RestOf(recent.Index).AcceptedRounds += rounds;
        }

        recent.Settled();
    }
}
