using System;

namespace ToolLedger.Identifiers;

/// <summary>
/// The bits of a tag's TID memory (Gen2 bank 10) as a reader reported them: 0 to 2,048 bits. It says which chip answers,
/// not what the chip is fixed to.
/// </summary>
/// <remarks>The default value has no bits ("empty"). Immutable, and therefore safe for use by any number of threads.</remarks>
public readonly partial struct Tid : IEquatable<Tid>
{
    /// <summary>The largest number of bits that a value can hold: 2,048.</summary>
    public const int MaxBitCount = 2_048;

    private readonly Epc _bits;

    private Tid(Epc bits) => _bits = bits;

    /// <summary>The number of bits, 0 to 2,048. Zero for the default value.</summary>
    public int BitCount => _bits.BitCount;

    /// <summary>Whether there are no bits at all, as in the default value.</summary>
    public bool IsEmpty => _bits.IsEmpty;

    /// <summary>Takes the first <paramref name="bitCount"/> bits of the bytes, the most significant bit of each byte first.</summary>
    /// <param name="bytes">The bytes.</param>
    /// <param name="bitCount">How many bits count: 0 to 2,048 and at most 8 for each byte.</param>
    /// <returns>The value.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The bit count is out of range.</exception>
    public static Tid FromBytes(ReadOnlySpan<byte> bytes, int bitCount) =>
        bitCount <= MaxBitCount && Epc.TryFromBytes(bytes, bitCount, out Epc bits)
            ? new Tid(bits)
            : throw new ArgumentOutOfRangeException(
                nameof(bitCount), bitCount, "The bit count must be 0 to 2048 and at most 8 bits for each byte given.");

    /// <summary>Reads hexadecimal digits of either case, four bits each.</summary>
    /// <param name="hex">The digits, without prefix, separators or white space: at most 512.</param>
    /// <returns>The value; empty text gives the empty value.</returns>
    /// <exception cref="ArgumentNullException">The text is <see langword="null"/>.</exception>
    /// <exception cref="FormatException">A character is not a hexadecimal digit, or there are over 512 of them.</exception>
    public static Tid Parse(string hex)
    {
        _ = hex ?? throw new ArgumentNullException(nameof(hex));
        return hex.Length <= MaxBitCount / 4
            ? new Tid(Epc.Parse(hex))
            : throw new FormatException("A TID has at most 512 hexadecimal digits.");
    }

    /// <summary>Reads hexadecimal digits of either case, without an exception.</summary>
    /// <param name="hex">The digits, without prefix, separators or white space: at most 512.</param>
    /// <param name="tid">The value, or the empty value when the answer is <see langword="false"/>.</param>
    /// <returns>Whether every character was a digit and the value is not too long.</returns>
    public static bool TryParse(ReadOnlySpan<char> hex, out Tid tid)
    {
        if (hex.Length <= MaxBitCount / 4 && Epc.TryParse(hex, out Epc bits))
        {
            tid = new Tid(bits);
            return true;
        }

        tid = default;
        return false;
    }

    /// <summary>Writes the bits, the last byte padded with zero bits.</summary>
    /// <param name="destination">Where to write; one byte for every eight bits begun.</param>
    /// <param name="bytesWritten">How many bytes were written; 0 when the answer is <see langword="false"/>.</param>
    /// <returns>Whether there was room.</returns>
    public bool TryWriteBytes(Span<byte> destination, out int bytesWritten) =>
        _bits.TryWriteBytes(destination, out bytesWritten);

    /// <summary>The bits as upper-case hexadecimal digits, the last one padded with zero bits.</summary>
    /// <returns>The digits; empty text for the empty value.</returns>
    public override string ToString() => _bits.ToString();

    /// <summary>Whether both values hold the same bits.</summary>
    /// <param name="other">The other value.</param>
    /// <returns>The answer.</returns>
    public bool Equals(Tid other) => _bits.Equals(other._bits);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is Tid other && Equals(other);

    /// <summary>A hash of the bits. It differs from process to process: never store it.</summary>
    /// <returns>The hash.</returns>
    public override int GetHashCode() => _bits.GetHashCode();

    /// <summary>Whether both values hold the same bits.</summary>
    /// <param name="left">One value.</param>
    /// <param name="right">The other value.</param>
    /// <returns>The answer.</returns>
    public static bool operator ==(Tid left, Tid right) => left.Equals(right);

    /// <summary>Whether the values differ in any bit or in the bit count.</summary>
    /// <param name="left">One value.</param>
    /// <param name="right">The other value.</param>
    /// <returns>The answer.</returns>
    public static bool operator !=(Tid left, Tid right) => !left.Equals(right);
}
