namespace ToolLedger.Custody;

/// <summary>Where a kit is by the last tool-room inventory and by who signed for it.</summary>
public enum KitPresenceState
{
    /// <summary>Neither seen in the tool room nor signed out.</summary>
    Unexplained,

    /// <summary>Seen in the tool room although it is signed out.</summary>
    Contradicted,

    /// <summary>Signed out to a person.</summary>
    Out,

    /// <summary>Seen in the tool room and not signed out since.</summary>
    Present,
}
