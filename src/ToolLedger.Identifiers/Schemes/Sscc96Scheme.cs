namespace ToolLedger.Identifiers.Schemes;

/// <summary>SSCC-96: GS1 TDS 2.3, chapter 14, the coding table of this name; header in Table 14-1.</summary>
internal static class Sscc96Scheme
{
    internal static readonly EpcCodec Codec = new Gs1Codec(EpcScheme.Sscc96, 0x31, "sscc-96", EpcKind.Sscc, minimumBits: 96, maximumBits: 96)
    {
        Second = Gs1Second.Padded,
        SecondBits = 58,
        SecondDigits = 17,
        Rest = Gs1Rest.Zeros,
        RestBits = 24,
    };
}
