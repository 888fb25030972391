using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Custody;
using ToolLedger.Kits;
using ToolLedger.Presence;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>How likely it was before its sessions that a tool is not there, by what custody knew when each began. It depends on no read and on no other line.</summary>
internal sealed class PriorSearch(ReconciliationScope scope)
{
    private readonly CustodyRegister custody = scope.Input.Custody;
    private readonly StatedRiskPolicy? policy = scope.Policy.Presence as StatedRiskPolicy;

    /// <summary>The share and why; null for the policy's own, and where no policy asks.</summary>
    /// <param name="tool">The tool.</param>
    /// <param name="listedIn">The part of the kit whose manifest lists it.</param>
    /// <param name="passes">The passes that are weighed.</param>
    public (decimal Share, Reason Why)? Of(Tool tool, KitTree listedIn, IReadOnlyList<SessionPass> passes)
    {
        if (policy is null)
        {
            return null;
        }

        if (scope.Input.AbsentShares.TryGetValue(tool.Id, out decimal given))
        {
            return (given, new Reason(RiskReasons.PriorGiven, Percent(given)));
        }

        return custody.IsEmpty ? null : ByCustody(policy, tool.Id, listedIn.Manifest.Id, passes);
    }

    /// <summary>Of several sessions the one before which it was least likely to be there: a session more must not make it likelier by custody alone.</summary>
    private (decimal Share, Reason Why)? ByCustody(StatedRiskPolicy own, ToolId tool, KitId kit, IReadOnlyList<SessionPass> passes)
    {
        (decimal Share, Reason Why)? largest = null;
        bool isFirst = true;
        for (int i = 0; i < passes.Count; i++)
        {
            if (i > 0 && ReferenceEquals(passes[i].Session, passes[i - 1].Session))
            {
                continue;
            }

            (decimal Share, Reason Why)? at = At(own.CustodyShares, tool, kit, passes[i].Session.From);
            largest = isFirst || (at?.Share ?? own.AbsentShare) > (largest?.Share ?? own.AbsentShare) ? at : largest;
            isFirst = false;
        }

        return largest;
    }

    private (decimal Share, Reason Why)? At(CustodyShares shares, ToolId tool, KitId kit, DateTimeOffset at)
    {
        (decimal Share, Reason Why)? largest = null;
        if (custody.ReceiptOf(tool, at) is { } receipt)
        {
            Raise(ref largest, shares.OnReceipt, RiskReasons.PriorOnReceipt, receipt);
        }

        KitTenure? tenure = custody.TenureOf(kit, at);
        if (custody.IssueOf(kit, at) is { } issue && scope.Input.Kits.Find(kit, issue.Revision)?.FindLine(tool) is { } line && issue.OpenLines.Contains(line.Number))
        {
            Raise(ref largest, shares.OpenAtIssue, RiskReasons.PriorOpenAtIssue, issue);
        }

        if (custody.ReceiptsOf(tool, at) is [.., (_, { } closure)] && (tenure is null || closure.At >= tenure.From))
        {
            Raise(ref largest, shares.Returned, RiskReasons.PriorReturned, closure);
        }

        if (tenure is { Issue: not null })
        {
            Raise(ref largest, shares.Issued, RiskReasons.PriorIssued, tenure.Entry);
        }

        // Packed is the only word that makes a tool likelier to be there, so nothing may speak against it.
        if (largest is null && tenure is { Entry: KitTurnIn { Inventory.IsEmpty: false } turnIn } && !WasTouched(kit, turnIn.At, at))
        {
            Raise(ref largest, shares.Packed, RiskReasons.PriorPacked, turnIn);
        }

        return largest;
    }

    private bool WasTouched(KitId kit, DateTimeOffset from, DateTimeOffset to)
        => scope.People.OpeningsOf(kit).Any(opening => opening.At >= from && opening.At <= to)
            || scope.HoldersOf(kit).Any(holder => scope.People.OpeningsOf(holder).Any(opening => opening.At >= from && opening.At <= to))
            || custody.VisitsOf(kit, from, to).Count > 0;

    private static void Raise(ref (decimal Share, Reason Why)? largest, decimal share, ReasonKind kind, CustodyEntry entry)
    {
        if (!(share <= largest?.Share))
        {
            largest = (share, new Reason(kind, Percent(share), ("entry", entry.Id.Value)));
        }
    }

    private static (string Name, string Value) Percent(decimal share) => ("percent", RiskWords.Percent((double)share));
}
