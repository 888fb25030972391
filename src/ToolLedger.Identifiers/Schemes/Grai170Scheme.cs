namespace ToolLedger.Identifiers.Schemes;

/// <summary>GRAI-170: GS1 TDS 2.3, chapter 14, the coding table of this name; header in Table 14-1.</summary>
internal static class Grai170Scheme
{
    internal static readonly EpcCodec Codec = new Gs1Codec(EpcScheme.Grai170, 0x37, "grai-170", EpcKind.Grai, minimumBits: 170, maximumBits: 170)
    {
        Second = Gs1Second.Padded,
        SecondBits = 44,
        SecondDigits = 12,
        Rest = Gs1Rest.SevenBit,
        RestBits = 112,
        RestDigits = 16,
    };
}
