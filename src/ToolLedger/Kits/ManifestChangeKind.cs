namespace ToolLedger.Kits;

/// <summary>What happened to a line between two revisions of a manifest.</summary>
public enum ManifestChangeKind
{
    /// <summary>The later revision lists something that the earlier one does not.</summary>
    Added,

    /// <summary>The earlier revision lists something that the later one does not.</summary>
    Removed,

    /// <summary>The same thing stands on a line of another number.</summary>
    Moved,

    /// <summary>A member of the line has another value.</summary>
    Changed,
}
