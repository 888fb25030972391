namespace ToolLedger.Holds;

/// <summary>How something was exposed.</summary>
public enum ExposureKind
{
    /// <summary>The kit was at a job.</summary>
    Visit,

    /// <summary>The kit was under way between jobs, or with its user at no recorded job.</summary>
    Between,

    /// <summary>The kit was in the tool room or another store.</summary>
    Stored,

    /// <summary>The tool was on a receipt.</summary>
    Receipt,

    /// <summary>Somebody said that it could be there.</summary>
    Said,
}
