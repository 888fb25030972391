namespace ToolLedger.Custody;

/// <summary>What became of an entry that was handed in.</summary>
public enum RecordAnswer
{
    /// <summary>It took effect.</summary>
    Recorded,

    /// <summary>The same entry had been recorded before; nothing changed.</summary>
    AlreadyThere,

    /// <summary>It took no effect, and nothing changed.</summary>
    Refused,
}
