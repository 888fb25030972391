using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Kits;
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

    /// <summary>Why the seal does not stand for a line although it is accepted: its tool was heard or seen somewhere else since, or something else was counted.</summary>
    public Reason? WhyNotFor(ManifestLine line, ToolReads reads, decimal knownShort, int piecesKnown)
        => Seal is null ? null : WhyHeard(reads) ?? WhySighted(line) ?? WhyCounted(line, knownShort, piecesKnown);

    private Reason? WhyHeard(ToolReads reads)
    {
        foreach (TagBinding binding in reads.LiveTags)
        {
            ReadSession? elsewhere = collector.OthersThatHeard(binding.Tag).FirstOrDefault(session =>
                session.Find(binding.Tag) is { LastSeen: { } at } && at > Seal!.InventoriedAt
                && !session.Presentation.Kits.Any(kit => tree.Find(kit) is not null));
            if (elsewhere is not null)
            {
                return Of(SealReasons.ReadElsewhere, ("session", elsewhere.Id.Value));
            }
        }

        return null;
    }

    /// <summary>Whoever saw a tool that is said to be under seal, and does not say that it was in there, saw it outside.</summary>
    private Reason? WhySighted(ManifestLine line)
    {
        foreach (Sighting sighting in line.Tool is { } tool ? scope.People.SightingsOf(tool.Id) : [])
        {
            if (sighting.At > Seal!.InventoriedAt && (sighting.InKit.IsEmpty || !tree.IsInside(sighting.InKit)))
            {
                return Contradicted(FormattableString.Invariant($"sighted, {sighting.Where}"), sighting.By, sighting.At);
            }
        }

        return null;
    }

    private Reason? WhyCounted(ManifestLine line, decimal knownShort, int piecesKnown)
    {
        foreach (LineCount count in scope.People.CountsOf(tree.Manifest.Id, line.Number))
        {
            if (count.At > Seal!.InventoriedAt && (count.Parts > 0 || count.Quantity.Unit != line.Expected.Unit || count.Quantity.Amount != line.Expected.Amount - knownShort))
            {
                return Contradicted(FormattableString.Invariant($"counted {count.Quantity}"), count.By, count.At);
            }
        }

        foreach (PieceCount count in line.Tool is { } tool ? scope.People.PiecesOf(tool.Id) : [])
        {
            if (count.At > Seal!.InventoriedAt && count.Pieces != Math.Max(line.Tool!.PieceCount, piecesKnown))
            {
                return Contradicted(count.Pieces is { } pieces ? FormattableString.Invariant($"counted {pieces} pieces") : "said to be in an unknown number of pieces", count.By, count.At);
            }
        }

        return null;
    }

    private Reason Contradicted(string what, PersonId by, DateTimeOffset at)
        => Of(SealReasons.Contradicted, ("what", what), ("by", by.Value), ("at", scope.Time(at)));

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

        // A seal that was once seen broken or exchanged is not whole again because a later look says so.
        if (scope.People.SealChecksOf(part.Manifest.Id).Where(look => look.At >= seal.At).Select(look => WhyContrary(look, seal.Number)).FirstOrDefault(static why => why is not null) is { } contrary)
        {
            return contrary;
        }

        if (scope.AsOf - seal.InventoriedAt > policy.SealAgeMax)
        {
            return Of(SealReasons.TooOld, number, ("at", scope.Time(seal.InventoriedAt)));
        }

        if (part.Manifest.EffectiveFrom > seal.InventoriedAt)
        {
            return Of(SealReasons.OtherRevision, number);
        }

        return WhyOpened(part, seal) ?? part.All.Skip(1).Select(deeper => WhyInner(deeper, seal)).FirstOrDefault(static why => why is not null);
    }

    private Reason? WhyOpened(KitTree part, SealRecord seal)
    {
        if (WhyHandled(part, seal) is { } handled)
        {
            return handled;
        }

        // Opened at the very instant of the inventory is opened for it. Whoever opens a box inside has opened what is around it.
        return part.All
            .SelectMany(deeper => scope.People.OpeningsOf(deeper.Manifest.Id))
            .Where(opening => opening.At > seal.InventoriedAt)
            .OrderByDescending(static opening => opening.At)
            .ThenBy(static opening => opening.Kit.Value, StringComparer.Ordinal)
            .FirstOrDefault() is { } opening
                ? Of(SealReasons.Opened, ("number", seal.Number), ("by", opening.By.Value), ("at", scope.Time(opening.At)))
                : null;
    }

    /// <summary>Whoever used, broke or replaced something that is said to be under seal has opened it, whether an opening was recorded or not.</summary>
    private Reason? WhyHandled(KitTree part, SealRecord seal)
    {
        (string What, PersonId By, DateTimeOffset At)? last = null;
        foreach (KitTree deeper in part.All)
        {
            foreach (ManifestLine line in deeper.Manifest.Lines)
            {
                foreach ((string What, PersonId By, DateTimeOffset At) record in HandlingsOf(deeper.Manifest.Id, line))
                {
                    last = record.At > seal.InventoriedAt && !(record.At <= last?.At) ? record : last;
                }
            }
        }

        return last is not { } latest ? null
            : Of(SealReasons.HandledSince, ("number", seal.Number), ("what", latest.What), ("by", latest.By.Value), ("at", scope.Time(latest.At)));
    }

    private IEnumerable<(string What, PersonId By, DateTimeOffset At)> HandlingsOf(KitId kit, ManifestLine line)
    {
        foreach (ConsumableUse use in scope.People.UsesOf(kit, line.Number))
        {
            yield return (FormattableString.Invariant($"a use of line {line.Number}"), use.By, use.At);
        }

        foreach (Substitution swap in scope.People.SubstitutionsOf(kit, line.Number))
        {
            yield return (FormattableString.Invariant($"a substitution on line {line.Number}"), swap.By, swap.At);
        }

        foreach (Breakage breakage in line.Tool is { } tool ? scope.People.BreakagesOf(tool.Id) : [])
        {
            yield return ($"a breakage of {breakage.Tool}", breakage.By, breakage.At);
        }
    }

    /// <summary>What was said of the seal of a box inside after the inventory that the outer one closes.</summary>
    private Reason? WhyInner(KitTree deeper, SealRecord outer)
    {
        IReadOnlyList<SealRecord> own = scope.People.SealsOf(deeper.Manifest.Id);
        if (own.FirstOrDefault(inner => inner.At > outer.At) is { } later)
        {
            return Of(SealReasons.Opened, ("number", outer.Number), ("by", later.By.Value), ("at", scope.Time(later.At)));
        }

        return scope.People.SealChecksOf(deeper.Manifest.Id)
            .Where(look => look.At > outer.InventoriedAt)
            .Select(look => WhyContrary(look, own.FirstOrDefault(inner => inner.At <= look.At)?.Number ?? look.NumberRead))
            .FirstOrDefault(static why => why is not null);
    }

    private Reason? WhyContrary(SealCheck look, string number)
        => !look.IsIntact ? Of(SealReasons.Broken, ("number", number), ("by", look.By.Value), ("at", scope.Time(look.At)))
            : !string.Equals(look.NumberRead, number, StringComparison.Ordinal)
                ? Of(SealReasons.OtherNumber, ("number", number), ("read", look.NumberRead), ("by", look.By.Value), ("at", scope.Time(look.At)))
            : null;

    private static Reason Of(ReasonKind kind, params ReadOnlySpan<(string Name, string Value)> values) => new(kind, values);
}
