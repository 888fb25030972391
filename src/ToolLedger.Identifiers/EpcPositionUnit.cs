namespace ToolLedger.Identifiers;

/// <summary>What the position of a fault counts.</summary>
public enum EpcPositionUnit
{
    /// <summary>There is no position.</summary>
    None = 0,

    /// <summary>Bits from the first bit of the EPC on.</summary>
    Bit,

    /// <summary>Characters from the first character of the text on.</summary>
    Character,
}
