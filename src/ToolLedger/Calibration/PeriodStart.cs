namespace ToolLedger.Calibration;

/// <summary>From when the interval of a calibration counts.</summary>
public enum PeriodStart
{
    /// <summary>From the day of calibration.</summary>
    Calibration,

    /// <summary>From the first use after it, with storage allowed, as ISO 6789 is said to count (from memory). Needs a count of uses without a gap; where there is one, the day of calibration counts.</summary>
    FirstUse,
}
