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
    private readonly Lazy<TouchIndex> touches = new(() => new TouchIndex(scope));

    // What took no effect is a word all the same.
    private readonly Lazy<ILookup<ToolId, CustodyEntry>> refusedReceipts = new(() => RefusedOf(scope).OfType<ToolReceipt>().ToLookup(static receipt => receipt.Tool, static receipt => (CustodyEntry)receipt));
    private readonly Lazy<ILookup<KitId, CustodyEntry>> refusedSignatures = new(() => RefusedOf(scope).Where(static entry => entry is KitIssue or KitTransfer)
        .ToLookup(static entry => entry is KitIssue issue ? issue.Kit : ((KitTransfer)entry).Kit));

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

        bool isGiven = scope.Input.AbsentShares.TryGetValue(tool.Id, out decimal given);
        (decimal Share, Reason Why)? said = custody.IsEmpty ? null : ByCustody(policy, tool.Id, listedIn, passes, isNothingLess: isGiven);
        return isGiven && !(said?.Share > given) ? (given, new Reason(RiskReasons.PriorGiven, Percent(given))) : said;
    }

    /// <summary>Of several sessions the one before which it was least likely to be there: a session more must not make it likelier by custody alone.</summary>
    /// <param name="own">The policy.</param>
    /// <param name="tool">The tool.</param>
    /// <param name="listedIn">The part of the kit whose manifest lists it.</param>
    /// <param name="passes">The passes.</param>
    /// <param name="isNothingLess">True where a session of which custody says nothing weighs less than any word, false where it has the policy's own share.</param>
    private (decimal Share, Reason Why)? ByCustody(StatedRiskPolicy own, ToolId tool, KitTree listedIn, IReadOnlyList<SessionPass> passes, bool isNothingLess)
    {
        decimal nothing = isNothingLess ? 0 : own.AbsentShare;
        (decimal Share, Reason Why)? largest = null;
        bool isFirst = true;
        for (int i = 0; i < passes.Count; i++)
        {
            if (i > 0 && ReferenceEquals(passes[i].Session, passes[i - 1].Session))
            {
                continue;
            }

            (decimal Share, Reason Why)? at = At(own, tool, listedIn, passes[i].Session.From);
            largest = isFirst || (at?.Share ?? nothing) > (largest?.Share ?? nothing) ? at : largest;
            isFirst = false;
        }

        return largest;
    }

    private (decimal Share, Reason Why)? At(StatedRiskPolicy own, ToolId tool, KitTree listedIn, DateTimeOffset at)
    {
        CustodyShares shares = own.CustodyShares;
        KitId kit = listedIn.Manifest.Id;
        (decimal Share, Reason Why)? largest = null;
        if (custody.ReceiptOf(tool, at) is { } receipt)
        {
            Raise(ref largest, shares.OnReceipt, RiskReasons.PriorOnReceipt, receipt);
        }

        if (SentWithoutReceipt(tool, kit, at) is { } sent)
        {
            Raise(ref largest, shares.OnReceipt, RiskReasons.PriorSent, sent);
        }

        if (OpenAtIssue(tool, listedIn, at) is { } open)
        {
            Raise(ref largest, shares.OpenAtIssue, RiskReasons.PriorOpenAtIssue, open);
        }

        KitTenure? tenure = custody.TenureOf(kit, at);
        if (custody.ReceiptsOf(tool, at) is [.., (_, { } closure)] && (tenure is null || closure.At >= tenure.From))
        {
            Raise(ref largest, shares.Returned, RiskReasons.PriorReturned, closure);
        }

        if (tenure is { Issue: not null })
        {
            Raise(ref largest, shares.Issued, RiskReasons.PriorIssued, tenure.Entry);
        }

        // Packed is the only word that can make a tool likelier to be there, so nothing at all may speak against it.
        if (largest is null && tenure is { Entry: KitTurnIn { Inventory.IsEmpty: false } turnIn }
            && (shares.Packed >= own.AbsentShare || IsUndoubted(turnIn, tool, listedIn, at)))
        {
            Raise(ref largest, shares.Packed, RiskReasons.PriorPacked, turnIn);
        }

        return largest;
    }

    /// <summary>The latest word that a tool went elsewhere for which no receipt took effect since, until the kit is issued again: its user signs for what is in it.</summary>
    private CustodyEntry? SentWithoutReceipt(ToolId tool, KitId kit, DateTimeOffset at)
    {
        DateTimeOffset since = custody.ReceiptsOf(tool, at) is [.., var (earlier, closure)] ? closure?.At ?? earlier.At : DateTimeOffset.MinValue;
        DateTimeOffset issued = LatestIssue(kit, at)?.At ?? DateTimeOffset.MinValue;
        return custody.NotesOf(tool, at).Concat(refusedReceipts.Value[tool])
            .Where(entry => entry.At <= at && entry.At > since && entry.At >= issued)
            .OrderBy(static entry => entry.At)
            .ThenBy(static entry => entry.Id.Value, StringComparer.Ordinal)
            .LastOrDefault();
    }

    /// <summary>The latest word that a line was open when its kit, or one around it, was signed for. A turn-in says nothing of completeness: the word stands until that kit is issued again without it.</summary>
    private CustodyEntry? OpenAtIssue(ToolId tool, KitTree listedIn, DateTimeOffset at)
    {
        HashSet<KitId> chain = [.. custody.WithOuter([listedIn.Manifest.Id, .. scope.HoldersOf(listedIn.Manifest.Id)], at, at)];
        for (KitTree? outer = listedIn.Outer; outer is not null; outer = outer.Outer)
        {
            chain.Add(outer.Manifest.Id);
        }

        CustodyEntry? latest = null;
        foreach (KitId kit in chain)
        {
            KitIssue? issue = LatestIssue(kit, at);
            IEnumerable<CustodyEntry> signed = custody.TenuresOf(kit).Select(static tenure => tenure.Entry).Concat(refusedSignatures.Value[kit]);
            foreach (CustodyEntry entry in signed.Where(entry => entry.At <= at && !(entry.At < issue?.At)))
            {
                if (IsOpen(entry, issue, tool, chain) && !(entry.At < latest?.At))
                {
                    latest = entry;
                }
            }
        }

        return latest;
    }

    /// <summary>Whether a signature names a tool's line as open, or that of a kit it is inside of; of a list that is not at hand it may be any line.</summary>
    private bool IsOpen(CustodyEntry signed, KitIssue? issue, ToolId tool, HashSet<KitId> chain)
    {
        (KitId kit, int? revision, IReadOnlyList<int> open) = signed switch
        {
            KitIssue one => (one.Kit, one.Revision, one.OpenLines),
            KitTransfer transfer => (transfer.Kit, issue?.Revision, transfer.OpenLines),
            _ => (default(KitId), default(int?), (IReadOnlyList<int>)[]),
        };
        if (open.Count == 0)
        {
            return false;
        }

        if (revision is not { } number || scope.Input.Kits.Find(kit, number) is not { } manifest)
        {
            return true;
        }

        return manifest.Lines.Any(line => open.Contains(line.Number) && (line.Tool?.Id == tool
            || (line is ToolLine single && single.FindAlternate(tool) is not null)
            || (line is SubKitLine box && chain.Contains(box.Kit))));
    }

    private KitIssue? LatestIssue(KitId kit, DateTimeOffset at)
    {
        IReadOnlyList<KitTenure> tenures = custody.TenuresOf(kit);
        for (int i = tenures.Count - 1; i >= 0; i--)
        {
            if (tenures[i].From <= at && tenures[i].Entry is KitIssue issue)
            {
                return issue;
            }
        }

        return null;
    }

    /// <summary>Whether a tool was listed when its kit was turned in, nothing is annotated of it, and nothing was done since with the kit, what it is inside of, what it holds or any of their tools.</summary>
    private bool IsUndoubted(KitTurnIn turnIn, ToolId tool, KitTree listedIn, DateTimeOffset at)
    {
        bool IsListed(KitManifest? manifest) => manifest?.FindLine(tool) is not null;
        bool IsAnnotated(KitTree part, int line) => scope.People.AnnotationsOf(part.Manifest.Id, line).Any(annotation => annotation.SignedBy.At <= at);
        KitId kit = listedIn.Manifest.Id;
        if (listedIn.Manifest.FindLine(tool) is not { } listed || IsAnnotated(listedIn, listed.Number)
            || !IsListed(scope.Input.Kits.Find(kit, turnIn.At))
            || (LatestIssue(kit, turnIn.At) is { } issue && !IsListed(scope.Input.Kits.Find(kit, issue.Revision))))
        {
            return false;
        }

        for (KitTree part = listedIn; part.Outer is { } outer; part = outer)
        {
            if (IsAnnotated(outer, part.Within[^1]))
            {
                return false;
            }
        }

        return !touches.Value.WasTouched(listedIn, turnIn, at);
    }

    private static IEnumerable<CustodyEntry> RefusedOf(ReconciliationScope scope) => scope.Input.Custody.Refused.Select(static one => (CustodyEntry)one.Entry);

    private static void Raise(ref (decimal Share, Reason Why)? largest, decimal share, ReasonKind kind, CustodyEntry entry)
    {
        if (!(share <= largest?.Share))
        {
            largest = (share, new Reason(kind, Percent(share), ("entry", entry.Id.Value)));
        }
    }

    private static (string Name, string Value) Percent(decimal share) => ("percent", RiskWords.Percent((double)share));
}
