using System;
using System.Globalization;
using System.Linq;
using System.Text.Json;
using ToolLedger.Calibration;
using ToolLedger.Tests.Statistics;
using Xunit;
using static ToolLedger.Tests.Calibration.TorqueWrench;

namespace ToolLedger.Tests.Calibration;

/// <summary>Due dates by convention, windows and counts: the worked examples of published documents, and what the settings do. The source of each vector stands beside it in the file.</summary>
public sealed class DuePolicyTests
{
    private static readonly VectorFile Vectors = new("tests", "ToolLedger.Tests", "Calibration", "Data", "calibration.json");
    private static readonly CalibrationPolicy MonthEnd = new() { Convention = DueConvention.MonthEnd };
    private static readonly CalibrationPolicy Anchored = new() { Convention = DueConvention.FixedAnchor };

    [Fact]
    public void Same_day_clamped() => Assert.All(Vectors.Of("due_same_day_clamped"), static vector => Assert.Equal(Expected(vector), DueOf(vector, P0)));

    // 14 CFR 91.409 as discussed on public pages, and a label of a cartridge device that gives a month alone.
    [Fact]
    public void End_of_month() => Assert.All(Vectors.Of("due_end_of_month"), static vector => Assert.Equal(Expected(vector), DueOf(vector, MonthEnd)));

    [Fact]
    public void Dates_are_counted_from_the_anchor_and_never_chained() => Assert.All(Vectors.Of("due_chain_vs_anchor"), static vector =>
    {
        DateOnly from = Day(VectorFile.Text(vector, "from_date"));
        int[] steps = [.. vector.GetProperty("inputs").GetProperty("steps").EnumerateArray().Select(static step => step.GetInt32())];
        JsonElement expected = vector.GetProperty("expected");

        Assert.Equal(Day(expected.GetProperty("chained").GetString()!), steps.Aggregate(from, static (day, months) => day.AddMonths(months)));

        // Done on each due date, the row of dates keeps to its anchor.
        CalibrationRegister register = Register([Passed(Text(from), months: 1), Passed("2024-02-29", months: 1)]);
        Assert.Equal(Day(expected.GetProperty("anchored").GetString()!), register.Ask("2024-03-01T12:00:00Z", Anchored).DueOn);
    });

    // US Army TM 1-1500-328-23, as published: windows, and the next due date.
    [Fact]
    public void Windows_of_the_calendar() => Assert.All(Vectors.Of("tolerance_window_calendar"), static vector =>
    {
        DateOnly due = Day(VectorFile.Text(vector, "due"));
        int months = (int)VectorFile.Number(vector, "interval_months");
        JsonElement expected = vector.GetProperty("expected");
        DueWindow window = DueWindow.Around(due, months, Anchored);

        Assert.Equal((Day(expected.GetProperty("start").GetString()!), Day(expected.GetProperty("end").GetString()!)), (window.First, window.Last));
        Assert.Equal(Day(expected.GetProperty("next_due_if_inside").GetString()!), DueWindow.Next(due, months, window.First, Anchored));
        Assert.Equal(window.Last.AddDays(1).AddMonths(months), DueWindow.Next(due, months, window.Last.AddDays(1), Anchored));
    });

    [Fact]
    public void Windows_of_use() => Assert.All(Vectors.Of("tolerance_window_usage"), static vector =>
    {
        decimal due = Decimal(vector, "due"), width = Decimal(vector, "window"), done = Decimal(vector, "done");
        UseWindow window = UseWindow.Around(due, width);

        VectorFile.Close(vector, (double)window.First, "start");
        VectorFile.Close(vector, (double)window.Last, "end");
        Assert.Equal(vector.GetProperty("expected").GetProperty("inside").GetBoolean(), window.Contains(done));
        VectorFile.Close(vector, (double)UseWindow.Next(due, Decimal(vector, "interval"), done, width), "next_due");
    });

