using System;
using System.Buffers.Binary;
#if NET
using System.Numerics;
#endif
using System.Runtime.CompilerServices;

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

        // Most texts that are no number show it in their first eight characters.
        if (CharacterSets.Digits(word0) >> (64 - (8 * Math.Min(length, 8))) != CharacterSets.Tops >> (64 - (8 * Math.Min(length, 8))))
        {
            return false;
        }

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
        for (int at = digits.Length - 1; at >= 0; at--)
        {
            digits[at] = (byte)('0' + (int)(number % 10));
            number /= 10;
        }
    }

    /// <summary>Writes the number with exactly 1 to 24 digits, zeros in front, eight digits at a time. Up to seven bytes behind
    /// the digits are overwritten.</summary>
    internal static void WriteWithRoom(ulong number, int count, Span<byte> room)
    {
        ulong high = number;
        int at = 0;
        if (count > 8)
        {
            high = number / 100_000_000;
            if (count > 16)
            {
                ulong highest = high / 100_000_000;
                at = count - 16;
                BinaryPrimitives.WriteUInt64LittleEndian(room, EightDigits((uint)highest) >> (8 * (8 - at)));
                BinaryPrimitives.WriteUInt64LittleEndian(room.Slice(at), EightDigits((uint)(high - (highest * 100_000_000))));
                at += 8;
            }
            else
            {
                at = count - 8;
                BinaryPrimitives.WriteUInt64LittleEndian(room, EightDigits((uint)high) >> (8 * (8 - at)));
            }

            number -= high * 100_000_000;
            BinaryPrimitives.WriteUInt64LittleEndian(room.Slice(at), EightDigits((uint)number));
            return;
        }

        BinaryPrimitives.WriteUInt64LittleEndian(room, EightDigits((uint)number) >> (8 * (8 - count)));
    }

    /// <summary>How many of eight characters are digits before the first that is none; the first character is the least
    /// significant byte.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static int LeadingDigits(ulong characters)
    {
        ulong values = characters ^ 0x3030303030303030UL;
        ulong others = ((values + 0x7676767676767676UL) | values) & 0x8080808080808080UL;
        return others == 0 ? 8 : TrailingZeros(others) >> 3;
    }

    /// <summary>The number that the first 1 to 8 of eight characters write.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static ulong ValueOf(ulong characters, int count)
    {
        // Zeros come in front, that is into the least significant bytes.
        return ValueOfEight((characters ^ 0x3030303030303030UL) << (64 - (8 * count)));
    }

    /// <summary>The number of eight digits of value 0 to 9, the first one in the least significant byte.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static ulong ValueOfEight(ulong digits)
    {
        digits = ((digits * 10) + (digits >> 8)) & 0x00FF00FF00FF00FFUL;
        digits = ((digits * 100) + (digits >> 16)) & 0x0000FFFF0000FFFFUL;
        return ((digits * 10_000) + (digits >> 32)) & 0xFFFFFFFFUL;
    }

    // The digits of a number below 100,000,000, the first one in the least significant byte.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static ulong EightDigits(uint number)
    {
        uint high = number / 10_000;
        ulong fours = high | ((ulong)(number - (high * 10_000)) << 32);
        ulong hundreds = ((fours * 10_486) >> 20) & 0x0000007F_0000007FUL;
        ulong pairs = hundreds | ((fours - (hundreds * 100)) << 16);
        ulong tens = ((pairs * 103) >> 10) & 0x000F000F_000F000FUL;
        return (tens | ((pairs - (tens * 10)) << 8)) + 0x3030303030303030UL;
    }

    private static int TrailingZeros(ulong word)
    {
#if NET
        return BitOperations.TrailingZeroCount(word);
#else
        int count = 0;
        while ((word & 1) == 0)
        {
            word >>= 1;
            count++;
        }

        return count;
#endif
    }
}
