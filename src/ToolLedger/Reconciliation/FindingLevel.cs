namespace ToolLedger.Reconciliation;

/// <summary>What a finding is about.</summary>
public enum FindingLevel
{
    /// <summary>One or more lines.</summary>
    Line,

    /// <summary>The kit as a whole.</summary>
    Kit,

    /// <summary>A read session or its station.</summary>
    Session,
}
