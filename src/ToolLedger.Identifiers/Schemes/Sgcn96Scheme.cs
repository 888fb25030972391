namespace ToolLedger.Identifiers.Schemes;

/// <summary>SGCN-96: GS1 TDS 2.3, chapter 14, the coding table of this name; header in Table 14-1.</summary>
internal static class Sgcn96Scheme
{
    internal static readonly EpcCodec Codec = new Gs1Codec(EpcScheme.Sgcn96, 0x3F, "sgcn-96", EpcKind.Sgcn, minimumBits: 96, maximumBits: 96)
    {
        Second = Gs1Second.Padded,
        SecondBits = 41,
        SecondDigits = 12,
        Rest = Gs1Rest.NumericString,
        RestBits = 41,
        RestDigits = 12,
    };
}
