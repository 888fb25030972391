namespace ToolLedger.Identifiers.Schemes;

/// <summary>How a GS1 scheme codes the component behind the company prefix (GS1 TDS 2.3, s.14.3).</summary>
internal enum Gs1Second
{
    /// <summary>A number of exactly the digits that the prefix leaves (14.3.3).</summary>
    Padded,

    /// <summary>A number without leading zeros (14.3.4).</summary>
    Unpadded,

    /// <summary>Seven-bit characters (14.3.5).</summary>
    SevenBit,

    /// <summary>Six-bit characters with a terminator (14.3.9).</summary>
    SixBit,
}
