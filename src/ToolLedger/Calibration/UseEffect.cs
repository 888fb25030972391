namespace ToolLedger.Calibration;

/// <summary>What an error as found means for one use, as far as values say. The decision is a person's.</summary>
public enum UseEffect
{
    /// <summary>Nothing can be said: a value, a tolerance or data as found is missing.</summary>
    NotKnown,

    /// <summary>The error with its uncertainty stays within the tolerance of the work.</summary>
    WithinTolerance,

    /// <summary>The error reaches the tolerance of the work within its uncertainty: it may lie on either side.</summary>
    Unclear,

    /// <summary>The error exceeds the tolerance of the work by more than its uncertainty.</summary>
    OutsideTolerance,
}
