namespace ToolLedger.Identifiers.Schemes;

/// <summary>ITIP-212: GS1 TDS 2.3, chapter 14, the coding table of this name; header in Table 14-1.</summary>
internal static class Itip212Scheme
{
    internal static readonly EpcCodec Codec = new Gs1Codec(EpcScheme.Itip212, 0x41, "itip-212", EpcKind.Itip, minimumBits: 212, maximumBits: 212)
    {
        Second = Gs1Second.Padded,
        SecondBits = 44,
        SecondDigits = 13,
        HasPieces = true,
        Rest = Gs1Rest.SevenBit,
        RestBits = 140,
        RestDigits = 20,
    };
}
