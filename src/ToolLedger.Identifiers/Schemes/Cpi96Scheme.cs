namespace ToolLedger.Identifiers.Schemes;

/// <summary>CPI-96: GS1 TDS 2.3, chapter 14, the coding table of this name; header in Table 14-1.</summary>
internal static class Cpi96Scheme
{
    internal static readonly EpcCodec Codec = new Gs1Codec(EpcScheme.Cpi96, 0x3C, "cpi-96", EpcKind.Cpi, minimumBits: 96, maximumBits: 96)
    {
        Second = Gs1Second.Unpadded,
        SecondBits = 51,
        SecondDigits = 15,
        Rest = Gs1Rest.Integer,
        RestBits = 31,
        RestDigits = 10,
    };
}
