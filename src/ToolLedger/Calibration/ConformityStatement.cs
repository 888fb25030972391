namespace ToolLedger.Calibration;

/// <summary>What is stated about a measured value (ILAC-G8:09/2019, 4.2), from best to worst.</summary>
public enum ConformityStatement
{
    /// <summary>Within the acceptance limits.</summary>
    Pass,

    /// <summary>Within the tolerance limits, but in the guard band.</summary>
    ConditionalPass,

    /// <summary>Outside of the tolerance limits by no more than the guard band.</summary>
    ConditionalFail,

    /// <summary>Outside.</summary>
    Fail,
}
