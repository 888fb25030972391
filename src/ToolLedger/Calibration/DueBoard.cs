using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Reads;
using ToolLedger.Tools;

namespace ToolLedger.Calibration;

/// <summary>What is due when: every tool and function that has a due day, in order of it, and those that have none.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class DueBoard
{
    private readonly int[] days;

    private DueBoard(DueItem[] items, DueItem[] undated, DateOnly siteDate)
    {
        Items = items.AsReadOnly();
        Undated = undated.AsReadOnly();
        SiteDate = siteDate;
        days = [.. items.Select(static item => item.Day!.Value.DayNumber)];
    }

    /// <summary>What has a due day, by day, then tool and function.</summary>
    public IReadOnlyList<DueItem> Items { get; }

    /// <summary>What needs calibration and has no due day: no record, rejected, inactive, suspended, or uses that were not counted. By tool and function.</summary>
    public IReadOnlyList<DueItem> Undated { get; }

    /// <summary>The day at the site for which the board was made.</summary>
    public DateOnly SiteDate { get; }

    /// <summary>Makes the board of some tools at an instant. Tools that need no calibration and have none are left out.</summary>
    /// <param name="register">What is recorded.</param>
    /// <param name="tools">The tools.</param>
    /// <param name="at">The instant.</param>
    /// <param name="policy">How due dates are read.</param>
    /// <param name="calendar">The calendar of the site.</param>
    /// <returns>The board.</returns>
    public static DueBoard Of(CalibrationRegister register, IEnumerable<Tool> tools, DateTimeOffset at, CalibrationPolicy policy, SiteCalendar calendar)
    {
        ArgumentNullException.ThrowIfNull(register);
        ArgumentNullException.ThrowIfNull(tools);
        ArgumentNullException.ThrowIfNull(policy);
        ArgumentNullException.ThrowIfNull(calendar);
        DueItem[] all =
        [
            .. tools.OrderBy(static tool => tool.Id.Value, StringComparer.Ordinal)
                .SelectMany(tool => ItemsOf(register, tool, new IntendedUse(at), policy, calendar))
                .Where(static item => item.Status.State != CalibrationState.NotRequired),
        ];
        return Sorted(all, calendar.DateAt(at));
    }

    /// <summary>What is due on or before a day, overdue ones among them.</summary>
    /// <param name="day">The day.</param>
    /// <returns>A slice of <see cref="Items"/>.</returns>
    public IEnumerable<DueItem> Through(DateOnly day)
    {
        int count = days.AsSpan().BinarySearch(day.DayNumber + 1);
        count = count < 0 ? ~count : Array.IndexOf(days, day.DayNumber + 1);
        return Items.Take(count);
    }

    /// <summary>What is due within some days from the day of the board on, overdue ones among them.</summary>
    /// <param name="dayCount">The days; 0 means through today.</param>
    /// <returns>A slice of <see cref="Items"/>.</returns>
    public IEnumerable<DueItem> Within(int dayCount) => Through(SiteDate.AddDays(dayCount));

    /// <summary>The board of a part of the tools.</summary>
    /// <param name="isWanted">Which items stay.</param>
    /// <returns>The smaller board.</returns>
    public DueBoard Where(Func<DueItem, bool> isWanted)
    {
        ArgumentNullException.ThrowIfNull(isWanted);
        return new DueBoard([.. Items.Where(isWanted)], [.. Undated.Where(isWanted)], SiteDate);
    }

    /// <summary>The items by month of their due day.</summary>
    /// <returns>The first day of each month with its items, in order.</returns>
    public IEnumerable<IGrouping<DateOnly, DueItem>> ByMonth() => Items.GroupBy(static item => new DateOnly(item.Day!.Value.Year, item.Day.Value.Month, 1));

    private static DueBoard Sorted(DueItem[] all, DateOnly siteDate)
    {
        var list = new DueList([.. all.Select(static item => item.Day ?? DueList.Never)]);
        DueItem[] items = [.. list.Between(DateOnly.MinValue, DateOnly.MaxValue).ToArray().Select(index => all[index])];
        return new DueBoard(items, [.. all.Where(static item => item.Day is null)], siteDate);
    }

    private static List<DueItem> ItemsOf(CalibrationRegister register, Tool tool, IntendedUse use, CalibrationPolicy policy, SiteCalendar calendar)
    {
        var items = new List<DueItem>();
        IReadOnlyList<string> functions = register.FunctionsOf(tool, use, policy, calendar);
        foreach (string? function in functions.Count == 0 ? [null] : functions.ToArray<string?>())
        {
            IntendedUse asked = use with { Function = function };
            CalibrationStatus status = register.StatusOf(tool, asked, policy, calendar);
            var judge = new FitnessJudge(register.HistoryOf(tool.Id), tool, asked, policy, calendar);
            CalibrationRecord? record = status.Record ?? judge.LatestRecord(function);
            (int sequence, DateTimeOffset changedAt) = record is null ? (0, default) : judge.ChangesSince(function, record);
            items.Add(new DueItem(tool, function, status, record, record is null || !status.IsFit ? null : judge.Forecast(function, record), sequence, changedAt));
        }

        return items;
    }
}
