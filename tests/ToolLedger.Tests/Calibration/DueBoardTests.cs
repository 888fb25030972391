using System;
using System.Linq;
using ToolLedger.Calibration;
using ToolLedger.Reads;
using ToolLedger.Tools;
using Xunit;
using static ToolLedger.Tests.Calibration.TorqueWrench;

namespace ToolLedger.Tests.Calibration;

public sealed class DueBoardTests
{
    private static readonly DateTimeOffset Now = At("2026-03-01T08:00:00Z");

    [Fact]
    public void Items_are_in_order_of_their_days_and_what_has_none_stands_apart()
    {
        Tool[] tools = [.. ((string[])["T9", "T4", "T7", "T5", "T1"]).Select(static id => new Tool { Id = new ToolId(id), Description = "tool", NeedsCalibration = id != "T1" })];
        CalibrationRegister register = new(
        [
            Record("T9", "2025-06-01", 12), Record("T4", "2025-02-10", 12), Record("T7", "2025-06-01", 12),
        ]);

        DueBoard board = DueBoard.Of(register, tools, Now, P0, SiteCalendar.Utc);

        Assert.Equal(["T4 due 2026-02-10", "T7 due 2026-06-01", "T9 due 2026-06-01"], board.Items.Select(static item => item.ToString()));
        Assert.Equal(["T5 without a due date"], board.Undated.Select(static item => item.ToString()));
        Assert.Equal(["T4"], board.Within(0).Select(static item => item.Tool.Id.Value));
        Assert.Equal(3, board.Within(92).Count());
        Assert.Single(board.Within(91));
        Assert.Equal([(Day("2026-02-01"), 1), (Day("2026-06-01"), 2)], board.ByMonth().Select(static month => (month.Key, month.Count())));
        Assert.Equal(["T7", "T9"], board.Where(static item => item.Status.IsFit).Items.Select(static item => item.Tool.Id.Value));
        Assert.Equal(CalibrationState.Overdue, board.Items[0].Status.State);
    }

    [Fact]
    public void Each_function_has_its_own_line()
    {
        CalibrationRegister register = Register([Passed("2026-01-10", months: 12, function: "a"), Passed("2026-01-10", months: 4, function: "b")]);

        Assert.Equal(["T4 b due 2026-05-10", "T4 a due 2027-01-10"], DueBoard.Of(register, [T4], Now, P0, SiteCalendar.Utc).Items.Select(static item => item.ToString()));
    }

    // 10 cycles a day since 2026-01-10: 500 of 1,000 are used on day 50, so the rest lasts another 50 days. A forecast, and marked as one.
    [Fact]
    public void A_limit_of_uses_gives_a_forecast_that_is_marked_and_never_a_due_date()
    {
        CalibrationRecord record = Passed("2026-01-10", months: 12, interval: new CalibrationInterval { Cycles = 1000 });
        CalibrationRegister register = Register([record], Used("2026-01-10", "2026-02-28", 500));
        DateTimeOffset at = At("2026-02-28T21:00:00Z");

        DueItem item = Assert.Single(DueBoard.Of(register, [T4], at, P0, SiteCalendar.Utc).Items);

        Assert.Equal((Day("2026-04-19"), Day("2027-01-10"), true), (item.Forecast, item.Due, item.IsForecast));
        Assert.Equal("T4 due 2026-04-19 (forecast)", item.ToString());
        Assert.Equal((1, At("2026-02-28T20:00:00Z")), (item.Sequence, item.ChangedAt));

        DueItem gap = Assert.Single(DueBoard.Of(Register([record], Used("2026-01-12", "2026-02-28", 500)), [T4], at, P0, SiteCalendar.Utc).Undated);
        Assert.Null(gap.Forecast);
        DueItem reached = Assert.Single(DueBoard.Of(Register([record], Used("2026-01-10", "2026-02-28", 1000)), [T4], at, P0, SiteCalendar.Utc).Items);
        Assert.Equal("T4 due 2026-02-28", reached.ToString());
        Assert.Null(Assert.Single(DueBoard.Of(Register([record], Used("2026-01-10", "2026-02-28", 0)), [T4], at, P0, SiteCalendar.Utc).Items).Forecast);
    }

    [Fact]
    public void Entries_that_move_the_date_raise_the_sequence()
    {
        CalibrationRecord record = Passed("2025-03-10", months: 12);
        DueItem Item(params CalibrationEvent[] events) => Assert.Single(DueBoard.Of(Register([record], events), [T4], Now, P0, SiteCalendar.Utc).Items);

        Assert.Equal((0, Day("2026-03-10"), record.RecordedAt), (Item().Sequence, Item().Day, Item().ChangedAt));
        DueItem extended = Item(Extension("2026-03-20", "2026-02-20T08:00:00Z"));
        Assert.Equal((1, Day("2026-03-20"), At("2026-02-20T08:00:00Z")), (extended.Sequence, extended.Day, extended.ChangedAt));
        Assert.Equal(0, Item(Extension("2026-03-20", "2026-03-02T08:00:00Z")).Sequence);
    }

    private static CalibrationRecord Record(string tool, string day, int months) => new()
    {
        Tool = new ToolId(tool),
        CalibratedOn = Day(day),
        IntervalMonths = months,
        RecordedAt = At(day + "T10:00:00Z"),
        RecordedBy = Q,
    };
}
