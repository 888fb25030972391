using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Presence;
using ToolLedger.Reads;

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
    public static IReadOnlyList<PassEvidence> Of(TimedPass[] passes, TimeSpan shortest)
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
                Finish(ref open, shortest, separate);
                station = pass.Station.Value;
            }

            if (pass.Evidence.LookCount == 0)
            {
                // A silent pass shows nothing that another could show again.
                separate.Add(pass.Evidence);
            }
            else if (open is null || !open.TryAdd(pass, shortest))
            {
                Finish(ref open, shortest, separate);
                open = new PassCluster(pass);
            }
        }

        Finish(ref open, shortest, separate);
        return separate;
    }

    /// <summary>The separate passes where silence counts: then what is one pass is told by time alone, whatever was read in it, and each says in which surroundings it was.</summary>
    /// <param name="passes">The passes in any order, at least one; they are put in order of station and time.</param>
    /// <param name="shortest">The shortest pass that is a view of its own.</param>
    /// <param name="changes">What people noted to have changed, in time order.</param>
    /// <param name="separating">Gets the last change between each two surroundings.</param>
    /// <param name="lastFrom">When the session began from which on passes have to suffice by themselves; null for the last of good health.</param>
    public static IReadOnlyList<PassEvidence> WithSilence(
        TimedPass[] passes, TimeSpan shortest, IReadOnlyList<SurroundingsChange> changes, List<SurroundingsChange> separating, DateTimeOffset? lastFrom = null)
    {
        Array.Sort(passes, Compare);
        var clusters = new List<PassCluster>(passes.Length);
        foreach (TimedPass pass in passes)
        {
            if (clusters.Count == 0 || clusters[^1].Station != pass.Station || !clusters[^1].TryAdd(pass, shortest))
            {
                clusters.Add(new PassCluster(pass));
            }
        }

        FindSeparating(clusters, changes, separating);
        DateTimeOffset? last = lastFrom ?? LastStart(passes);
        var separate = new PassEvidence[clusters.Count];
        for (int i = 0; i < separate.Length; i++)
        {
            separate[i] = clusters[i].AsOnePass() with
            {
                Surroundings = separating.FindLastIndex(change => change.At <= clusters[i].From) + 1,
                IsLast = clusters[i].To > last,
            };
        }

        return separate;
    }

    /// <summary>When the last session of good health began; null where there is none.</summary>
    private static DateTimeOffset? LastStart(TimedPass[] passes)
    {
        DateTimeOffset? last = null;
        foreach (IGrouping<SessionId, TimedPass> session in passes.GroupBy(static pass => pass.Evidence.Session))
        {
            DateTimeOffset start = session.Min(static pass => pass.From);
            last = session.Any(static pass => !pass.Evidence.IsDegraded) && !(start <= last) ? start : last;
        }

        return last;
    }

    /// <summary>A change separates the passes of one station before it from those after it. Where there are several stations a tool nearby may have been near at each, so that nothing is separated;
    /// and a change in the midst of a pass belongs to both sides of it.</summary>
    private static void FindSeparating(List<PassCluster> clusters, IReadOnlyList<SurroundingsChange> changes, List<SurroundingsChange> separating)
    {
        if (changes.Count == 0 || clusters.Exists(cluster => cluster.Station != clusters[0].Station))
        {
            return;
        }

        int before = 0;
        foreach (SurroundingsChange change in changes)
        {
            int ended = clusters.FindAll(cluster => cluster.To <= change.At).Count;
            bool isBetween = ended > 0 && ended < clusters.Count && clusters.TrueForAll(cluster => cluster.To <= change.At || cluster.From >= change.At);
            if (isBetween)
            {
                if (ended == before)
                {
                    separating.RemoveAt(separating.Count - 1);
                }

                separating.Add(change);
                before = ended;
            }
        }
    }

    private static void Finish(ref PassCluster? open, TimeSpan shortest, List<PassEvidence> separate)
    {
        if (open is not null)
        {
            separate.AddRange(open.Views(shortest));
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
