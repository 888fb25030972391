namespace ToolLedger.Identifiers;

/// <summary>How much a decoder asks of the bits behind the end of a coding.</summary>
public enum EpcDecoding
{
    /// <summary>Bits behind the end are ignored, as a decoder of a tag's memory may.</summary>
    Lenient = 0,

    /// <summary>Bits behind the end must be zero and only fill the last 16-bit word, as on a conforming tag
    /// (GS1 TDS 2.3, s.18.1.2).</summary>
    Strict,
}
