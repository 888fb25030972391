using System.Collections.Generic;
using ToolLedger.Presence;

namespace ToolLedger.Reconciliation;

/// <summary>Search order of open lines. History orders the search; it does not change the rule.</summary>
internal sealed class ChaseOrder : IComparer<LineConclusion>
{
    public static ChaseOrder Instance { get; } = new();

    public int Compare(LineConclusion? x, LineConclusion? y)
    {
        if (x is null || y is null)
        {
            return (x is null ? 0 : 1).CompareTo(y is null ? 0 : 1);
        }

        int byRank = Rank(x).CompareTo(Rank(y));
        if (byRank != 0)
        {
            return byRank;
        }

        int byHistory = CompareReadRate(HistoryOf(y), HistoryOf(x));
        return byHistory != 0 ? byHistory : ComparePlaces(x, y);
    }

    /// <summary>As in a table of contents: a sub-kit before what is inside, and that before the next line.</summary>
    private static int ComparePlaces(LineConclusion x, LineConclusion y)
    {
        int depth = System.Math.Min(x.Within.Count, y.Within.Count);
        for (int i = 0; i <= depth; i++)
        {
            int byNumber = NumberAt(x, i).CompareTo(NumberAt(y, i));
            if (byNumber != 0)
            {
                return byNumber;
            }
        }

        return x.Within.Count.CompareTo(y.Within.Count);
    }

    private static int NumberAt(LineConclusion line, int depth) => depth < line.Within.Count ? line.Within[depth] : line.Line.Number;

    private static int Rank(LineConclusion line) => line switch
    {
        { State: LineState.Conflict } => 0,
        { IsPositiveDifference: true } => 1,
        { State: LineState.NotRead } => 2,
        { State: LineState.Weak } => 3,
        { State: LineState.Partial } => 4,
        _ => 5,
    };

    /// <summary>How often a tag answers says nothing of one that did answer, beside another kit.</summary>
    private static TagHistory? HistoryOf(LineConclusion line) => line.Evidence.LooksNotCounted > 0 ? null : line.Evidence.History;

    /// <summary>Compares (read + 1) / (presented + 2) in whole numbers, so that no history counts as one half.</summary>
    private static int CompareReadRate(TagHistory? a, TagHistory? b)
    {
        long readA = (a?.SessionsRead ?? 0) + 1L, presentedA = (a?.SessionsPresented ?? 0) + 2L;
        long readB = (b?.SessionsRead ?? 0) + 1L, presentedB = (b?.SessionsPresented ?? 0) + 2L;
        return (readA * presentedB).CompareTo(readB * presentedA);
    }
}
