namespace ToolLedger.Identifiers.Schemes;

/// <summary>GIAI-202: GS1 TDS 2.3, chapter 14, the coding table of this name; header in Table 14-1.</summary>
internal static class Giai202Scheme
{
    internal static readonly EpcCodec Codec = new Gs1Codec(EpcScheme.Giai202, 0x38, "giai-202", EpcKind.Giai, minimumBits: 202, maximumBits: 202)
    {
        Second = Gs1Second.SevenBit,
        SecondBits = 188,
        SecondDigits = 30,
        Rest = Gs1Rest.None,
    };
}
