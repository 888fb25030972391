namespace ToolLedger.Identifiers.Schemes;

/// <summary>SGLN-96: GS1 TDS 2.3, chapter 14, the coding table of this name; header in Table 14-1.</summary>
internal static class Sgln96Scheme
{
    internal static readonly EpcCodec Codec = new Gs1Codec(EpcScheme.Sgln96, 0x32, "sgln-96", EpcKind.Sgln, minimumBits: 96, maximumBits: 96)
    {
        Second = Gs1Second.Padded,
        SecondBits = 41,
        SecondDigits = 12,
        Rest = Gs1Rest.Integer,
        RestBits = 41,
        RestDigits = 13,
    };
}
