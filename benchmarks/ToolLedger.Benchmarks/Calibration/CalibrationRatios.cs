using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Calibration;
using ToolLedger.Reads;
using ToolLedger.Tools;

namespace ToolLedger.Benchmarks.Calibration;

/// <summary>The due list and the status of one instrument against what a first attempt writes, in one process.</summary>
internal static class CalibrationRatios
{
    internal static int Run()
    {
        DateOnly[] due = Fleet.DueDays();
        (int Instrument, DateOnly Day)[] moves = Fleet.Moves();
        var keys = new long[due.Length];
        var refilled = new DueList(due);
        Ratios.Measure("Due list of 1,000,000 instruments by day, then number", Fleet.Count, 4, 15,
            ("LINQ OrderBy.ThenBy", () => Enumerable.Range(0, due.Length).OrderBy(index => due[index]).ThenBy(static index => index).ToArray()[^1]),
            ("Array.Sort of packed keys", () => Packed(due, keys)),
            ("DueList, refilled and listed", () => Refilled(refilled, due)),
            ("DueList, built and listed", () => Listed(new DueList(due))),
            ("limit: one pass", () => Passed(due)));

        var sorted = new SortedSet<(DateOnly, int)>(due.Select(static (day, index) => (day, index)));
        var current = (DateOnly[])due.Clone();
        var list = new DueList(due);
        Ratios.Measure("100,000 moves of the due day", Fleet.MoveCount, 3, 9,
            ("SortedSet, remove and add", () => Moved(sorted, current, moves)),
            ("DueList, moved and listed once", () => Moved(list, moves)));

        list = new DueList(due);
        int within = list.Through(Fleet.First.AddDays(30)).Length;
        Ratios.Measure(FormattableString.Invariant($"Due within 30 days: {within} instruments"), within, 12, 41,
            ("LINQ Where.OrderBy", () => due.Select(static (day, index) => (Day: day, Index: index)).Where(static one => one.Day <= Fleet.First.AddDays(30)).OrderBy(static one => one.Day).ThenBy(static one => one.Index).ToArray()[^1].Index),
            ("DueList, slice", () => Summed(list.Through(Fleet.First.AddDays(30)))),
            ("DueList, slice after 100 moves", () =>
            {
                for (int index = 0; index < 100; index++)
                {
                    list.Move(moves[index].Instrument, moves[index].Day);
                }

                return Summed(list.Through(Fleet.First.AddDays(30)));
            }
        ));

        (CalibrationRegister register, Tool[] tools) = Fleet.Register(10_000);
        var use = new IntendedUse(new DateTimeOffset(2025, 6, 1, 8, 0, 0, TimeSpan.Zero)) { Function = "torque", Value = 100 };
        SiteCalendar site = SiteCalendar.Fixed("site", TimeSpan.FromHours(2));
        Ratios.Measure("Status of one of 10,000 instruments", tools.Length, 14, 41,
            ("with words (StatusOf)", () => tools.Count(tool => register.StatusOf(tool, use, CalibrationPolicy.Default, site).IsFit)),
            ("without (Judge)", () => Fit(register, tools, use, site)),
            ("without, the same instrument", () => Fit(register, [.. Enumerable.Repeat(tools[0], tools.Length)], use, site)));
        return 0;
    }

    private static long Packed(DateOnly[] due, long[] keys)
    {
        for (int index = 0; index < keys.Length; index++)
        {
            keys[index] = ((long)due[index].DayNumber << 32) | (uint)index;
        }

        Array.Sort(keys);
        return (int)keys[^1];
    }

    private static long Refilled(DueList list, DateOnly[] due)
    {
        list.Refill(due);
        return Listed(list);
    }

    private static long Listed(DueList list) => list.Between(DateOnly.MinValue, DateOnly.MaxValue)[^1];

    private static long Passed(DateOnly[] due)
    {
        long sum = 0;
        foreach (DateOnly day in due)
        {
            sum += day.DayNumber;
        }

        return sum;
    }

    private static long Summed(ReadOnlySpan<int> instruments)
    {
        long sum = 0;
        foreach (int instrument in instruments)
        {
            sum += instrument;
        }

        return sum;
    }

    private static long Moved(SortedSet<(DateOnly, int)> sorted, DateOnly[] current, (int Instrument, DateOnly Day)[] moves)
    {
        foreach ((int instrument, DateOnly day) in moves)
        {
            sorted.Remove((current[instrument], instrument));
            current[instrument] = day;
            sorted.Add((day, instrument));
        }

        return sorted.Min.Item2;
    }

    private static long Moved(DueList list, (int Instrument, DateOnly Day)[] moves)
    {
        foreach ((int instrument, DateOnly day) in moves)
        {
            // Another day each round, so that a round has something to do.
            list.Move(instrument, day == list.DayOf(instrument) ? day.AddDays(1) : day);
        }

        return list.Through(Fleet.First)[0];
    }

    private static long Fit(CalibrationRegister register, Tool[] tools, IntendedUse use, SiteCalendar site)
    {
        long fit = 0;
        foreach (Tool tool in tools)
        {
            fit += register.Judge(tool, use, CalibrationPolicy.Default, site).IsFit ? 1 : 0;
        }

        return fit;
    }
}
