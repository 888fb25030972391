using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Custody;

internal sealed partial class CustodyJudge
{
    private void Apply(ToolReceipt receipt)
    {
        CheckReceived(receipt, receipt.ReceivedBy);
        CheckTwoSides(receipt, receipt.By, receipt.ReceivedBy);
        if (state.ReceiptOf(receipt.Tool, receipt.At) is { } open)
        {
            Report("tool", CustodyRules.OnReceipt, ("tool", receipt.Tool.Value), ("receipt", open.Receipt.Id.Value), ("at", RecordTime.ToText(open.Receipt.At)));
        }

        CheckGiver(receipt);
        if (receipt is ToolLoan loan)
        {
            CheckDue(loan, "due", loan.Due, policy.LoanDueNeeded);
            if (loan.IsChit && !policy.ChitsAccepted)
            {
                Report("isChit", CustodyRules.ChitNotAccepted);
            }
        }
        else if (receipt.Where.IsEmpty)
        {
            Report("where", CustodyRules.NoLaboratory);
        }

        if (issues.Reported == 0)
        {
            state.Add(receipt);
        }
    }

    /// <summary>The tool is in the kit, and whoever hands it over answers for the kit; what is in the tool room is handed over by its own people.</summary>
    private void CheckGiver(ToolReceipt receipt)
    {
        KitId kit = receipt.Kit;
        if (kit.IsEmpty && state.KitOf(receipt.Tool, receipt.At) is { } its)
        {
            kit = its;
        }

        CustodyHolder holder = kit.IsEmpty ? CustodyHolder.Of(policy.ToolRoom) : state.HolderOf(kit, receipt.At).Holder;
        KitManifest? manifest = kit.IsEmpty ? null : state.ManifestOf(kit, receipt.At);
        if (!kit.IsEmpty && manifest is null)
        {
            Report("kit", CustodyRules.UnknownKit, ("kit", kit.Value));
        }
        else if (manifest is not null && manifest.FindLine(receipt.Tool) is null && manifest.FindAlternate(receipt.Tool) is null)
        {
            Report("kit", CustodyRules.NotInKit, ("kit", kit.Value), ("tool", receipt.Tool.Value));
        }

        if (!holder.IsPerson)
        {
            CheckEntitled("by", receipt.SignedBy, policy.RolesThatMayIssue);
            return;
        }

        if (receipt is ToolLoan && !policy.LoanFromIssuedKitAllowed)
        {
            Report("kit", CustodyRules.LoanFromIssuedKit, ("kit", kit.Value));
        }

        if (holder.Person != receipt.By)
        {
            Report("by", CustodyRules.NotHolder, ("person", receipt.By.Value), ("holder", holder.ToString()));
        }
    }

    // Who answers for the kit takes its tool back; anybody else only as one who may issue.
    private void CheckMayAccept(ReceiptClosure closure, ToolReceipt receipt, Signature accepted)
    {
        KitId? kit = receipt.Kit.IsEmpty ? state.KitOf(receipt.Tool, closure.At) : receipt.Kit;
        if (kit is not { } its || state.HolderOf(its, closure.At).Holder.Person != accepted.By)
        {
            CheckEntitled("acceptedBy", accepted, policy.RolesThatMayIssue);
        }
    }

    private void Apply(ReceiptClosure closure)
    {
        CheckReceived(closure, closure.AcceptedBy, "acceptedBy");
        ReceiptTenure? tenure = state.FindReceipt(closure.Receipt);
        if (tenure is null || !tenure.IsOpenAt(closure.At))
        {
            Report("receipt", CustodyRules.NoOpenReceipt, ("receipt", closure.Receipt.Value));
            return;
        }

        if (closure.AcceptedBy is { } accepted)
        {
            CheckTakesBack(closure, accepted.By, [tenure.Receipt.ReceivedBy!.By]);
            CheckMayAccept(closure, tenure.Receipt, accepted);
        }

        if (!tenure.Receipt.Kit.IsEmpty && !closure.ToKit.IsEmpty && closure.ToKit != tenure.Receipt.Kit)
        {
            Report("toKit", CustodyRules.OtherKit, ("kit", tenure.Receipt.Kit.Value), ("other", closure.ToKit.Value));
        }

        if (issues.Reported == 0)
        {
            state.Close(closure);
        }
    }
}
