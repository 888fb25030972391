using System;
using System.Buffers.Binary;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using ToolLedger.Identifiers;
using ToolLedger.Reads;

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
    private readonly bool _hasSecondWord;
    private readonly ReadFields _given;
    private readonly ulong _end = LlrpTime.MicrosecondsEnd;

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
        _hasSecondWord = _epcBitCount > 64;
        _given = _rssiOffset > 0 ? ReadFields.Strength : ReadFields.None;
    }

    internal int Length => _pattern.Length;

    /// <summary>Whether reports of this layout can be read by their layout alone. The tag is of whole 16-bit words and is
    /// read in words of eight bytes, which must lie in the report.</summary>
    internal static bool Suits(in LlrpTagReport report, int tidBitCount) =>
        report.Bytes.Length is >= LengthMin and <= LengthMax && report.EpcBitCount <= InlineBits && report.EpcBitCount % 16 == 0 && tidBitCount <= InlineBits
        && report.EpcOffset + (report.EpcBitCount > 64 ? 2 * sizeof(ulong) : sizeof(ulong)) <= report.Bytes.Length
        && (report.OffsetOf(LlrpParameterType.FirstSeenUtc) | report.OffsetOf(LlrpParameterType.LastSeenUtc)) != 0;

    /// <summary>Makes reads of the reports that fit, up to the first that does not, or whose values make no read: that one is to be read the other
    /// way, which says why.</summary>
    /// <param name="bytes">Begin with a report.</param>
    /// <param name="destination">Where the reads go.</param>
    /// <returns>How many were made.</returns>
    internal int Read(ReadOnlySpan<byte> bytes, Span<TagRead> destination)
    {
        int count = 0;
        int most = Math.Min(destination.Length, bytes.Length / _pattern.Length);
        ref byte report = ref MemoryMarshal.GetReference(bytes);
        while (count < most && Fits(ref report) && TryMake(ref report, ref destination[count]))
        {
            report = ref Unsafe.Add(ref report, _pattern.Length);
            count++;
        }

        return count;
    }

    // Below, the report has the length of the pattern, and every value lies inside it: that was checked when the pattern was read.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private bool Fits(ref byte report)
    {
        ref byte pattern = ref MemoryMarshal.GetArrayDataReference(_pattern);
        ref byte mask = ref MemoryMarshal.GetArrayDataReference(_mask);
        int step = Vector128<byte>.Count;
        int last = _pattern.Length - step;
        Vector128<byte> difference = Difference(ref report, ref pattern, ref mask, 0) | Difference(ref report, ref pattern, ref mask, last);
        for (int i = step; i < last; i += step)
        {
            difference |= Difference(ref report, ref pattern, ref mask, i);
        }

        return difference == Vector128<byte>.Zero;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector128<byte> Difference(ref byte data, ref byte pattern, ref byte mask, int at) =>
        (Vector128.LoadUnsafe(ref data, (nuint)at) ^ Vector128.LoadUnsafe(ref pattern, (nuint)at)) & Vector128.LoadUnsafe(ref mask, (nuint)at);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private bool TryMake(ref byte report, ref TagRead read)
    {
        ulong first = LongAt(ref report, _firstOffset);
        ulong last = LongAt(ref report, _lastOffset);
        int antenna = _antennaOffset > 0 ? WordAt(ref report, _antennaOffset) : 0;
        if (first > last || last >= _end || antenna > byte.MaxValue)
        {
            return false;
        }

        int count = _countOffset > 0 ? WordAt(ref report, _countOffset) : 0;
        int strength = _rssiOffset > 0 ? (sbyte)Unsafe.Add(ref report, _rssiOffset) * 100 : 0;
        ReadFields given = count > 0 ? _given | ReadFields.Count : _given;
        ulong high = LongAt(ref report, _epcOffset);
        ulong low = _hasSecondWord ? LongAt(ref report, _epcOffset + sizeof(ulong)) : 0;
        TagRead.Write(ref read, high, low, _epcBitCount, LlrpTime.TicksOf(first), LlrpTime.TicksOf(last), count, (short)strength, (byte)antenna, given);
        if (_tidBitCount > 0)
        {
            ReadOnlySpan<byte> words = MemoryMarshal.CreateReadOnlySpan(ref Unsafe.Add(ref report, _tidOffset), _tidBitCount >> 3);
            read = read with { Tid = Tid.FromBytes(words, _tidBitCount) };
        }

        return true;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static ulong LongAt(ref byte report, int offset)
    {
        ulong value = Unsafe.ReadUnaligned<ulong>(ref Unsafe.Add(ref report, offset));
        return BitConverter.IsLittleEndian ? BinaryPrimitives.ReverseEndianness(value) : value;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static int WordAt(ref byte report, int offset)
    {
        ushort value = Unsafe.ReadUnaligned<ushort>(ref Unsafe.Add(ref report, offset));
        return BitConverter.IsLittleEndian ? BinaryPrimitives.ReverseEndianness(value) : value;
    }

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
