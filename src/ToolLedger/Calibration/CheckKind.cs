namespace ToolLedger.Calibration;

/// <summary>What a check between calibrations was for.</summary>
public enum CheckKind
{
    /// <summary>The check by the user that a label or plan of user calibration asks for.</summary>
    UserCheck,

    /// <summary>A check in service against a check standard, at any time; also the check after a drop.</summary>
    InServiceCheck,
}
