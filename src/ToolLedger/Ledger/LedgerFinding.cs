using ToolLedger.Records;

namespace ToolLedger.Ledger;

/// <summary>Something a person must look into: facts that dispute each other, an entry without effect, a sign-off that a found tool contradicts.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
/// <param name="Entry">The id it is about.</param>
/// <param name="Reason">What it is.</param>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed record LedgerFinding(EntryId Entry, Reason Reason)
{
    /// <summary>The sentence.</summary>
    /// <returns>Text for people.</returns>
    public override string ToString() => Reason.ToString();
}
