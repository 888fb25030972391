namespace ToolLedger.Calibration;

/// <summary>How a calibration ended: the state in which the tool left.</summary>
public enum CalibrationResult
{
    /// <summary>Not stated, as in records of the first form: taken as passed, because the record gives a due date.</summary>
    NotStated,

    /// <summary>Within tolerance as left.</summary>
    Passed,

    /// <summary>Usable within limitations.</summary>
    Limited,

    /// <summary>Not within tolerance as left: must not be used.</summary>
    Failed,
}
