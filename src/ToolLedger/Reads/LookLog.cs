using System;
using System.Collections.Generic;

namespace ToolLedger.Reads;

/// <summary>
/// The looks of a session as they come, some of them more than once. Now and then they are sorted and made different, so that
/// what is kept grows with the different looks and not with the reads; how often adds a constant to the cost of each.
/// </summary>
internal sealed class LookLog
{
    private const int FirstLength = 64;
    private const int SmallCount = 65_536;

    // Where looks come twice, room for as many again; where hardly any do, sorting them often would be for nothing.
    private const int Factor = 2;
    private const int FactorWithoutRepeats = 8;

    private readonly int _keptInCell;
    private readonly int _limit;

    // By tag, the earliest look of a slot in which a pass began that was announced later: nobody can tell on which side of the start it lay.
    private readonly Dictionary<int, ulong> _undecided = [];
    private ulong[] _looks = new ulong[FirstLength];
    private int _count;
    private int _compactAt = SmallCount;
    private bool _isSorted = true;

    /// <summary>Makes an empty log.</summary>
    /// <param name="keptInCell">How many looks of one tag, pass and antenna count: the earliest ones.</param>
    /// <param name="limit">How many different looks may be kept in all.</param>
    internal LookLog(int keptInCell, int limit)
    {
        _keptInCell = keptInCell;
        _limit = limit;
    }

    /// <summary>Whether there were more different looks than may be kept. Asking may sort.</summary>
    internal bool IsOverLimit
    {
        get
        {
            if (_count > _limit)
            {
                Compact();
            }

            return _count > _limit;
        }
    }

    /// <summary>Adds a look; false when the log is full of different ones.</summary>
    internal bool TryAdd(ulong look)
    {
        if (_count == _compactAt && !MakeRoom())
        {
            return false;
        }

        if (_count == _looks.Length)
        {
            Grow();
        }

        _looks[_count++] = look;
        _isSorted = false;
        return true;
    }

    /// <summary>Moves the looks of a pass from a slot on to a later pass that was announced after its first reads came.</summary>
    /// <param name="pass">The pass.</param>
    /// <param name="newPass">The later pass.</param>
    /// <param name="startSlot">The slot that holds the start of the later pass.</param>
    /// <param name="firstSlot">The first slot that is wholly of the later pass: the same one where the pass starts with a slot.</param>
    internal void SplitPass(int pass, int newPass, int startSlot, int firstSlot)
    {
        Span<ulong> looks = _looks.AsSpan(0, _count);
        int kept = 0;
        foreach (ulong look in looks)
        {
            int slot = LookKey.Slot(look);
            if (LookKey.Pass(look) != pass || slot < startSlot)
            {
                looks[kept++] = look;
            }
            else if (slot >= firstSlot)
            {
                looks[kept++] = LookKey.WithPass(look, newPass);
            }
            else if (!_undecided.TryGetValue(LookKey.Tag(look), out ulong known) || look < known)
            {
                _undecided[LookKey.Tag(look)] = look;
            }
        }

        _count = kept;
        _isSorted = false;
    }

    /// <summary>The different looks in order, in place: they stand until the next one is added.</summary>
    internal ReadOnlyMemory<ulong> InOrder()
    {
        Compact();
        DecideLooks();
        Compact();
        return _looks.AsMemory(0, _count);
    }

    // On either side such a look could make two passes of one, so it counts only for a tag of which nothing else is known.
    private void DecideLooks()
    {
        int count = _count;
        foreach ((int tag, ulong look) in _undecided)
        {
            int at = _looks.AsSpan(0, count).BinarySearch(LookKey.Of(tag, 0, 0, 0));
            if (~at == count || LookKey.Tag(_looks[~at]) != tag)
            {
                TryAdd(look);
            }
        }

        _undecided.Clear();
    }

    // While it is small, looks that came twice make room first: a session of a kit soon takes no more memory.
    private void Grow()
    {
        if (_count <= SmallCount)
        {
            Compact();
        }

        if (_count > _looks.Length / 4 * 3)
        {
            Array.Resize(ref _looks, (int)Math.Min(2L * _looks.Length, Array.MaxLength));
        }
    }

    private bool MakeRoom()
    {
        int before = _count;
        Compact();
        long factor = _count > before / 8 * 7 ? FactorWithoutRepeats : Factor;
        _compactAt = (int)Math.Min(Math.Max(SmallCount, factor * _count), (long)_limit + (_limit / 4) + SmallCount);
        return _count <= _limit;
    }

    private void Compact()
    {
        if (_isSorted)
        {
            return;
        }

        Span<ulong> looks = _looks.AsSpan(0, _count);
        LookSort.Sort(looks);
        int kept = 0;
        int inCell = 0;
        foreach (ulong look in looks)
        {
            bool isSameCell = kept > 0 && LookKey.Cell(looks[kept - 1]) == LookKey.Cell(look);
            inCell = isSameCell ? inCell : 0;
            if (inCell < _keptInCell && (!isSameCell || looks[kept - 1] != look))
            {
                looks[kept++] = look;
                inCell++;
            }
        }

        _count = kept;
        _isSorted = true;
    }
}
