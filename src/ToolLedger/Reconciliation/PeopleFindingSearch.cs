using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Inventory;
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
