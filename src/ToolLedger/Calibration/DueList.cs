using System;
using System.Collections.Generic;
using System.Globalization;

namespace ToolLedger.Calibration;

/// <summary>Numbered instruments in order of their due days, then of their numbers, for fleets of millions: "due within so many days" is a slice of one array.</summary>
/// <remarks>
/// Built by a counting sort by day, in time proportional to the instruments. A move costs a few instructions; a question after a few moves merges them into a copy of its slice, after many it sorts
/// once. Memory: 8 bytes an instrument. Not thread-safe.
/// </remarks>
public sealed class DueList
{
    /// <summary>The most instruments.</summary>
    public const int MaxCount = 100_000_000;

    /// <summary>The day of an instrument that is never due, or of which no due day is known.</summary>
    public static readonly DateOnly Never = DateOnly.MaxValue;

    private static readonly int FirstDay = new DateOnly(1970, 1, 1).DayNumber;
    private static readonly int LastDay = new DateOnly(3020, 12, 31).DayNumber;
    private static readonly int NeverDay = DateOnly.MaxValue.DayNumber;

    private readonly int[] days;
    private readonly int[] order;
    private readonly List<int> moved = [];

    // starts[d] is where day baseDay + d begins in the order; one more entry ends the last day, and one is scratch of the sort.
    private int[] starts = new int[2];
    private int baseDay = FirstDay;
    private int range;
    private ulong[] isMoved = [];
    private long[] arrivals = [];
    private int[] merged = [];

    /// <summary>Makes a list.</summary>
    /// <param name="dueDays">The due day of each instrument, by its number from 0 on; <see cref="Never"/> for none. Years 1970 to 3020.</param>
    /// <exception cref="ArgumentOutOfRangeException">There are more than 100,000,000 instruments, or a day is outside the years.</exception>
    public DueList(ReadOnlySpan<DateOnly> dueDays)
    {
        if (dueDays.Length > MaxCount)
        {
            throw new ArgumentOutOfRangeException(nameof(dueDays), dueDays.Length, "A due list holds at most 100,000,000 instruments.");
        }

        // Every element is written before it is read.
        days = GC.AllocateUninitializedArray<int>(dueDays.Length);
        order = GC.AllocateUninitializedArray<int>(dueDays.Length);
        Take(dueDays);
    }

    /// <summary>The number of instruments, due on some day or never.</summary>
    public int Count => days.Length;

    /// <summary>The due day of an instrument.</summary>
    /// <param name="instrument">Its number.</param>
    /// <returns>The day; <see cref="Never"/> if it has none.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such instrument.</exception>
    public DateOnly DayOf(int instrument) => DateOnly.FromDayNumber(days[Checked(instrument)]);

    /// <summary>Gives an instrument another due day, in constant time.</summary>
    /// <param name="instrument">Its number.</param>
    /// <param name="day">The day; <see cref="Never"/> for none.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such instrument, or the day is outside the years 1970 to 3020.</exception>
    public void Move(int instrument, DateOnly day)
    {
        int number = Checked(day);
        if (days[Checked(instrument)] == number)
        {
            return;
        }

        days[instrument] = number;
        if (isMoved.Length == 0)
        {
            isMoved = new ulong[(days.Length + 63) / 64];
        }

        ulong bit = 1UL << (instrument & 63);
        if ((isMoved[instrument >> 6] & bit) == 0)
        {
            isMoved[instrument >> 6] |= bit;
            moved.Add(instrument);
        }
    }

    /// <summary>Gives every instrument a due day, and sorts once; allocates nothing.</summary>
    /// <param name="dueDays">The due day of each instrument, by its number; <see cref="Never"/> for none.</param>
    /// <exception cref="ArgumentException">There are more or fewer days than instruments.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A day is outside the years 1970 to 3020; the list stays as it was.</exception>
    public void Refill(ReadOnlySpan<DateOnly> dueDays)
    {
        if (dueDays.Length != days.Length)
        {
            throw new ArgumentException("A list is refilled with a day for each of its instruments.", nameof(dueDays));
        }

        foreach (DateOnly day in dueDays)
        {
            Checked(day);
        }

        ClearMoves();
        Take(dueDays);
    }

    /// <summary>The instruments due from a day through a day, in order of days, then of numbers.</summary>
    /// <param name="first">The first day.</param>
    /// <param name="last">The last day; before the first for none.</param>
    /// <returns>Their numbers. The memory is that of the list: good until the list is asked again or an instrument moves.</returns>
    public ReadOnlySpan<int> Between(DateOnly first, DateOnly last)
    {
        if (moved.Count > 16 + (days.Length / 64))
        {
            Sort();
        }

        int from = Math.Max(first.DayNumber, baseDay) - baseDay;
        int to = Math.Min(Math.Min(last.DayNumber, NeverDay - 1), baseDay + range - 1) - baseDay;
        return moved.Count > 0 ? Merged(first.DayNumber, Math.Min(last.DayNumber, NeverDay - 1), from, to)
            : from > to ? [] : order.AsSpan(starts[from], starts[to + 1] - starts[from]);
    }

