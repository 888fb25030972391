using System;
using System.Collections.Generic;
using ToolLedger.Presence;

namespace ToolLedger.Reconciliation;

/// <summary>
/// Joins passes that are not separate views: those of sessions that overlap at one station (the same reads handed in twice must not make two
/// passes), and those too short to have been a presentation of their own.
/// </summary>
internal static class SeparatePasses
{
    /// <summary>The separate passes, by station and time.</summary>
    /// <param name="passes">The passes in any order; they are put in order of station and time.</param>
    /// <param name="shortest">The shortest pass that is a view of its own.</param>
    public static IReadOnlyList<PassEvidence> Of(TimedPass[] passes, TimeSpan shortest)
    {
        // One pass, as of most sessions, is separate by itself.
        if (passes.Length <= 1)
        {
            return passes.Length == 0 ? [] : [passes[0].Evidence];
        }

        Array.Sort(passes, Compare);
        var separate = new List<PassEvidence>(passes.Length);
        TimedPass open = passes[0];
        foreach (TimedPass pass in passes.AsSpan(1))
        {
            if (pass.Station == open.Station)
            {
                open = Next(open, pass, shortest, separate);
            }
            else
            {
                separate.Add(open.Evidence);
                open = pass;
            }
        }

        separate.Add(open.Evidence);
        return separate;
    }

    /// <summary>What stays open after the next pass at the same station; what was finished by it is added.</summary>
    private static TimedPass Next(in TimedPass open, in TimedPass pass, TimeSpan shortest, List<PassEvidence> separate)
    {
        if (pass.From < open.To)
        {
            // A silent pass shows nothing that another could show again, and must not make one of two that it overlaps.
            if (pass.Evidence.LookCount == 0)
            {
                separate.Add(pass.Evidence);
                return open;
            }

            if (open.Evidence.LookCount == 0)
            {
                separate.Add(open.Evidence);
                return pass;
            }

            // The same time at the same place: the looks may be the same ones, so only the better of the two counts.
            return Join(open, pass, int.Max);
        }

        if (pass.To - pass.From < shortest || open.To - open.From < shortest)
        {
            return Join(open, pass, static (one, other) => one + other);
        }

        separate.Add(open.Evidence);
        return pass;
    }

    // Passes of one session keep the order of their numbers.
    private static int Compare(TimedPass a, TimedPass b)
    {
        int order = string.CompareOrdinal(a.Station.Value, b.Station.Value);
        order = order != 0 ? order : a.From.CompareTo(b.From);
        order = order != 0 ? order : a.To.CompareTo(b.To);
        order = order != 0 ? order : string.CompareOrdinal(a.Evidence.Session.Value, b.Evidence.Session.Value);
        return order != 0 ? order : a.Evidence.Pass.CompareTo(b.Evidence.Pass);
    }

    /// <summary>Looks of good and of degraded sessions are joined apart: another session, however poor, takes nothing from a good one.</summary>
    private static TimedPass Join(in TimedPass a, in TimedPass b, Func<int, int, int> looks) => a with
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
