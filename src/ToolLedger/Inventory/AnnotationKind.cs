namespace ToolLedger.Inventory;

/// <summary>What an annotation says of a line.</summary>
public enum AnnotationKind
{
    /// <summary>The whole line is removed for now: it is not expected.</summary>
    Removed,

    /// <summary>Some of a counted line is known to be short: so much less is expected.</summary>
    Shortage,

    /// <summary>An earlier annotation is withdrawn: the line is expected in full again.</summary>
    Restored,
}
