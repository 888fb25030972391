using System;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ToolLedger.Calibration;
using Xunit;

namespace ToolLedger.Tests.Calibration;

/// <summary>The due list against a plain sort, whatever is moved and asked in between.</summary>
public sealed class DueListTests
{
    private static readonly DateOnly First = new(2026, 1, 1);

    // A model: an array of days and LINQ. Few instruments keep moves pending and merged; many moves force a sort.
    [Property(MaxTest = 300)]
    public Property A_list_gives_what_sorting_gives_after_any_moves(NonNegativeInt count, int[] dayNumbers, int[] moves, NonNegativeInt start, int length)
    {
        DateOnly[] days = [.. Enumerable.Range(0, count.Get).Select(index => DayOf(dayNumbers.Length == 0 ? index : dayNumbers[index % dayNumbers.Length]))];
        var list = new DueList(days);
        bool isRight = list.Count == days.Length;
        for (int index = 0; index <= moves.Length && isRight; index++)
        {
            if (index < moves.Length && days.Length > 0)
            {
                int instrument = Math.Abs(moves[index] % days.Length);
                days[instrument] = DayOf(moves[index] * 7);
                list.Move(instrument, days[instrument]);
            }

            DateOnly from = First.AddDays(start.Get % 400 - 50), to = from.AddDays(length % 300);
            isRight = list.Between(from, to).SequenceEqual(Sorted(days, from, to))
                && list.Through(to).SequenceEqual(Sorted(days, DateOnly.MinValue, to))
                && list.Between(DateOnly.MinValue, DateOnly.MaxValue).SequenceEqual(Sorted(days, DateOnly.MinValue, DateOnly.MaxValue))
                && Enumerable.Range(0, days.Length).All(one => list.DayOf(one) == days[one]);
        }

        return isRight.ToProperty();
    }

    [Fact]
    public void Many_moves_are_sorted_once_and_few_are_merged()
    {
        DateOnly[] days = [.. Enumerable.Range(0, 20_000).Select(static index => First.AddDays(index * 7919 % 790))];
        var list = new DueList(days);
        foreach (int moveCount in (int[])[1, 200, 5000])
        {
            for (int index = 0; index < moveCount; index++)
            {
                int instrument = index * 31 % days.Length;
                days[instrument] = First.AddDays((index * 13 + moveCount) % 1000);
                list.Move(instrument, days[instrument]);
            }

            Assert.True(list.Between(DateOnly.MinValue, DateOnly.MaxValue).SequenceEqual(Sorted(days, DateOnly.MinValue, DateOnly.MaxValue)));
        }
    }

    [Fact]
    public void A_refilled_list_is_a_new_one_and_a_refused_refill_changes_nothing()
    {
        DateOnly[] days = [First, First.AddDays(1), First], other = [First.AddDays(5), DueList.Never, First];
        var list = new DueList(days);
        list.Move(0, First.AddDays(9));

        Assert.Throws<ArgumentOutOfRangeException>(() => list.Refill([First, First, default]));
        Assert.Throws<ArgumentException>(() => list.Refill([First]));
        Assert.Equal([2, 1, 0], list.Through(DateOnly.MaxValue).ToArray());
        list.Refill(other);
        Assert.Equal([2, 0], list.Through(DateOnly.MaxValue).ToArray());
    }

    [Fact]
    public void Asking_and_moving_allocate_nothing()
    {
        var list = new DueList([.. Enumerable.Range(0, 10_000).Select(static index => First.AddDays(index % 790))]);
        for (int index = 0; index < 150; index++)
        {
            list.Move(index, First.AddDays(900));
        }

        list.Through(First.AddDays(1000));
        long before = GC.GetAllocatedBytesForCurrentThread();
        int sum = list.Through(First.AddDays(30)).Length;
        for (int index = 0; index < 150; index++)
        {
            list.Move(index, First.AddDays(index));
        }

        sum += list.Between(First, First.AddDays(99)).Length;
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
        Assert.True(sum > 0);
    }

    [Fact]
    public void Days_outside_of_the_years_and_unknown_instruments_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new DueList([default(DateOnly)]));
        var list = new DueList([First, DueList.Never]);
        Assert.Throws<ArgumentOutOfRangeException>(() => list.Move(2, First));
        Assert.Throws<ArgumentOutOfRangeException>(() => list.Move(-1, First));
        Assert.Throws<ArgumentOutOfRangeException>(() => list.Move(0, new DateOnly(3021, 1, 1)));
        Assert.Equal([0], list.Through(DateOnly.MaxValue).ToArray());
        Assert.Empty(new DueList([]).Through(DateOnly.MaxValue).ToArray());
        Assert.Empty(new DueList([DueList.Never]).Through(DateOnly.MaxValue).ToArray());
    }

    private static DateOnly DayOf(int number) => number % 11 == 0 ? DueList.Never : First.AddDays(number % 350);

    private static int[] Sorted(DateOnly[] days, DateOnly from, DateOnly to) =>
    [
        .. days.Select(static (day, index) => (Day: day, Index: index))
            .Where(one => one.Day != DueList.Never && one.Day >= from && one.Day <= to)
            .OrderBy(static one => one.Day).ThenBy(static one => one.Index).Select(static one => one.Index),
    ];
}
