using System;
using System.Collections.Generic;

namespace ToolLedger.Reads;

/// <summary>Memory for many short lists of slot numbers: blocks of 2, 4, 8 ... numbers cut from pages, and used again.</summary>
internal sealed class SlotArena
{
    private const int PageBits = 14;
    private const int PageLength = 1 << PageBits;
    private const int ClassCount = PageBits;

    private readonly List<int[]> _pages = [];
    private readonly int[] _free = new int[ClassCount];
    private int _used = PageLength;

    internal SlotArena() => Array.Fill(_free, -1);

    internal static int LengthOf(byte sizeClass) => 2 << sizeClass;

    internal Span<int> Slots(int block, byte sizeClass) =>
        _pages[block >> PageBits].AsSpan(block & (PageLength - 1), LengthOf(sizeClass));

    internal int Take(byte sizeClass)
    {
        int block = _free[sizeClass];
        if (block >= 0)
        {
            // A free block holds the number of the next free one.
            _free[sizeClass] = _pages[block >> PageBits][block & (PageLength - 1)];
            return block;
        }

        int length = LengthOf(sizeClass);
        if (_used + length > PageLength)
        {
            _pages.Add(new int[_pages.Count == 0 ? Math.Max(256, length) : PageLength]);
            _used = 0;
        }
        else if (_pages.Count == 1 && _used + length > _pages[0].Length)
        {
            int[] grown = new int[Math.Min(PageLength, Math.Max(_pages[0].Length * 2, _used + length))];
            _pages[0].CopyTo(grown, 0);
            _pages[0] = grown;
        }

        block = ((_pages.Count - 1) << PageBits) | _used;
        _used += length;
        return block;
    }

    internal void Return(int block, byte sizeClass)
    {
        _pages[block >> PageBits][block & (PageLength - 1)] = _free[sizeClass];
        _free[sizeClass] = block;
    }
}
