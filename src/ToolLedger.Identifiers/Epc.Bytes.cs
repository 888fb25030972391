using System;
using System.Buffers.Binary;
using System.Runtime.CompilerServices;

namespace ToolLedger.Identifiers;

/// <content>Bytes and 16-bit words in and out.</content>
public readonly partial struct Epc
{
    /// <summary>Takes the first <paramref name="bitCount"/> bits of the bytes, the most significant bit of each byte
    /// first. Bits behind the count are ignored.</summary>
    /// <param name="bytes">The bytes.</param>
    /// <param name="bitCount">How many bits count: 0 to 65,535 and at most 8 for each byte.</param>
    /// <returns>The value.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The bit count is out of range.</exception>
    public static Epc FromBytes(ReadOnlySpan<byte> bytes, int bitCount) =>
        TryFromBytes(bytes, bitCount, out Epc epc)
            ? epc
            : throw new ArgumentOutOfRangeException(
                nameof(bitCount), bitCount, "The bit count must be 0 to 65535 and at most 8 bits for each byte given.");

    /// <summary>Takes the first <paramref name="bitCount"/> bits of the bytes, without an exception.</summary>
    /// <param name="bytes">The bytes.</param>
    /// <param name="bitCount">How many bits count: 0 to 65,535 and at most 8 for each byte.</param>
    /// <param name="epc">The value, or the empty value when the answer is <see langword="false"/>.</param>
    /// <returns>Whether the bit count was in range.</returns>
    public static bool TryFromBytes(ReadOnlySpan<byte> bytes, int bitCount, out Epc epc)
    {
        if ((uint)bitCount > MaxBitCount || bitCount > (long)bytes.Length * 8)
        {
            epc = default;
            return false;
        }

        epc = FromTrustedBytes(bytes, bitCount);
        return true;
    }

    /// <summary>Takes 16-bit words as a reader reports them, first word first.</summary>
    /// <param name="words">The words: at most 4,095.</param>
    /// <returns>The value, of 16 bits for each word.</returns>
    /// <exception cref="ArgumentException">There are more than 4,095 words.</exception>
    public static Epc FromWords(ReadOnlySpan<ushort> words)
    {
        if (words.Length > MaxBitCount / 16)
        {
            throw new ArgumentException("An EPC has at most 4095 words of 16 bits.", nameof(words));
        }

        int bitCount = words.Length * 16;
        ulong[]? tail = bitCount > InlineBits ? new ulong[(bitCount - InlineBits + 63) / 64] : null;
        ulong high = 0;
        ulong low = 0;
        for (int i = 0; i < words.Length; i++)
        {
            ulong bits = (ulong)words[i] << (48 - (16 * (i & 3)));
            switch (i >> 2)
            {
                case 0: high |= bits; break;
                case 1: low |= bits; break;
                default: tail![(i >> 2) - 2] |= bits; break;
            }
        }

        return new Epc(high, low, tail, bitCount);
    }

    /// <summary>Puts together what <see cref="TryGetWords"/> took apart; allocates nothing.</summary>
    /// <param name="first">Bits 0 to 63, the first one in the most significant place.</param>
    /// <param name="second">Bits 64 to 127 in the same way.</param>
    /// <param name="bitCount">How many bits count, 0 to 128; those behind are ignored.</param>
    /// <returns>The value.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The bit count is out of range.</exception>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Epc FromWords(ulong first, ulong second, int bitCount)
    {
        if ((uint)bitCount > InlineBits)
        {
            ThrowOverTwoWords(bitCount);
        }

        // A shift by 64 is one by 0 in C#, so the borders are told apart.
        first = bitCount >= 64 ? first : bitCount == 0 ? 0 : first & ~(ulong.MaxValue >> bitCount);
        second = bitCount == InlineBits ? second : bitCount <= 64 ? 0 : second & ~(ulong.MaxValue >> (bitCount - 64));
        return new Epc(first, second, null, bitCount);
    }

    /// <summary>Writes the bits, the last byte padded with zero bits.</summary>
    /// <param name="destination">Where to write; at least <see cref="ByteCount"/> bytes.</param>
    /// <param name="bytesWritten">How many bytes were written; 0 when the answer is <see langword="false"/>.</param>
    /// <returns>Whether there was room.</returns>
    public bool TryWriteBytes(Span<byte> destination, out int bytesWritten)
    {
        int count = ByteCount;
        if (destination.Length < count)
        {
            bytesWritten = 0;
            return false;
        }

        for (int i = 0, at = 0; at < count; i++, at += 8)
        {
            ulong word = WordAt(i);
            if (count - at >= 8)
            {
                BinaryPrimitives.WriteUInt64BigEndian(destination.Slice(at), word);
            }
            else
            {
                WriteFirstBytes(destination.Slice(at, count - at), word);
            }
        }

        bytesWritten = count;
        return true;
    }

    /// <summary>Writes the bits as 16-bit words, the last one padded with zero bits.</summary>
    /// <param name="destination">Where to write; one word for every 16 bits begun.</param>
    /// <param name="wordsWritten">How many words were written; 0 when the answer is <see langword="false"/>.</param>
    /// <returns>Whether there was room.</returns>
    public bool TryWriteWords(Span<ushort> destination, out int wordsWritten)
    {
        int count = (_bitCount + 15) / 16;
        if (destination.Length < count)
        {
            wordsWritten = 0;
            return false;
        }

        for (int i = 0; i < count; i++)
        {
            destination[i] = (ushort)(WordAt(i >> 2) >> (48 - (16 * (i & 3))));
        }

        wordsWritten = count;
        return true;
    }

    /// <summary>Bits 64 x index and up, left-aligned; zero behind the last bit.</summary>
    internal ulong WordAt(int index) => index switch
    {
        0 => _high,
        1 => _low,
        _ => _tail is not null && index - 2 < _tail.Length ? _tail[index - 2] : 0,
    };

    internal static Epc FromTrustedBytes(ReadOnlySpan<byte> bytes, int bitCount)
    {
        ulong high = ReadWord(bytes, 0, bitCount);
        ulong low = ReadWord(bytes, 8, bitCount);
        if (bitCount <= InlineBits)
        {
            return new Epc(high, low, null, bitCount);
        }

        var tail = new ulong[(bitCount - InlineBits + 63) / 64];
        for (int i = 0; i < tail.Length; i++)
        {
            tail[i] = ReadWord(bytes, 16 + (8 * i), bitCount);
        }

        return new Epc(high, low, tail, bitCount);
    }

    // Eight bytes from the offset on, with everything behind bitCount as zero.
    private static ulong ReadWord(ReadOnlySpan<byte> bytes, int offset, int bitCount)
    {
        int bits = bitCount - (offset * 8);
        if (bits <= 0)
        {
            return 0;
        }

        ulong word;
        if (bytes.Length - offset >= 8)
        {
            word = BinaryPrimitives.ReadUInt64BigEndian(bytes.Slice(offset));
        }
        else
        {
            word = 0;
            for (int i = offset; i < bytes.Length; i++)
            {
                word |= (ulong)bytes[i] << (56 - (8 * (i - offset)));
            }
        }

        return bits >= 64 ? word : word & ~(ulong.MaxValue >> bits);
    }

    private static void ThrowOverTwoWords(int bitCount) =>
        throw new ArgumentOutOfRangeException(nameof(bitCount), bitCount, "Two words hold 0 to 128 bits.");

    private static void WriteFirstBytes(Span<byte> destination, ulong word)
    {
        for (int i = 0; i < destination.Length; i++)
        {
            destination[i] = (byte)(word >> (56 - (8 * i)));
        }
    }
}
