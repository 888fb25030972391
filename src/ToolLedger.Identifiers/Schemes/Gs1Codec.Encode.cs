using System;

namespace ToolLedger.Identifiers.Schemes;

/// <content>From components to bits.</content>
internal sealed partial class Gs1Codec
{
    internal override bool TryEncode(in IdentityBits bits, Span<ulong> words, out int used, ref EpcFault fault)
    {
        used = 0;
        int digits = bits.A.Length;
        int partition = 12 - digits;
        int prefixBits = WidthOf(partition);
        words[0] = ((ulong)Header << 56) | ((ulong)bits.Filter << 53) | ((ulong)partition << 50)
            | (bits.A.Number << (64 - PrefixOffset - prefixBits));
        int offset = PrefixOffset + prefixBits;
        if (!TryEncodeSecond(bits.B, digits, prefixBits, words, ref offset, ref fault))
        {
            return false;
        }

        if (HasPieces)
        {
            Bits.Write(words, offset, 7, bits.Piece);
            Bits.Write(words, offset + 7, 7, bits.Total);
            offset += 14;
        }

        return TryEncodeRest(bits.C, words, ref offset, ref fault) && SetUsed(offset, out used);
    }

    private bool TryEncodeSecond(
        in EpcComponent second, int digits, int prefixBits, Span<ulong> words, ref int offset, ref EpcFault fault)
    {
        if (Second == Gs1Second.SixBit)
        {
            PackedText.WriteSix(words, second, ref offset);
            return true;
        }

        int width = SecondBits - prefixBits;
        int start = offset;
        offset += width;
        switch (Second)
        {
            case Gs1Second.SevenBit:
                PackedText.WriteSeven(words, start, second);
                return true;
            case Gs1Second.Unpadded:
                return TryWriteNumber(second, EpcField.Reference, start, width, SecondDigits - digits, words, ref fault);
            default:
                Bits.Write(words, start, width, second.Number);
                return true;
        }
    }

    private bool TryEncodeRest(in EpcComponent rest, Span<ulong> words, ref int offset, ref EpcFault fault)
    {
        int start = offset;
        offset += RestBits;
        switch (Rest)
        {
            case Gs1Rest.None or Gs1Rest.Zeros:
                return true;
            case Gs1Rest.SevenBit:
                PackedText.WriteSeven(words, start, rest);
                return true;
            case Gs1Rest.Integer:
                return TryWriteNumber(rest, EpcField.Serial, start, RestBits, RestDigits, words, ref fault);
            default:
                return TryWriteNumericString(rest, start, words, ref fault);
        }
    }

    private bool TryWriteNumericString(in EpcComponent digits, int start, Span<ulong> words, ref EpcFault fault)
    {
        if (!digits.IsNumber)
        {
            return FailEncode(EpcRule.DecimalDigits, EpcField.Serial, FirstNonDigit(digits), ref fault);
        }

        if (digits.Length > RestDigits)
        {
            return FailEncode(EpcRule.MaximumLength, EpcField.Serial, (ulong)digits.Length, ref fault);
        }

        Bits.Write(words, start, RestBits, DecimalText.PowerOfTen(digits.Length) + digits.Number);
        return true;
    }

    private static bool TryWriteNumber(
        in EpcComponent digits, EpcField field, int start, int width, int maximum, Span<ulong> words, ref EpcFault fault)
    {
        if (!digits.IsNumber)
        {
            // Over 19 digits is a number too, only too large a one.
            ulong bad = FirstNonDigit(digits);
            return FailEncode(bad == 0 ? EpcRule.FitsBits : EpcRule.DecimalDigits, field, bad, ref fault);
        }

        if (digits.HasLeadingZero)
        {
            return FailEncode(EpcRule.NoLeadingZero, field, '0', ref fault);
        }

        if (digits.Number >> width != 0 || digits.Length > maximum)
        {
            return FailEncode(EpcRule.FitsBits, field, digits.Number, ref fault);
        }

        Bits.Write(words, start, width, digits.Number);
        return true;
    }

    private static ulong FirstNonDigit(in EpcComponent text)
    {
        for (int i = 0; i < text.Length; i++)
        {
            if (text.CharacterAt(i) is < (byte)'0' or > (byte)'9')
            {
                return text.CharacterAt(i);
            }
        }

        return 0;
    }
}
