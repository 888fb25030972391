using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Presence;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>The kit's conclusion by its order of precedence: discrepant, no valid read, open, complete.</summary>
internal static class KitJudge
{
    public static KitConclusion Judge(
        ReconciliationScope scope,
        KitTree tree,
        IReadOnlyList<LineConclusion> lines,
        bool hasUsableSession,
        IReadOnlyList<PersonId> persons,
        IReadOnlyList<Reason> contradictions)
    {
        List<Reason> differences = [.. Differences(scope, tree, lines), .. contradictions];
        KitRisk? risk = KitRisk.Of(scope.Policy.Presence, lines);
        List<Reason> open = Open(scope, lines, persons);
        if (risk is { IsWithinLimit: false })
        {
            open.Add(OverLimit(risk));
        }

        bool noValidRead = !hasUsableSession && lines.Any(static line => line.Evidence.LiveTagCount > 0 && !line.IsAccounted);
        if (differences.Count > 0)
        {
            return new KitConclusion(KitState.Discrepant, [.. differences, .. open], lines) { Risk = risk };
        }

        if (noValidRead)
        {
            return new KitConclusion(KitState.NoValidRead, [new Reason(ReconciliationReasons.KitNoUsableSession), .. open], lines) { Risk = risk };
        }

        return open.Count > 0
            ? new KitConclusion(KitState.Open, open, lines) { Risk = risk }
            : new KitConclusion(KitState.Complete, UsesNoRead(lines) ? [new Reason(ReconciliationReasons.KitNoReadUsed)] : [], lines) { Risk = risk };
    }

    public static Reason OverLimit(KitRisk risk) => new(
        RiskReasons.KitRiskOverLimit,
        ("chance", RiskWords.Chance(risk.Joint)), ("percent", RiskWords.Percent(risk.Joint)), ("limit", RiskWords.Percent(risk.Limit)),
        ("line", risk.HeaviestLine ?? ""), ("left", RiskWords.Percent(risk.JointWithoutHeaviest)));

    public static Reason LinesOpen(int count, int total) => new(ReconciliationReasons.KitLinesOpen, ("count", Text(count)), ("total", Text(total)));

    public static bool UsesNoRead(IEnumerable<LineConclusion> lines)
        => !lines.Any(static line => line.Basis == AccountingBasis.Read || line.OtherBases.Contains(AccountingBasis.Read));

    private static bool RestsOnPeopleAlone(LineConclusion line)
        => line.Basis is AccountingBasis.Sighted or AccountingBasis.Counted or AccountingBasis.Record && !line.OtherBases.Contains(AccountingBasis.Read);

    private static List<Reason> Differences(ReconciliationScope scope, KitTree tree, IReadOnlyList<LineConclusion> lines)
    {
        var reasons = new List<Reason>();
        string[] numbers = [.. lines
            .Where(static line => line.IsPositiveDifference && !line.Inner.Any(static inner => inner.IsPositiveDifference))
            .Select(static line => line.Label)];
        if (numbers.Length > 0)
        {
            reasons.Add(new Reason(ReconciliationReasons.KitDifferences, ("lines", string.Join(", ", numbers)), ("count", LineConclusion.Text(numbers.Length))));
        }

        if (scope.People.HasSightings)
        {
            AddForeignTools(scope, tree, reasons);
        }

        return reasons.Count > 1 ? [.. reasons.Distinct()] : reasons;
    }