    // ISO 6789 as quoted by makers of torque tools: 12 months or 5,000 cycles, whichever comes first.
    [Fact]
    public void Whichever_comes_first() => Assert.All(Vectors.Of("whichever_first"), static vector =>
    {
        DateOnly day = Day(VectorFile.Text(vector, "calibrated"));
        var interval = new CalibrationInterval { Months = (int)VectorFile.Number(vector, "months"), Cycles = Decimal(vector, "cycle_limit") };
        decimal perDay = Decimal(vector, "cycles_per_day");
        CalibrationRecord record = Passed(Text(day), interval: new CalibrationInterval { Cycles = interval.Cycles });
        CalibrationPlan plan = Plan("2020-01-01T00:00:00Z", new PlannedFunction { Name = "torque", Interval = interval });
        UsePeriod[] log = [.. Enumerable.Range(0, 366).Select(n => Used(Text(day.AddDays(n)), Text(day.AddDays(n)), perDay))];
        CalibrationRegister register = Register([record], [plan, .. log]);

        DateOnly due = Day(vector.GetProperty("expected").GetProperty("due").GetString()!);
        CalibrationStatus lastDay = register.Ask(Text(due) + "T23:00:00Z");
        Assert.Equal((CalibrationState.DueSoon, due), (lastDay.State, lastDay.DueOn));
        Assert.Equal(CalibrationReasons.Overdue, register.Ask(Text(due.AddDays(1)) + "T01:00:00Z").Reason.Kind);
        Assert.Equal((decimal)vector.GetProperty("expected").GetProperty("cycles_at_due").GetDouble(), log.Where(one => one.From < due).Sum(static one => one.Amount));

        // Twice as many a day, and the count comes first: the 5,000th cycle falls on day 250.
        CalibrationRegister busy = Register([record], [plan, .. log.Select(one => Used(Text(one.From), Text(one.Through), 2 * perDay))]);
        Assert.Equal(CalibrationReasons.DueSoonByUse, busy.Ask(Text(day.AddDays(248)) + "T21:00:00Z").Reason.Kind);
        Assert.Equal("Overdue: 5000 of 5000 cycles since 2025-03-10. Not fit for use.", busy.Ask(Text(day.AddDays(249)) + "T21:00:00Z").ToString());
    });

    [Fact]
    public void A_calibration_inside_the_window_keeps_the_row_and_one_outside_starts_a_new_one()
    {
        CalibrationRecord first = Passed("1998-07-31", months: 6);

        Assert.Equal(Day("1999-07-31"), Register([first, Passed("1999-01-13", months: 6)]).Ask("1999-01-20T12:00:00Z", Anchored).DueOn);
        Assert.Equal(Day("1999-07-12"), Register([first, Passed("1999-01-12", months: 6)]).Ask("1999-01-20T12:00:00Z", Anchored).DueOn);

        // The window is no leave to use the tool past its due date.
        Assert.Equal(CalibrationState.Overdue, Register([first]).Ask("1999-02-01T12:00:00Z", Anchored).State);
    }

    [Fact]
    public void Grace_is_none_unless_a_site_says_so()
    {
        CalibrationRegister register = Register([Passed("2025-05-01", dueOn: "2026-05-01")]);

        Assert.Equal(CalibrationState.Overdue, register.Ask("2026-05-02T00:00:00Z").State);
        Assert.Equal(Day("2026-05-11"), register.Ask("2026-05-02T00:00:00Z", P0 with { GraceDays = 10 }).DueOn);
    }

    [Fact]
    public void An_extension_reaches_no_further_than_the_policy_allows()
    {
        CalibrationRegister register = Register([Passed("2025-05-01", dueOn: "2026-05-01")], Extension("2027-05-01", "2026-05-01T08:00:00Z"));

        Assert.Equal(Day("2026-05-31"), register.Ask("2026-05-20T08:00:00Z").DueOn);
        Assert.Equal(Day("2026-05-08"), register.Ask("2026-05-08T08:00:00Z", P0 with { ExtensionDays = 7 }).DueOn);
        Assert.Equal(CalibrationState.Overdue, register.Ask("2026-05-20T08:00:00Z", P0 with { ExtensionDays = 7 }).State);
    }

    [Fact]
    public void An_extension_lifts_neither_a_drop_nor_a_limit_of_uses()
    {
        CalibrationExtension extension = Extension("2026-05-20", "2026-05-01T08:00:00Z");
        CalibrationRecord record = Passed("2025-05-01", dueOn: "2026-05-01", interval: new CalibrationInterval { Cycles = 10 });

        Assert.Equal(CalibrationState.Suspended, Register([Passed("2025-05-01", dueOn: "2026-05-01")], extension, Happened(ConditionKind.Damaged, "2026-05-02T08:00:00Z")).Ask("2026-05-03T08:00:00Z").State);
        Assert.Equal(CalibrationReasons.OverdueByUse, Register([record], extension, Used("2025-05-01", "2026-05-03", 10)).Ask("2026-05-03T21:00:00Z").Reason.Kind);
    }

