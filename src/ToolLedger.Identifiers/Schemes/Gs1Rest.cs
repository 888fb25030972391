namespace ToolLedger.Identifiers.Schemes;

/// <summary>How a GS1 scheme codes what follows the first two components.</summary>
internal enum Gs1Rest
{
    /// <summary>Nothing follows.</summary>
    None,

    /// <summary>Zero bits.</summary>
    Zeros,

    /// <summary>A number without leading zeros.</summary>
    Integer,

    /// <summary>Seven-bit characters.</summary>
    SevenBit,

    /// <summary>Digits with a 1 in front, stored as a number.</summary>
    NumericString,
}
