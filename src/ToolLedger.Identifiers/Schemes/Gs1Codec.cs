using System;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>
/// The schemes that begin with header, filter, partition and company prefix (GS1 TDS 2.3, chapter 14). They differ in the
/// component behind the prefix and in what follows it.
/// </summary>
internal sealed partial class Gs1Codec : EpcCodec
{
    private const int PrefixOffset = 14;

    // Bits of the company prefix by partition 0 to 6, one byte each (the partition tables of chapter 14).
    private const ulong PrefixBits = 0x00_14_18_1B_1E_22_25_28UL;

    internal Gs1Codec(EpcScheme scheme, byte header, string name, EpcKind kind, int minimumBits, int maximumBits)
        : base(scheme, header, name, kind, 3, minimumBits, maximumBits)
    {
    }

    /// <summary>How the second component is coded.</summary>
    internal Gs1Second Second { get; set; }

    /// <summary>Bits of prefix and second component together, where the second one has a fixed width.</summary>
    internal int SecondBits { get; set; }

    /// <summary>Digits or characters of prefix and second component together.</summary>
    internal int SecondDigits { get; set; }

    /// <summary>Whether two fields of seven bits for piece and total follow.</summary>
    internal bool HasPieces { get; set; }

    /// <summary>What follows.</summary>
    internal Gs1Rest Rest { get; set; }

    /// <summary>The bits of what follows.</summary>
    internal int RestBits { get; set; }

    /// <summary>The most digits or characters of what follows.</summary>
    internal int RestDigits { get; set; }

    internal override bool TryDecode(
        ReadOnlySpan<ulong> words, int bitCount, ref IdentityBits bits, out int used, ref EpcFault fault)
    {
        used = 0;
        ulong head = words[0];
        int partition = (int)(head >> 50) & 7;
        if (partition == 7)
        {
            return Fail(EpcRule.PartitionKnown, EpcField.Partition, 11, 7, ref fault);
        }

        int prefixBits = WidthOf(partition);
        int digits = 12 - partition;
        ulong prefix = (head << PrefixOffset) >> (64 - prefixBits);
        if (prefix >= DecimalText.PowerOfTen(digits))
        {
            return Fail(EpcRule.FitsDigits, EpcField.CompanyPrefix, PrefixOffset, prefix, ref fault);
        }

        bits.Filter = (byte)((head >> 53) & 7);
        bits.A = new EpcComponent(prefix, digits);
        int offset = PrefixOffset + prefixBits;
        return TryDecodeSecond(words, bitCount, digits, prefixBits, ref offset, ref bits, ref fault)
            && (!HasPieces || TryDecodePieces(words, ref offset, ref bits, ref fault))
            && TryDecodeRest(words, bitCount, ref offset, ref bits, ref fault)
            && SetUsed(offset, out used);
    }

    internal override ComponentRule PatternRule(ComponentRule rule, int prefixLength)
    {
        if (rule.Slot == ComponentSlot.B && Second == Gs1Second.Unpadded)
        {
            int width = prefixLength == 0 ? 62 : SecondBits - WidthOf(12 - prefixLength);
            int digits = prefixLength == 0 ? EpcComponent.MaxDigits : SecondDigits - prefixLength;
            return new ComponentRule(rule.Slot, rule.Field, ComponentForm.Number, digits) { MaximumNumber = (1UL << width) - 1 };
        }

        if (rule.Slot == ComponentSlot.C && Rest == Gs1Rest.Integer)
        {
            return new ComponentRule(rule.Slot, rule.Field, ComponentForm.Number, RestDigits) { MaximumNumber = (1UL << RestBits) - 1 };
        }

        return rule.Slot == ComponentSlot.C && Rest == Gs1Rest.NumericString
            ? new ComponentRule(rule.Slot, rule.Field, ComponentForm.Digits, RestDigits)
            : rule;
    }

    internal override void Describe(ReadOnlySpan<ulong> words, int used, FieldListener listener)
    {
        int prefixBits = WidthOf((int)Bits.Read(words, 11, 3));
        int pieces = HasPieces ? 14 : 0;
        int second = used - RestBits - pieces - PrefixOffset - prefixBits;
        listener(EpcField.Header, 0, 8);
        listener(EpcField.Filter, 8, 3);
        listener(EpcField.Partition, 11, 3);
        listener(EpcField.CompanyPrefix, PrefixOffset, prefixBits);
        listener(EpcField.Reference, PrefixOffset + prefixBits, second);
        if (HasPieces)
        {
            listener(EpcField.Piece, used - RestBits - 14, 7);
            listener(EpcField.Total, used - RestBits - 7, 7);
        }

        if (RestBits > 0)
        {
            listener(Rest == Gs1Rest.Zeros ? EpcField.Reserved : EpcField.Serial, used - RestBits, RestBits);
        }
    }

    private static bool SetUsed(int offset, out int used)
    {
        used = offset;
        return true;
    }

