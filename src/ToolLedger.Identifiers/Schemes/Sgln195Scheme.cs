namespace ToolLedger.Identifiers.Schemes;

/// <summary>SGLN-195: GS1 TDS 2.3, chapter 14, the coding table of this name; header in Table 14-1.</summary>
internal static class Sgln195Scheme
{
    internal static readonly EpcCodec Codec = new Gs1Codec(EpcScheme.Sgln195, 0x39, "sgln-195", EpcKind.Sgln, minimumBits: 195, maximumBits: 195)
    {
        Second = Gs1Second.Padded,
        SecondBits = 41,
        SecondDigits = 12,
        Rest = Gs1Rest.SevenBit,
        RestBits = 140,
        RestDigits = 20,
    };
}
