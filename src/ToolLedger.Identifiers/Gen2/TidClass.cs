namespace ToolLedger.Identifiers.Gen2;

/// <summary>The class of a tag identification, its first eight bits.</summary>
public enum TidClass
{
    /// <summary>Not one of the classes below: the bits stay usable as they are.</summary>
    Unknown = 0,

    /// <summary>E2h: GS1, with mask designer and model number (GS1 TDS 2.3, chapter 16).</summary>
    Gs1,

    /// <summary>E0h: ISO/IEC 7816-6, with a maker's code and a 48-bit serial number (from memory).</summary>
    Iso7816,
}
