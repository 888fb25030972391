using System;
using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace ToolLedger.Interchange;

/// <summary>Digits of UTF-8 text to numbers, eight or sixteen at once. The caller has made sure that so many bytes may be read.</summary>
/// <remarks>Right on little-endian machines only; others take the careful way (<see cref="IsSupported"/>).</remarks>
internal static class DigitText
{
    private const ulong Zeros = 0x3030_3030_3030_3030;
    private const ulong Tops = 0x8080_8080_8080_8080;
    private const ulong BelowTop = 0x7F7F_7F7F_7F7F_7F7F;

    // Added to a byte below 128, reaches the top bit from ten on.
    private const ulong TenToTop = 0x7676_7676_7676_7676;

    // "00:00:00" with its colons.
    private const ulong Clock = 0x3030_3A30_303A_3030;
    private const ulong ClockColons = 0x0000_FF00_00FF_0000;

    // "00.00", its digits and its point.
    private const ulong FourDigits = 0x0000_0030_302E_3030;
    private const ulong FourTops = 0x0000_0080_8000_8080;
    private const ulong FourPoint = 0x0000_0000_00FF_0000;

    /// <summary>Instead of a place: it cannot be read this way. Places are handed on by value, because one that can be changed from elsewhere is kept in memory.</summary>
    internal const int No = -1;

    internal static bool IsSupported => BitConverter.IsLittleEndian && Vector128.IsHardwareAccelerated;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static ulong Load(ref byte text, nint at) => Unsafe.ReadUnaligned<ulong>(ref Unsafe.Add(ref text, at));

    /// <summary>How many of eight bytes are digits before the first that is none, and their values.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static int CountDigits(ulong eight, out ulong values)
    {
        values = eight ^ Zeros;
        ulong others = (((values & BelowTop) + TenToTop) | values) & Tops;
        return BitOperations.TrailingZeroCount(others) >> 3;
    }

    /// <summary>The number that eight values of digits make, the first in the lowest byte.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static uint Combine(ulong values)
    {
        values = (values * 10) + (values >> 8);
        return (uint)((((values & 0x0000_00FF_0000_00FF) * 0x000F_4240_0000_0064) + (((values >> 16) & 0x0000_00FF_0000_00FF) * 0x0000_2710_0000_0001)) >> 32);
    }

    /// <summary>Reads a whole number of 1 to 15 digits without a leading zero. Reads 16 bytes.</summary>
    /// <returns>The place behind it, or <see cref="No"/>.</returns>
    internal static nint ReadNumber(ref byte text, nint at, out ulong number)
    {
        ulong eight = Load(ref text, at);
        int count = CountDigits(eight, out ulong values);
        number = 0;
        if (count == 0 || ((byte)eight == '0' && count > 1))
        {
            return No;
        }

        number = Combine(values << (64 - (8 * count)));
        at += count;
        if (count < 8)
        {
            return at;
        }

        count = CountDigits(Load(ref text, at), out values);
        if (count is > 0 and < 8)
        {
            ulong scale = 1;
            for (int i = 0; i < count; i++)
            {
                scale *= 10;
            }

            number = (number * scale) + Combine(values << (64 - (8 * count)));
        }

        return count < 8 ? at + count : No;
    }

    /// <summary>Reads a time of day, for example 15:55:01, as seconds.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static bool TryReadClock(ulong eight, out uint seconds)
    {
        ulong values = eight ^ Clock;
        ulong others = (((values & BelowTop) + TenToTop) | values) & Tops;

        // In pairs: each ten at the place of its first digit.
        ulong pairs = (values * 10) + (values >> 8);
        uint hour = (byte)pairs;
        uint minute = (byte)(pairs >> 24);
        uint second = (byte)(pairs >> 48);
        seconds = (((hour * 60) + minute) * 60) + second;
        return (others | (values & ClockColons)) == 0 && hour < 24 && minute < 60 && second < 60;
    }

    /// <summary>Reads a number like 61.50, of two digits, a point and two digits, without a leading zero, as 6150.</summary>
    /// <returns>Whether the first five bytes are that.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static bool TryReadFourDigits(ulong eight, out int hundredths)
    {
        ulong values = eight ^ FourDigits;
        ulong others = (((values & BelowTop) + TenToTop) | values) & FourTops;
        ulong pairs = (values * 10) + (values >> 8);
        hundredths = ((int)(byte)pairs * 100) + (byte)(pairs >> 24);
        return (others | (values & FourPoint)) == 0 && (byte)values != 0;
    }

    /// <summary>Reads hexadecimal digits of either case, up to 32, as bits from the left of two words. Reads 32 bytes.</summary>
    /// <returns>How many digits stand before the first byte that is none; the bits behind them are anything.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static int ReadHex(ref byte text, nint at, out ulong high, out ulong low)
    {
        Vector256<byte> digits = Vector256.LoadUnsafe(ref text, (nuint)at);

        // Digits end at 0 to 9, letters of either case at 10 to 15, everything else above 15.
        Vector256<byte> digit = Vector256.SubtractSaturate(digits + Vector256.Create((byte)(0xFF - '9')), Vector256.Create((byte)6)) - Vector256.Create((byte)0xF0);
        Vector256<byte> letter = Vector256.AddSaturate((digits & Vector256.Create((byte)0xDF)) - Vector256.Create((byte)'A'), Vector256.Create((byte)10));
        Vector256<byte> values = Vector256.Min(digit, letter);
        uint others = Vector256.GreaterThan(values, Vector256.Create((byte)15)).ExtractMostSignificantBits();
        Vector256<ushort> pairs = (values & Vector256.Create((byte)15)).AsUInt16();
        Vector256<ushort> bytes = ((pairs << 4) | (pairs >>> 8)) & Vector256.Create((ushort)0xFF);
        Vector128<ulong> words = Vector128.Narrow(bytes.GetLower(), bytes.GetUpper()).AsUInt64();
        high = System.Buffers.Binary.BinaryPrimitives.ReverseEndianness(words.GetElement(0));
        low = System.Buffers.Binary.BinaryPrimitives.ReverseEndianness(words.GetElement(1));
        return BitOperations.TrailingZeroCount(others);
    }
}
