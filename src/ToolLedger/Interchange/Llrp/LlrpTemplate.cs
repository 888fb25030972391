using System;
using System.Buffers.Binary;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using ToolLedger.Identifiers;
using ToolLedger.Reads;
using ToolLedger.Tools;

namespace ToolLedger.Interchange.Llrp;

/// <summary>
/// The layout of a tag report that was read in order, to recognise the next one of the same layout by comparing every byte that is no value.
/// Readers repeat one layout for as long as their settings stand.
/// </summary>
internal sealed class LlrpTemplate
{
    // Up to this length the comparison is cheaper than reading.
    private const int LengthMin = 16;
    private const int LengthMax = 256;
    private const int InlineBits = 128;

    private readonly byte[] _pattern;
    private readonly byte[] _mask;
    private readonly int _epcOffset;
    private readonly int _epcBitCount;
    private readonly int _antennaOffset;
    private readonly int _rssiOffset;
    private readonly int _firstOffset;
    private readonly int _lastOffset;
    private readonly int _countOffset;
    private readonly int _tidOffset;
    private readonly int _tidBitCount;

    internal LlrpTemplate(in LlrpTagReport report, int tidOffset, int tidBitCount)
    {
        _pattern = report.Bytes.ToArray();
        _mask = MaskOf(report.Bytes);
        _epcOffset = report.EpcOffset;
        _epcBitCount = report.EpcBitCount;
        _antennaOffset = report.OffsetOf(LlrpParameterType.AntennaId);
        _rssiOffset = report.OffsetOf(LlrpParameterType.PeakRssi);
        int first = report.OffsetOf(LlrpParameterType.FirstSeenUtc);
        int last = report.OffsetOf(LlrpParameterType.LastSeenUtc);
        _firstOffset = first > 0 ? first : last;
        _lastOffset = last > 0 ? last : first;
        _countOffset = report.OffsetOf(LlrpParameterType.TagSeenCount);
        _tidOffset = tidOffset;
        _tidBitCount = tidBitCount;
    }

    internal int Length => _pattern.Length;

    /// <summary>Whether reports of this layout can be read by their layout alone.</summary>
    internal static bool Suits(in LlrpTagReport report, int tidBitCount) =>
        report.Bytes.Length is >= LengthMin and <= LengthMax && report.EpcBitCount <= InlineBits && tidBitCount <= InlineBits
        && (report.OffsetOf(LlrpParameterType.FirstSeenUtc) | report.OffsetOf(LlrpParameterType.LastSeenUtc)) != 0;

    // Whether the bytes begin with a report of this layout.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private bool Fits(ReadOnlySpan<byte> bytes)
    {
        int length = _pattern.Length;
        if (bytes.Length < length)
        {
            return false;
        }

        ref byte data = ref MemoryMarshal.GetReference(bytes);
        ref byte pattern = ref MemoryMarshal.GetArrayDataReference(_pattern);
        ref byte mask = ref MemoryMarshal.GetArrayDataReference(_mask);
        int step = Vector128<byte>.Count;
        Vector128<byte> difference = Difference(ref data, ref pattern, ref mask, length - step);
        for (int i = 0; i < length - step; i += step)
        {
            difference |= Difference(ref data, ref pattern, ref mask, i);
        }

        return difference == Vector128<byte>.Zero;
    }

    /// <summary>Makes reads of the reports that fit, up to the first that does not, or whose values make no read: that one is to be read the other
    /// way, which says why.</summary>
    /// <param name="bytes">Begin with a report.</param>
    /// <param name="destination">Where the reads go.</param>
    /// <returns>How many were made.</returns>
    internal int Read(ReadOnlySpan<byte> bytes, Span<TagRead> destination)
    {
        int count = 0;
        while (count < destination.Length && Fits(bytes) && TryMake(bytes, ref destination[count]))
        {
            bytes = bytes[_pattern.Length..];
            count++;
        }

        return count;
    }

    private bool TryMake(ReadOnlySpan<byte> bytes, ref TagRead read)
    {
        ulong first = BinaryPrimitives.ReadUInt64BigEndian(bytes[_firstOffset..]);
        ulong last = BinaryPrimitives.ReadUInt64BigEndian(bytes[_lastOffset..]);
        int antenna = _antennaOffset > 0 ? BinaryPrimitives.ReadUInt16BigEndian(bytes[_antennaOffset..]) : 0;
        if (first > last || last >= LlrpTime.MicrosecondsEnd || antenna > byte.MaxValue)
        {
            return false;
        }

        int count = _countOffset > 0 ? BinaryPrimitives.ReadUInt16BigEndian(bytes[_countOffset..]) : 0;
        int strength = _rssiOffset > 0 ? (sbyte)bytes[_rssiOffset] * 100 : 0;
        ReadFields given = (count > 0 ? ReadFields.Count : ReadFields.None) | (_rssiOffset > 0 ? ReadFields.Strength : ReadFields.None);
        ulong high = WordAt(bytes, _epcOffset, _epcBitCount);
        ulong low = WordAt(bytes, _epcOffset + sizeof(ulong), _epcBitCount - 64);
        TagRead.Write(ref read, high, low, _epcBitCount, LlrpTime.TicksOf(first), LlrpTime.TicksOf(last), count, (short)strength, (byte)antenna, given);
        if (_tidBitCount > 0)
        {
            read = read with { Tid = Tid.FromBytes(bytes[_tidOffset..], _tidBitCount) };
        }

        return true;
    }

    // Eight bytes of the tag, or as many as there are. The bits behind the count are cut off later.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static ulong WordAt(ReadOnlySpan<byte> bytes, int offset, int bitCount)
    {
        if (bytes.Length - offset >= sizeof(ulong))
        {
            return BinaryPrimitives.ReadUInt64BigEndian(bytes[offset..]);
        }

        ulong word = 0;
        for (int i = 0; i < sizeof(ulong) && 8 * i < bitCount; i++)
        {
            word |= (ulong)bytes[offset + i] << (56 - (8 * i));
        }

        return word;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector128<byte> Difference(ref byte data, ref byte pattern, ref byte mask, int at) =>
        (Vector128.LoadUnsafe(ref data, (nuint)at) ^ Vector128.LoadUnsafe(ref pattern, (nuint)at)) & Vector128.LoadUnsafe(ref mask, (nuint)at);

    // Types, lengths, counts, and of the results of reading memory also the code and the operation. Everything else is a value.
    private static byte[] MaskOf(ReadOnlySpan<byte> report)
    {
        const int prefix = 4;
        var mask = new byte[report.Length];
        mask.AsSpan(0, prefix).Fill(byte.MaxValue);
        var reader = new LlrpParameterReader(report, prefix);
        while (reader.TryRead())
        {
            int more = reader.IsFixed ? 0 : reader.Type switch
            {
                LlrpParameterType.EpcData => 2,
                LlrpParameterType.ReadResult or LlrpParameterType.PermalockStatusResult => 5,
                _ => 0,
            };
            mask.AsSpan(reader.Start, reader.ValueStart - reader.Start + more).Fill(byte.MaxValue);
        }

        return mask;
    }
}
