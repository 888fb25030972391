namespace ToolLedger.Custody;

/// <summary>Which way something was carried.</summary>
public enum CarriedDirection
{
    /// <summary>In.</summary>
    In,

    /// <summary>Out.</summary>
    Out,
}
