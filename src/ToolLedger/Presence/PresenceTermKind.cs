namespace ToolLedger.Presence;

/// <summary>What a term of the log-odds stands for.</summary>
public enum PresenceTermKind
{
    /// <summary>The odds before the session.</summary>
    Prior,

    /// <summary>The tag was read at all, which few tags that are not there are.</summary>
    Read,

    /// <summary>A pass in which it was read.</summary>
    ReadPass,

    /// <summary>A pass in which it was silent.</summary>
    SilentPass,

    /// <summary>Passes of one surroundings in which it was silent throughout.</summary>
    Silence,
}
