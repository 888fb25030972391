using System;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>
/// ADI-var: filter of six bits, CAGE code or DoDAAC, part number, serial number, each in six-bit characters
/// (GS1 TDS 2.3, s.14.6.14 and s.6.3.17).
/// </summary>
internal sealed partial class AdiVarScheme : EpcCodec
{
    internal static readonly EpcCodec Codec = new AdiVarScheme();

    private const int CageOffset = 14;
    private const int PartOffset = 50;
    private const int MaximumPart = 32;
    private const int MaximumSerial = 30;

    // Six bits of a space: in front of a code of five characters.
    private const uint Space = 0x20;

    private AdiVarScheme()
        : base(EpcScheme.AdiVar, 0x3B, "adi-var", EpcKind.Adi, filterBits: 6, minimumBits: 68, maximumBits: 434)
    {
    }

    internal override bool TryDecode(
        ReadOnlySpan<ulong> words, int bitCount, ref IdentityBits bits, out int used, ref EpcFault fault)
    {
        used = 0;
        bits.Filter = (byte)Bits.Read(words, 8, 6);
        int offset = PartOffset;
        if (!TryReadCage(words, ref bits, ref fault)
            || !PackedText.TryReadSix(words, bitCount, MaximumPart, EpcField.PartNumber, ref offset, out bits.B, ref fault))
        {
            return false;
        }

        int mark = IndexOfMark(bits.B, 0);
        if (mark >= 0)
        {
            return Fail(EpcRule.CharacterSet, EpcField.PartNumber, PartOffset + (6 * mark), '#', ref fault);
        }

        int start = offset;
        if (!PackedText.TryReadSix(words, bitCount, MaximumSerial, EpcField.Serial, ref offset, out bits.C, ref fault))
        {
            return false;
        }

        used = offset;
        return AcceptsSerial(bits.C, start, ref fault);
    }

    internal override bool TryEncode(in IdentityBits bits, Span<ulong> words, out int used, ref EpcFault fault)
    {
        Bits.Write(words, 0, 8, Header);
        Bits.Write(words, 8, 6, bits.Filter);
        int from = 6 - bits.A.Length;
        if (from == 1)
        {
            Bits.Write(words, CageOffset, 6, Space);
        }

        int offset = CageOffset + (6 * from);
        PackedText.WriteSix(words, bits.A, ref offset);
        offset = PartOffset;
        PackedText.WriteSix(words, bits.B, ref offset);
        PackedText.WriteSix(words, bits.C, ref offset);
        used = offset;
        return true;
    }

    internal override void Describe(ReadOnlySpan<ulong> words, int used, FieldListener listener)
    {
        int offset = PartOffset;
        while (Bits.Read(words, offset, 6) != 0)
        {
            offset += 6;
        }

        listener(EpcField.Header, 0, 8);
        listener(EpcField.Filter, 8, 6);
        listener(EpcField.Cage, CageOffset, 36);
        listener(EpcField.PartNumber, PartOffset, offset + 6 - PartOffset);
        listener(EpcField.Serial, offset + 6, used - offset - 6);
    }

    private static bool TryReadCage(ReadOnlySpan<ulong> words, ref IdentityBits bits, ref EpcFault fault)
    {
        ulong codes = PackedText.Six(words, CageOffset, 6);
        int from = codes >> 56 == Space ? 1 : 0;
        int length = 6 - from;
        ulong text = PackedText.Widen(codes) << (8 * from);
        ulong bad = CharacterSets.OutsideCage(text) >> (64 - (8 * length));
        if (bad != 0)
        {
            int index = from + (Bits.LeadingZeros(bad) >> 3) - (8 - length);
            uint character = (uint)(text >> (56 - (8 * (index - from)))) & 0xFF;
            return Fail(EpcRule.CageCode, EpcField.Cage, CageOffset + (6 * index), character, ref fault);
        }

        bits.A = EpcComponent.FromWords(text & (ulong.MaxValue << (64 - (8 * length))), 0, 0, 0, length);
        return true;
    }

    private static bool AcceptsSerial(in EpcComponent serial, int start, ref EpcFault fault)
    {
        if (serial.Length == 0)
        {
            return Fail(EpcRule.NotEmpty, EpcField.Serial, start, 0, ref fault);
        }

        int mark = serial.Length == 1 ? IndexOfMark(serial, 0) : IndexOfMark(serial, 1);
        return mark < 0 || Fail(EpcRule.NumberSignFirst, EpcField.Serial, start + (6 * mark), '#', ref fault);
    }

    private static int IndexOfMark(in EpcComponent text, int from)
    {
        if (text.IsNumber || !HasMark(text, from))
        {
            return -1;
        }

        int at = from;
        while (text.CharacterAt(at) != '#')
        {
            at++;
        }

        return at;
    }

    // Eight characters at a time; a mark in front of the position does not count.
    private static bool HasMark(in EpcComponent text, int from)
    {
        ulong first = CharacterSets.NumberSigns(text.Word(0)) << (8 * from);
        return (first | CharacterSets.NumberSigns(text.Word(1)) | CharacterSets.NumberSigns(text.Word(2))
            | CharacterSets.NumberSigns(text.Word(3))) != 0;
    }
}
