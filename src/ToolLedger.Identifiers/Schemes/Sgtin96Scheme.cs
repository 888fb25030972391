namespace ToolLedger.Identifiers.Schemes;

/// <summary>SGTIN-96: GS1 TDS 2.3, chapter 14, the coding table of this name; header in Table 14-1.</summary>
internal static class Sgtin96Scheme
{
    internal static readonly EpcCodec Codec = new Gs1Codec(EpcScheme.Sgtin96, 0x30, "sgtin-96", EpcKind.Sgtin, minimumBits: 96, maximumBits: 96)
    {
        Second = Gs1Second.Padded,
        SecondBits = 44,
        SecondDigits = 13,
        Rest = Gs1Rest.Integer,
        RestBits = 38,
        RestDigits = 12,
    };
}
