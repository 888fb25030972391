using System;
using System.Collections.Generic;
using ToolLedger.Presence;

namespace ToolLedger.Reconciliation;

/// <summary>
/// Tells how many separate views the passes are. Passes of sessions that overlap at one station are not separate (the same reads handed in twice must not
/// make two passes), and one too short to have been a presentation of its own is joined with its neighbour.
/// </summary>
internal static class SeparatePasses
{
    /// <summary>The separate passes, by station and time.</summary>
    /// <param name="passes">The passes in any order; they are put in order of station and time.</param>
    /// <param name="shortest">The shortest pass that is a view of its own.</param>
    /// <param name="silentToo">True where silence counts: then what is one pass is told by time alone, whatever was read in it.</param>
    public static IReadOnlyList<PassEvidence> Of(TimedPass[] passes, TimeSpan shortest, bool silentToo = false)
    {
        // One pass, as of most sessions, is separate by itself.
        if (passes.Length <= 1)
        {
            return passes.Length == 0 ? [] : [passes[0].Evidence];
        }

        Array.Sort(passes, Compare);
        var separate = new List<PassEvidence>(passes.Length);
        PassCluster? open = null;
        string station = passes[0].Station.Value;
        foreach (TimedPass pass in passes)
        {
            if (!string.Equals(pass.Station.Value, station, StringComparison.Ordinal))
            {
                Finish(ref open, shortest, silentToo, separate);
                station = pass.Station.Value;
            }

            if (pass.Evidence.LookCount == 0 && !silentToo)
            {
                // A silent pass shows nothing that another could show again.
                separate.Add(pass.Evidence);
            }
            else if (open is null || !open.TryAdd(pass, shortest))
            {
                Finish(ref open, shortest, silentToo, separate);
                open = new PassCluster(pass);
            }
        }

        Finish(ref open, shortest, silentToo, separate);
        return separate;
    }

    private static void Finish(ref PassCluster? open, TimeSpan shortest, bool silentToo, List<PassEvidence> separate)
    {
        if (open is not null)
        {
            if (silentToo)
            {
                separate.Add(open.AsOnePass());
            }
            else
            {
                separate.AddRange(open.Views(shortest));
            }

            open = null;
        }
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
}
