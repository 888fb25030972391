using System;
#if NET
using System.Numerics;
#endif

namespace ToolLedger.Identifiers;

/// <summary>Decimal digits to numbers and back.</summary>
internal static class DecimalText
{
    private static readonly ulong[] Powers =
    [
        1, 10, 100, 1_000, 10_000, 100_000, 1_000_000, 10_000_000, 100_000_000, 1_000_000_000, 10_000_000_000,
        100_000_000_000, 1_000_000_000_000, 10_000_000_000_000, 100_000_000_000_000, 1_000_000_000_000_000,
        10_000_000_000_000_000, 100_000_000_000_000_000, 1_000_000_000_000_000_000, 10_000_000_000_000_000_000,
    ];

    private static ReadOnlySpan<byte> Pairs =>
        "00010203040506070809101112131415161718192021222324252627282930313233343536373839404142434445464748495051525354555657585960616263646566676869707172737475767778798081828384858687888990919293949596979899"u8;

    /// <summary>10 to the power of 0 to 19.</summary>
    internal static ulong PowerOfTen(int exponent) => Powers[exponent];

    /// <summary>The number of decimal digits, 1 for zero.</summary>
    internal static int CountDigits(ulong number)
    {
#if NET
        // 1233 / 4096 is a little over log10(2).
        int guess = ((64 - BitOperations.LeadingZeroCount(number | 1)) * 1233) >> 12;
        return guess + (number >= Powers[guess] ? 1 : 0) + (number == 0 ? 1 : 0);
#else
        int count = 1;
        while (count < 20 && number >= Powers[count])
        {
            count++;
        }

        return count;
#endif
    }

    /// <summary>Reads 1 to 19 digits and nothing else.</summary>
    internal static bool TryRead(ReadOnlySpan<byte> digits, out ulong number)
    {
        ulong value = 0;
        foreach (byte character in digits)
        {
            uint digit = (uint)character - '0';
            if (digit > 9)
            {
                number = 0;
                return false;
            }

            value = (value * 10) + digit;
        }

        number = value;
        return true;
    }

    /// <summary>Reads 1 to 19 characters packed with the first one in the most significant byte.</summary>
    internal static bool TryReadPacked(ulong word0, ulong word1, ulong word2, int length, out ulong number)
    {
        number = 0;
        ulong value = 0;
        for (int i = 0; i < length; i++)
        {
            ulong word = i < 8 ? word0 : i < 16 ? word1 : word2;
            uint digit = ((uint)(word >> (56 - (8 * (i & 7)))) & 0xFF) - '0';
            if (digit > 9)
            {
                return false;
            }

            value = (value * 10) + digit;
        }

        number = value;
        return true;
    }

    /// <summary>Writes the number with exactly that many digits, zeros in front.</summary>
    internal static void Write(ulong number, Span<byte> digits)
    {
        int at = digits.Length;
        while (at >= 2)
        {
            ulong rest = number / 100;
            int pair = (int)(number - (rest * 100)) * 2;
            number = rest;
            at -= 2;
            digits[at + 1] = Pairs[pair + 1];
            digits[at] = Pairs[pair];
        }

        if (at == 1)
        {
            digits[0] = (byte)('0' + (int)(number % 10));
        }
    }
}
