namespace ToolLedger.Calibration;

/// <summary>What happened to a tool that ends its calibration before its date.</summary>
public enum ConditionKind
{
    /// <summary>Dropped or struck.</summary>
    Dropped,

    /// <summary>Loaded beyond what it is made for; for hand torque tools beyond 125 % of the maximum is the figure commonly quoted.</summary>
    Overloaded,

    /// <summary>Damaged.</summary>
    Damaged,

    /// <summary>Repaired.</summary>
    Repaired,

    /// <summary>Adjusted outside of a calibration.</summary>
    Adjusted,

    /// <summary>The seal that guards the adjustment is broken: the calibration is void.</summary>
    SealBroken,

    /// <summary>Somebody doubts it, for instance after a comparison with another tool.</summary>
    Doubted,
}
