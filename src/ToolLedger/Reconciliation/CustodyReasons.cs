using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>Reasons and findings that rest on who answers for what, and the gate before issue.</summary>
/// <remarks>The codes are stable; the sentences can be replaced by a <see cref="Wording"/>. Thread-safe: immutable.</remarks>
public static class CustodyReasons
{
    /// <summary>Accounted for by a loan receipt.</summary>
    public static ReasonKind OnLoan { get; } = new("line.on-loan", "lent on receipt {receipt} at {at} by {by} to {borrower}, who signed; job {job}, equipment {equipment}, due {due}: the receipt is open");

    /// <summary>Accounted for by a laboratory receipt.</summary>
    public static ReasonKind AtLaboratory { get; } = new("line.at-laboratory", "received by laboratory {laboratory} at {at}, signed by {receiver} on receipt {receipt}: the receipt is open");

    /// <summary>A note without a receipt.</summary>
    public static ReasonKind SentWithoutReceipt { get; } = new("line.sent-without-receipt", "a note by {by} of {at} says that it was sent to {to}; nobody there has signed for it, so the note accounts for nothing");

    /// <summary>Seen with the kit that borrowed it.</summary>
    public static ReasonKind SightedWithBorrower { get; } = new("line.sighted-with-borrower", "sighted by {by} at {at} in kit {kit}, which borrowed it on receipt {receipt}");

    /// <summary>Evidence that is older than the receipt.</summary>
    public static ReasonKind BeforeReceipt { get; } = new("line.before-receipt", "{what} is no later than receipt {receipt} of {at}, on which it went out");

    /// <summary>Finding: on a receipt and yet here.</summary>
    public static ReasonKind FindingReceiptContradicted { get; } = new("finding.receipt-contradicted", "on receipt {receipt} with {holder} since {at}, and yet {how} here: a person must reconcile both; the receipt stays open");

    /// <summary>Finding: a receipt is overdue.</summary>
    public static ReasonKind FindingReceiptOverdue { get; } = new("finding.receipt-overdue", "receipt {receipt} of {holder} was due {due} and is still open");

    /// <summary>Finding: the kit is overdue.</summary>
    public static ReasonKind FindingKitOverdue { get; } = new("finding.kit-overdue", "kit {kit} was to be back at {due}; {holder} answers for it since {since}, and its lines keep their last accounting");

    /// <summary>Finding: another revision is in force than the one issued.</summary>
    public static ReasonKind FindingIssuedUnder { get; } = new("finding.issued-under-other-revision", "kit {kit} is out under revision {revision}, against which it is checked; revision {inForce}, in force since {from}, lists {count} {count:line|lines} differently: {changes}");

    /// <summary>Finding: an entry about the kit took no effect.</summary>
    public static ReasonKind FindingEntryRefused { get; } = new("finding.custody-entry-refused", "the {kind} {id} by {by} of {at} took no effect: {why}");

    /// <summary>Kit: lines rest on open receipts.</summary>
    public static ReasonKind KitOpenReceipts { get; } = new("kit.open-receipts", "{count} {count:tool is|tools are} on an open receipt, and the policy keeps the kit open until each is back");

    /// <summary>Gate before issue: satisfied.</summary>
    public static ReasonKind IssueSatisfied { get; } = new("issue.satisfied", "the inventory of {at} accounts for every line that is not acknowledged as open");

    /// <summary>Gate before issue: the inventory is of another kit, or later.</summary>
    public static ReasonKind IssueOtherInventory { get; } = new("issue.other-inventory", "the inventory is of kit {kit} at {at}, not of the kit to be issued or later than the issue");

    /// <summary>Gate before issue: the inventory is of another revision.</summary>
    public static ReasonKind IssueOtherRevision { get; } = new("issue.other-revision", "the inventory was made against revision {inventoried}, the kit is to be issued under {revision}");

    /// <summary>Gate before issue: the inventory is too old.</summary>
    public static ReasonKind IssueTooOld { get; } = new("issue.too-old", "the inventory of {at} is older than the policy allows at an issue");

    /// <summary>Gate before issue: opened since.</summary>
    public static ReasonKind IssueOpened { get; } = new("issue.opened-since", "the kit was opened at {at}, after the inventory");

    /// <summary>Gate before issue: an open line that nobody acknowledged.</summary>
    public static ReasonKind IssueOpenLine { get; } = new("issue.open-line", "line {line} is {state}, and neither annotated nor acknowledged by both");

    /// <summary>Gate before issue: a kit is discrepant.</summary>
    public static ReasonKind IssueDiscrepant { get; } = new("issue.discrepant", "the inventory shows a difference that no acknowledgement covers: {why}");

    /// <summary>Gate before issue: not fit by calibration.</summary>
    public static ReasonKind IssueNotFit { get; } = new("issue.not-fit", "line {line}, tool {tool}, is not fit for measurement ({status}), and the issue does not set it aside");

    /// <summary>Gate before issue: a calibration lapses before the kit is due back; a warning, which does not shut the gate.</summary>
    public static ReasonKind IssueLapses { get; } = new("issue.calibration-lapses", "line {line}, tool {tool}, is in date only through {until}, and the kit is due back on {back}");

    /// <summary>Step: settle what speaks against an issue.</summary>
    public static ReasonKind StepBeforeIssue { get; } = new("step.before-issue", "settle the open lines, or have them annotated and acknowledged by both, and inventory kit {kit} again");

    /// <summary>Every kind of this list.</summary>
    public static IReadOnlyList<ReasonKind> All { get; } =
    [
        OnLoan, AtLaboratory, SentWithoutReceipt, SightedWithBorrower, BeforeReceipt, FindingReceiptContradicted, FindingReceiptOverdue, FindingKitOverdue,
        FindingIssuedUnder, FindingEntryRefused, KitOpenReceipts, IssueSatisfied, IssueOtherInventory, IssueOtherRevision, IssueTooOld, IssueOpened, IssueOpenLine,
        IssueDiscrepant, IssueNotFit, IssueLapses, StepBeforeIssue,
    ];
}
