using System;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>GID-96: manager number, object class, serial number, no filter (GS1 TDS 2.3, chapter 14).</summary>
internal sealed class Gid96Scheme : EpcCodec
{
    internal static readonly EpcCodec Codec = new Gid96Scheme();

    private Gid96Scheme()
        : base(EpcScheme.Gid96, 0x35, "gid-96", EpcKind.Gid, filterBits: 0, minimumBits: 96, maximumBits: 96)
    {
    }

    internal override bool TryDecode(
        ReadOnlySpan<ulong> words, int bitCount, ref IdentityBits bits, out int used, ref EpcFault fault)
    {
        used = 96;
        bits.A = Number(Bits.Read(words, 8, 28));
        bits.B = Number(Bits.Read(words, 36, 24));
        bits.C = Number(Bits.Read(words, 60, 36));
        return true;
    }

    internal override bool TryEncode(in IdentityBits bits, Span<ulong> words, out int used, ref EpcFault fault)
    {
        used = 96;
        Bits.Write(words, 0, 8, Header);
        Bits.Write(words, 8, 28, bits.A.Number);
        Bits.Write(words, 36, 24, bits.B.Number);
        Bits.Write(words, 60, 36, bits.C.Number);
        return true;
    }

    internal override void Describe(ReadOnlySpan<ulong> words, int used, FieldListener listener)
    {
        listener(EpcField.Header, 0, 8);
        listener(EpcField.ManagerNumber, 8, 28);
        listener(EpcField.ObjectClass, 36, 24);
        listener(EpcField.Serial, 60, 36);
    }

    private static EpcComponent Number(ulong number) => new(number, DecimalText.CountDigits(number));
}
