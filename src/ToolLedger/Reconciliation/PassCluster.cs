using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Presence;
using ToolLedger.Reads;

namespace ToolLedger.Reconciliation;

/// <summary>
/// Heard passes at one station that overlap each other, or that are joined because one is too short. It shows as many views, and as many looks, as passes of it
/// that do not overlap show together at best: so a further pass, however poor, takes nothing from the others.
/// </summary>
internal sealed class PassCluster
{
    private readonly List<TimedPass> passes = [];
    private DateTimeOffset to;

    public PassCluster(TimedPass first)
    {
        passes.Add(first);
        to = first.To;
    }

    public StationId Station => passes[0].Station;

    public DateTimeOffset From => passes[0].From;

    public DateTimeOffset To => to;

    /// <summary>Adds the next pass by its start; false where it is a view of its own behind the cluster.</summary>
    public bool TryAdd(TimedPass pass, TimeSpan shortest)
    {
        bool isSeparate = pass.From >= to && pass.To - pass.From >= shortest && to - passes[0].From >= shortest;
        if (!isSeparate)
        {
            passes.Add(pass);
            to = pass.To > to ? pass.To : to;
        }

        return !isSeparate;
    }

    /// <summary>One entry a view, the looks of all at the first.</summary>
    public IReadOnlyList<PassEvidence> Views(TimeSpan shortest)
    {
        if (passes.Count == 1)
        {
            return [passes[0].Evidence];
        }

        bool isDegraded = passes.Exists(static pass => pass.Evidence.IsDegraded);
        long limit = passes.Max(static pass => pass.Evidence.LookLimit);
        int looks = (int)Most(static pass => pass.Evidence.LookCount);
        int valid = (int)Most(static pass => pass.Evidence.ValidLookCount);
        int tid = (int)Most(static pass => pass.Evidence.TidLookCount);
        int validViews = CountViews(static pass => pass.Evidence.ValidLookCount, shortest);
        int tidViews = CountViews(static pass => pass.Evidence.TidLookCount, shortest);
        var views = new PassEvidence[CountViews(static pass => pass.Evidence.LookCount, shortest)];
        for (int i = 0; i < views.Length; i++)
        {
            views[i] = new PassEvidence(passes[0].Evidence.Session, passes[0].Evidence.Pass + i, isDegraded, Share(looks, views.Length, i), limit)
            {
                ValidLookCount = Share(valid, validViews, i),
                TidLookCount = Share(tid, tidViews, i),
            };
        }

        return views;
    }

    /// <summary>All as one pass: as many looks, offered and had, as passes of it that do not overlap show together at best.</summary>
    public PassEvidence AsOnePass()
    {
        PassEvidence first = passes[0].Evidence;
        return passes.Count == 1 ? first : first with
        {
            IsDegraded = passes.Exists(static pass => pass.Evidence.IsDegraded),
            LookCount = (int)Most(static pass => pass.Evidence.LookCount),
            LookLimit = Most(static pass => pass.Evidence.LookLimit),
            ValidLookCount = (int)Most(static pass => pass.Evidence.ValidLookCount),
            TidLookCount = (int)Most(static pass => pass.Evidence.TidLookCount),
        };
    }

    private static int Share(int looks, int views, int index) => index == 0 ? looks - int.Max(0, views - 1) : index < views ? 1 : 0;

    /// <summary>The most passes with looks that do not overlap and are long enough, found by taking always the one that ends first.</summary>
    private int CountViews(Func<TimedPass, int> looks, TimeSpan shortest)
    {
        int count = 0;
        DateTimeOffset end = DateTimeOffset.MinValue;
        foreach (TimedPass pass in passes.Where(pass => looks(pass) > 0).OrderBy(static pass => pass.To))
        {
            if (pass.From >= end && pass.To - pass.From >= shortest)
            {
                count++;
                end = pass.To;
            }
        }

        return count > 0 ? count : passes.Exists(pass => looks(pass) > 0) ? 1 : 0;
    }

    /// <summary>The most looks of passes that do not overlap: the best up to each pass, by its end, either without it or with it and the best before its start.</summary>
    private long Most(Func<TimedPass, long> looks)
    {
        TimedPass[] byEnd = [.. passes.OrderBy(static pass => pass.To)];
        long[] best = new long[byEnd.Length + 1];
        for (int i = 0; i < byEnd.Length; i++)
        {
            int before = i;
            while (before > 0 && byEnd[before - 1].To > byEnd[i].From)
            {
                before--;
            }

            best[i + 1] = long.Max(best[i], best[before] + looks(byEnd[i]));
        }

        return best[^1];
    }
}
