using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Custody;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>Which lines a record signed by its receiver places elsewhere, and what there is to say of it.</summary>
internal sealed class ReceiptSearch(ReconciliationScope scope)
{
    private const int ChangesNamed = 10;

    private readonly CustodyRegister custody = scope.Input.Custody;
    private readonly bool isEmpty = scope.Input.Custody.IsEmpty;

    /// <summary>The open receipt that accounts for a line, or null. Only a line of one tool can be on one: a set and a sub-kit are more than their holder.</summary>
    public ToolReceipt? Of(ManifestLine line, List<Reason> remarks)
    {
        if (isEmpty || line is not ToolLine { Tool: var tool })
        {
            return null;
        }

        if (custody.ReceiptOf(tool.Id, scope.AsOf) is { } receipt)
        {
            return receipt;
        }

        DateTimeOffset last = custody.ReceiptsOf(tool.Id, scope.AsOf) is [.., var (earlier, closure)] ? closure?.At ?? earlier.At : DateTimeOffset.MinValue;
        if (custody.NotesOf(tool.Id, scope.AsOf) is [.., var note] && note.At > last)
        {
            remarks.Add(new Reason(CustodyReasons.SentWithoutReceipt, ("by", note.By.Value), ("at", scope.Time(note.At)), ("to", note.To.Value)));
        }

        return null;
    }

    /// <summary>Whether a sighting in another kit is what the receipt says.</summary>
    public static bool IsWithBorrower(ToolReceipt? receipt, Sighting sighting) =>
        receipt is ToolLoan { ToKit.IsEmpty: false } loan && loan.ToKit == sighting.InKit && sighting.At >= loan.At;

    /// <summary>The sentence that states the basis.</summary>
    public Reason Accepted(ToolReceipt receipt) => receipt is ToolLoan loan
        ? new Reason(
            CustodyReasons.OnLoan,
            ("receipt", loan.Id.Value),
            ("at", scope.Time(loan.At)),
            ("by", loan.By.Value),
            ("borrower", loan.ReceivedBy!.By.Value),
            ("job", loan.Job.IsEmpty ? "not stated" : loan.Job.Value),
            ("equipment", loan.Equipment.IsEmpty ? "not stated" : loan.Equipment.Value),
            ("due", loan.Due is { } due ? scope.Time(due) : "not stated"))
        : new Reason(
            CustodyReasons.AtLaboratory,
            ("laboratory", receipt.Where.Value),
            ("at", scope.Time(receipt.At)),
            ("receiver", receipt.ReceivedBy!.By.Value),
            ("receipt", receipt.Id.Value));

    /// <summary>What stands beside the conclusion of a line on a receipt: that it is here all the same, or overdue.</summary>
    public IEnumerable<Reason> FindingsOf(ToolReceipt receipt, IReadOnlyList<AccountingBasis> bases)
    {
        (string, string) id = ("receipt", receipt.Id.Value);
        (string, string) holder = ("holder", CustodyRegister.HolderOf(receipt).ToString());
        if (bases.Any(static basis => basis != AccountingBasis.Record))
        {
            yield return new Reason(CustodyReasons.FindingReceiptContradicted, id, holder, ("at", scope.Time(receipt.At)), ("how", Words.Of(bases[0])));
        }

        DateTimeOffset? due = receipt switch
        {
            ToolLoan loan => loan.Due,
            LaboratoryReceipt laboratory => laboratory.Due,
            _ => null,
        };
        if (due < scope.AsOf)
        {
            yield return new Reason(CustodyReasons.FindingReceiptOverdue, id, holder, ("due", scope.Time(due.Value)));
        }
    }

    /// <summary>An open receipt is the last of the bases; what was seen before the tool went out on it holds no more.</summary>
    public IReadOnlyList<AccountingBasis> WithReceipt(
        IReadOnlyList<AccountingBasis> bases, ToolReceipt? receipt, ToolReads reads, Sighting? sighting, LineCount? count, List<Reason> remarks)
    {
        if (receipt is null)
        {
            return bases;
        }

        var list = new List<AccountingBasis>(bases.Count + 1);
        foreach (AccountingBasis basis in bases)
        {
            DateTimeOffset? at = basis switch
            {
                AccountingBasis.Sighted => sighting?.At,
                AccountingBasis.Counted => count?.At,
                AccountingBasis.Read => reads.LastSeen,
                _ => null,
            };
            if (at > receipt.At)
            {
                list.Add(basis);
            }
            else if (at is not null)
            {
                remarks.Add(new Reason(CustodyReasons.BeforeReceipt, ("what", Words.Of(basis)), ("receipt", receipt.Id.Value), ("at", scope.Time(receipt.At))));
            }
        }

        list.Add(AccountingBasis.Record);
        return list;
    }

    /// <summary>What there is to say of the kit as a whole: overdue, issued under another revision.</summary>
    public IEnumerable<Finding> KitFindings(KitManifest manifest)
    {
        KitId kit = manifest.Id;
        if (isEmpty || !custody.IsMentioned(kit))
        {
            yield break;
        }

        foreach ((KitId _, CustodyHolder holder, DateTimeOffset due) in custody.KitsOverdueAt(scope.AsOf).Where(one => one.Kit == kit))
        {
            yield return new Finding(FindingLevel.Kit, new Reason(
                CustodyReasons.FindingKitOverdue,
                ("kit", kit.Value),
                ("due", scope.Time(due)),
                ("holder", holder.ToString()),
                ("since", scope.Time(custody.HistoryOf(kit, scope.AsOf)[^1].From))));
        }

        if (custody.IssueOf(kit, scope.AsOf) is not null && scope.Input.Kits.Find(kit, scope.AsOf) is { } inForce && inForce.Revision != manifest.Revision)
        {
            IReadOnlyList<ManifestChange> changes = manifest.ChangesTo(inForce);
            yield return new Finding(FindingLevel.Kit, new Reason(
                CustodyReasons.FindingIssuedUnder,
                ("kit", kit.Value),
                ("revision", LineConclusion.Text(manifest.Revision)),
                ("inForce", LineConclusion.Text(inForce.Revision)),
                ("from", scope.Time(inForce.EffectiveFrom)),
                ("count", LineConclusion.Text(changes.Count)),
                ("changes", string.Join("; ", changes.Take(ChangesNamed)))));
        }
    }
}
