using System;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>Whether the seal of a sub-kit, or of one it is inside, may stand for what is in it.</summary>
internal sealed class SealSearch
{
    private readonly ReconciliationScope scope;
    private readonly KitTree tree;
    private readonly ToolReadsCollector collector;

    public SealSearch(ReconciliationScope scope, KitTree tree, ToolReadsCollector collector)
    {
        this.scope = scope;
        this.tree = tree;
        this.collector = collector;
        for (KitTree? part = tree; part is { Within.Count: > 0 } && Seal is null; part = part.Outer)
        {
            Judge(part);
        }
    }

    /// <summary>The seal that is accepted, or null.</summary>
    public SealRecord? Seal { get; private set; }

    /// <summary>The look at it that is relied on, or null.</summary>
    public SealCheck? Check { get; private set; }

    /// <summary>Why a seal that is on record is not accepted, or null.</summary>
    public Reason? Doubt { get; private set; }

    /// <summary>Why the seal does not stand for a line although it is accepted: its tool was heard somewhere else since.</summary>
    public Reason? WhyNotFor(ToolReads reads)
    {
        foreach (TagBinding binding in Seal is null ? [] : reads.LiveTags)
        {
            ReadSession? elsewhere = collector.OthersThatHeard(binding.Tag).FirstOrDefault(session =>
                session.Find(binding.Tag) is { AcceptedCount: > 0, LastSeen: { } at } && at > Seal!.InventoriedAt
                && !session.Presentation.Kits.Any(kit => tree.Find(kit) is not null));
            if (elsewhere is not null)
            {
                return Of(SealReasons.ReadElsewhere, ("session", elsewhere.Id.Value));
            }
        }

        return null;
    }

    /// <summary>The sentence that states the basis: both dates are shown.</summary>
    public Reason Accepted() => new(
        SealReasons.Sealed,
        ("number", Seal!.Number),
        ("applied", scope.Time(Seal.At)),
        ("by", Seal.By.Value),
        ("inventoried", scope.Time(Seal.InventoriedAt)),
        ("checked", scope.Time(Check!.At)),
        ("checker", Check.By.Value));

    private void Judge(KitTree part)
    {
        if (scope.People.SealsOf(part.Manifest.Id) is not [var seal, ..])
        {
            return;
        }

        SealCheck? check = scope.People.SealChecksOf(part.Manifest.Id) is [var latest, ..] ? latest : null;
        if (WhyNot(part, seal, check) is { } why)
        {
            Doubt ??= why;
        }
        else
        {
            (Seal, Check, Doubt) = (seal, check, null);
        }
    }

    private Reason? WhyNot(KitTree part, SealRecord seal, SealCheck? check)
    {
        InventoryPolicy policy = scope.Policy.Inventory;
        (string, string) number = ("number", seal.Number);
        if (!policy.SealsAccepted)
        {
            return Of(SealReasons.NotAccepted, number);
        }

        if (check is null || check.At < seal.At || scope.AsOf - check.At > policy.EvidenceAgeMax)
        {
            return Of(SealReasons.NotChecked, number);
        }

        if (!check.IsIntact)
        {
            return Of(SealReasons.Broken, number, ("by", check.By.Value), ("at", scope.Time(check.At)));
        }

        if (!string.Equals(check.NumberRead, seal.Number, StringComparison.Ordinal))
        {
            return Of(SealReasons.OtherNumber, number, ("read", check.NumberRead), ("by", check.By.Value), ("at", scope.Time(check.At)));
        }

        if (scope.AsOf - seal.InventoriedAt > policy.SealAgeMax)
        {
            return Of(SealReasons.TooOld, number, ("at", scope.Time(seal.InventoriedAt)));
        }

        if (part.Manifest.EffectiveFrom > seal.InventoriedAt)
        {
            return Of(SealReasons.OtherRevision, number);
        }

        // Opened at the very instant of the inventory is opened for it.
        return scope.People.OpeningsOf(part.Manifest.Id) is [var opening, ..] && opening.At > seal.InventoriedAt
            ? Of(SealReasons.Opened, number, ("by", opening.By.Value), ("at", scope.Time(opening.At)))
            : null;
    }

    private static Reason Of(ReasonKind kind, params ReadOnlySpan<(string Name, string Value)> values) => new(kind, values);
}
