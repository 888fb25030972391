using System;
using System.Collections.Generic;
using ToolLedger.Identifiers;

namespace ToolLedger.Reads;

/// <summary>
/// The evidence of a session: for each tag the set of slots with a read by pass and antenna, saturating at a stated number of
/// the earliest ones, and extremes. Everything kept is a function of the set of looks added, not of their order.
/// </summary>
internal sealed class EvidenceStore
{
    private readonly TagTable _tags;
    private readonly PagedList<CellEntry> _cells = new();
    private readonly PagedList<TidPair> _tids = new();
    private readonly SlotArena _slots = new();
    private readonly int _looksKept;
    private readonly int _lookLimit;
    private int _lookCount;

    internal EvidenceStore(SessionPolicy policy)
    {
        _tags = new TagTable(policy.TagLimit);
        _looksKept = policy.LooksKept;
        _lookLimit = policy.LookLimit;
    }

    internal TagTable Tags => _tags;

    /// <summary>Adds a look; false when the limit on looks of the whole session is reached.</summary>
    internal bool AddLook(ref TagEntry entry, int pass, byte antenna, int slot, long ticks)
    {
        int index = entry.RecentCell;
        if (index < 0 || _cells[index].Antenna != antenna || _cells[index].Pass != pass)
        {
            index = CellOf(ref entry, pass, antenna, ticks);
        }

        ref CellEntry cell = ref _cells[index];
        if (ticks < cell.FirstTicks)
        {
            cell.FirstTicks = ticks;
        }

        if (ticks > cell.LastTicks)
        {
            cell.LastTicks = ticks;
        }

        return (slot == cell.RecentSlot && cell.SlotCount > 0) || AddSlot(ref cell, slot);
    }

    internal static void AddStrength(ref TagEntry entry, short centiDbm)
    {
        if (!entry.HasStrength)
        {
            entry.HasStrength = true;
            entry.Strongest = entry.Weakest = centiDbm;
        }
        else
        {
            entry.Strongest = Math.Max(entry.Strongest, centiDbm);
            entry.Weakest = Math.Min(entry.Weakest, centiDbm);
        }
    }

