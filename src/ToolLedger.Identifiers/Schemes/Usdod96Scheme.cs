using System;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>
/// USDoD-96: filter of four bits, CAGE code or DoDAAC in six bytes of ASCII, serial number. GS1 TDS 2.3 names the scheme and
/// leaves the layout to the supplier guide of the United States Department of Defense; this is the layout of the GS1 Tag Data
/// Translation 2.2 artefact.
/// </summary>
internal sealed class Usdod96Scheme : EpcCodec
{
    internal static readonly EpcCodec Codec = new Usdod96Scheme();

    private const int CageOffset = 12;
    private const int SerialOffset = 60;

    private Usdod96Scheme()
        : base(EpcScheme.Usdod96, 0x2F, "usdod-96", EpcKind.Usdod, filterBits: 4, minimumBits: 96, maximumBits: 96)
    {
    }

    internal override bool TryDecode(
        ReadOnlySpan<ulong> words, int bitCount, ref IdentityBits bits, out int used, ref EpcFault fault)
    {
        used = 96;
        bits.Filter = (byte)Bits.Read(words, 8, 4);
        ulong code = Bits.Read(words, CageOffset, 48);

        // A code of five characters has a space in front.
        int from = code >> 40 == ' ' ? 1 : 0;
        for (int i = from; i < 6; i++)
        {
            uint character = (uint)(code >> (40 - (8 * i))) & 0xFF;
            if (!CharacterSets.IsCage(character))
            {
                return Fail(EpcRule.CageCode, EpcField.Cage, CageOffset + (8 * i), character, ref fault);
            }
        }

        bits.A = EpcComponent.FromWords(code << (16 + (8 * from)), 0, 0, 0, 6 - from);
        ulong serial = Bits.Read(words, SerialOffset, 36);
        bits.B = new EpcComponent(serial, DecimalText.CountDigits(serial));
        return true;
    }

    internal override bool TryEncode(in IdentityBits bits, Span<ulong> words, out int used, ref EpcFault fault)
    {
        used = 96;
        Bits.Write(words, 0, 8, Header);
        Bits.Write(words, 8, 4, bits.Filter);
        int from = 6 - bits.A.Length;
        if (from == 1)
        {
            Bits.Write(words, CageOffset, 8, ' ');
        }

        for (int i = 0; i < bits.A.Length; i++)
        {
            Bits.Write(words, CageOffset + (8 * (from + i)), 8, bits.A.CharacterAt(i));
        }

        Bits.Write(words, SerialOffset, 36, bits.B.Number);
        return true;
    }

    internal override void Describe(ReadOnlySpan<ulong> words, int used, FieldListener listener)
    {
        listener(EpcField.Header, 0, 8);
        listener(EpcField.Filter, 8, 4);
        listener(EpcField.Cage, CageOffset, 48);
        listener(EpcField.Serial, SerialOffset, 36);
    }
}