    /// <summary>The instruments due on or before a day: overdue ones among them.</summary>
    /// <param name="day">The day.</param>
    /// <returns>Their numbers, as <see cref="Between"/> gives them.</returns>
    public ReadOnlySpan<int> Through(DateOnly day) => Between(DateOnly.MinValue, day);

    private void Take(ReadOnlySpan<DateOnly> dueDays)
    {
        Span<int> numbers = days.AsSpan(0, dueDays.Length);
        int low = int.MaxValue;
        int high = int.MinValue;
        for (int index = 0; index < numbers.Length; index++)
        {
            int number = Checked(dueDays[index]);
            numbers[index] = number;
            low = Math.Min(low, number);
            high = Math.Max(high, number == NeverDay ? int.MinValue : number);
        }

        Sort(low, high);
    }

    private void Sort()
    {
        ClearMoves();
        int low = int.MaxValue;
        int high = int.MinValue;
        foreach (int day in days)
        {
            low = Math.Min(low, day);
            high = Math.Max(high, day == NeverDay ? int.MinValue : day);
        }

        Sort(low, high);
    }

    /// <summary>The counting sort: how many a day, where each day begins, each instrument to its place. The numbers rise within a day because they are gone through in order.</summary>
    private void Sort(int low, int high)
    {
        range = high == int.MinValue ? 0 : high - low + 1;
        baseDay = range == 0 ? FirstDay : low;
        if (starts.Length < range + 2)
        {
            starts = new int[range + 2];
        }

        Array.Clear(starts);
        Span<int> places = starts.AsSpan(0, range + 2);
        int first = baseDay;
        foreach (int day in days)
        {
            // What is never due lies beyond the last entry that counts.
            uint at = (uint)(day - first);
            if (at < (uint)places.Length)
            {
                places[(int)at]++;
            }
        }

        // Where day d begins goes to d + 1, so that placing may count it up to where the day ends.
        int begin = 0;
        int waiting = places[0];
        places[0] = 0;
        for (int day = 1; day < places.Length; day++)
        {
            (waiting, places[day], begin) = (places[day], begin, begin + waiting);
        }

        Place(places);
    }

    private void Place(Span<int> places)
    {
        // places[d + 1] holds where day d begins, and after the pass where it ends, which is where the next one begins.
        ReadOnlySpan<int> numbers = days;
        Span<int> sorted = order;
        Span<int> ends = places[1..];
        int first = baseDay;
        for (int index = 0; index < numbers.Length; index++)
        {
            uint at = (uint)(numbers[index] - first);
            if (at < (uint)ends.Length)
            {
                sorted[ends[(int)at]++] = index;
            }
        }
    }

    private void ClearMoves()
    {
        foreach (int instrument in moved)
        {
            isMoved[instrument >> 6] = 0;
        }

        moved.Clear();
    }

    private ReadOnlySpan<int> Merged(int firstDay, int lastDay, int from, int to)
    {
        int arrived = Arrivals(firstDay, lastDay);
        int kept = from > to ? 0 : starts[to + 1] - starts[from];
        if (merged.Length < kept + arrived)
        {
            merged = new int[kept + arrived];
        }

        int count = 0;
        int next = 0;
        for (int day = from; day <= to; day++)
        {
            for (int place = starts[day]; place < starts[day + 1]; place++)
            {
                int instrument = order[place];
                if ((isMoved[instrument >> 6] >> (instrument & 63) & 1) != 0)
                {
                    continue;
                }

                long key = Key(baseDay + day, instrument);
                while (next < arrived && arrivals[next] < key)
                {
                    merged[count++] = (int)arrivals[next++];
                }

                merged[count++] = instrument;
            }
        }

        while (next < arrived)
        {
            merged[count++] = (int)arrivals[next++];
        }

        return merged.AsSpan(0, count);
    }

    private int Arrivals(int firstDay, int lastDay)
    {
        if (arrivals.Length < moved.Count)
        {
            arrivals = new long[Math.Max(moved.Count, 2 * arrivals.Length)];
        }

        int count = 0;
        foreach (int instrument in moved)
        {
            if (days[instrument] >= firstDay && days[instrument] <= lastDay)
            {
                arrivals[count++] = Key(days[instrument], instrument);
            }
        }

        Array.Sort(arrivals, 0, count);
        return count;
    }

    private static long Key(int day, int instrument) => ((long)day << 32) | (uint)instrument;

    private int Checked(int instrument) => (uint)instrument < (uint)days.Length
        ? instrument
        : throw new ArgumentOutOfRangeException(nameof(instrument), instrument, string.Create(CultureInfo.InvariantCulture, $"The list holds the instruments 0 to {days.Length - 1}."));

    private static int Checked(DateOnly day)
    {
        int number = day.DayNumber;
        return (number >= FirstDay && number <= LastDay) || number == NeverDay
            ? number
            : throw new ArgumentOutOfRangeException(nameof(day), day, "A due day lies in the years 1970 to 3020.");
    }
}
