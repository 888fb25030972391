namespace ToolLedger.Identifiers.Schemes;

/// <summary>GRAI-96: GS1 TDS 2.3, chapter 14, the coding table of this name; header in Table 14-1.</summary>
internal static class Grai96Scheme
{
    internal static readonly EpcCodec Codec = new Gs1Codec(EpcScheme.Grai96, 0x33, "grai-96", EpcKind.Grai, minimumBits: 96, maximumBits: 96)
    {
        Second = Gs1Second.Padded,
        SecondBits = 44,
        SecondDigits = 12,
        Rest = Gs1Rest.Integer,
        RestBits = 38,
        RestDigits = 12,
    };
}
