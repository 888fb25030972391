#if NET
using System;

namespace ToolLedger.Identifiers.Schemes;

/// <content>From the usual URI straight to bits: digits everywhere, or plain letters and digits in the serial number.</content>
internal sealed partial class Gs1Codec
{
    internal override bool TryEncodeAtOnce(
        ReadOnlySpan<byte> text, int position, uint filter, Span<ulong> words, out int used)
    {
        used = 0;
        if (HasPieces || Second is Gs1Second.SevenBit or Gs1Second.SixBit || !CharacterMap.TryMap(text, position, out CharacterMap map))
        {
            return false;
        }

        ulong firstDot = map.Dots & (~map.Dots + 1);
        ulong dots = map.Dots ^ firstDot;
        bool hasRest = Rest is not (Gs1Rest.None or Gs1Rest.Zeros);
        ulong secondDot = hasRest ? dots & (~dots + 1) : 0;
        int digits = CharacterMap.First(firstDot);
        int secondEnd = hasRest ? CharacterMap.First(secondDot) : map.Length;
        if (digits is < 6 or > 12 || (hasRest && secondDot == 0) || !HasOnly(map, firstDot, secondDot))
        {
            return false;
        }

        int prefixBits = WidthOf(12 - digits);
        words[0] = ((ulong)Header << 56) | ((ulong)filter << 53) | ((ulong)(12 - digits) << 50)
            | (TextBefore.Number16(text, position + digits, digits) << (64 - PrefixOffset - prefixBits));
        int offset = PrefixOffset + prefixBits;
        int width = SecondBits - prefixBits;
        bool fits = Second == Gs1Second.Padded
            ? TryWritePadded(text, position + secondEnd, secondEnd - digits - 1, SecondDigits - digits, words, offset, width)
            : TryWriteInteger(text, position + secondEnd, secondEnd - digits - 1, SecondDigits - digits, words, offset, width);
        offset += width;
        used = offset + RestBits;
        return fits && (!hasRest || TryWriteRest(text, map.Length - secondEnd - 1, words, offset));
    }

    private bool HasOnly(in CharacterMap map, ulong firstDot, ulong secondDot)
    {
        if (Rest != Gs1Rest.SevenBit)
        {
            return (map.Digits | firstDot | secondDot) == map.All;
        }

        // A serial number of characters may have dots.
        ulong front = secondDot - 1;
        return ((map.Digits | firstDot) & front) == front
            && (map.Digits | map.Capitals | map.Smalls | map.Dots | front) == map.All;
    }

    private static bool TryWritePadded(ReadOnlySpan<byte> text, int end, int count, int expected, Span<ulong> words, int offset, int width)
    {
        Bits.Write(words, offset, width, TextBefore.Number16(text, end, count));
        return count == expected;
    }

    private static bool TryWriteInteger(ReadOnlySpan<byte> text, int end, int count, int most, Span<ulong> words, int offset, int width)
    {
        if (count < 1 || count > Math.Min(most, EpcComponent.MaxDigits) || (count > 1 && text[end - count] == '0'))
        {
            return false;
        }

        ulong number = TextBefore.Number19(text, end, count);
        Bits.Write(words, offset, width, number);
        return number >> width == 0;
    }

    private bool TryWriteRest(ReadOnlySpan<byte> text, int count, Span<ulong> words, int offset)
    {
        if (Rest == Gs1Rest.Integer)
        {
            return TryWriteInteger(text, text.Length, count, RestDigits, words, offset, RestBits);
        }

        if (count < 1 || count > RestDigits)
        {
            return false;
        }

        if (Rest == Gs1Rest.SevenBit)
        {
            PackedText.WriteSevenBefore(words, offset, text, text.Length, count);
            return true;
        }

        Bits.Write(words, offset, RestBits, DecimalText.PowerOfTen(count) + TextBefore.Number19(text, text.Length, count));
        return true;
    }
}
#endif
