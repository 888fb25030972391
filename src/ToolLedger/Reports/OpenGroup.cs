using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Reconciliation;
using ToolLedger.Records;

namespace ToolLedger.Reports;

/// <summary>Open lines that follow each other in the order of the chase and are open for the very same reasons: one row, so that one cause is not fifteen alarms.</summary>
internal sealed class OpenGroup
{
    private OpenGroup(int firstRank, IReadOnlyList<LineConclusion> lines)
    {
        FirstRank = firstRank;
        Lines = lines;
    }

    /// <summary>The place of the first line in the order, from 1.</summary>
    internal int FirstRank { get; }

    internal IReadOnlyList<LineConclusion> Lines { get; }

    internal LineState State => Lines[0].State;

    internal IReadOnlyList<Reason> Reasons => Lines[0].Reasons;

    /// <summary>The step of all lines, with the marks of all of them. Null if the lines have none.</summary>
    internal Reason? Next => Lines[0].Next is not { } next ? null : new Reason(
        next.Reason.Kind,
        [.. next.Reason.Values.Select(pair => (pair.Key, string.Join(", ", Lines.SelectMany(line => ValuesOf(line, pair.Key)).Distinct(StringComparer.Ordinal))))]);

    internal static List<OpenGroup> Of(IReadOnlyList<LineConclusion> chase)
    {
        var groups = new List<OpenGroup>();
        var lines = new List<LineConclusion>();
        for (int index = 0; index < chase.Count; index++)
        {
            lines.Add(chase[index]);
            if (index + 1 == chase.Count || !IsAlike(chase[index], chase[index + 1]))
            {
                groups.Add(new OpenGroup(index + 2 - lines.Count, [.. lines]));
                lines.Clear();
            }
        }

        return groups;
    }

    private static bool IsAlike(LineConclusion one, LineConclusion other) =>
        one.State == other.State
        && one.Next is { } step && other.Next is { } otherStep && step.Kind == otherStep.Kind && step.Reason.Kind == otherStep.Reason.Kind
        && WithoutMark(step.Reason).SequenceEqual(WithoutMark(otherStep.Reason))
        && one.Reasons.SequenceEqual(other.Reasons);

    private static IEnumerable<KeyValuePair<string, string>> WithoutMark(Reason step) =>
        step.Values.Where(static pair => !string.Equals(pair.Key, "mark", StringComparison.Ordinal));

    private static IEnumerable<string> ValuesOf(LineConclusion line, string name) =>
        line.Next!.Reason.Values.Where(pair => string.Equals(pair.Key, name, StringComparison.Ordinal)).Select(static pair => pair.Value);
}
