using System;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ToolLedger.Calibration;
using ToolLedger.Testing.Generators;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Calibration;

public sealed class CalibrationRecordTests
{
    [Property(Arbitrary = [typeof(CalibrationGenerators)])]
    public Property The_last_day_is_never_before_the_day_of_calibration(CalibrationRecord record, DueConvention convention) =>
        (record.LastDay(convention) is not { } last || last >= record.CalibratedOn).ToProperty();

    [Property(Arbitrary = [typeof(CalibrationGenerators)])]
    public Property The_end_of_month_convention_never_ends_earlier_than_the_printed_day(CalibrationRecord record) =>
        (record.LastDay(DueConvention.DayIncluded) is not { } day || record.LastDay(DueConvention.MonthEnd) >= day).ToProperty();

    [Theory]
    [InlineData("2024-02-29", 12, "2025-02-28", "2025-02-28")]
    [InlineData("2025-08-31", 6, "2026-02-28", "2026-02-28")]
    public void S79_adding_months_clamps_to_the_end_of_the_month(string day, int months, string due, string monthEnd)
    {
        CalibrationRecord record = Calibrated(day, months);

        Assert.Equal(Day(due), record.Due);
        Assert.Equal(Day(due), record.LastDay(DueConvention.DayIncluded));
        Assert.Equal(Day(monthEnd), record.LastDay(DueConvention.MonthEnd));
    }

    // Worked example of the notes on calibration, section 4: signed 2014-06-06, 12 calendar months.
    [Fact]
    public void Twelve_calendar_months_run_to_the_end_of_the_month_by_that_convention() =>
        Assert.Equal(Day("2015-06-30"), Calibrated("2014-06-06", 12).LastDay(DueConvention.MonthEnd));

    // Month arithmetic is not associative: 31 January + 1 + 1 month is 29 March, + 2 is 31 March.
    [Fact]
    public void Months_are_counted_from_the_anchor_in_one_step() => Assert.Equal(Day("2024-03-31"), Calibrated("2024-01-31", 2).Due);

    [Fact]
    public void Any_day_of_the_due_month_stands_for_the_month()
    {
        CalibrationRecord early = DueIn("2026-04-01"), late = DueIn("2026-04-30");

        Assert.Equal(early.DueMonth, late.DueMonth);
        Assert.Equal(Day("2026-04-30"), late.LastDay(DueConvention.MonthEnd));
        Assert.Null(late.LastDay(DueConvention.DayIncluded));
        Assert.Null(late.Due);
    }

    private static CalibrationRecord DueIn(string day) => new()
    {
        Tool = new ToolId("T4"),
        CalibratedOn = Day("2025-04-10"),
        DueMonth = Day(day),
        RecordedAt = new DateTimeOffset(2025, 4, 10, 12, 0, 0, TimeSpan.Zero),
    };

    private static CalibrationRecord Calibrated(string day, int months) => new()
    {
        Tool = new ToolId("T4"),
        CalibratedOn = Day(day),
        IntervalMonths = months,
        RecordedAt = new DateTimeOffset(Day(day), new TimeOnly(12, 0), TimeSpan.Zero),
    };

    private static DateOnly Day(string text) => DateOnly.ParseExact(text, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
}
