namespace ToolLedger.Calibration;

/// <summary>Whether a tool may be used for measurement, as far as entered records say.</summary>
/// <remarks>This is an answer of its own; it never changes whether the tool is accounted for.</remarks>
public enum CalibrationState
{
    /// <summary>No calibration is required, by label or because the tool needs none and has no record: it is not for quantitative measurement.</summary>
    NotRequired,

    /// <summary>Fit: in date, and not due soon.</summary>
    Current,

    /// <summary>Fit: in date, and due within the days, or the share of uses, that the policy names.</summary>
    DueSoon,

    /// <summary>Past its due date or its limit of uses: not fit for use.</summary>
    Overdue,

    /// <summary>No record, none that says when the tool is due, uses that were not counted, or a tool whose identity is not settled: treated as not fit for use.</summary>
    Unknown,

    /// <summary>In date, but not for everything: a value outside of what is covered, or one of several functions not fit.</summary>
    Limited,

    /// <summary>Dropped, overloaded, repaired, its seal broken or a check failed, and not cleared since: not fit for use.</summary>
    Suspended,

    /// <summary>Labelled rejected, or the last calibration failed: must not be used.</summary>
    Rejected,

    /// <summary>Calibration postponed: not usable until recalibrated.</summary>
    Inactive,
}
