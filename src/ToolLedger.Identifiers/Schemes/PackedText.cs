using System;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>Strings of 7 bits and of 6 bits a character (GS1 TDS 2.3, s.14.3.2, 14.4.2 and Tables A-1, G-1).</summary>
internal static class PackedText
{
    /// <summary>Reads a field of 7-bit characters: the text, then zeros to the end of the field.</summary>
    internal static bool TryReadSeven(
        ReadOnlySpan<ulong> words, int offset, int width, EpcField field, out EpcComponent component, ref EpcFault fault)
    {
        component = default;
        int groups = width / 7;
        ulong w0 = Seven(words, offset, groups);
        ulong w1 = groups > 8 ? Seven(words, offset + 56, groups - 8) : 0;
        ulong w2 = groups > 16 ? Seven(words, offset + 112, groups - 16) : 0;
        int length = LengthOf(w0, w1, w2, groups);

        // Characters behind a zero, and the bits left over behind the last character.
        int end = offset + (7 * length);
        if (!Bits.AreZero(words, end, offset + width))
        {
            return Fail(EpcRule.ZeroAfterEnd, field, Bits.FirstSet(words, end, offset + width), 1, ref fault);
        }

        if (length == 0)
        {
            return Fail(EpcRule.NotEmpty, field, offset, 0, ref fault);
        }

        if ((BadSeven(w0, length) | BadSeven(w1, length - 8) | BadSeven(w2, length - 16)) != 0)
        {
            int bad = FirstBad(w0, w1, w2, length);
            return Fail(EpcRule.CharacterSet, field, offset + (7 * bad), Bits.Read(words, offset + (7 * bad), 7), ref fault);
        }

        component = EpcComponent.FromWords(w0, w1, w2, 0, length);
        return true;
    }

    /// <summary>Writes 7-bit characters; the rest of the field stays zero.</summary>
    internal static void WriteSeven(Span<ulong> words, int offset, in EpcComponent component)
    {
        component.Unpack(out ulong w0, out ulong w1, out ulong w2, out _);
        for (int left = component.Length; left > 0; left -= 8, offset += 56, w0 = w1, w1 = w2)
        {
            int count = Math.Min(8, left);
            Bits.Write(words, offset, 7 * count, Narrow7(w0) >> (56 - (7 * count)));
        }
    }

    /// <summary>Reads 6-bit characters up to their terminator of six zero bits, six at a time and never across a character.</summary>
    internal static bool TryReadSix(
        ReadOnlySpan<ulong> words, int bitCount, int maximum, EpcField field, ref int offset, out EpcComponent component, ref EpcFault fault)
    {
        component = default;
        Span<ulong> text = stackalloc ulong[5];
        int start = offset;
        int length = 0;
        for (int block = 0; ; block++)
        {
            int available = Math.Min(8, (bitCount - offset) / 6);
            ulong codes = available > 0 ? Six(words, offset, available) : 0;
            ulong zeros = CharacterSets.Zeros(codes);
            int count = zeros == 0 ? 8 : Math.Min(available, Bits.LeadingZeros(zeros) >> 3);
            ulong characters = count == 0 ? 0 : Widen(codes) & (ulong.MaxValue << (64 - (8 * count)));
            ulong bad = count == 0 ? 0 : CharacterSets.Outside39(characters) >> (64 - (8 * count));
            if (bad != 0)
            {
                int index = (Bits.LeadingZeros(bad) >> 3) - (8 - count);
                int allowed = Math.Min(index, maximum - length);
                return index >= maximum - length
                    ? Fail(EpcRule.MaximumLength, field, start, (ulong)maximum + 1, ref fault)
                    : Fail(EpcRule.CharacterSet, field, offset + (6 * allowed), (characters >> (56 - (8 * index))) & 0xFF, ref fault);
            }

            length += count;
            if (length > maximum)
            {
                return Fail(EpcRule.MaximumLength, field, start, (ulong)maximum + 1, ref fault);
            }

            text[block] = characters;
            offset += 6 * count;
            if (count < available)
            {
                offset += 6;
                component = EpcComponent.FromWords(text[0], text[1], text[2], text[3], length);
                return true;
            }

            if (count < 8)
            {
                return Fail(EpcRule.Terminator, field, offset, (ulong)length, ref fault);
            }
        }
    }

    /// <summary>Writes 6-bit characters and the terminator, which is zero bits.</summary>
    internal static void WriteSix(Span<ulong> words, in EpcComponent component, ref int offset)
    {
        component.Unpack(out ulong w0, out ulong w1, out ulong w2, out ulong w3);
        for (int left = component.Length; left > 0; left -= 8, w0 = w1, w1 = w2, w2 = w3)
        {
            int count = Math.Min(8, left);
            Bits.Write(words, offset, 6 * count, Narrow6(w0) >> (48 - (6 * count)));
            offset += 6 * count;
        }

        offset += 6;
    }

#if NET
    /// <summary>Writes the characters in front of a position of a text, seven bits each; the rest of the field stays zero.</summary>
    internal static void WriteSevenBefore(Span<ulong> words, int offset, ReadOnlySpan<byte> text, int end, int count)
    {
        for (int left = count; left > 0; left -= 8, end -= 8)
        {
            int width = 7 * Math.Min(8, left);
            Bits.Write(words, offset + (7 * left) - width, width, Narrow7(TextBefore.Characters(text, end, left)));
        }
    }

