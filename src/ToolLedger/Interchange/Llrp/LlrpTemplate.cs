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
    // The length of a vector, and the length up to which the comparison is cheaper than reading.
    private const int LengthMin = 16;
    private const int LengthMax = 256;
    private const int InlineBits = 128;
    private const int CommonBits = 96;
    private const int CentiDbmPerDbm = 100;
    private const int Prefix = 4;

    /// <summary>How many layouts are known at most.</summary>
    internal const int KnownMax = 8;

    // What must be equal and which of its bits count: the first and the last 16 bytes, and all of it for what lies between.
    private readonly Vector128<byte> _firstPattern;
    private readonly Vector128<byte> _firstMask;
    private readonly Vector128<byte> _lastPattern;
    private readonly Vector128<byte> _lastMask;
    private readonly byte[] _pattern;
    private readonly byte[] _mask;
    private readonly nint _length;
    private readonly nint _epcOffset;
    private readonly nint _antennaOffset;
    private readonly nint _rssiOffset;
    private readonly nint _firstOffset;
    private readonly nint _lastOffset;
    private readonly nint _countOffset;

    // A count that is absent is read from the start of the report and made 0, so that nothing branches on what a layout holds. Antenna and strength need one byte
    // each, and the first byte of a report is 0.
    private readonly int _countMask;
    private readonly int _epcBitCount;
    private readonly int _tidOffset;
    private readonly int _tidBitCount;
    private readonly bool _isCommon;
    private readonly ReadFields _given;

    // The layout that followed this one the last time: a guess that is checked like any other.
    private LlrpTemplate _next;

    internal LlrpTemplate(in LlrpTagReport report, int tidOffset, int tidBitCount)
    {
        _next = this;
        _pattern = report.Bytes.ToArray();
        _mask = MaskOf(report.Bytes);
        _firstPattern = Vector128.Create(_pattern.AsSpan(0, LengthMin));
        _firstMask = Vector128.Create(_mask.AsSpan(0, LengthMin));
        _lastPattern = Vector128.Create(_pattern.AsSpan(_pattern.Length - LengthMin));
        _lastMask = Vector128.Create(_mask.AsSpan(_mask.Length - LengthMin));
        _length = report.Bytes.Length;
        _epcOffset = report.EpcOffset;
        _epcBitCount = report.EpcBitCount;
        _antennaOffset = report.OffsetOf(LlrpParameterType.AntennaId) is > 0 and int antenna ? antenna + 1 : 0;
        _rssiOffset = report.OffsetOf(LlrpParameterType.PeakRssi);
        int first = report.OffsetOf(LlrpParameterType.FirstSeenUtc);
        int last = report.OffsetOf(LlrpParameterType.LastSeenUtc);
        _firstOffset = first > 0 ? first : last;
        _lastOffset = last > 0 ? last : first;
        _countOffset = report.OffsetOf(LlrpParameterType.TagSeenCount);
        _countMask = _countOffset > 0 ? ushort.MaxValue : 0;
        _tidOffset = tidOffset;
        _tidBitCount = tidBitCount;
        _isCommon = _epcBitCount == CommonBits && tidBitCount == 0;
        _given = _rssiOffset > 0 ? ReadFields.Strength : ReadFields.None;
    }

    /// <summary>Whether reports of this layout can be read by their layout alone. The tag is of whole 16-bit words and is
    /// read in two words of eight bytes, which must lie in the report.</summary>
    internal static bool Suits(in LlrpTagReport report, int tidBitCount) =>
        report.Bytes.Length is >= LengthMin and <= LengthMax && report.EpcBitCount <= InlineBits && report.EpcBitCount % 16 == 0 && tidBitCount <= InlineBits
        && report.EpcOffset + (2 * sizeof(ulong)) <= report.Bytes.Length
        && (report.OffsetOf(LlrpParameterType.FirstSeenUtc) | report.OffsetOf(LlrpParameterType.LastSeenUtc)) != 0;

    /// <summary>Makes reads of the reports that fit a known layout, up to the first that does not, or whose values make no read: that one is to be
    /// read the other way, which says why.</summary>
    /// <param name="known">The known layouts by <see cref="PlaceOf"/>.</param>
    /// <param name="before">The layout of the report before; afterwards that of the last one read. The next address hangs on its length and on
    /// nothing that has to be looked up.</param>
    /// <param name="bytes">Begin with a report.</param>
    /// <param name="destination">Where the reads go.</param>
    /// <param name="length">How many bytes the reports that became reads have.</param>
    /// <returns>How many were made.</returns>
    internal static int Read(LlrpTemplate?[] known, ref LlrpTemplate before, ReadOnlySpan<byte> bytes, Span<TagRead> destination, out int length)
    {
        length = 0;
        int count = 0;
        while (true)
        {
            nint start = length;
            count += before.Run(ref Unsafe.Add(ref MemoryMarshal.GetReference(bytes), start), bytes.Length - start, destination[count..], out before, out nint run);
            length += (int)run;
            ReadOnlySpan<byte> rest = bytes[length..];
            if (count == destination.Length || rest.Length < Prefix || known[PlaceOf(rest)] is not { } other || ReferenceEquals(other, before._next)
                || rest.Length < other._length || !other.Fits(ref MemoryMarshal.GetReference(rest)))
            {
                return count;
            }

            before._next = other;
        }
    }

    /// <summary>Reads on as long as one layout follows another as it did before.</summary>
    private int Run(ref byte report, nint left, Span<TagRead> destination, out LlrpTemplate last, out nint length)
    {
        LlrpTemplate template = this;
        nint start = left;
        ref TagRead place = ref MemoryMarshal.GetReference(destination);
        ref TagRead end = ref Unsafe.Add(ref place, destination.Length);
        while (Unsafe.IsAddressLessThan(ref place, ref end))
        {
            LlrpTemplate next = template._next;
            if (left < next._length || !next.Fits(ref report) || !next.TryMake(ref report, ref place))
            {
                break;
            }

            template = next;
            report = ref Unsafe.Add(ref report, next._length);
            left -= next._length;
            place = ref Unsafe.Add(ref place, 1);
        }

        last = template;
        length = start - left;
        return destination.Length - (int)(Unsafe.ByteOffset(ref place, ref end) / Unsafe.SizeOf<TagRead>());
    }

    /// <summary>Where the layout of a report is kept: by the lower byte of its length.</summary>
    internal static int PlaceOf(ReadOnlySpan<byte> report) => report[Prefix - 1] & (KnownMax - 1);

    // Below, the report has the length of the pattern, and every value lies inside it: that was checked when the pattern was read.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private bool Fits(ref byte report)
    {
        nint last = _length - LengthMin;
        Vector128<byte> difference = ((Vector128.LoadUnsafe(ref report) ^ _firstPattern) & _firstMask)
            | ((Vector128.LoadUnsafe(ref report, (nuint)last) ^ _lastPattern) & _lastMask);
        if (last > LengthMin)
        {
            difference |= DifferenceBetween(ref report, last);
        }

        return difference == Vector128<byte>.Zero;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Vector128<byte> DifferenceBetween(ref byte report, nint last)
    {
        ref byte pattern = ref MemoryMarshal.GetArrayDataReference(_pattern);
        ref byte mask = ref MemoryMarshal.GetArrayDataReference(_mask);
        Vector128<byte> difference = default;
        nint i = LengthMin;
        do
        {
            difference |= (Vector128.LoadUnsafe(ref report, (nuint)i) ^ Vector128.LoadUnsafe(ref pattern, (nuint)i)) & Vector128.LoadUnsafe(ref mask, (nuint)i);
            i += LengthMin;
        }
        while (i < last);
        return difference;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private bool TryMake(ref byte report, ref TagRead read)
    {
        // Written as soon as it is known and before it is checked: a place that is not counted is nobody's.
        ulong first = LongAt(ref report, _firstOffset);
        ulong last = LongAt(ref report, _lastOffset);
        TagRead.WriteTimes(ref read, LlrpTime.TicksOf(first), LlrpTime.TicksOf(last));
        if (first > last || last >= LlrpTime.MicrosecondsEnd)
        {
            return false;
        }

        int count = WordAt(ref report, _countOffset) & _countMask;
        int strength = (sbyte)Unsafe.Add(ref report, _rssiOffset) * CentiDbmPerDbm;
        TagRead.WriteRest(ref read, count, (short)strength, Unsafe.Add(ref report, _antennaOffset), count > 0 ? _given | ReadFields.Count : _given);
        ulong high = LongAt(ref report, _epcOffset);
        ulong low = LongAt(ref report, _epcOffset + sizeof(ulong));
        if (_isCommon)
        {
            TagRead.WriteTag(ref read, high, low, CommonBits);
            return true;
        }

        TagRead.WriteTag(ref read, high, low, _epcBitCount);
        if (_tidBitCount > 0)
        {
            AddTid(ref report, ref read);
        }

        return true;
    }

    // Apart, because room for a copy of the read would be cleared on every way into the loop.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private void AddTid(ref byte report, ref TagRead read)
    {
        ReadOnlySpan<byte> words = MemoryMarshal.CreateReadOnlySpan(ref Unsafe.Add(ref report, _tidOffset), _tidBitCount >> 3);
        read = read with { Tid = Tid.FromBytes(words, _tidBitCount) };
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static ulong LongAt(ref byte report, nint offset)
    {
        ulong value = Unsafe.ReadUnaligned<ulong>(ref Unsafe.Add(ref report, offset));
        return BitConverter.IsLittleEndian ? BinaryPrimitives.ReverseEndianness(value) : value;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static int WordAt(ref byte report, nint offset)
    {
        ushort value = Unsafe.ReadUnaligned<ushort>(ref Unsafe.Add(ref report, offset));
        return BitConverter.IsLittleEndian ? BinaryPrimitives.ReverseEndianness(value) : value;
    }

    // Types, lengths, counts, and of the results of reading memory also the code and the operation; of an antenna the upper byte, which is 0 in every read.
    // Everything else is a value.
    private static byte[] MaskOf(ReadOnlySpan<byte> report)
    {
        var mask = new byte[report.Length];
        mask.AsSpan(0, Prefix).Fill(byte.MaxValue);
        var reader = new LlrpParameterReader(report, Prefix);
        while (reader.TryRead())
        {
            int more = reader.IsFixed ? (reader.Type == LlrpParameterType.AntennaId ? 1 : 0) : reader.Type switch
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
