namespace ToolLedger.Calibration;

/// <summary>Whether a tool may be used for measurement, as far as entered records say.</summary>
/// <remarks>This is an answer of its own; it never changes whether the tool is accounted for.</remarks>
public enum CalibrationState
{
    /// <summary>The tool needs no calibration and has no calibration record; it is not for measurement that counts.</summary>
    NotRequired,

    /// <summary>In date, and not due soon.</summary>
    Current,

    /// <summary>In date, and due within the days the policy names.</summary>
    DueSoon,

    /// <summary>Past its due date: not fit for use.</summary>
    Overdue,

    /// <summary>No record, none that says when the tool is due, or a tool whose identity is not settled: treated as not fit for use.</summary>
    Unknown,
}
