using System;
using System.Collections.Generic;
using System.Globalization;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Custody;

/// <summary>Decides whether an entry may take effect after those before it, and lets it: every rule that is broken is told, and then nothing changes.</summary>
internal sealed partial class CustodyJudge(CustodyState state)
{
    private readonly CustodyPolicy policy = state.Policy;
    private IssueList issues = [];

    /// <summary>What speaks against the entry; empty if it took effect.</summary>
    internal IReadOnlyList<RecordIssue> Apply(CustodyEntry entry)
    {
        issues = [];
        switch (entry)
        {
            case KitIssue issue:
                Apply(issue);
                break;
            case KitTurnIn turnIn:
                Apply(turnIn);
                break;
            case KitTransfer transfer:
                Apply(transfer);
                break;
            case ToolReceipt receipt:
                Apply(receipt);
                break;
            case ReceiptClosure closure:
                Apply(closure);
                break;
            default:
                ApplyLog(entry);
                break;
        }

        return issues;
    }

    private void Apply(KitIssue issue)
    {
        CheckReceived(issue, issue.ReceivedBy);
        CheckTwoSides(issue, issue.By, issue.ReceivedBy);
        CheckEntitled("by", issue.SignedBy, policy.RolesThatMayIssue);
        CheckDue(issue, "expectedReturn", issue.ExpectedReturn, policy.ExpectedReturnNeeded);
        CheckManifest(issue);
        (CustodyHolder holder, KitTenure? tenure) = state.HolderOf(issue.Kit, issue.At);
        if (holder.IsPerson)
        {
            Report("kit", CustodyRules.AlreadyIssued, ("kit", issue.Kit.Value), ("person", holder.Person.Value), ("at", RecordTime.ToText(tenure!.From)));
        }

        if (issues.Reported == 0)
        {
            state.Begin(issue.Kit, new KitTenure(issue.At, CustodyHolder.Of(issue.ReceivedBy!.By), issue, issue, issue.ExpectedReturn));
        }
    }

    private void CheckManifest(KitIssue issue)
    {
        KitManifest? inForce = state.Kits.Find(issue.Kit, issue.At);
        if (inForce is null)
        {
            Report("kit", CustodyRules.UnknownKit, ("kit", issue.Kit.Value));
            return;
        }

        if (inForce.Revision != issue.Revision)
        {
            Report("revision", CustodyRules.OtherRevision, ("kit", issue.Kit.Value), ("revision", Text(issue.Revision)), ("inForce", Text(inForce.Revision)));
        }

        if (state.Kits.Faults.Count == 0)
        {
            return;
        }

        foreach (ManifestLine line in inForce.Lines)
        {
            if (line.Tool is { } tool && state.Kits.IsOnOther(tool.Id, issue.Kit, issue.At))
            {
                foreach (KitManifest other in state.Kits.ManifestsWith(tool.Id, issue.At))
                {
                    if (other.Id != issue.Kit)
                    {
                        Report("kit", CustodyRules.ToolInTwoKits, ("tool", tool.Id.Value), ("kit", issue.Kit.Value), ("other", other.Id.Value));
                    }
                }
            }
        }
    }

    private void Apply(KitTurnIn turnIn)
    {
        CheckReceived(turnIn, turnIn.AcceptedBy, "acceptedBy");
        KitTenure? tenure = state.TenureOf(turnIn.Kit, turnIn.At);
        if (tenure?.Issue is null)
        {
            Report("kit", CustodyRules.NotIssued, ("kit", turnIn.Kit.Value));
        }

        if (turnIn.AcceptedBy is { } accepted)
        {
            CheckEntitled("acceptedBy", accepted, policy.RolesThatMayIssue);
            CheckTakesBack(turnIn, accepted.By, tenure is { Issue.ReceivedBy: { } user } ? [user.By, tenure.Holder.Person] : []);
        }

        if (issues.Reported == 0)
        {
            Place back = turnIn.Where.IsEmpty ? policy.ToolRoom : turnIn.Where;
            state.Begin(turnIn.Kit, new KitTenure(turnIn.At, CustodyHolder.Of(back), turnIn, null, null));
        }
    }

    private void Apply(KitTransfer transfer)
    {
        CheckReceived(transfer, transfer.ReceivedBy);
        if (transfer.ReceivedBy is { } receiver && PersonCount.AreSame(receiver.By, transfer.By))
        {
            Report("receivedBy", CustodyRules.SamePerson, ("person", receiver.By.Value));
        }

        KitTenure? tenure = state.TenureOf(transfer.Kit, transfer.At);
        if (tenure?.Issue is null)
        {
            Report("kit", CustodyRules.NotIssued, ("kit", transfer.Kit.Value));
        }
        else if (tenure.Holder.Person != transfer.By)
        {
            Report("by", CustodyRules.NotHolder, ("person", transfer.By.Value), ("holder", tenure.Holder.ToString()));
        }

        CheckJointInventory(transfer);
        CheckDue(transfer, "expectedReturn", transfer.ExpectedReturn, isNeeded: false);
        if (issues.Reported == 0)
        {
            state.Begin(transfer.Kit, new KitTenure(transfer.At, CustodyHolder.Of(transfer.ReceivedBy!.By), transfer, tenure!.Issue, transfer.ExpectedReturn ?? tenure.Due));
        }
    }

    private void CheckJointInventory(KitTransfer transfer)
    {
        if (!policy.JointInventoryNeeded)
        {
            return;
        }

        if (transfer.InventoriedAt is not { } at)
        {
            Report("inventoriedAt", CustodyRules.NoJointInventory);
        }
        else if (at > transfer.At || transfer.At - at > policy.JointInventoryAgeMax)
        {
            Report("inventoriedAt", CustodyRules.JointInventoryNotFresh, ("at", RecordTime.ToText(at)));
        }

        foreach (int line in transfer.OpenLines)
        {
            CheckAcknowledged("giverAcknowledges", line, transfer.GiverAcknowledges, transfer.By);
            CheckAcknowledged("receiverAcknowledges", line, transfer.ReceiverAcknowledges, transfer.ReceivedBy?.By ?? default);
        }
    }

    private void CheckAcknowledged(string member, int line, IReadOnlyList<int> acknowledged, PersonId person)
    {
        for (int i = 0; i < acknowledged.Count; i++)
        {
            if (acknowledged[i] == line)
            {
                return;
            }
        }

        Report(member, CustodyRules.OpenLineNotAcknowledged, ("line", Text(line)), ("person", person.IsEmpty ? "the receiver" : person.Value));
    }

    private void Report(string member, ReasonKind kind, params ReadOnlySpan<(string Name, string Value)> values) => issues.Report("$." + member, new Reason(kind, values));

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
