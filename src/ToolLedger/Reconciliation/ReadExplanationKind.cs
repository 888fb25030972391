namespace ToolLedger.Reconciliation;

/// <summary>What a read is, seen from one kit. Every read gets exactly one.</summary>
public enum ReadExplanationKind
{
    /// <summary>A live tag of an expected line, or a control tag of the station.</summary>
    Expected,

    /// <summary>A known tool that is not due here.</summary>
    Unexpected,

    /// <summary>No binding knows the tag.</summary>
    Unknown,

    /// <summary>Stamped outside the presentation, or on an antenna that the station does not list; the reason tells which.</summary>
    OutsideWindow,

    /// <summary>The same report again.</summary>
    Repeat,
}
