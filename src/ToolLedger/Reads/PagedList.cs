using System;

namespace ToolLedger.Reads;

/// <summary>A list of values in place that grows without copying what it holds (but for its first page).</summary>
/// <typeparam name="T">The values.</typeparam>
internal sealed class PagedList<T>
    where T : struct
{
    private const int PageBits = 10;
    private const int PageLength = 1 << PageBits;
    private const int FirstLength = 16;

    private T[][] _pages = [new T[FirstLength]];

    internal int Count { get; private set; }

    internal ref T this[int index] => ref _pages[index >> PageBits][index & (PageLength - 1)];

    /// <summary>Adds a default value and gives its index.</summary>
    internal int Add()
    {
        int page = Count >> PageBits;
        if (page == _pages.Length)
        {
            Array.Resize(ref _pages, page * 2);
        }

        if (_pages[page] is null)
        {
            _pages[page] = new T[PageLength];
        }
        else if ((Count & (PageLength - 1)) == _pages[page].Length)
        {
            Array.Resize(ref _pages[page], _pages[page].Length * 2);
        }

        return Count++;
    }
}
