using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>Finds what accounts for a line, and doubts it where it does not say for which of several kits.</summary>
internal sealed class BasisSearch(ReconciliationScope scope, KitTree tree, ToolReadsCollector collector)
{
    private static readonly IReadOnlyList<AccountingBasis> ByReads = [AccountingBasis.Read];
    private static readonly IReadOnlyList<AccountingBasis> ByLinesInside = [AccountingBasis.Inside];

    /// <summary>The bases that hold, the one named first in front.</summary>
    public IReadOnlyList<AccountingBasis> Of(ManifestLine line, ToolReads reads, Sighting? sighting, LineCount? count, SealRecord? seal, LineConclusion[] inner)
    {
        if (line is SubKitLine { Case: null })
        {
            // Without a case to account for, it rests on its lines alone, and each of them says on what.
            return inner.Length > 0 && Array.TrueForAll(inner, static conclusion => conclusion.IsAccounted) ? ByLinesInside : [];
        }

        bool isRead = reads.AreEnough;
        if (sighting is null && count is null && seal is null)
        {
            // Most lines are shown by reads alone.
            return isRead ? ByReads : [];
        }

        var bases = new List<AccountingBasis>(3);
        if (sighting is not null && line is ToolLine or SubKitLine)
        {
            bases.Add(AccountingBasis.Sighted);
        }

        // Whoever saw the tool, or a set's container, somewhere else since has shown that it is not where it was counted.
        if (count is not null && !(reads.SeenOutside?.At >= count.At) && (line is not (ToolLine or SubKitLine) || IsKnownByCount(line.Tool)))
        {
            bases.Add(AccountingBasis.Counted);
        }

        // A set's container that was seen says where the container is; the count says whether the set is whole.
        if (sighting is not null && line is SetLine)
        {
            bases.Add(AccountingBasis.Sighted);
        }

        if (isRead)
        {
            bases.Add(AccountingBasis.Read);
        }

        if (seal is not null)
        {
            bases.Add(AccountingBasis.Record);
        }

        return bases;
    }

    /// <summary>A count identifies no tool that has a mark or a live tag; it can still contradict.</summary>
    public bool IsKnownByCount(Tool? tool) => tool is { Mark: null } && !collector.HadTag(tool.Id);

    /// <summary>Doubts what accounts for a tool or sub-kit that several kits claim, where nothing says in which it was.</summary>
    public void DoubtPlace(ManifestLine line, ToolReads reads, Sighting? sighting, LineCount? count, LineConclusion[] inner)
    {
        DoubtKitNotSaid(line, reads, sighting, count);
        DoubtSubKitNotPlaced(line, reads, sighting, inner);
    }

    /// <summary>What people saw of a tool that several kits claim accounts for it in the kit they name, or else in none.</summary>
    private void DoubtKitNotSaid(ManifestLine line, ToolReads reads, Sighting? sighting, LineCount? count)
    {
        if (reads.AreEnough || line.Tool is not { } tool || sighting is { InKit.IsEmpty: false } || (sighting is null && (count is null || !IsKnownByCount(tool))))
        {
            return;
        }

        foreach (KitId other in OtherKits.ListersOf(tool.Id, tree, scope).Where(other => tree.Find(other) is null && !tree.IsInside(other)))
        {
            reads.AddDoubt(new IdentityDoubt(new Reason(ReconciliationReasons.KitNotSaid, ("tool", tool.Id.Value), ("kit", other.Value)), scope.AsOf)
            {
                StandsWithoutKit = true,
            });
        }
    }

    /// <summary>What accounts for a sub-kit that several kits hold does so in one of them, where a reader or a person showed that it was; or else in none.</summary>
    private void DoubtSubKitNotPlaced(ManifestLine line, ToolReads reads, Sighting? sighting, LineConclusion[] inner)
    {
        if (line is not SubKitLine subKit || !inner.SelectMany(static one => one.WithInner()).Any(static one => one.IsAccounted))
        {
            return;
        }

        bool isPlaced = sighting is { InKit.IsEmpty: false } || reads.AreEnough
            || inner.SelectMany(static one => one.WithInner()).Any(one => one.Basis == AccountingBasis.Read || one.OtherBases.Contains(AccountingBasis.Read)
                || (one.Evidence.SightedIn is { } kit && tree.IsInside(kit)));
        foreach (KitId other in isPlaced ? [] : OtherKits.HoldersOf(subKit, tree, scope))
        {
            reads.AddDoubt(new IdentityDoubt(new Reason(ReconciliationReasons.SubKitNotSaid, ("sub", subKit.Kit.Value), ("kit", other.Value)), scope.AsOf)
            {
                StandsWithoutKit = true,
            });
        }
    }
}
