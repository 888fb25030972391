using System;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace ToolLedger.Reads;

/// <summary>The entries of tags in place, in pages: growing copies nothing (but within the first page), and where there are many no further one lies across two lines of memory.</summary>
/// <remarks>An entry that does costs a second cache miss, and of so many tags that no cache holds them hardly anything else costs time. Such pages are pinned so that they stay as they lie; nothing but speed depends on it.</remarks>
internal sealed class TagEntryList
{
    private const int PageBits = 10;
    private const int PageLength = 1 << PageBits;
    private const int FirstLength = 16;
    private const int LineLength = 64;

    // The entries before, 2 MiB of them, stay in the caches; pinned pages would only be collected late.
    private const int PagesBeforeLines = 64;

    // An entry is four of these words.
    private const int EntryWords = 4;

    private ulong[][] _pages = [new ulong[FirstLength * EntryWords]];
    private byte[] _starts = [0];

    internal int Count { get; private set; }

    internal ref TagEntry this[int index]
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get
        {
            int page = index >> PageBits;
            return ref Unsafe.As<ulong, TagEntry>(ref _pages[page][_starts[page] + ((index & (PageLength - 1)) * EntryWords)]);
        }
    }

    /// <summary>Adds an entry, whatever is in it, and gives its index.</summary>
    internal int Add()
    {
        int page = Count >> PageBits;
        if (page == _pages.Length)
        {
            Array.Resize(ref _pages, page * 2);
            Array.Resize(ref _starts, page * 2);
        }

        if (_pages[page] is null)
        {
            bool isLined = page >= PagesBeforeLines;
            _pages[page] = GC.AllocateUninitializedArray<ulong>((PageLength * EntryWords) + (LineLength / sizeof(ulong)), isLined);
            _starts[page] = isLined ? WordsToLine(ref MemoryMarshal.GetArrayDataReference(_pages[page])) : (byte)0;
        }
        else if (page == 0 && Count * EntryWords == _pages[0].Length)
        {
            Array.Resize(ref _pages[0], _pages[0].Length * 2);
        }

        return Count++;
    }

    private static unsafe byte WordsToLine(ref ulong first) =>
        (byte)((-(nint)Unsafe.AsPointer(ref first) & (LineLength - 1)) / sizeof(ulong));
}
