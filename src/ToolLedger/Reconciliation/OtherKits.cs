using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>Finds the other kits that claim what a kit holds.</summary>
internal static class OtherKits
{
    /// <summary>The kits beside that of a part whose manifests in force list the tool, or hold a sub-kit that does: where it counts too, it settles nothing here.</summary>
    public static IReadOnlyList<KitId> With(ToolId tool, KitTree part, ReconciliationScope scope)
    {
        IReadOnlyList<KitId> listing = ListersOf(tool, part, scope);
        if (!scope.Input.Kits.HasSubKits)
        {
            return listing;
        }

        var holders = new SortedSet<string>(StringComparer.Ordinal);
        foreach (KitId kit in listing.Append(part.Manifest.Id))
        {
            holders.Add(kit.Value);
            holders.UnionWith(scope.HoldersOf(kit).Select(static holder => holder.Value));
        }

        RemoveOwn(holders, part, scope);
        return [.. holders.Select(static holder => new KitId(holder))];
    }

    /// <summary>The kits beside that of a part that list the tool themselves, or have it in place of another on record.</summary>
    public static IReadOnlyList<KitId> ListersOf(ToolId tool, KitTree part, ReconciliationScope scope)
    {
        SubstitutionIndex? records = scope.Substitutions;
        bool isInPlace = records is not null && records.IsInPlace(tool);
        if (!isInPlace && !scope.Input.Kits.IsOnOther(tool, part.Manifest.Id, scope.AsOf))
        {
            return [];
        }

        IEnumerable<KitId> listing = scope.Input.Kits.ManifestsWith(tool, scope.AsOf).Select(static manifest => manifest.Id);
        return [.. (records is null ? listing : listing.Where(kit => !records.IsReplaced(kit, tool)).Union(records.KitsOf(tool))).Where(kit => kit != part.Manifest.Id)];
    }

    /// <summary>The kits beside those of its tree whose manifests in force hold a sub-kit of this one too.</summary>
    public static IReadOnlyList<KitId> HoldersOf(SubKitLine line, KitTree part, ReconciliationScope scope)
    {
        var holders = new SortedSet<string>(scope.Input.Kits.ManifestsWith(line.Kit, scope.AsOf).Select(static holder => holder.Id.Value), StringComparer.Ordinal);
        RemoveOwn(holders, part, scope);
        return [.. holders.Select(static holder => new KitId(holder))];
    }

    private static void RemoveOwn(SortedSet<string> holders, KitTree part, ReconciliationScope scope)
    {
        // The kit itself, what it is inside in this tree, and what holds the whole tree are the same place.
        for (KitTree? tree = part; tree is not null; tree = tree.Outer)
        {
            holders.Remove(tree.Manifest.Id.Value);
        }

        holders.ExceptWith(scope.HoldersOf(part.Subject.Manifest.Id).Select(static holder => holder.Value));
    }
}
