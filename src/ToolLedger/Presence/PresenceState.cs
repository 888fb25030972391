namespace ToolLedger.Presence;

/// <summary>What the reads alone say about one tool, by a presence policy, lowest first.</summary>
public enum PresenceState
{
    /// <summary>No usable look of any of its live tags. Not read is never missing.</summary>
    NotRead,

    /// <summary>At least one look, but fewer than the policy asks for: the tag was somewhere in reach.</summary>
    Weak,

    /// <summary>The looks meet the policy. Conflicts and better explanations are judged elsewhere.</summary>
    Accounted,
}