    internal void AddTid(ref TagEntry entry, Tid tid)
    {
        if (entry.Tids < 0)
        {
            entry.Tids = _tids.Add();
            _tids[entry.Tids].First = tid;
            return;
        }

        ref TidPair pair = ref _tids[entry.Tids];
        if (tid == pair.First || tid == pair.Second)
        {
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

    /// <summary>Moves the looks of a pass from a slot on to a later pass that was announced after its first reads came.</summary>
    internal void SplitPass(int pass, int newPass, int firstSlot, Func<int, long> slotTicks)
    {
        for (int i = 0; i < _tags.Count; i++)
        {
            ref TagEntry entry = ref _tags[i];
            for (int index = entry.FirstCell; index >= 0; index = _cells[index].Next)
            {
                if (_cells[index].Pass == pass && _cells[index].LastTicks >= slotTicks(firstSlot))
                {
                    SplitCell(ref entry, index, newPass, firstSlot, slotTicks);
                }
            }
        }
    }

    internal ref CellEntry Cell(int index) => ref _cells[index];

    internal ref TidPair TidsOf(in TagEntry entry) => ref _tids[entry.Tids];

    internal ReadOnlySpan<int> SlotsOf(in CellEntry cell) =>
        cell.SlotCount == 0 ? default : _slots.Slots(cell.Block, cell.SizeClass)[..cell.SlotCount];

    internal bool IsSaturated(in CellEntry cell) => cell.SlotCount == _looksKept;

    /// <summary>The extremes of time over every cell of the antenna, or of all antennas when it is null.</summary>
    internal bool TryGetSpan(in TagEntry entry, byte? antenna, out long first, out long last)
    {
        first = long.MaxValue;
        last = long.MinValue;
        for (int index = entry.FirstCell; index >= 0; index = _cells[index].Next)
        {
            ref CellEntry cell = ref _cells[index];
            if (antenna is null || cell.Antenna == antenna)
            {
                first = Math.Min(first, cell.FirstTicks);
                last = Math.Max(last, cell.LastTicks);
            }
        }

        return first <= last;
    }

    /// <summary>The evidence of a tag as callers see it.</summary>
    internal TagEvidence ToEvidence(int index)
    {
        ref TagEntry entry = ref _tags[index];
        int[] cells = CellsInOrder(entry);
        var lookCells = new LookCell[cells.Length];
        for (int i = 0; i < cells.Length; i++)
        {
            ref CellEntry cell = ref _cells[cells[i]];
            lookCells[i] = new LookCell(cell.Pass, AntennaPort.FromNumber(cell.Antenna), cell.SlotCount, IsSaturated(cell));
        }

        bool seen = TryGetSpan(entry, null, out long first, out long last);
        TidPair tids = entry.Tids < 0 ? default : _tids[entry.Tids];
        return new TagEvidence(entry.Tag, lookCells, tids.First.IsEmpty ? [] : tids.Second.IsEmpty ? [tids.First] : [tids.First, tids.Second])
        {
            FirstSeen = seen ? new DateTimeOffset(first, TimeSpan.Zero) : null,
            LastSeen = seen ? new DateTimeOffset(last, TimeSpan.Zero) : null,
            Strongest = entry.HasStrength ? new Rssi(entry.Strongest) : null,
            Weakest = entry.HasStrength ? new Rssi(entry.Weakest) : null,
            HasMoreTids = tids.HasMore,
            AcceptedCount = entry.AcceptedCount,
            RepeatCount = entry.RepeatCount,
            OutsideCount = entry.OutsideCount,
        };
    }

    /// <summary>The cells of a tag that hold a look, in order of pass and antenna.</summary>
    internal int[] CellsInOrder(in TagEntry entry)
    {
        List<int> cells = [];
        for (int index = entry.FirstCell; index >= 0; index = _cells[index].Next)
        {
            if (_cells[index].SlotCount > 0)
            {
                cells.Add(index);
            }
        }

        cells.Sort((left, right) => Key(left).CompareTo(Key(right)));
        return [.. cells];

        int Key(int index) => (_cells[index].Pass << 8) | _cells[index].Antenna;
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

    private int CellOf(ref TagEntry entry, int pass, byte antenna, long ticks)
    {
        int index = entry.FirstCell;
        while (index >= 0 && (_cells[index].Antenna != antenna || _cells[index].Pass != pass))
        {
            index = _cells[index].Next;
        }

        if (index < 0)
        {
            index = _cells.Add();
            ref CellEntry cell = ref _cells[index];
            cell.Antenna = antenna;
            cell.Pass = (ushort)pass;
            cell.FirstTicks = cell.LastTicks = ticks;
            cell.Block = -1;
            cell.Next = entry.FirstCell;
            entry.FirstCell = index;
        }

        entry.RecentCell = index;
        return index;
    }

    private bool AddSlot(ref CellEntry cell, int slot)
    {
        cell.RecentSlot = slot;
        ReadOnlySpan<int> kept = SlotsOf(cell);
        int at = kept.Length;
        if (at > 0 && slot <= kept[at - 1])
        {
            at = kept.BinarySearch(slot);
            if (at >= 0)
            {
                return true;
            }

            at = ~at;
        }

        if (kept.Length == _looksKept)
        {
            if (at == _looksKept)
            {
                return true;
            }

            // Saturated: an earlier slot drives out the latest one.
            cell.SlotCount--;
            _lookCount--;
        }

        if (_lookCount == _lookLimit)
        {
            return false;
        }

        Insert(ref cell, at, slot);
        return true;
    }

    private void Insert(ref CellEntry cell, int at, int slot)
    {
        if (cell.Block < 0)
        {
            cell.SizeClass = 0;
            cell.Block = _slots.Take(0);
        }
        else if (cell.SlotCount == SlotArena.LengthOf(cell.SizeClass))
        {
            byte larger = (byte)(cell.SizeClass + 1);
            int block = _slots.Take(larger);
            SlotsOf(cell).CopyTo(_slots.Slots(block, larger));
            _slots.Return(cell.Block, cell.SizeClass);
            cell.Block = block;
            cell.SizeClass = larger;
        }

        Span<int> slots = _slots.Slots(cell.Block, cell.SizeClass);
        slots[at..cell.SlotCount].CopyTo(slots[(at + 1)..]);
        slots[at] = slot;
        cell.SlotCount++;
        _lookCount++;
    }

    private void SplitCell(ref TagEntry entry, int index, int newPass, int firstSlot, Func<int, long> slotTicks)
    {
        ReadOnlySpan<int> slots = SlotsOf(_cells[index]);
        int keep = slots.BinarySearch(firstSlot);
        keep = keep >= 0 ? keep : ~keep;
        if (keep == slots.Length)
        {
            return;
        }

        if (keep == 0)
        {
            _cells[index].Pass = (ushort)newPass;
            return;
        }

        byte antenna = _cells[index].Antenna;
        long last = _cells[index].LastTicks;
        foreach (int slot in slots[keep..])
        {
            _lookCount--;
            AddLook(ref entry, newPass, antenna, slot, Math.Min(slotTicks(slot), last));
        }

        // The extremes of the two parts are known to a slot only; those of the tag stay exact.
        _cells[entry.RecentCell].LastTicks = last;
        ref CellEntry cell = ref _cells[index];
        cell.SlotCount = (ushort)keep;
        cell.RecentSlot = int.MinValue;
        cell.LastTicks = Math.Max(cell.FirstTicks, slotTicks(firstSlot) - 1);
    }
}
