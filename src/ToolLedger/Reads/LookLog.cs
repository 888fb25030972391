using System;
using System.Buffers;
using System.Collections.Generic;
using System.Runtime.CompilerServices;

namespace ToolLedger.Reads;

/// <summary>
/// The looks of a session as they come, some of them more than once. Now and then they are sorted and made different, so that
/// what is kept grows with the different looks and not with the reads; how often adds a constant to the cost of each.
/// </summary>
internal sealed class LookLog
{
    private const int FirstLength = 64;
    private const int SegmentLength = 32_768;
    private const int SmallCount = 1_048_576;
    private const int SampleLength = 65_536;

    // Where looks come twice, room for as many again; where hardly any do, sorting them often would be for nothing.
    private const int Factor = 2;
    private const int FactorWithoutRepeats = 8;

    private readonly int _keptInCell;
    private readonly int _limit;

    // By tag, the earliest look of a slot in which a pass began that was announced later: nobody can tell on which side of the start it lay.
    private readonly Dictionary<int, ulong> _undecided = [];

    // All segments but the last are full: growing copies nothing.
    private readonly List<ulong[]> _segments = [new ulong[FirstLength]];
    private ulong[] _last;
    private int _lastCount;
    private int _countBefore;
    private int _compactAt = SmallCount;
    private bool _isSorted = true;

    /// <summary>Makes an empty log.</summary>
    /// <param name="keptInCell">How many looks of one tag, pass and antenna count: the earliest ones.</param>
    /// <param name="limit">How many different looks may be kept in all.</param>
    internal LookLog(int keptInCell, int limit)
    {
        _keptInCell = keptInCell;
        _limit = limit;
        _last = _segments[0];
    }

    /// <summary>Whether there were more different looks than may be kept. Asking may sort.</summary>
    internal bool IsOverLimit
    {
        get
        {
            if (Count > _limit)
            {
                Compact();
            }

            return Count > _limit;
        }
    }

    private int Count => _countBefore + _lastCount;

    /// <summary>Adds a look; false when the log is full of different ones.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal bool TryAdd(ulong look)
    {
        if (_lastCount == _last.Length && !MakeRoom())
        {
            return false;
        }

        _last[_lastCount++] = look;
        _isSorted = false;
        return true;
    }

    /// <summary>Places for at most so many looks to be written into, of which <see cref="Take"/> then says how many were; fewer where making room for more wants care.</summary>
    internal Span<ulong> FreePlaces(int most) => _last.AsSpan(_lastCount, Math.Min(most, _last.Length - _lastCount));

    /// <summary>Adds the looks that were written into free places.</summary>
    internal void Take(int count)
    {
        _lastCount += count;
        _isSorted = false;
    }

    /// <summary>Moves the looks of a pass from a slot on to a later pass that was announced after its first reads came.</summary>
    /// <param name="pass">The pass.</param>
    /// <param name="newPass">The later pass.</param>
    /// <param name="startSlot">The slot that holds the start of the later pass.</param>
    /// <param name="firstSlot">The first slot that is wholly of the later pass: the same one where the pass starts with a slot.</param>
    internal void SplitPass(int pass, int newPass, int startSlot, int firstSlot)
    {
        ulong[] all = ArrayPool<ulong>.Shared.Rent(Count);
        Span<ulong> looks = Gather(all);
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

        Spread(looks[..kept]);
        _isSorted = false;
        ArrayPool<ulong>.Shared.Return(all);
    }

    /// <summary>The different looks in order: they stand until the next one is added.</summary>
    internal ReadOnlyMemory<ulong> InOrder()
    {
        Compact();
        DecideLooks();
        Compact();
        if (_segments.Count > 1)
        {
            // One segment for all, so that nothing is kept twice.
            var all = new ulong[Count];
            Gather(all);
            _last = all;
            _lastCount = _last.Length;
            _countBefore = 0;
            _segments.Clear();
            _segments.Add(_last);
        }

        return _last.AsMemory(0, _lastCount);
    }

