using System;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace ToolLedger.Reads;

/// <summary>A report as the repeat check keeps it, in 16 bytes. What makes two the same: tag, antenna, times, strength and count, or the
/// report id, which stands apart; the source is one station. The last instant and the count of those reports that have them
/// stand in a <see cref="ReportTail"/>.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct ReportEntry
{
    // A report id is not part of the content; its place tells that there is a tail.
    private const ReadFields Tail = ReadFields.ReportId;

    internal readonly long FirstTicks;
    internal readonly int Tag;
    private readonly uint _facts;

    internal ReportEntry(int tag, in TagRead read)
        : this(tag, in read, read.LastTicks != read.FirstTicks || read.CountOrZero != 0)
    {
    }

    private ReportEntry(int tag, in TagRead read, bool hasTail)
    {
        FirstTicks = read.FirstTicks;
        Tag = tag;
        _facts = (read.Facts & ~TagRead.InFacts(Tail)) | (hasTail ? TagRead.InFacts(Tail) : 0);
    }

    /// <summary>The same of a report of one instant.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static ReportEntry OfInstant(int tag, in TagRead read) => new(tag, in read, read.CountOrZero != 0);

    /// <summary>Whether the report has a last instant that is not its first one, or a count.</summary>
    internal bool HasTail => (_facts & TagRead.InFacts(Tail)) != 0;

    /// <summary>A hash of everything in it.</summary>
    internal ulong ContentHash
    {
        get
        {
            ulong mixed = Math.BigMul((ulong)FirstTicks, 0x9E3779B97F4A7C15UL, out ulong low) ^ low;
            return (mixed ^ ((ulong)(uint)Tag << 32) ^ _facts) * 0xD1B54A32D192ED03UL;
        }
    }
}
