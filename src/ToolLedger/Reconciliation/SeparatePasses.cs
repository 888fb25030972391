using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Presence;

namespace ToolLedger.Reconciliation;

/// <summary>
/// Joins passes that are not separate views: those of sessions that overlap at one station (the same reads handed in twice must not make two
/// passes), and those too short to have been a presentation of their own.
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
            TimedPass? open = null;
            foreach (TimedPass pass in station
                .OrderBy(static pass => pass.From)
                .ThenBy(static pass => pass.To)
                .ThenBy(static pass => pass.Evidence.Session.Value, StringComparer.Ordinal))
            {
                if (open is not { } current)
                {
                    open = pass;
                }
                else if (pass.From < current.To && (current.Evidence.LookCount == 0 || pass.Evidence.LookCount == 0))
                {
                    // A silent pass shows nothing that another could show again, and must not make one of two that it overlaps.
                    bool isSilent = pass.Evidence.LookCount == 0;
                    separate.Add(isSilent ? pass.Evidence : current.Evidence);
                    open = isSilent ? current : pass;
                }
                else if (pass.From < current.To)
                {
                    // The same time at the same place: the looks may be the same ones, so only the better of the two counts.
                    open = Join(current, pass, int.Max);
                }
                else if (pass.To - pass.From < shortest || current.To - current.From < shortest)
                {
                    open = Join(current, pass, static (one, other) => one + other);
                }
                else
                {
                    separate.Add(current.Evidence);
                    open = pass;
                }
            }

            separate.Add(open!.Value.Evidence);
        }

        return separate;
    }

    /// <summary>Looks of good and of degraded sessions are joined apart: another session, however poor, takes nothing from a good one.</summary>
    private static TimedPass Join(TimedPass a, TimedPass b, Func<int, int, int> looks) => a with
    {
        To = a.To > b.To ? a.To : b.To,
        Evidence = a.Evidence with
        {
            IsDegraded = a.Evidence.IsDegraded || b.Evidence.IsDegraded,
            LookCount = looks(a.Evidence.LookCount, b.Evidence.LookCount),
            ValidLookCount = looks(a.Evidence.ValidLookCount, b.Evidence.ValidLookCount),
            TidLookCount = looks(a.Evidence.TidLookCount, b.Evidence.TidLookCount),
            LookLimit = long.Max(a.Evidence.LookLimit, b.Evidence.LookLimit),
        },
    };
}
