namespace ToolLedger.Ledger;

/// <summary>What became of a fact that was handed to the ledger.</summary>
public enum AppendOutcome
{
    /// <summary>It is in the ledger now.</summary>
    Appended,

    /// <summary>The same fact was there before; nothing changed.</summary>
    AlreadyThere,

    /// <summary>Another fact has its id; nothing changed.</summary>
    SameIdOtherContent,

    /// <summary>A rule speaks against it; nothing changed.</summary>
    Refused,
}
