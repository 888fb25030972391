using System;
using System.Globalization;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ToolLedger.Calibration;
using ToolLedger.Reads;
using ToolLedger.Testing.Generators;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Calibration;

public sealed class CalibrationStatusTests
{
    private static readonly Tool T4 = new() { Id = new ToolId("T4"), Description = "Torque wrench", NeedsCalibration = true };
    private static readonly Tool T1 = new() { Id = new ToolId("T1"), Description = "Spanner" };
    private static readonly CalibrationPolicy DayIncluded = new();
    private static readonly CalibrationPolicy MonthEnd = new() { Convention = DueConvention.MonthEnd };

    [Fact]
    public void S74_the_status_is_asked_at_the_time_of_use()
    {
        var register = new CalibrationRegister([Record("2025-04-01", dueOn: "2026-03-31", recordedAt: "2025-04-01T10:00:00Z")]);

        CalibrationStatus used = register.StatusOf(T4, At("2026-04-02T09:00:00Z"), DayIncluded, SiteCalendar.Utc);

        Assert.Equal(CalibrationState.Overdue, used.State);
        Assert.Equal(Day("2026-03-31"), used.DueOn);
        Assert.False(used.IsInDate);
    }

    // A record entered later does not cover an earlier use: the second half of scenario S75 as far as the status goes.
    [Fact]
    public void S75_a_later_pass_leaves_the_earlier_use_overdue()
    {
        var register = new CalibrationRegister(
        [
            Record("2025-04-01", dueOn: "2026-03-31", recordedAt: "2025-04-01T10:00:00Z"),
            Record("2026-04-10", dueOn: "2027-04-10", recordedAt: "2026-04-10T10:00:00Z"),
        ]);

        Assert.Equal(CalibrationState.Overdue, register.StatusOf(T4, At("2026-04-02T09:00:00Z"), DayIncluded, SiteCalendar.Utc).State);
        Assert.Equal(CalibrationState.Current, register.StatusOf(T4, At("2026-04-10T10:00:00Z"), DayIncluded, SiteCalendar.Utc).State);
    }

    [Theory]
    [InlineData("2026-04-30T12:00:00Z", CalibrationState.DueSoon)]
    [InlineData("2026-05-01T12:00:00Z", CalibrationState.Overdue)]
    public void S77_a_month_on_the_label_runs_to_its_end_by_the_end_of_month_convention(string at, CalibrationState expected)
    {
        var register = new CalibrationRegister([Record("2025-04-10", dueMonth: "2026-04-01", recordedAt: "2025-04-10T10:00:00Z")]);

        Assert.Equal(expected, register.StatusOf(T4, At(at), MonthEnd, SiteCalendar.Utc).State);
    }

    [Fact]
    public void S77_a_month_on_the_label_is_not_guessed_at_by_the_printed_day_convention()
    {
        var register = new CalibrationRegister([Record("2025-04-10", dueMonth: "2026-04-01", recordedAt: "2025-04-10T10:00:00Z")]);

        CalibrationStatus status = register.StatusOf(T4, At("2026-04-30T12:00:00Z"), DayIncluded, SiteCalendar.Utc);

        Assert.Equal(CalibrationState.Unknown, status.State);
        Assert.Equal(CalibrationReasons.MonthOnly, status.Reason.Kind);
    }

    [Fact]
    public void S79_the_clamped_day_is_the_last_one_in_date()
    {
        var register = new CalibrationRegister([Record("2024-02-29", months: 12, recordedAt: "2024-02-29T10:00:00Z")]);

        Assert.Equal(CalibrationState.DueSoon, register.StatusOf(T4, At("2025-02-28T23:59:59Z"), DayIncluded, SiteCalendar.Utc).State);
        Assert.Equal(CalibrationState.Overdue, register.StatusOf(T4, At("2025-03-01T00:00:00Z"), DayIncluded, SiteCalendar.Utc).State);
    }

    [Fact]
    public void S88_no_record_of_a_tool_that_needs_calibration_is_unknown_and_not_in_date()
    {
        CalibrationStatus status = CalibrationRegister.Empty.StatusOf(T4, At("2026-04-02T09:00:00Z"), DayIncluded, SiteCalendar.Utc);

        Assert.Equal(CalibrationState.Unknown, status.State);
        Assert.Equal(CalibrationReasons.NoRecord, status.Reason.Kind);
        Assert.False(status.IsInDate);
    }

    [Fact]
    public void A_tool_that_needs_no_calibration_and_has_no_record_is_not_required() =>
        Assert.Equal(CalibrationState.NotRequired, CalibrationRegister.Empty.StatusOf(T1, At("2026-04-02T09:00:00Z"), DayIncluded, SiteCalendar.Utc).State);

    // Doubt goes to the register: a tool that is in it is under control, whatever the manifest says.
    [Fact]
    public void A_tool_that_is_said_to_need_none_but_has_a_record_is_judged_by_the_record()
    {
        var register = new CalibrationRegister([Record("2025-04-01", dueOn: "2026-03-31", recordedAt: "2025-04-01T10:00:00Z", tool: "T1")]);

        Assert.Equal(CalibrationState.Overdue, register.StatusOf(T1, At("2026-04-02T09:00:00Z"), DayIncluded, SiteCalendar.Utc).State);
    }

