using System;
using System.Collections.Generic;
using System.Numerics;
using System.Runtime.CompilerServices;
using System.Threading;
using ToolLedger.Identifiers;
using ToolLedger.Tools;

namespace ToolLedger.Reads;

/// <summary>
/// The evidence of a session: for each tag the set of slots with a read by pass and antenna, saturating at a stated number of
/// the earliest ones, and extremes. Everything kept is a function of the set of looks added, not of their order.
/// </summary>
internal sealed partial class EvidenceStore
{
    /// <summary>An antenna of this number or a higher one does not fit the mark of the latest look, which is also how "none" is told.</summary>
    internal const byte PlainAntennas = 63;

    /// <summary>What stands for the latest look of a tag that has none.</summary>
    internal const uint NoLook = uint.MaxValue;

    private readonly TagTable _tags;
    private readonly LookLog _looks;
    private readonly PagedList<TagRest> _rests = new();
    private readonly Dictionary<(int Tag, byte Antenna), (long First, long Last)> _controlSpans = [];
    private readonly int _looksKept;
    private readonly long _slotLength;
    private LookIndex? _index;

    /// <summary>Makes an empty store.</summary>
    /// <param name="policy">The limits.</param>
    /// <param name="origin">The instant from which all others are counted. None may lie before it, or 2^48 ticks behind it.</param>
    /// <param name="controls">The control tags of the station.</param>
    internal EvidenceStore(SessionPolicy policy, long origin, IEnumerable<TagId> controls)
    {
        _tags = new TagTable(policy.TagLimit, controls);
        _looks = new LookLog(policy.LooksKept, policy.LookLimit);
        _looksKept = policy.LooksKept;
        _slotLength = policy.SlotLength.Ticks;
        Origin = origin;
    }

    internal TagTable Tags => _tags;

    internal long Origin { get; }

    /// <summary>Whether there were more different looks than the policy keeps.</summary>
    internal bool IsOverLookLimit => _looks.IsOverLimit;

    /// <summary>Adds a look; false when there is no room for it.</summary>
    /// <param name="tag">The number of the tag.</param>
    /// <param name="entry">Its entry.</param>
    /// <param name="pass">The pass.</param>
    /// <param name="antenna">The antenna.</param>
    /// <param name="slot">The slot.</param>
    /// <param name="isOfOnePass">Whether the whole slot belongs to the pass, so that slot and antenna tell a look.</param>
    /// <param name="ticks">The instant.</param>
    internal bool AddLook(int tag, ref TagEntry entry, int pass, byte antenna, int slot, bool isOfOnePass, long ticks)
    {
        long at = ticks - Origin;
        if (TagTable.IsControl(entry))
        {
            AddControlSpan(tag, antenna, at);
        }

        ref TagStart start = ref _tags.StartOf(tag);
        bool isLatest = !start.IsSeen || at >= entry.Last(_slotLength);
        start.Include(at);
        bool canTell = isOfOnePass && antenna < PlainAntennas;
        uint look = canTell ? LookOf(antenna, slot) : LookOf(PlainAntennas, slot);
        bool isKept = canTell && look == entry.Look;
        if (!isKept && _looks.TryAdd(LookKey.Of(tag, pass, antenna, slot)))
        {
            _index = null;
            isKept = true;
        }

        if (isLatest)
        {
            entry.MoveTo(isKept ? look : LookOf(PlainAntennas, slot), at - (slot * _slotLength));
        }

        return isKept;
    }

    // Antenna and slot of a look. The antenna that is none stands for every look of which that does not tell enough.
    private static uint LookOf(byte antenna, int slot) => ((uint)antenna << LookKey.SlotBits) | (uint)slot;

    /// <summary>Moves the looks of a pass from a slot on to a later pass that was announced after its first reads came.</summary>
    internal void SplitPass(int pass, int newPass, int startSlot, int firstSlot)
    {
        _looks.SplitPass(pass, newPass, startSlot, firstSlot);
        _index = null;
    }

