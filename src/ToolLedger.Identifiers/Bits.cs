using System;
using System.Runtime.CompilerServices;

namespace ToolLedger.Identifiers;

/// <summary>Fields of up to 64 bits in left-aligned 64-bit words. There is always one word more than the bits need.</summary>
internal static class Bits
{
    /// <summary>Words that hold every EPC that is decoded (496 bits) and one more.</summary>
    internal const int Words = 10;

    /// <summary>More bits than a tag's length field can count (31 words of 16 bits) are kept, shown raw, never decoded.</summary>
    internal const int MaximumDecoded = 496;

    /// <summary>Reads 1 to 64 bits.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static ulong Read(ReadOnlySpan<ulong> words, int offset, int count)
    {
        int index = offset >> 6;
        int shift = offset & 63;
        ulong left = words[index] << shift;
        ulong right = (words[index + 1] >> 1) >> (63 - shift);
        return (left | right) >> (64 - count);
    }

    /// <summary>Writes 1 to 64 bits into words that are zero there.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static void Write(Span<ulong> words, int offset, int count, ulong value)
    {
        int index = offset >> 6;
        int shift = offset & 63;
        ulong aligned = value << (64 - count);
        words[index] |= aligned >> shift;
        words[index + 1] |= (aligned << 1) << (63 - shift);
    }

    /// <summary>Whether all bits from an offset up to another are zero.</summary>
    internal static bool AreZero(ReadOnlySpan<ulong> words, int from, int to)
    {
        while (from < to)
        {
            int count = Math.Min(64, to - from);
            if (Read(words, from, count) != 0)
            {
                return false;
            }

            from += count;
        }

        return true;
    }

    /// <summary>The number of zero bits in front of the first set bit; 64 for zero.</summary>
    internal static int LeadingZeros(ulong word)
    {
#if NET
        return System.Numerics.BitOperations.LeadingZeroCount(word);
#else
        int count = 0;
        while (count < 64 && (word & 0x8000000000000000UL) == 0)
        {
            word <<= 1;
            count++;
        }

        return count;
#endif
    }

    /// <summary>The position of the first bit that is set, or <paramref name="to"/>.</summary>
    internal static int FirstSet(ReadOnlySpan<ulong> words, int from, int to)
    {
        while (from < to && Read(words, from, 1) == 0)
        {
            from++;
        }

        return from;
    }
}
