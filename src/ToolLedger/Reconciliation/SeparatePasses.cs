using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Presence;

namespace ToolLedger.Reconciliation;

/// <summary>
/// Tells how many separate views the passes are. Passes of sessions that overlap at one station are not separate (the same reads handed in twice must not
/// make two passes), and one too short to have been a presentation of its own is joined with its neighbour.
/// </summary>
internal static class SeparatePasses
{
    public static IReadOnlyList<PassEvidence> Of(IEnumerable<TimedPass> passes, TimeSpan shortest)
    {
        var separate = new List<PassEvidence>();
        foreach (IGrouping<string, TimedPass> station in passes
            .GroupBy(static pass => pass.Station.Value, StringComparer.Ordinal)
            .OrderBy(static group => group.Key, StringComparer.Ordinal))
        {
            PassCluster? open = null;
            foreach (TimedPass pass in station
                .OrderBy(static pass => pass.From)
                .ThenBy(static pass => pass.To)
                .ThenBy(static pass => pass.Evidence.Session.Value, StringComparer.Ordinal))
            {
                if (pass.Evidence.LookCount == 0)
                {
                    // A silent pass shows nothing that another could show again.
                    separate.Add(pass.Evidence);
                }
                else if (open is null)
                {
                    open = new PassCluster(pass);
                }
                else if (!open.TryAdd(pass, shortest))
                {
                    separate.AddRange(open.Views(shortest));
                    open = new PassCluster(pass);
                }
            }

            separate.AddRange(open?.Views(shortest) ?? []);
        }

        return separate;
    }
}
