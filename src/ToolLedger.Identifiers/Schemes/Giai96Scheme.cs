namespace ToolLedger.Identifiers.Schemes;

/// <summary>GIAI-96: GS1 TDS 2.3, chapter 14, the coding table of this name; header in Table 14-1.</summary>
internal static class Giai96Scheme
{
    internal static readonly EpcCodec Codec = new Gs1Codec(EpcScheme.Giai96, 0x34, "giai-96", EpcKind.Giai, minimumBits: 96, maximumBits: 96)
    {
        Second = Gs1Second.Unpadded,
        SecondBits = 82,
        SecondDigits = 25,
        Rest = Gs1Rest.None,
    };
}