    [Theory]
    [InlineData("2026-05-31T13:59:59Z", CalibrationState.DueSoon)]
    [InlineData("2026-05-31T15:00:00Z", CalibrationState.Overdue)]
    public void S93_due_dates_are_days_of_the_site_and_not_of_utc(string at, CalibrationState expected)
    {
        var register = new CalibrationRegister([Record("2025-05-31", dueOn: "2026-05-31", recordedAt: "2025-05-31T10:00:00Z")]);

        Assert.Equal(expected, register.StatusOf(T4, At(at), DayIncluded, SiteCalendar.Fixed("Brisbane yard", TimeSpan.FromHours(10))).State);
    }

    [Theory]
    [InlineData("2026-02-28T12:00:00Z", CalibrationState.Current)]
    [InlineData("2026-03-01T12:00:00Z", CalibrationState.DueSoon)]
    [InlineData("2026-03-31T23:59:59Z", CalibrationState.DueSoon)]
    [InlineData("2026-04-01T00:00:00Z", CalibrationState.Overdue)]
    public void Due_soon_begins_the_stated_days_before_and_ends_with_the_due_day(string at, CalibrationState expected)
    {
        var register = new CalibrationRegister([Record("2025-04-01", dueOn: "2026-03-31", recordedAt: "2025-04-01T10:00:00Z")]);

        Assert.Equal(expected, register.StatusOf(T4, At(at), new CalibrationPolicy { DueSoonDays = 30 }, SiteCalendar.Utc).State);
    }

    [Fact]
    public void The_sentence_names_the_last_day_and_the_convention()
    {
        var register = new CalibrationRegister([Record("2025-04-01", dueOn: "2026-03-31", recordedAt: "2025-04-01T10:00:00Z")]);

        string said = register.StatusOf(T4, At("2026-04-02T09:00:00Z"), MonthEnd, SiteCalendar.Utc).ToString();

        Assert.Equal("Overdue: In date only through 2026-03-31, by end of month; site date 2026-04-02. Not fit for use.", said);
    }

    // Property 8 of the trade: whatever is entered later changes nothing that was said of an earlier instant.
    [Property(Arbitrary = [typeof(CalibrationGenerators)])]
    public Property A_later_record_never_changes_an_earlier_instant(CalibrationRegister register, CalibrationRecord later, CalibrationPolicy policy, PositiveInt secondsBefore)
    {
        DateTimeOffset at = later.RecordedAt.AddTicks(-secondsBefore.Get * 7_654_321L);
        bool isNew = register.Records.All(record => record.Tool != later.Tool || record.CalibratedOn != later.CalibratedOn || record.RecordedAt != later.RecordedAt);
        CalibrationRegister longer = isNew ? new CalibrationRegister([.. register.Records, later]) : register;

        return new[] { "T1", "T2", "T3", "T4", "T5", "T6" }
            .Select(id => new Tool { Id = new ToolId(id), Description = "tool", NeedsCalibration = true })
            .All(tool => Same(register.StatusOf(tool, at, policy, SiteCalendar.Utc), longer.StatusOf(tool, at, policy, SiteCalendar.Utc)))
            .ToProperty().Classify(isNew, "new record");
    }

    // With nothing entered in between, time alone never makes a tool fitter.
    [Property(Arbitrary = [typeof(CalibrationGenerators)])]
    public Property Time_alone_never_brings_a_tool_back_in_date(CalibrationRecord record, CalibrationPolicy policy, NonNegativeInt first, NonNegativeInt second)
    {
        var register = new CalibrationRegister([record]);
        var tool = new Tool { Id = record.Tool, Description = "tool", NeedsCalibration = true };
        DateTimeOffset early = record.RecordedAt.AddDays(1 + (first.Get % 2000)), late = early.AddDays(second.Get % 2000);

        return (Rank(register, tool, late, policy) >= Rank(register, tool, early, policy)).ToProperty();
    }

    private static int Rank(CalibrationRegister register, Tool tool, DateTimeOffset at, CalibrationPolicy policy) =>
        register.StatusOf(tool, at, policy, SiteCalendar.Utc).State switch { CalibrationState.Current => 0, CalibrationState.DueSoon => 1, _ => 2 };

    private static bool Same(CalibrationStatus one, CalibrationStatus other) =>
        one.State == other.State && one.DueOn == other.DueOn && one.SiteDate == other.SiteDate && one.Reason.Equals(other.Reason);

    private static CalibrationRecord Record(string day, string recordedAt, string? dueOn = null, string? dueMonth = null, int? months = null, string tool = "T4") => new()
    {
        Tool = new ToolId(tool),
        CalibratedOn = Day(day),
        DueOn = dueOn is null ? null : Day(dueOn),
        DueMonth = dueMonth is null ? null : Day(dueMonth),
        IntervalMonths = months,
        RecordedAt = At(recordedAt),
    };

    private static DateTimeOffset At(string text) => DateTimeOffset.ParseExact(text, "yyyy-MM-dd'T'HH:mm:ssK", CultureInfo.InvariantCulture);

    private static DateOnly Day(string text) => DateOnly.ParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture);
}