    /// <summary>A foreign tool that was seen inside is a difference until it is seen somewhere else: that the sighting grew old has taken nothing out.</summary>
    private static void AddForeignTools(ReconciliationScope scope, KitTree tree, List<Reason> reasons)
    {
        foreach (Sighting sighting in tree.All.SelectMany(part => scope.People.SightingsIn(part.Manifest.Id).Where(sighting => IsOfThisList(scope, part, sighting)))
            .Where(sighting => tree.FindLine(sighting.Tool) is null)
            .GroupBy(static sighting => sighting.Tool)
            .Select(static seen => seen.OrderByDescending(static sighting => sighting.At).ThenBy(static sighting => sighting.By.Value, System.StringComparer.Ordinal).First())
            .Where(sighting => !IsGoneSince(scope, tree, sighting))
            .OrderBy(static sighting => sighting.Tool.Value, System.StringComparer.Ordinal))
        {
            reasons.Add(new Reason(
                IsOnAList(scope, sighting.Tool) ? ReconciliationReasons.KitForeignTool : ReconciliationReasons.KitUnlistedTool,
                ("tool", sighting.Tool.Value), ("by", sighting.By.Value), ("at", scope.Time(sighting.At))));
        }
    }

    private static bool IsOnAList(ReconciliationScope scope, ToolId tool)
        => scope.Input.Kits.ManifestsWith(tool, scope.AsOf).Count > 0 || scope.Input.Kits.ManifestsWithAlternate(tool, scope.AsOf).Any();

    /// <summary>What was seen before the list was revised may have been on the list then; signing the revision is a later word.</summary>
    private static bool IsOfThisList(ReconciliationScope scope, KitTree part, Sighting sighting)
        => sighting.At >= part.Manifest.EffectiveFrom || scope.AsOf - sighting.At <= scope.Policy.Inventory.EvidenceAgeMax;

    /// <summary>Whether a later sighting by the same mark names another kit. One that names no kit does not say that the tool is out of this one.</summary>
    private static bool IsGoneSince(ReconciliationScope scope, KitTree tree, Sighting inside)
    {
        InventoryPolicy policy = scope.Policy.Inventory;
        foreach (Sighting later in scope.People.SightingsOf(inside.Tool))
        {
            if (later.At <= inside.At)
            {
                break;
            }

            bool isElsewhere = !later.InKit.IsEmpty && tree.Find(later.InKit) is null && !tree.IsInside(later.InKit) && !scope.HoldersOf(tree.Manifest.Id).Contains(later.InKit);
            bool isAlone = policy.SightingWitnessNeeded && (later.Witness.IsEmpty || PersonCount.AreSame(later.By, later.Witness));
            if (isElsewhere && !isAlone && string.Equals(later.MarkRead, inside.MarkRead, System.StringComparison.Ordinal))
            {
                return true;
            }
        }

        return false;
    }

    private static List<Reason> Open(ReconciliationScope scope, IReadOnlyList<LineConclusion> lines, IReadOnlyList<PersonId> persons)
    {
        var reasons = new List<Reason>();
        int openCount = lines.Count(static line => !line.IsAccounted);
        if (lines.Count == 0)
        {
            reasons.Add(new Reason(ReconciliationReasons.KitNothingExpected));
        }
        else if (openCount > 0)
        {
            reasons.Add(LinesOpen(openCount, lines.Count));
        }
        else if (OpenReceipts(scope, lines) is var receipts and > 0)
        {
            reasons.Add(new Reason(CustodyReasons.KitOpenReceipts, ("count", Text(receipts))));
        }
        else if (lines.Any(RestsOnPeopleAlone))
        {
            InventoryPolicy policy = scope.Policy.Inventory;
            int count = PersonCount.Of(persons);
            if (UsesNoRead(lines) && !policy.ManualInventoryAllowed)
            {
                reasons.Add(new Reason(ReconciliationReasons.KitManualNotAllowed));
            }
            else if (count < policy.ManualInventoryPersonsNeeded)
            {
                reasons.Add(new Reason(ReconciliationReasons.KitMorePersons, ("needed", Text(policy.ManualInventoryPersonsNeeded)), ("count", Text(count))));
            }
        }

        return reasons;
    }

    /// <summary>How many lines rest on a receipt alone, where the policy keeps the kit open for that.</summary>
    private static int OpenReceipts(ReconciliationScope scope, IReadOnlyList<LineConclusion> lines)
        => scope.Policy.Custody.KitMayCloseWithOpenReceipt ? 0 : lines.Count(static line => line is { Basis: AccountingBasis.Record, Evidence.Receipt: not null });

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