    // From memory of ISO 6789: the period may start with the first use. Without a log that shows it, it starts with the first day that the log does not cover.
    [Fact]
    public void The_period_starts_with_the_first_use_only_where_the_log_shows_it()
    {
        CalibrationPolicy firstUse = P0 with { Start = PeriodStart.FirstUse };
        CalibrationRecord record = Passed("2026-01-10", months: 12);
        UsePeriod stored = Used("2026-01-10", "2026-03-14", 0), inUse = Used("2026-03-15", "2026-03-20", 7), late = Used("2026-03-18", "2026-03-20", 7);

        Assert.Equal(Day("2027-03-15"), Register([record], stored, inUse).Ask("2026-03-20T21:00:00Z", firstUse).DueOn);
        Assert.Equal(Day("2027-03-15"), Register([record], stored, late).Ask("2026-03-20T21:00:00Z", firstUse).DueOn); // the 15th is not covered
        Assert.Equal(Day("2027-01-10"), Register([record], late).Ask("2026-03-20T21:00:00Z", firstUse).DueOn);
        Assert.Equal(Day("2027-01-10"), Register([record]).Ask("2026-03-20T21:00:00Z", firstUse).DueOn);
        Assert.Equal(Day("2027-02-10"), Register([record], stored, inUse).Ask("2026-03-20T21:00:00Z", firstUse with { StorageMonths = 1 }).DueOn);
        Assert.Equal(Day("2027-01-10"), Register([record], stored, inUse).Ask("2026-03-20T21:00:00Z").DueOn);
    }

    [Fact]
    public void The_log_of_uses_may_be_behind_by_the_stated_days()
    {
        CalibrationRegister register = Register([Passed("2026-01-10", interval: new CalibrationInterval { Cycles = 100 })], Used("2026-01-10", "2026-01-19", 50));

        Assert.Equal(CalibrationState.Current, register.Ask("2026-01-20T12:00:00Z").State);
        Assert.Equal(CalibrationState.Unknown, register.Ask("2026-01-21T12:00:00Z").State);
        Assert.Equal(CalibrationState.Current, register.Ask("2026-01-21T12:00:00Z", P0 with { UseLogLagDays = 2 }).State);
    }

    [Fact]
    public void A_correction_entered_later_takes_away_and_never_grants()
    {
        CalibrationRecord record = Passed("2025-10-14", months: 12);
        CalibrationRecord shorter = Passed("2025-10-14", dueOn: "2026-04-14", recordedAt: "2026-10-01T08:00:00Z"), longer = Passed("2025-10-14", months: 24, recordedAt: "2026-12-01T08:00:00Z");
        IntendedUse early = new(At("2026-06-01T08:00:00Z")), late = new(At("2026-11-01T08:00:00Z"));
        DateTimeOffset review = At("2027-01-01T08:00:00Z");

        Assert.Equal(CalibrationState.Current, Register([record, shorter]).Ask(early).State);
        Assert.Equal(CalibrationState.Overdue, Register([record, shorter]).Ask(early with { KnownAt = review }).State);
        Assert.Equal(CalibrationState.Overdue, Register([record, longer]).Ask(late with { KnownAt = review }).State);
    }

    private static DateOnly? DueOf(JsonElement vector, CalibrationPolicy policy)
    {
        DateOnly day = Day(VectorFile.Text(vector, "from_date"));
        return Register([Passed(Text(day), months: (int)VectorFile.Number(vector, "months"))]).Ask(Text(day) + "T12:00:00Z", policy).DueOn;
    }

    private static DateOnly Expected(JsonElement vector) => Day(vector.GetProperty("expected").GetString()!);

    private static decimal Decimal(JsonElement vector, string name)
    {
        JsonElement value = vector.GetProperty("inputs").GetProperty(name);
        return value.ValueKind == JsonValueKind.String ? decimal.Parse(value.GetString()!, CultureInfo.InvariantCulture) : value.GetDecimal();
    }

    private static string Text(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    // Given an extension without an end in sight, allowed for the calibration of 2025; when the tool was calibrated again; then the next due date stands as printed: nobody allowed to pass it.
    [Fact]
    public void An_extension_allowed_before_a_calibration_does_not_extend_it()
    {
        CalibrationRegister register = Register([Passed("2025-05-01", dueOn: "2026-05-01"), Passed("2026-05-20", dueOn: "2027-05-20")], Extension("2999-12-31", "2026-05-01T08:00:00Z"));

        Assert.Equal(CalibrationReasons.Extended, register.Ask("2026-05-19T08:00:00Z").Reason.Kind);
        Assert.Equal(Day("2027-05-20"), register.Ask("2027-05-20T08:00:00Z").DueOn);
        Assert.Equal(CalibrationState.Overdue, register.Ask("2027-05-21T08:00:00Z").State);
    }
}
