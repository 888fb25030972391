using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;
using ToolLedger.Kits;
using ToolLedger.Reconciliation;

namespace ToolLedger.Tests.Reconciliation.Closeouts;

/// <summary>How often a tool in each true place got each conclusion.</summary>
internal sealed class CloseoutTable
{
    private readonly int[,] lines = new int[Enum.GetValues<TruePlace>().Length, Enum.GetValues<LineState>().Length];
    private readonly int[] kits = new int[Enum.GetValues<KitState>().Length];
    private int wronglyComplete;
    private readonly HashSet<string> codes = new(StringComparer.Ordinal);

    public void Add(CloseoutTruth truth, ReconciliationResult result)
    {
        kits[(int)result.Kit.State]++;
        wronglyComplete += result.Kit.State == KitState.Complete && truth.IsAnyNotInTheBag ? 1 : 0;
        foreach (LineConclusion line in result.Lines)
        {
            codes.UnionWith(line.Reasons.Select(reason => reason.Code));
            if (line.Line is ToolLine { Tool: { } tool })
            {
                lines[(int)truth.PlaceOf(tool.Id), (int)line.State]++;
            }
        }
    }

    /// <summary>Codes of all reasons that were given.</summary>
    public IReadOnlySet<string> Codes => codes;

    /// <summary>Kits called complete though a tool was not in the bag.</summary>
    public int WronglyComplete => wronglyComplete;

    public int CountOf(KitState state) => kits[(int)state];

    public int CountOf(TruePlace place) => Enum.GetValues<LineState>().Sum(state => lines[(int)place, (int)state]);

    public int CountOf(TruePlace place, LineState state) => lines[(int)place, (int)state];

    public int Accounted(params IReadOnlyList<TruePlace> places) => places.Sum(place => CountOf(place, LineState.Accounted));

    /// <summary>A Markdown table with, for tools that are not in the bag, the upper bound of how often they are accounted for.</summary>
    public string ToMarkdown()
    {
        LineState[] states = [LineState.Accounted, LineState.Weak, LineState.NotRead, LineState.NotAssessed, LineState.Conflict, LineState.Partial];
        var text = new StringBuilder("| true place | tools | accounted (read) | weak | not read | not assessed | conflict | partial | wrongly accounted, 95 % upper bound |\n|---|---|---|---|---|---|---|---|---|\n");
        foreach (TruePlace place in Enum.GetValues<TruePlace>())
        {
            int count = CountOf(place);
            string bound = CloseoutTruth.IsInTheBag(place) ? "" : Percent(BinomialBound.Upper(CountOf(place, LineState.Accounted), count, 0.95));
            text.Append(CultureInfo.InvariantCulture, $"| {Words(place)} | {count} |{string.Concat(states.Select(state => Cell(place, state, count)))} {bound} |\n");
        }

        return text.Append('\n').Append(string.Join(", ", Enum.GetValues<KitState>().Select(state => string.Create(CultureInfo.InvariantCulture, $"{state}: {CountOf(state)}"))))
            .Append(CultureInfo.InvariantCulture, $"; complete though a tool was not in the bag: {wronglyComplete}\n").ToString();
    }

    private string Cell(TruePlace place, LineState state, int count)
        => string.Create(CultureInfo.InvariantCulture, $" {CountOf(place, state)} ({Percent(CountOf(place, state) / (double)int.Max(1, count))}) |");

    private static string Percent(double share) => (100 * share).ToString("0.##", CultureInfo.InvariantCulture) + " %";

    private static string Words(TruePlace place) => place switch
    {
        TruePlace.InTheBag => "in the bag",
        TruePlace.InTheBagShielded => "in the bag, shielded",
        TruePlace.InTheWetBag => "in the bag, the bag wet",
        TruePlace.InTheBagDeadTag => "in the bag, tag dead",
        TruePlace.Absent => "absent",
        TruePlace.InAPocketBeside => "in a pocket beside",
        _ => "in the neighbour's bag",
    };
}
