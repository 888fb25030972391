using System;
#if NET
using System.Buffers.Binary;
using System.Runtime.Intrinsics;
#endif

namespace ToolLedger.Identifiers;

/// <summary>Hexadecimal digits to bits and back. Reads either case, writes upper case unless told otherwise.</summary>
internal static class HexText
{
    /// <summary>The value of one digit, or a value over 15.</summary>
    internal static uint Nibble(uint character)
    {
        uint digit = character - '0';
        if (digit <= 9)
        {
            return digit;
        }

        uint letter = (character | 0x20) - 'a';
        return letter <= 5 ? letter + 10 : 0xFF;
    }

    internal static byte UpperDigit(uint nibble) => (byte)(nibble + (nibble < 10 ? '0' : 'A' - 10u));

    /// <summary>Reads 1 to 16 digits, left-aligned into 64 bits.</summary>
    internal static bool TryReadWord(ReadOnlySpan<byte> digits, out ulong word)
    {
#if NET
        if (digits.Length == 16 && UseVectors)
        {
            return TryReadVector(Vector128.Create(digits), out word);
        }
#endif
        return TryReadWordPlain(digits, out word);
    }

    /// <summary>Reads 1 to 16 digits, left-aligned into 64 bits.</summary>
    internal static bool TryReadWord(ReadOnlySpan<char> digits, out ulong word)
    {
#if NET
        if (digits.Length == 16 && UseVectors)
        {
            ReadOnlySpan<ushort> units = System.Runtime.InteropServices.MemoryMarshal.Cast<char, ushort>(digits);
            return TryReadVector(
                Vector128.NarrowWithSaturation(Vector128.Create(units.Slice(0, 8)), Vector128.Create(units.Slice(8, 8))),
                out word);
        }
#endif
        return TryReadWordPlain(digits, out word);
    }

    /// <summary>The path without vectors; the tests hold both paths against each other.</summary>
    internal static bool TryReadWordPlain(ReadOnlySpan<byte> digits, out ulong word)
    {
        ulong bits = 0;
        uint bad = 0;
        for (int i = 0; i < digits.Length; i++)
        {
            uint nibble = Nibble(digits[i]);
            bad |= nibble;
            bits |= (ulong)(nibble & 15) << (60 - (4 * i));
        }

        word = bits;
        return bad <= 15;
    }

    /// <summary>The path without vectors; the tests hold both paths against each other.</summary>
    internal static bool TryReadWordPlain(ReadOnlySpan<char> digits, out ulong word)
    {
        ulong bits = 0;
        uint bad = 0;
        for (int i = 0; i < digits.Length; i++)
        {
            uint nibble = Nibble(digits[i]);
            bad |= nibble;
            bits |= (ulong)(nibble & 15) << (60 - (4 * i));
        }

        word = bits;
        return bad <= 15;
    }

    /// <summary>Writes the first digits of a left-aligned word.</summary>
    internal static void Write(ulong word, Span<byte> digits)
    {
#if NET
        if (digits.Length == 16 && UseVectors)
        {
            WriteVector(word, digits);
            return;
        }
#endif
        WritePlain(word, digits);
    }

    /// <summary>The path without vectors; the tests hold both paths against each other.</summary>
    internal static void WritePlain(ulong word, Span<byte> digits)
    {
        for (int i = 0; i < digits.Length; i++)
        {
            digits[i] = UpperDigit((uint)(word >> (60 - (4 * i))) & 15);
        }
    }

#if NET
    private static bool UseVectors => Vector128.IsHardwareAccelerated && BitConverter.IsLittleEndian;

    /// <summary>Sixteen digits at once, with portable 128-bit operations only.</summary>
    internal static bool TryReadVector(Vector128<byte> text, out ulong word)
    {
        // Digits end at 0..9, letters of either case at 10..15, everything else above 15.
        Vector128<byte> digit = Vector128.SubtractSaturate(text + Vector128.Create((byte)(0xFF - '9')), Vector128.Create((byte)6))
            - Vector128.Create((byte)0xF0);
        Vector128<byte> letter = Vector128.AddSaturate(
            (text & Vector128.Create((byte)0xDF)) - Vector128.Create((byte)'A'), Vector128.Create((byte)10));
        Vector128<byte> nibbles = Vector128.Min(digit, letter);
        if (Vector128.GreaterThanAny(nibbles, Vector128.Create((byte)15)))
        {
            return TryReadFailed(out word);
        }

        Vector128<ushort> pairs = nibbles.AsUInt16();
        Vector128<ushort> bytes = ((pairs << 4) | (pairs >>> 8)) & Vector128.Create((ushort)0xFF);
        word = BinaryPrimitives.ReverseEndianness(Vector128.Narrow(bytes, bytes).AsUInt64().ToScalar());
        return true;
    }

    private static bool TryReadFailed(out ulong word)
    {
        word = 0;
        return false;
    }

    /// <summary>Sixteen digits at once, with portable 128-bit operations only.</summary>
    internal static void WriteVector(ulong word, Span<byte> digits)
    {
        Vector128<byte> bytes = Vector128.CreateScalarUnsafe(BinaryPrimitives.ReverseEndianness(word)).AsByte();
        Vector128<ushort> wide = Vector128.WidenLower(bytes);
        Vector128<byte> nibbles = ((wide >>> 4) | ((wide & Vector128.Create((ushort)15)) << 8)).AsByte();
        Vector128<byte> letters = Vector128.GreaterThan(nibbles, Vector128.Create((byte)9)) & Vector128.Create((byte)('A' - '0' - 10));
        (nibbles + Vector128.Create((byte)'0') + letters).CopyTo(digits);
    }
#endif
}
