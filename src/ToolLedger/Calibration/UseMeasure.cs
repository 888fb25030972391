namespace ToolLedger.Calibration;

/// <summary>In what the use of a tool is counted.</summary>
public enum UseMeasure
{
    /// <summary>Cycles: each click, stroke or actuation.</summary>
    Cycles,

    /// <summary>Hours of use.</summary>
    Hours,
}
