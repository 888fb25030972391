using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>Reasons about the seals of sub-kits and about tools put in the place of others.</summary>
public static class SealReasons
{
    /// <summary>Accounted for under a seal.</summary>
    public static ReasonKind Sealed { get; } = new("line.sealed", "closed under seal {number}, applied {applied} by {by} after the inventory of {inventoried}, seen intact {checked} by {checker}");

    /// <summary>The policy accepts no seals.</summary>
    public static ReasonKind NotAccepted { get; } = new("line.seal-not-accepted", "seal {number} is on record, and the policy accepts no seals");

    /// <summary>Nobody looked at the seal lately.</summary>
    public static ReasonKind NotChecked { get; } = new("line.seal-not-checked", "nobody has looked at seal {number} since it was applied, or not within the time the policy allows");

    /// <summary>The seal is broken.</summary>
    public static ReasonKind Broken { get; } = new("line.seal-broken", "seal {number} was broken when {by} looked at {at}");

    /// <summary>Another seal is on the kit.</summary>
    public static ReasonKind OtherNumber { get; } = new("line.seal-of-other-number", "seal {number} is on record, {read} was read by {by} at {at}");

    /// <summary>The seal is too old.</summary>
    public static ReasonKind TooOld { get; } = new("line.seal-too-old", "seal {number} closes an inventory of {at}, longer ago than the policy allows");

    /// <summary>The list of contents is newer than the seal.</summary>
    public static ReasonKind OtherRevision { get; } = new("line.seal-of-other-revision", "seal {number} closes an inventory older than this revision of the list");

    /// <summary>The kit was opened after the inventory that the seal closes.</summary>
    public static ReasonKind Opened { get; } = new("line.seal-opened-since", "opened by {by} at {at}, after the inventory that seal {number} closes");

    /// <summary>Something of the kit was used, broken or replaced after the inventory that the seal closes.</summary>
    public static ReasonKind HandledSince { get; } = new("line.seal-handled-since", "{what} recorded by {by} at {at}, after the inventory that seal {number} closes: it was opened since");

    /// <summary>Records of one instant put different tools in place.</summary>
    public static ReasonKind SubstitutionsDiffer { get; } = new("line.substitutions-differ", "records of {at} put different tools in place ({tools}): nobody can tell which of them is there");

    /// <summary>A tool under seal was heard elsewhere.</summary>
    public static ReasonKind ReadElsewhere { get; } = new("line.sealed-read-elsewhere", "under seal, and yet read in session {session} of another kit since: the seal says nothing of it");

    /// <summary>Somebody saw or counted otherwise since.</summary>
    public static ReasonKind Contradicted { get; } = new("line.sealed-contradicted", "under seal, and yet {what} by {by} at {at}, after the inventory that the seal closes: the seal says nothing of it");

    /// <summary>Another tool is in place on record.</summary>
    public static ReasonKind Substituted { get; } = new("line.substituted", "stands in for {tool} since {at}, recorded by {by}: {reason}");

    /// <summary>A tool read that was replaced on record.</summary>
    public static ReasonKind ReadReplaced { get; } = new("read.replaced", "tool {tool} was replaced on line {line} on record");

    /// <summary>All kinds of this list.</summary>
    public static IReadOnlyList<ReasonKind> All { get; } =
    [
        Sealed, NotAccepted, NotChecked, Broken, OtherNumber, TooOld, OtherRevision, Opened, HandledSince, SubstitutionsDiffer, ReadElsewhere, Contradicted, Substituted, ReadReplaced,
    ];
}
