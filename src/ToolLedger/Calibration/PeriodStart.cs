namespace ToolLedger.Calibration;

/// <summary>From when the interval of a calibration counts.</summary>
public enum PeriodStart
{
    /// <summary>From the day of calibration.</summary>
    Calibration,

    /// <summary>From the first use after it, with storage allowed, as ISO 6789 is said to count (from memory). A day that the log of uses does not cover may have been the first: it counts as one.</summary>
    FirstUse,
}
