using System;
using System.Runtime.InteropServices;

namespace ToolLedger.Reads;

/// <summary>A report as the repeat check keeps it. What makes two the same: tag, antenna, times, strength and count, or the
/// report id, which stands apart; the source is one station.</summary>
[StructLayout(LayoutKind.Auto)]
internal struct ReportEntry
{
    internal readonly long FirstTicks;
    internal readonly long LastTicks;
    private readonly int _tag;
    private readonly int _count;
    private readonly short _strength;
    private readonly byte _antenna;
    private readonly ReadFields _given;

    internal ReportEntry(int tag, in TagRead read)
    {
        _tag = tag;
        FirstTicks = read.FirstTicks;
        LastTicks = read.LastTicks;
        _count = read.CountOrZero;
        _strength = read.CentiDbm;
        _antenna = read.AntennaNumber;
        _given = read.Given;
    }

    internal readonly long ContentHash
    {
        get
        {
            ulong mixed = (ulong)FirstTicks ^ ((ulong)(uint)_tag << 40) ^ ((ulong)_antenna << 33);
            mixed = Math.BigMul(mixed, 0x9E3779B97F4A7C15UL, out ulong low) ^ low;
            mixed ^= (ulong)(LastTicks - FirstTicks) + ((ulong)(ushort)_strength << 20) + ((ulong)(uint)_count << 36);
            return (long)((mixed * 0xD1B54A32D192ED03UL) >> 32);
        }
    }

    internal readonly bool HasSameContent(in ReportEntry other) =>
        FirstTicks == other.FirstTicks && _tag == other._tag && LastTicks == other.LastTicks && _antenna == other._antenna
        && _strength == other._strength && _count == other._count
        && ((_given ^ other._given) & (ReadFields.Strength | ReadFields.Count)) == ReadFields.None;
}
