namespace ToolLedger.Identifiers.Schemes;

/// <summary>GDTI-174: GS1 TDS 2.3, chapter 14, the coding table of this name; header in Table 14-1.</summary>
internal static class Gdti174Scheme
{
    internal static readonly EpcCodec Codec = new Gs1Codec(EpcScheme.Gdti174, 0x3E, "gdti-174", EpcKind.Gdti, minimumBits: 174, maximumBits: 174)
    {
        Second = Gs1Second.Padded,
        SecondBits = 41,
        SecondDigits = 12,
        Rest = Gs1Rest.SevenBit,
        RestBits = 119,
        RestDigits = 17,
    };
}