    // On either side such a look could make two passes of one, so it counts only for a tag of which nothing else is known.
    private void DecideLooks()
    {
        if (_undecided.Count == 0)
        {
            return;
        }

        ulong[] all = ArrayPool<ulong>.Shared.Rent(Count);
        ReadOnlySpan<ulong> looks = Gather(all);
        foreach ((int tag, ulong look) in _undecided)
        {
            int at = looks.BinarySearch(LookKey.Of(tag, 0, 0, 0));
            if (~at == looks.Length || LookKey.Tag(looks[~at]) != tag)
            {
                TryAdd(look);
            }
        }

        _undecided.Clear();
        ArrayPool<ulong>.Shared.Return(all);
    }

    // While there are few, looks that came twice make room first: a session of a kit soon takes no more memory.
    private bool MakeRoom()
    {
        if (_last.Length < SegmentLength || Count >= _compactAt)
        {
            long factor = FactorWithoutRepeats;
            if (_last.Length < SegmentLength || Count > _limit || !HasFewRepeats())
            {
                int before = Count;
                Compact();
                factor = Count > before / 8 * 7 ? FactorWithoutRepeats : Factor;
            }

            _compactAt = (int)Math.Min(Math.Max(SmallCount, factor * Count), (long)_limit + (_limit / 4) + SmallCount);
            if (Count > _limit)
            {
                return false;
            }
        }

        if (_lastCount > _last.Length / 4 * 3)
        {
            Extend();
        }

        return true;
    }

    // Sorting them all would make little room where few come twice. The looks of one cell in 64 tell, if there are enough of them.
    private bool HasFewRepeats()
    {
        ulong[] sample = ArrayPool<ulong>.Shared.Rent(SampleLength);
        int taken = 0;
        foreach (ulong[] segment in _segments)
        {
            foreach (ulong look in segment.AsSpan(0, segment == _last ? _lastCount : segment.Length))
            {
                if ((LookKey.Cell(look) * 0x9E3779B97F4A7C15UL) >> 58 == 0 && taken < SampleLength)
                {
                    sample[taken++] = look;
                }
            }
        }

        Span<ulong> looks = sample.AsSpan(0, taken);
        LookSort.Sort(looks);
        bool areFew = taken >= SampleLength / 16 && KeepDifferent(looks) > taken / 8 * 7;
        ArrayPool<ulong>.Shared.Return(sample);
        return areFew;
    }

    private void Extend()
    {
        if (_segments.Count == 1 && _last.Length < SegmentLength)
        {
            Array.Resize(ref _last, _last.Length * 2);
            _segments[0] = _last;
            return;
        }

        if (_lastCount < _last.Length)
        {
            return;
        }

        _countBefore += _lastCount;
        _lastCount = 0;
        _last = new ulong[SegmentLength];
        _segments.Add(_last);
    }

    private void Compact()
    {
        if (_isSorted)
        {
            return;
        }

        ulong[] all = ArrayPool<ulong>.Shared.Rent(Count);
        Span<ulong> looks = Gather(all);
        LookSort.Sort(looks);
        int kept = KeepDifferent(looks);
        Spread(looks[..kept]);
        _isSorted = true;
        ArrayPool<ulong>.Shared.Return(all);
    }

    // Of looks in order keeps each once, and the earliest of a cell; gives how many those are.
    private int KeepDifferent(Span<ulong> looks)
    {
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

        return kept;
    }

    private Span<ulong> Gather(ulong[] target)
    {
        int count = 0;
        foreach (ulong[] segment in _segments)
        {
            int length = segment == _last ? _lastCount : segment.Length;
            segment.AsSpan(0, length).CopyTo(target.AsSpan(count));
            count += length;
        }

        return target.AsSpan(0, count);
    }

    // Never more looks than were gathered.
    private void Spread(ReadOnlySpan<ulong> looks)
    {
        int used = 0;
        _countBefore = 0;
        while (looks.Length > _segments[used].Length)
        {
            looks[.._segments[used].Length].CopyTo(_segments[used]);
            looks = looks[_segments[used].Length..];
            _countBefore += _segments[used].Length;
            used++;
        }

        _last = _segments[used];
        looks.CopyTo(_last);
        _lastCount = looks.Length;
        _segments.RemoveRange(used + 1, _segments.Count - used - 1);
    }
}
