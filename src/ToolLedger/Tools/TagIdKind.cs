namespace ToolLedger.Tools;

/// <summary>What kind of identity a reader reported.</summary>
public enum TagIdKind : byte
{
    /// <summary>The EPC memory bank of an EPC Gen2 tag.</summary>
    Epc,

    /// <summary>The 64-bit code of an ISO 11784 transponder.</summary>
    Iso11784,

    /// <summary>The 64-bit unique identifier of an ISO/IEC 15693 card.</summary>
    Iso15693,

    /// <summary>Any other identity, as text.</summary>
    Text,
}
