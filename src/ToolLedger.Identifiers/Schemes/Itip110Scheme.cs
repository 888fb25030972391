namespace ToolLedger.Identifiers.Schemes;

/// <summary>ITIP-110: GS1 TDS 2.3, chapter 14, the coding table of this name; header in Table 14-1.</summary>
internal static class Itip110Scheme
{
    internal static readonly EpcCodec Codec = new Gs1Codec(EpcScheme.Itip110, 0x40, "itip-110", EpcKind.Itip, minimumBits: 110, maximumBits: 110)
    {
        Second = Gs1Second.Padded,
        SecondBits = 44,
        SecondDigits = 13,
        HasPieces = true,
        Rest = Gs1Rest.Integer,
        RestBits = 38,
        RestDigits = 12,
    };
}
