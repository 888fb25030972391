using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>Finds the sightings in which mark and tag name two tools: both may wear each other's tag.</summary>
internal sealed class MismatchSearch
{
    private readonly ReconciliationScope scope;
    private readonly KitTree tree;
    private readonly Dictionary<string, ToolId?> owners = new(StringComparer.Ordinal);

    public MismatchSearch(ReconciliationScope scope, KitTree tree)
    {
        this.scope = scope;
        this.tree = tree;
        if (!scope.People.HasSightings)
        {
            return;
        }

        foreach (Tool tool in tree.All.SelectMany(static part => part.Lines).Select(static line => line.Tool).OfType<Tool>())
        {
            if (tool.Mark is { } mark && !owners.TryAdd(mark, tool.Id))
            {
                // A mark that several tools share identifies none of them.
                owners[mark] = null;
            }
        }
    }

    /// <summary>The mismatches that concern a tool of the manifest, whatever their age: a tag does not find its way back by itself.</summary>
    public IReadOnlyList<MarkMismatch> Of(Tool tool)
    {
        if (!scope.People.HasSightings)
        {
            return [];
        }

        List<MarkMismatch>? found = null;
        foreach (Sighting sighting in scope.People.SightingsOf(tool.Id))
        {
            bool isKnown = owners.TryGetValue(sighting.MarkRead, out ToolId? owner);
            bool differs = tool.Mark is null ? owner is not null : !string.Equals(tool.Mark, sighting.MarkRead, StringComparison.Ordinal);
            if (differs && (!isKnown || owner is not null))
            {
                (found ??= []).Add(new MarkMismatch(sighting, tool.Id, owner));
            }
        }

        if (tool.Mark is { } mark && owners.TryGetValue(mark, out ToolId? only) && only is not null)
        {
            foreach (Sighting sighting in scope.People.SightingsByMark(mark))
            {
                if (sighting.Tool != tool.Id && !HasMarkAtHome(sighting.Tool, mark))
                {
                    (found ??= []).Add(new MarkMismatch(sighting, sighting.Tool, tool.Id));
                }
            }
        }

        return found ?? (IReadOnlyList<MarkMismatch>)[];
    }

    /// <summary>Marks are told apart within a kit: another kit may use the same one for its own tool.</summary>
    private bool HasMarkAtHome(ToolId tool, string mark)
    {
        if (tree.FindLine(tool) is not null)
        {
            return false;
        }

        bool isListed = false;
        foreach (KitManifest home in scope.Input.Kits.ManifestsWith(tool, scope.AsOf))
        {
            isListed = true;
            if (home.Lines.Any(line => string.Equals(line.Tool?.Mark, mark, StringComparison.Ordinal)))
            {
                return true;
            }
        }

        // What is on no manifest has no mark that we know, so nothing says that this one is not its own.
        return !isListed;
    }
}
