using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>Findings from what people reported beside the lines: items on no list, and openings after the evidence. They change no conclusion.</summary>
internal sealed class PeopleFindingSearch
{
    private readonly ReconciliationScope scope;
    private readonly KitTree tree;
    private readonly IReadOnlyList<LineConclusion> lines;

    public PeopleFindingSearch(ReconciliationScope scope, KitTree tree, IReadOnlyList<LineConclusion> lines)
    {
        this.scope = scope;
        this.tree = tree;
        this.lines = lines;
        UnlistedItems = scope.UnlistedItemsOf(tree);
    }

    public IReadOnlyList<UnlistedItemReport> UnlistedItems { get; }

    /// <summary>The latest record of each job and line, of those that are not too old.</summary>
    public IReadOnlyList<ConsumableUse> JobRecords()
    {
        List<ConsumableUse>? latest = null;
        foreach (KitTree part in scope.Input.Inventory.Uses.Count == 0 ? [] : tree.All)
        {
            foreach (ManifestLine line in part.Manifest.Lines)
            {
                var jobs = new HashSet<string>(StringComparer.Ordinal);
                foreach (ConsumableUse use in scope.People.UsesOf(part.Manifest.Id, line.Number))
                {
                    if (scope.AsOf - use.At <= scope.Policy.Inventory.JobRecordAgeMax && jobs.Add(FoldedText.Of(use.Job)))
                    {
                        (latest ??= []).Add(use);
                    }
                }
            }
        }

        return latest is null ? [] :
        [
            .. latest
                .OrderByDescending(static use => use.At)
                .ThenBy(static use => use.Job, StringComparer.Ordinal)
                .ThenBy(static use => use.Kit.Value, StringComparer.Ordinal)
                .ThenBy(static use => use.LineNumber),
        ];
    }

    public IEnumerable<Finding> UnlistedItemFindings() => UnlistedItems.Select(report => new Finding(FindingLevel.Kit, new Reason(
        PeopleReasons.FindingUnlisted,
        ("by", report.By.Value),
        ("at", scope.Time(report.At)),
        ("what", report.Description),
        ("owner", report.Owner.IsEmpty ? "an unknown owner" : report.Owner.Value),
        ("seen", SeenText(report)),
        ("touched", report.TouchedSince.Count == 0 ? "not stated, which limits nothing" : string.Join(", ", report.TouchedSince.Select(static place => place.Value))))));

    public IEnumerable<Finding> OpeningFindings()
    {
        LineConclusion[] older = [.. lines.Where(static line => line.Evidence.OpenedSince is not null)];
        if (older.Length > 0 && tree.Openings(scope) is [var opening, ..])
        {
            yield return new Finding(FindingLevel.Kit, new Reason(
                PeopleReasons.FindingOpened,
                ("at", scope.Time(opening.At)),
                ("by", opening.By.Value),
                ("count", older.Length.ToString(CultureInfo.InvariantCulture))))
            {
                LineNumbers = [.. older.Select(static line => line.OuterNumber).Distinct()],
                LineLabels = [.. older.Select(static line => line.Label)],
            };
        }
    }

    private string SeenText(UnlistedItemReport report)
    {
        string when = report.LastSeenAt is { } at ? scope.Time(at) : "at a time not stated";
        return report.LastSeenWhere.IsEmpty ? when + ", place not stated" : $"{when}, {report.LastSeenWhere.Value}";
    }
}