    private static int WidthOf(int partition) => (int)(PrefixBits >> (8 * partition)) & 0xFF;

    private bool TryDecodeSecond(
        ReadOnlySpan<ulong> words, int bitCount, int digits, int prefixBits, ref int offset, ref IdentityBits bits, ref EpcFault fault)
    {
        if (Second == Gs1Second.SixBit)
        {
            int from = offset;
            return TryReadPart(words, bitCount, digits, ref offset, ref bits, from, ref fault);
        }

        int width = SecondBits - prefixBits;
        int start = offset;
        offset += width;
        if (Second == Gs1Second.SevenBit)
        {
            // Where the bits hold more characters than the key may have: 18 to 24 with the prefix (30 in all).
            return PackedText.TryReadSeven(words, start, width, EpcField.Reference, out bits.B, ref fault)
                && (bits.B.Length <= SecondDigits - digits
                    || Fail(EpcRule.MaximumLength, EpcField.Reference, start, (ulong)bits.B.Length, ref fault));
        }

        ulong number = Bits.Read(words, start, width);
        if (Second == Gs1Second.Unpadded)
        {
            int count = DecimalText.CountDigits(number);
            bits.B = new EpcComponent(number, count);
            return count <= SecondDigits - digits || Fail(EpcRule.FitsDigits, EpcField.Reference, start, number, ref fault);
        }

        int rest = SecondDigits - digits;
        if (number >= DecimalText.PowerOfTen(rest))
        {
            return Fail(rest == 0 ? EpcRule.EmptyFieldZero : EpcRule.FitsDigits, EpcField.Reference, start, number, ref fault);
        }

        bits.B = new EpcComponent(number, rest);
        return true;
    }

    private bool TryReadPart(
        ReadOnlySpan<ulong> words, int bitCount, int digits, ref int offset, ref IdentityBits bits, int from, ref EpcFault fault)
    {
        if (!PackedText.TryReadSix(words, bitCount, SecondDigits - digits, EpcField.Reference, ref offset, out bits.B, ref fault))
        {
            return false;
        }

        return bits.B.Length > 0 || Fail(EpcRule.NotEmpty, EpcField.Reference, from, 0, ref fault);
    }

    private static bool TryDecodePieces(ReadOnlySpan<ulong> words, ref int offset, ref IdentityBits bits, ref EpcFault fault)
    {
        ulong piece = Bits.Read(words, offset, 7);
        ulong total = Bits.Read(words, offset + 7, 7);
        if (piece > 99)
        {
            return Fail(EpcRule.FitsDigits, EpcField.Piece, offset, piece, ref fault);
        }

        if (total > 99)
        {
            return Fail(EpcRule.FitsDigits, EpcField.Total, offset + 7, total, ref fault);
        }

        bits.Piece = (byte)piece;
        bits.Total = (byte)total;
        offset += 14;
        return true;
    }

    private bool TryDecodeRest(
        ReadOnlySpan<ulong> words, int bitCount, ref int offset, ref IdentityBits bits, ref EpcFault fault)
    {
        int start = offset;
        offset += RestBits;
        if (offset > bitCount)
        {
            return Fail(EpcRule.EnoughBits, EpcField.Serial, start, (ulong)bitCount, ref fault);
        }

        switch (Rest)
        {
            case Gs1Rest.None:
                return true;
            case Gs1Rest.Zeros:
                ulong reserved = Bits.Read(words, start, RestBits);
                return reserved == 0 || Fail(EpcRule.ReservedZero, EpcField.Reserved, start, reserved, ref fault);
            case Gs1Rest.SevenBit:
                return PackedText.TryReadSeven(words, start, RestBits, EpcField.Serial, out bits.C, ref fault);
            case Gs1Rest.Integer:
                ulong number = Bits.Read(words, start, RestBits);
                int count = DecimalText.CountDigits(number);
                bits.C = new EpcComponent(number, count);
                return count <= RestDigits || Fail(EpcRule.FitsDigits, EpcField.Serial, start, number, ref fault);
            default:
                return TryDecodeNumericString(Bits.Read(words, start, RestBits), start, ref bits, ref fault);
        }
    }

    // TDS 2.3, s.14.3.6: the digit 1 stands in front so that leading zeros survive.
    private bool TryDecodeNumericString(ulong number, int start, ref IdentityBits bits, ref EpcFault fault)
    {
        int digits = DecimalText.CountDigits(number) - 1;
        ulong one = DecimalText.PowerOfTen(Math.Max(digits, 0));
        if (digits < 1 || number >= 2 * one)
        {
            return Fail(EpcRule.NumericStringMark, EpcField.Serial, start, number, ref fault);
        }

        bits.C = new EpcComponent(number - one, digits);
        return digits <= RestDigits || Fail(EpcRule.FitsDigits, EpcField.Serial, start, number, ref fault);
    }
}
