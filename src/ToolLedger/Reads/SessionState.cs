namespace ToolLedger.Reads;

/// <summary>Whether a session can be used as evidence at all.</summary>
public enum SessionState
{
    /// <summary>No measurement is known to have taken place: nothing may be concluded from its reads, or from their absence.</summary>
    Invalid,

    /// <summary>Usable with doubt: a line needs two separate passes.</summary>
    Degraded,

    /// <summary>Usable.</summary>
    Valid,
}