    /// <summary>Adds what a read says beside its look.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal void AddDetails(int tag, ref TagEntry entry, in TagRead read)
    {
        if (read.HasStrength)
        {
            entry.Include(read.CentiDbm);
        }

        if (read.HasTid)
        {
            AddTid(tag, read.Tid);
        }
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private void AddTid(int tag, Tid tid)
    {
        ref TidPair pair = ref RestOf(tag).Tids;
        if (tid == pair.First || tid == pair.Second)
        {
            return;
        }

        if (pair.First.IsEmpty)
        {
            pair.First = tid;
            return;
        }

        pair.HasMore |= !pair.Second.IsEmpty;
        if (Compare(tid, pair.First) < 0)
        {
            pair.Second = pair.First;
            pair.First = tid;
        }
        else if (pair.Second.IsEmpty || Compare(tid, pair.Second) < 0)
        {
            pair.Second = tid;
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal void CountAccepted(int tag, ref TagEntry entry)
    {
        if (!entry.TryCount())
        {
            RestOf(tag).AcceptedRounds++;
        }
    }

    internal void CountRepeat(int tag) => RestOf(tag).RepeatCount++;

    internal void CountOutside(int tag) => RestOf(tag).OutsideCount++;

    /// <summary>The TIDs of a tag, both empty where none was read.</summary>
    internal TidPair TidsOf(int tag) => RestOrDefault(tag).Tids;

    /// <summary>The extremes of time of a tag, or of a control tag on one antenna.</summary>
    internal bool TryGetSpan(int tag, byte? antenna, out long first, out long last)
    {
        ref TagStart start = ref _tags.StartOf(tag);
        bool isSeen = start.IsSeen;
        (first, last) = isSeen ? (start.First, _tags[tag].Last(_slotLength)) : default;
        if (antenna is { } number)
        {
            isSeen = _controlSpans.TryGetValue((tag, number), out (long First, long Last) span);
            (first, last) = span;
        }

        first += Origin;
        last += Origin;
        return isSeen;
    }

    /// <summary>The looks of a tag in order of pass, antenna and slot. What is given stands until the next look is added.</summary>
    internal ReadOnlySpan<ulong> LooksOf(int tag)
    {
        LookIndex index = Volatile.Read(ref _index) ?? MakeIndex();
        return index.Of(tag);
    }

    /// <summary>The evidence of a tag in plain figures. In a session of several passes an antenna of number 64 or more counts once in each.</summary>
    internal PlainLooks PlainOf(int tag)
    {
        bool isHeard = TryGetSpan(tag, null, out long first, out long last);
        var looks = new PlainLooks { FirstTicks = first, LastTicks = last, IsHeard = isHeard, Tids = TidsOf(tag) };

        ReadOnlySpan<ulong> left = LooksOf(tag);
        looks.LookCount = left.Length;
        ulong seen = 0;
        int rare = 0;
        while (!left.IsEmpty)
        {
            byte antenna = LookKey.Antenna(left[0]);
            seen |= antenna is > 0 and < 64 ? 1UL << antenna : 0;
            rare += antenna >= 64 ? 1 : 0;
            left = left[LookIndex.CellLength(left)..];
        }

        looks.AntennaCount = Math.Max(BitOperations.PopCount(seen) + rare, Math.Min(1, looks.LookCount));
        return looks;
    }

    /// <summary>The evidence of a tag as callers see it.</summary>
    internal TagEvidence ToEvidence(int tag)
    {
        ref TagEntry entry = ref _tags[tag];
        bool seen = TryGetSpan(tag, null, out long first, out long last);
        TagRest rest = RestOrDefault(tag);
        TidPair tids = rest.Tids;
        bool hasStrength = entry.HasStrength;
        return new TagEvidence(_tags.TagOf(entry), CellsOf(tag), tids.First.IsEmpty ? [] : tids.Second.IsEmpty ? [tids.First] : [tids.First, tids.Second])
        {
            FirstSeen = seen ? new DateTimeOffset(first, TimeSpan.Zero) : null,
            LastSeen = seen ? new DateTimeOffset(last, TimeSpan.Zero) : null,
            Strongest = hasStrength ? new Rssi(entry.Strongest) : null,
            Weakest = hasStrength ? new Rssi(entry.Weakest) : null,
            HasMoreTids = tids.HasMore,
            AcceptedCount = (rest.AcceptedRounds * TagEntry.CountLimit) + entry.Accepted,
            RepeatCount = rest.RepeatCount,
            OutsideCount = rest.OutsideCount,
        };
    }

    /// <summary>Orders TIDs by their hexadecimal digits; the empty one first.</summary>
    internal static int Compare(Tid left, Tid right)
    {
        Span<byte> a = stackalloc byte[Tid.MaxBitCount / 8];
        Span<byte> b = stackalloc byte[Tid.MaxBitCount / 8];
        left.TryWriteBytes(a, out int lengthA);
        right.TryWriteBytes(b, out int lengthB);
        int order = a[..lengthA].SequenceCompareTo(b[..lengthB]);
        return order != 0 ? order : left.BitCount.CompareTo(right.BitCount);
    }

    private LookCell[] CellsOf(int tag)
    {
        ReadOnlySpan<ulong> looks = LooksOf(tag);
        int count = 0;
        for (ReadOnlySpan<ulong> left = looks; !left.IsEmpty; left = left[LookIndex.CellLength(left)..])
        {
            count++;
        }

        var cells = count == 0 ? [] : new LookCell[count];
        for (int i = 0; i < cells.Length; i++)
        {
            int length = LookIndex.CellLength(looks);
            cells[i] = new LookCell(
                LookKey.Pass(looks[0]), AntennaPort.FromNumber(LookKey.Antenna(looks[0])), length, length == _looksKept);
            looks = looks[length..];
        }

        return cells;
    }

    private LookIndex MakeIndex()
    {
        // Sorting moves looks about, so only one thread may do it.
        lock (_looks)
        {
            LookIndex index = _index ?? new LookIndex(_looks, _tags.Count);
            Volatile.Write(ref _index, index);
            return index;
        }
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private void AddControlSpan(int tag, byte antenna, long at)
    {
        bool isKnown = _controlSpans.TryGetValue((tag, antenna), out (long First, long Last) span);
        _controlSpans[(tag, antenna)] = isKnown ? (Math.Min(span.First, at), Math.Max(span.Last, at)) : (at, at);
    }

    private TagRest RestOrDefault(int tag)
    {
        int rest = _tags.StartOf(tag).Rest;
        return rest < 0 ? default : _rests[rest];
    }

    private ref TagRest RestOf(int tag)
    {
        ref TagStart start = ref _tags.StartOf(tag);
        if (start.Rest < 0)
        {
            start.Rest = _rests.Add();
        }

        return ref _rests[start.Rest];
    }
}
