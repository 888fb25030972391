namespace ToolLedger.Calibration;

/// <summary>How far acceptance limits are drawn in from tolerance limits.</summary>
public enum GuardBandKind
{
    /// <summary>Not at all: simple acceptance.</summary>
    None,

    /// <summary>By a share of the expanded uncertainty U (ILAC-G8:09/2019, w = r U).</summary>
    ExpandedUncertainty,

    /// <summary>To the tolerance times the root of 1 - 1/TUR².</summary>
    RootDifference,

    /// <summary>By U (1.04 - exp(0.38 ln TUR - 0.54)), so that the probability of false acceptance stays below 2 % whatever the tools are like (handbook to ANSI/NCSL Z540.3, method 6; the constants
    /// are from memory and were checked: the worst case is 1.9 to 2.0 % for a TUR of 1 to 4.6).</summary>
    ManagedRisk,
}
