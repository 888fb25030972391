using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Ledger;

/// <summary>Why a fact is not taken into the ledger, and what a merge of ledgers brings to light; the code of a rule never changes its meaning.</summary>
/// <remarks>Thread-safe: immutable.</remarks>
public static class LedgerRules
{
    /// <summary>Another fact has the id.</summary>
    public static ReasonKind SameIdOtherContent { get; } = new("ledger.same-id-other-content", "Another fact has the id {id}: a {kind} by {by} of {at}.");

    /// <summary>Recorded before it happened.</summary>
    public static ReasonKind RecordedBefore { get; } = new("ledger.recorded-before", "It is said to have happened at {at}, later than it was recorded ({recorded}).");

    /// <summary>A correction needs a second person.</summary>
    public static ReasonKind NotWitnessed { get; } = new("ledger.correction-not-witnessed", "A correction needs a second person as its witness.");

    /// <summary>There is nothing to correct or amend under that id.</summary>
    public static ReasonKind NoSuchEntry { get; } = new("ledger.no-such-entry", "There is no entry {id} to correct or amend.");

    /// <summary>That kind cannot be corrected.</summary>
    public static ReasonKind NotCorrectable { get; } = new("ledger.not-correctable", "A {kind} is not corrected: it can be added to, withdrawn by an entry of its own, or decided on by name.");

    /// <summary>The amendment is of other bytes than those signed.</summary>
    public static ReasonKind OtherSignedBytes { get; } = new("ledger.other-signed-bytes", "Entry {id} has other bytes than the amendment says.");

    /// <summary>More entries than the limit.</summary>
    public static ReasonKind TooManyEntries { get; } = new("ledger.too-many-entries", "A ledger holds at most {limit} entries.");

    /// <summary>Finding: facts of one id differ.</summary>
    public static ReasonKind FindingDispute { get; } = new("ledger.dispute", "The id {id} stands for {count} different facts, of which none ends, moves or settles anything until a person decides; what must be looked for stands as {names}: {facts}");

    /// <summary>Finding: an entry took no effect.</summary>
    public static ReasonKind FindingNoEffect { get; } = new("ledger.no-effect", "The {kind} {id} by {by} of {at} took no effect: {why}");

    /// <summary>Finding: a found tool contradicts a sign-off.</summary>
    public static ReasonKind FindingContradicted { get; } = new("ledger.contradicted-sign-off", "{signOff} of kit {kit} at {at} says {line}; found {found}: review it, its exposure is open again");

    /// <summary>Every kind of this list.</summary>
    public static IReadOnlyList<ReasonKind> All { get; } =
    [
        SameIdOtherContent, RecordedBefore, NotWitnessed, NoSuchEntry, NotCorrectable, OtherSignedBytes, TooManyEntries, FindingDispute, FindingNoEffect, FindingContradicted,
    ];
}
