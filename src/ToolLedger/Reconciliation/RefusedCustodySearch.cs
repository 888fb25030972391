using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Custody;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>
/// Tells of custody entries about a kit and its tools that took no effect: somebody wrote that a tool was lent or a kit handed over, so the line that it leaves open is explained by it. They settle
/// nothing. Those of an earlier issue are left out, unless they are no older than a job record may be.
/// </summary>
internal sealed class RefusedCustodySearch
{
    private const int IssuesNamed = 3;

    private readonly ReconciliationScope scope;
    private readonly List<CustodyMention> ofUnknown = [];
    private readonly Dictionary<KitId, List<CustodyMention>> byKit = [];
    private readonly Dictionary<ToolId, List<CustodyMention>> byTool = [];
    private readonly Dictionary<CustodyEntry, RefusedEntry> refusals = new(ReferenceEqualityComparer.Instance);

    public RefusedCustodySearch(ReconciliationScope scope)
    {
        this.scope = scope;
        CustodyRegister custody = scope.Input.Custody;
        if (custody.Refused.Count == 0)
        {
            return;
        }

        foreach (RefusedEntry refused in custody.Refused)
        {
            refusals.TryAdd((CustodyEntry)refused.Entry, refused);
        }

        foreach (CustodyMention mention in CustodyMention.Of(custody).Where(mention => mention.IsRefused && mention.Entry.At <= scope.AsOf))
        {
            Index(mention);
        }
    }

    public IEnumerable<Finding> Search(KitTree tree, IReadOnlyList<LineConclusion> lines)
    {
        if (refusals.Count == 0)
        {
            return [];
        }

        KitId kit = tree.Manifest.Id;
        DateTimeOffset since = scope.Input.Custody.HistoryOf(kit, scope.AsOf)[^1].From;
        return tree.All.SelectMany(part => byKit.GetValueOrDefault(part.Manifest.Id) ?? [])
            .Concat(lines.Select(static line => line.Line.Tool?.Id).OfType<ToolId>().SelectMany(tool => byTool.GetValueOrDefault(tool) ?? []))
            .Concat(ofUnknown)
            .Distinct()
            .Where(mention => mention.Entry.At >= since || scope.AsOf - mention.Entry.At <= scope.Policy.Inventory.JobRecordAgeMax)
            .OrderBy(static mention => mention.Entry.At)
            .ThenBy(static mention => mention.Entry.Id.Value, StringComparer.Ordinal)
            .ThenBy(static mention => mention.Entry.Kind, StringComparer.Ordinal)
            .Select(mention => FindingOf(mention, lines));
    }

    private void Index(CustodyMention mention)
    {
        if (mention.IsOfUnknown)
        {
            ofUnknown.Add(mention);
        }

        foreach (KitId kit in mention.Kits)
        {
            Put(byKit, kit, mention);
        }

        foreach (ToolId tool in mention.Tools)
        {
            Put(byTool, tool, mention);
        }
    }

    private static void Put<TKey>(Dictionary<TKey, List<CustodyMention>> lists, TKey key, CustodyMention mention)
        where TKey : notnull
    {
        if (!lists.TryGetValue(key, out List<CustodyMention>? list))
        {
            lists.Add(key, list = []);
        }

        list.Add(mention);
    }

    private Finding FindingOf(CustodyMention mention, IReadOnlyList<LineConclusion> lines)
    {
        CustodyEntry entry = mention.Entry;
        LineConclusion[] about = [.. lines.Where(line => line.Line.Tool is { } tool && mention.Tools.Contains(tool.Id))];
        return new Finding(about.Length > 0 ? FindingLevel.Line : FindingLevel.Kit, new Reason(
            CustodyReasons.FindingEntryRefused,
            ("kind", entry.Kind), ("id", entry.Id.Value), ("by", entry.By.Value), ("at", scope.Time(entry.At)),
            ("why", string.Join(" ", refusals[entry].Issues.Take(IssuesNamed).Select(static issue => issue.Reason.ToString())))))
        {
            LineNumbers = [.. about.Select(static line => line.OuterNumber).Distinct()],
            LineLabels = [.. about.Select(static line => line.Label)],
        };
    }
}
