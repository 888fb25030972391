using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>Which tools the substitutions of all kits put in place or took out, so that a tool in place by record counts as one that is listed.</summary>
internal sealed class SubstitutionIndex
{
    private readonly Dictionary<ToolId, SortedSet<string>> inPlace = [];
    private readonly HashSet<(KitId Kit, ToolId Tool)> replaced = [];

    public SubstitutionIndex(ReconciliationScope scope)
    {
        foreach ((KitId kit, int number) in scope.Input.Inventory.Substitutions.Select(static record => (record.Kit, record.LineNumber)).Distinct())
        {
            // A record that came after the other kit was presented still says that the tool may be there.
            if (scope.Input.Kits.Find(kit, scope.AsOf) is { } manifest
                && manifest.FindLine(number) is ToolLine line)
            {
                // Of records that differ each may be true, so that each tool may be there.
                IReadOnlyList<Substitution> latest = InPlaceSearch.Latest(scope, manifest, number, DateTimeOffset.MaxValue);
                foreach (Substitution record in latest.Where(record => record.InPlace != line.Tool.Id))
                {
                    Add(record.InPlace, kit);
                }

                if (latest.Count == 1 && latest[0].InPlace != line.Tool.Id)
                {
                    replaced.Add((kit, line.Tool.Id));
                }
            }
        }
    }

    /// <summary>The kits in which a tool stands in for another, by id.</summary>
    public IEnumerable<KitId> KitsOf(ToolId tool) => inPlace.TryGetValue(tool, out SortedSet<string>? kits) ? kits.Select(static kit => new KitId(kit)) : [];

    public bool IsInPlace(ToolId tool) => inPlace.ContainsKey(tool);

    /// <summary>True where another tool stands in for one that the kit lists.</summary>
    public bool IsReplaced(KitId kit, ToolId tool) => replaced.Contains((kit, tool));

    private void Add(ToolId tool, KitId kit)
    {
        if (!inPlace.TryGetValue(tool, out SortedSet<string>? kits))
        {
            inPlace.Add(tool, kits = new SortedSet<string>(StringComparer.Ordinal));
        }

        kits.Add(kit.Value);
    }
}
