namespace ToolLedger.Identifiers.Schemes;

/// <summary>SGTIN-198: GS1 TDS 2.3, chapter 14, the coding table of this name; header in Table 14-1.</summary>
internal static class Sgtin198Scheme
{
    internal static readonly EpcCodec Codec = new Gs1Codec(EpcScheme.Sgtin198, 0x36, "sgtin-198", EpcKind.Sgtin, minimumBits: 198, maximumBits: 198)
    {
        Second = Gs1Second.Padded,
        SecondBits = 44,
        SecondDigits = 13,
        Rest = Gs1Rest.SevenBit,
        RestBits = 140,
        RestDigits = 20,
    };
}
