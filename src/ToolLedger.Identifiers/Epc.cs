using System;
using System.Runtime.CompilerServices;

namespace ToolLedger.Identifiers;

/// <summary>
/// The bits of a tag's EPC memory exactly as a reader reported them: 0 to 65,535 bits, the first bit on the tag first.
/// </summary>
/// <remarks>
/// <para>The value is an identity, not an interpretation: two values are equal when their bits and bit counts are equal,
/// whether or not the bits decode to a known scheme. The default value has no bits ("empty").</para>
/// <para>Up to 128 bits are held in the value itself; longer ones share one array that is never changed. Bits behind the
/// bit count are always zero, so they never take part in a comparison.</para>
/// <para>Immutable, and therefore safe for use by any number of threads.</para>
/// </remarks>
public readonly partial struct Epc : IEquatable<Epc>, IComparable<Epc>, IComparable, IFormattable
#if NET
    , ISpanFormattable, IUtf8SpanFormattable, ISpanParsable<Epc>, IUtf8SpanParsable<Epc>
#endif
{
    /// <summary>The largest number of bits that a value can hold: 65,535.</summary>
    public const int MaxBitCount = 65_535;

    internal const int InlineBits = 128;

    // Left-aligned: bit 0 of the EPC is the most significant bit of _high. The tail holds bits 128 and up the same way.
    private readonly ulong _high;
    private readonly ulong _low;
    private readonly ulong[]? _tail;
    private readonly int _bitCount;

    // Trusted: the caller has masked the bits behind bitCount, and tail has exactly the words that bitCount needs.
    internal Epc(ulong high, ulong low, ulong[]? tail, int bitCount)
    {
        _high = high;
        _low = low;
        _tail = tail;
        _bitCount = bitCount;
    }

    /// <summary>The number of bits, 0 to 65,535. Zero for the default value.</summary>
    public int BitCount => _bitCount;

    /// <summary>Whether there are no bits at all, as in the default value.</summary>
    public bool IsEmpty => _bitCount == 0;

    /// <summary>The number of bytes that hold the bits, the last one padded with zero bits: 0 to 8,192.</summary>
    public int ByteCount => (_bitCount + 7) >> 3;

    /// <summary>Takes the bits out as two words, for tables that keep many of them.</summary>
    /// <param name="first">Bits 0 to 63, the first one in the most significant place, zeros behind the last.</param>
    /// <param name="second">Bits 64 to 127 in the same way.</param>
    /// <returns>Whether these are all bits: false for more than 128 of them.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public bool TryGetWords(out ulong first, out ulong second)
    {
        first = _high;
        second = _low;
        return _bitCount <= InlineBits;
    }

    /// <summary>The first 64 bits, left-aligned.</summary>
    internal ulong High => _high;

    /// <summary>Bits 64 to 127, left-aligned.</summary>
    internal ulong Low => _low;

    /// <summary>
    /// The same bits padded with zero bits to whole 16-bit words, as a tag answers them. A 198-bit EPC and the 208 bits
    /// that its tag backscatters become equal by this.
    /// </summary>
    /// <returns>The padded value; the value itself when it already ends on a word, or when padding would pass
    /// <see cref="MaxBitCount"/>.</returns>
    public Epc ToWholeWords()
    {
        int padded = (_bitCount + 15) & ~15;
        if (padded == _bitCount || padded > MaxBitCount)
        {
            return this;
        }

        // Bits behind the count are zero already. Only the number of tail words can change, and it cannot:
        // 64 is a multiple of 16.
        return new Epc(_high, _low, _tail, padded);
    }

    /// <summary>Whether both values hold the same bits.</summary>
    /// <param name="other">The other value.</param>
    /// <returns><see langword="true"/> when bits and bit counts are equal.</returns>
    public bool Equals(Epc other) =>
        _high == other._high && _low == other._low && _bitCount == other._bitCount
        && (_bitCount <= InlineBits || TailEquals(_tail!, other._tail!));

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is Epc other && Equals(other);

    /// <summary>A hash of bits and bit count. It differs from process to process: never store it.</summary>
    /// <returns>The hash.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public override int GetHashCode()
    {
        ulong hash = EpcHash.Mix(_high, _low, _bitCount);
        return _bitCount <= InlineBits ? (int)hash : EpcHash.Fold(hash, _tail!);
    }

    /// <summary>Compares bit by bit from the first bit on; where one value is the beginning of the other, the shorter
    /// one comes first.</summary>
    /// <param name="other">The other value.</param>
    /// <returns>Less than zero, zero or more than zero.</returns>
    public int CompareTo(Epc other)
    {
        int order = _high.CompareTo(other._high);
        order = order != 0 ? order : _low.CompareTo(other._low);
        order = order != 0 ? order : CompareTails(_tail, other._tail);
        return order != 0 ? order : _bitCount.CompareTo(other._bitCount);
    }

    /// <inheritdoc/>
    public int CompareTo(object? obj) => obj switch
    {
        null => 1,
        Epc other => CompareTo(other),
        _ => throw new ArgumentException("The other value must be an Epc.", nameof(obj)),
    };

    /// <summary>Whether both values hold the same bits.</summary>
    /// <param name="left">One value.</param>
    /// <param name="right">The other value.</param>
    /// <returns>The answer.</returns>
    public static bool operator ==(Epc left, Epc right) => left.Equals(right);

    /// <summary>Whether the values differ in any bit or in the bit count.</summary>
    /// <param name="left">One value.</param>
    /// <param name="right">The other value.</param>
    /// <returns>The answer.</returns>
    public static bool operator !=(Epc left, Epc right) => !left.Equals(right);

    /// <summary>Whether the left value comes first in the order of <see cref="CompareTo(Epc)"/>.</summary>
    /// <param name="left">One value.</param>
    /// <param name="right">The other value.</param>
    /// <returns>The answer.</returns>
    public static bool operator <(Epc left, Epc right) => left.CompareTo(right) < 0;

    /// <summary>Whether the right value comes first in the order of <see cref="CompareTo(Epc)"/>.</summary>
    /// <param name="left">One value.</param>
    /// <param name="right">The other value.</param>
    /// <returns>The answer.</returns>
    public static bool operator >(Epc left, Epc right) => left.CompareTo(right) > 0;

    /// <summary>Whether the left value comes first or is equal in the order of <see cref="CompareTo(Epc)"/>.</summary>
    /// <param name="left">One value.</param>
    /// <param name="right">The other value.</param>
    /// <returns>The answer.</returns>
    public static bool operator <=(Epc left, Epc right) => left.CompareTo(right) <= 0;

    /// <summary>Whether the right value comes first or is equal in the order of <see cref="CompareTo(Epc)"/>.</summary>
    /// <param name="left">One value.</param>
    /// <param name="right">The other value.</param>
    /// <returns>The answer.</returns>
    public static bool operator >=(Epc left, Epc right) => left.CompareTo(right) >= 0;

    private static bool TailEquals(ulong[] left, ulong[] right) =>
        ReferenceEquals(left, right) || left.AsSpan().SequenceEqual(right);

    private static int CompareTails(ulong[]? left, ulong[]? right)
    {
        int leftLength = left?.Length ?? 0;
        int rightLength = right?.Length ?? 0;
        for (int i = 0; i < leftLength && i < rightLength; i++)
        {
            int order = left![i].CompareTo(right![i]);
            if (order != 0)
            {
                return order;
            }
        }

        // A longer tail comes later even where its further words are zero: its bit count is larger too.
        return leftLength.CompareTo(rightLength);
    }
}