    /// <summary>Writes the characters in front of a position of a text, six bits each, and leaves room for the terminator.</summary>
    internal static void WriteSixBefore(Span<ulong> words, ref int offset, ReadOnlySpan<byte> text, int end, int count)
    {
        for (int left = count; left > 0; left -= 8, end -= 8)
        {
            int width = 6 * Math.Min(8, left);
            Bits.Write(words, offset + (6 * left) - width, width, Narrow6(TextBefore.Characters(text, end, left)));
        }

        offset += 6 * (count + 1);
    }
#endif

    /// <summary>The character of a six-bit code: capital letters lost their bit 40h, the others kept theirs.</summary>
    internal static uint SixToAscii(uint code) => code < 32 ? code | 0x40 : code;

    // Up to eight 7-bit characters, spread to bytes, the first one in the most significant byte.
    private static ulong Seven(ReadOnlySpan<ulong> words, int offset, int groups)
    {
        int count = Math.Min(8, groups);
        ulong bits = Bits.Read(words, offset, 7 * count) << (56 - (7 * count));
        ulong x = ((bits & 0x00FF_FFFF_F000_0000UL) << 4) | (bits & 0x0000_0000_0FFF_FFFFUL);
        x = ((x & 0x0FFF_C000_0FFF_C000UL) << 2) | (x & 0x0000_3FFF_0000_3FFFUL);
        return ((x & 0x3F80_3F80_3F80_3F80UL) << 1) | (x & 0x007F_007F_007F_007FUL);
    }

    // The way back: eight bytes to 56 bits.
    private static ulong Narrow7(ulong x)
    {
        x = ((x & 0x7F00_7F00_7F00_7F00UL) >> 1) | (x & 0x007F_007F_007F_007FUL);
        x = ((x & 0x3FFF_0000_3FFF_0000UL) >> 2) | (x & 0x0000_3FFF_0000_3FFFUL);
        return ((x & 0x0FFF_FFFF_0000_0000UL) >> 4) | (x & 0x0000_0000_0FFF_FFFFUL);
    }

    // Up to eight six-bit codes, spread to bytes, the first one in the most significant byte.
    internal static ulong Six(ReadOnlySpan<ulong> words, int offset, int count)
    {
        ulong bits = Bits.Read(words, offset, 6 * count) << (48 - (6 * count));
        ulong x = ((bits & 0x0000_FFFF_FF00_0000UL) << 8) | (bits & 0x0000_0000_00FF_FFFFUL);
        x = ((x & 0x00FF_F000_00FF_F000UL) << 4) | (x & 0x0000_0FFF_0000_0FFFUL);
        return ((x & 0x0FC0_0FC0_0FC0_0FC0UL) << 2) | (x & 0x003F_003F_003F_003FUL);
    }

    // The way back: the low six bits of eight characters to 48 bits.
    private static ulong Narrow6(ulong x)
    {
        x = ((x & 0x3F00_3F00_3F00_3F00UL) >> 2) | (x & 0x003F_003F_003F_003FUL);
        x = ((x & 0x0FFF_0000_0FFF_0000UL) >> 4) | (x & 0x0000_0FFF_0000_0FFFUL);
        return ((x & 0x00FF_FFFF_0000_0000UL) >> 8) | (x & 0x0000_0000_00FF_FFFFUL);
    }

    // Codes below 32 are letters that lost their bit 40h.
    internal static ulong Widen(ulong codes) => codes | ((~codes << 1) & (0x40 * CharacterSets.Ones));

    private static int LengthOf(ulong w0, ulong w1, ulong w2, int groups)
    {
        ulong zeros = CharacterSets.Zeros(w0);
        if (zeros != 0)
        {
            return Bits.LeadingZeros(zeros) >> 3;
        }

        zeros = CharacterSets.Zeros(w1);
        int length = zeros != 0 ? 8 + (Bits.LeadingZeros(zeros) >> 3) : 16 + (Bits.LeadingZeros(CharacterSets.Zeros(w2)) >> 3);
        return Math.Min(length, groups);
    }

    private static ulong BadSeven(ulong word, int length) => length switch
    {
        <= 0 => 0,
        >= 8 => CharacterSets.Outside82(word),
        _ => CharacterSets.Outside82(word) >> (64 - (8 * length)),
    };

    private static int FirstBad(ulong w0, ulong w1, ulong w2, int length)
    {
        for (int i = 0; i < length; i++)
        {
            ulong word = i < 8 ? w0 : i < 16 ? w1 : w2;
            if (!CharacterSets.Is82((uint)(word >> (56 - (8 * (i & 7)))) & 0xFF))
            {
                return i;
            }
        }

        return 0;
    }

    private static bool Fail(EpcRule rule, EpcField field, int position, ulong found, ref EpcFault fault)
    {
        fault = new EpcFault(rule, field, EpcPositionUnit.Bit, position, found);
        return false;
    }
}
