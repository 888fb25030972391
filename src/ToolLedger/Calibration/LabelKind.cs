namespace ToolLedger.Calibration;

/// <summary>What the calibration label on a tool says. The kinds are those of published naval training texts (NAVEDTRA 14121 and the Gunner's Mate manual).</summary>
public enum LabelKind
{
    /// <summary>Within tolerance on all parameters; due by its date.</summary>
    Calibrated,

    /// <summary>Usable with the values and uncertainties of the report at hand.</summary>
    ReferToReport,

    /// <summary>Limited or special calibration: part of the range, other tolerances, some functions. Says what it is limited to.</summary>
    Limited,

    /// <summary>Checked by the user, before each use or every so many days.</summary>
    UserCalibration,

    /// <summary>Calibration postponed; not usable until recalibrated.</summary>
    Inactive,

    /// <summary>No calibration required; not for quantitative measurement.</summary>
    NotRequired,

    /// <summary>Must not be used.</summary>
    Rejected,
}
