using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Tools;

namespace ToolLedger.Reports;

/// <summary>The looks at the best-read live tag of a line, over the passes of all sessions that were used for its kit.</summary>
internal sealed class ReadTimeline
{
    private ReadTimeline(TagId tag, IReadOnlyList<TimelinePass> passes)
    {
        Tag = tag;
        Passes = passes;
    }

    internal TagId Tag { get; }

    /// <summary>The passes in time order, silent ones included.</summary>
    internal IReadOnlyList<TimelinePass> Passes { get; }

    internal int LookCount => Passes.Sum(static pass => pass.LookCount);

    internal int HeardPassCount => Passes.Count(static pass => pass.LookCount > 0);

    /// <summary>The timeline of a line; null where it has no live tag or no session was used.</summary>
    internal static ReadTimeline? Of(LineConclusion line, ReconciliationResult result)
    {
        if (line.Evidence.Best is not { } best)
        {
            return null;
        }

        TimelinePass[] passes =
        [
            .. result.Sessions
                .Where(static summary => summary.IsUsed)
                .Select(static summary => summary.Session)
                .OrderBy(static session => session.From)
                .ThenBy(static session => session.Id.Value, StringComparer.Ordinal)
                .SelectMany(session => PassesOf(session, best.Tag)),
        ];
        return passes.Length == 0 ? null : new ReadTimeline(best.Tag, passes);
    }

    private static IEnumerable<TimelinePass> PassesOf(ReadSession session, TagId tag)
    {
        ILookup<(int Pass, AntennaPort Antenna), Look> looks = session.LooksOf(tag).ToLookup(static look => (look.Pass, look.Antenna));
        HashSet<(int, AntennaPort)> saturated = [.. (session.Find(tag)?.Cells ?? []).Where(static cell => cell.IsSaturated).Select(static cell => (cell.Pass, cell.Antenna))];
        HashSet<AntennaPort> working = [.. session.LiveAntennas];
        foreach (ReadPass pass in session.Passes)
        {
            IEnumerable<AntennaPort> unnamed = looks.Contains((pass.Number, default)) ? [default] : [];
            yield return new TimelinePass(session, pass,
            [
                .. session.Presentation.Station.Antennas.Order().Concat(unnamed).Select(antenna => new TimelineRow(
                    antenna, !antenna.IsKnown || working.Contains(antenna), saturated.Contains((pass.Number, antenna)), [.. looks[(pass.Number, antenna)]])),
            ]);
        }
    }
}
