namespace ToolLedger.Identifiers.Schemes;

/// <summary>CPI-var: GS1 TDS 2.3, chapter 14, the coding table of this name; header in Table 14-1.</summary>
internal static class CpiVarScheme
{
    internal static readonly EpcCodec Codec = new Gs1Codec(EpcScheme.CpiVar, 0x3D, "cpi-var", EpcKind.Cpi, minimumBits: 86, maximumBits: 224)
    {
        Second = Gs1Second.SixBit,
        SecondDigits = 30,
        Rest = Gs1Rest.Integer,
        RestBits = 40,
        RestDigits = 12,
    };
}
