using System;
using System.Numerics;

namespace ToolLedger.Reads;

/// <summary>The latest reports by number, in pages that come when they are first needed: a new report takes the place of the one a whole ring before it.</summary>
internal sealed class ReportRing
{
    private const int MaxPageLength = 2048;

    private readonly int _pageBits;
    private readonly int _pageMask;
    private readonly int _mask;
    private readonly ReportEntry[]?[] _pages;
    private readonly ReportTail[]?[] _tails;

    /// <summary>Makes an empty ring.</summary>
    /// <param name="length">How many reports it keeps: a power of two.</param>
    internal ReportRing(int length)
    {
        int pageLength = Math.Min(length, MaxPageLength);
        _pageBits = BitOperations.Log2((uint)pageLength);
        _pageMask = pageLength - 1;
        _mask = length - 1;
        _pages = new ReportEntry[]?[length >> _pageBits];
        _tails = new ReportTail[]?[length >> _pageBits];
    }

    internal int Length => _mask + 1;

    /// <summary>The report of a number.</summary>
    internal ref ReportEntry this[long number] => ref PageOf(number)[(int)number & _pageMask];

    /// <summary>The places of the reports from a number on, as many as lie together.</summary>
    internal Span<ReportEntry> PlacesFrom(long number) => PageOf(number).AsSpan((int)number & _pageMask);

    /// <summary>What else a report has, the default value for most.</summary>
    internal ReportTail TailOf(long number) => this[number].HasTail ? _tails[PageNumber(number)]![(int)number & _pageMask] : default;

    /// <summary>Keeps what else a report has.</summary>
    internal void SetTail(long number, ReportTail tail) =>
        (_tails[PageNumber(number)] ??= new ReportTail[_pageMask + 1])[(int)number & _pageMask] = tail;

    private ReportEntry[] PageOf(long number) => _pages[PageNumber(number)] ??= new ReportEntry[_pageMask + 1];

    private int PageNumber(long number) => ((int)number & _mask) >> _pageBits;
}
