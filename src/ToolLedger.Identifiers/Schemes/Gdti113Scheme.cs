namespace ToolLedger.Identifiers.Schemes;

/// <summary>GDTI-113: GS1 TDS 2.3, chapter 14, the coding table of this name; header in Table 14-1.</summary>
internal static class Gdti113Scheme
{
    internal static readonly EpcCodec Codec = new Gs1Codec(EpcScheme.Gdti113, 0x3A, "gdti-113", EpcKind.Gdti, minimumBits: 113, maximumBits: 113)
    {
        Second = Gs1Second.Padded,
        SecondBits = 41,
        SecondDigits = 12,
        Rest = Gs1Rest.NumericString,
        RestBits = 58,
        RestDigits = 17,
    };
}
