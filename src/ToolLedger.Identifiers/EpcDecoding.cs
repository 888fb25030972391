namespace ToolLedger.Identifiers;

/// <summary>How much is asked beyond what must hold for an identity to exist.</summary>
public enum EpcDecoding
{
    /// <summary>Bits behind the end of a coding are ignored, as a decoder of a tag's memory may; a number for restricted
    /// circulation and a piece 0 of 0 are taken.</summary>
    Lenient = 0,

    /// <summary>Bits behind the end of a coding must be zero and only fill the last 16-bit word, as on a conforming tag
    /// (GS1 TDS 2.3, s.18.1.2); a number for restricted circulation or a serial publication must not become an identity
    /// (s.7.3.3 to 7.3.8); a piece must be 1 to the number of pieces.</summary>
    Strict,
}
