using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Calibration;
using ToolLedger.Custody;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Tests.Statistics;
using ToolLedger.Tools;
using Xunit;
using static ToolLedger.Tests.Calibration.TorqueWrench;

namespace ToolLedger.Tests.Calibration;

/// <summary>Scenarios S74 to S76 with records of use, and what a trace says about each use.</summary>
public sealed class TraceTests
{
    private static readonly VectorFile Vectors = new("tests", "ToolLedger.Tests", "Calibration", "Data", "calibration.json");
    private static readonly DateTimeOffset Now = At("2026-07-01T08:00:00Z");

    private static readonly CalibrationPoint[] AsFound =
    [
        new() { Nominal = 40, Measured = 40.4m, Lower = 38.4m, Upper = 41.6m, ExpandedUncertainty = 0.4m },
        new() { Nominal = 100, Measured = 93, Lower = 96, Upper = 104, ExpandedUncertainty = 1 },
        new() { Nominal = 200, Measured = 190, Lower = 192, Upper = 208, ExpandedUncertainty = 1.6m },
    ];

    // Given T4 due 2026-03-31 and used on a job on 2026-04-02; when the job is evaluated; then overdue at the time of use, and the job is listed for review.
    [Fact]
    public void S74_an_overdue_use_is_listed_for_review()
    {
        CalibrationRegister register = Register([Passed("2025-04-01", dueOn: "2026-03-31")]);

        IReadOnlyList<UseReview> reviews = Review(register, [Use("U1", "2026-03-31"), Use("U2", "2026-04-02")]);

        Assert.Equal([(false, CalibrationState.DueSoon), (true, CalibrationState.Overdue)], reviews.Select(static one => (one.IsToReview, one.Status.State)));
        Assert.Equal("J-U2", reviews[1].Use.Job.Value);
    }

    // S74, then T4 passes on 2026-04-10; when evaluated again; then still overdue at use, and the state as found is recorded as information for the reviewer.
    [Fact]
    public void S75_a_later_pass_is_information_and_no_cover()
    {
        CalibrationRecord later = Finding("2026-04-10", found: true);
        CalibrationRegister register = Register([Passed("2025-04-01", dueOn: "2026-03-31"), later]);

        UseReview review = Assert.Single(Review(register, [Use("U2", "2026-04-02")]));

        Assert.Equal((true, CalibrationState.Overdue), (review.IsToReview, review.Status.State));
        Assert.Same(later, review.Next);
        Assert.True(review.Next!.WasFoundInTolerance);
    }

    // Found out of tolerance on 2026-06-10, last good 2025-12-10, due 2026-06-30: all uses from 2025-12-10 to 2026-06-10, although in date.
    [Fact]
    public void S76_a_bad_result_reaches_back_to_the_last_known_good_and_not_to_the_due_date()
    {
        CalibrationRecord finding = Finding("2026-06-10", found: false);
        CalibrationRegister register = Register([Passed("2025-12-10", dueOn: "2026-06-30"), finding]);
        MeasuredUse[] uses = [Use("U0", "2025-12-09"), Use("U1", "2025-12-10"), Use("U2", "2026-03-01"), Use("U3", "2026-06-10"), Use("U4", "2026-06-11")];

        OutOfToleranceTrace trace = Trace(register, finding, uses);

        Assert.Equal((Day("2025-12-10"), Day("2026-06-10")), (trace.LastGoodOn, trace.FoundOn));
        Assert.Equal(["U1", "U2", "U3"], trace.Uses.Select(static one => one.Use.Id));
        Assert.True(trace.Uses[1].Status.IsInDate);
        Assert.Equal(3, trace.OpenCount);
    }

    // The duty is that of ISO 9001:2015, 7.1.5.2 (from memory); that both ends belong to the window is a choice on the safe side.
    [Fact]
    public void The_suspect_window_includes_both_its_ends() => Assert.All(Vectors.Of("reverse_traceability"), static vector =>
    {
        CalibrationRecord finding = Finding(VectorFile.Text(vector, "found_oot"), found: false);
        CalibrationRegister register = Register([Passed(VectorFile.Text(vector, "last_good"), months: 12), finding]);
        MeasuredUse[] uses = [.. vector.GetProperty("inputs").GetProperty("uses").EnumerateArray().Select(static (day, n) => Use($"U{n}", day.GetString()!))];

        OutOfToleranceTrace trace = Trace(register, finding, uses);

        Assert.Equal(
            vector.GetProperty("expected").EnumerateArray().Select(static day => day.GetString()),
            trace.Uses.Select(static one => DateOnly.FromDateTime(one.Use.At.DateTime).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)));
    });

    [Fact]
    public void A_tool_never_recorded_as_good_makes_every_earlier_use_suspect()
    {
        CalibrationRecord finding = Finding("2026-06-10", found: false);

        OutOfToleranceTrace trace = Trace(Register([finding]), finding, [Use("U1", "2001-01-01"), Use("U2", "2026-06-10")]);

        Assert.Null(trace.LastGoodOn);
        Assert.Equal(2, trace.Uses.Count);
    }

    [Fact]
    public void A_failed_calibration_is_no_last_known_good_and_a_check_is_one_only_where_the_policy_says_so()
    {
        CalibrationRecord finding = Finding("2026-06-10", found: false);
        CalibrationCheck check = new()
        {
            Tool = T4.Id,
            Check = CheckKind.InServiceCheck,
            At = At("2026-04-01T08:00:00Z"),
            IsPassed = true,
            RecordedAt = At("2026-04-01T08:00:00Z"),
            RecordedBy = Q,
            Points = [new CalibrationPoint { Nominal = 100, Measured = 99, Lower = 96, Upper = 104 }],
        };
        CalibrationRegister register = Register([Passed("2025-12-10", months: 12), Passed("2026-02-01", result: CalibrationResult.Failed), finding], check);

        Assert.Equal(Day("2025-12-10"), Trace(register, finding, []).LastGoodOn);
        OutOfToleranceTrace narrowed = OutOfToleranceTrace.Of(register, T4, finding, [], Now, P0 with { CheckNarrowsTrace = true }, SiteCalendar.Utc);
        Assert.Equal((Day("2026-04-01"), "check"), (narrowed.LastGoodOn!.Value, narrowed.LastGood));
    }

    // Between points in a straight line; covered by the larger of the two errors; never carried beyond the points.
    [Theory]
    [InlineData(40, 1.0, 0.4, UseEffect.WithinTolerance)]
    [InlineData(40, 0.5, 0.4, UseEffect.Unclear)]
    [InlineData(100, 4.0, -7.0, UseEffect.OutsideTolerance)]
    [InlineData(100, 6.5, -7.0, UseEffect.Unclear)]
    [InlineData(150, 7.0, -8.5, UseEffect.Unclear)]
    [InlineData(150, 6.5, -8.5, UseEffect.OutsideTolerance)]
    [InlineData(150, 11.6, -8.5, UseEffect.WithinTolerance)]
    [InlineData(150, 11.5, -8.5, UseEffect.Unclear)]
    [InlineData(201, 100.0, null, UseEffect.NotKnown)]
    [InlineData(39, 100.0, null, UseEffect.NotKnown)]
    public void The_error_as_found_at_the_value_is_held_against_the_tolerance_of_the_work(double value, double tolerance, double? error, UseEffect effect)
    {
        CalibrationRecord finding = Finding("2026-06-10", found: false);
        MeasuredUse use = Use("U1", "2026-05-01", (decimal)value, (decimal)tolerance);

        TracedUse traced = Assert.Single(Trace(Register([Passed("2025-12-10", months: 12), finding]), finding, [use]).Uses);

        Assert.Equal((error is null ? null : (decimal)error, effect), (traced.Error, traced.Effect));
        Assert.DoesNotContain("{", traced.Reason.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_not_known_is_said_and_never_taken_for_good()
    {
        CalibrationRecord finding = Finding("2026-06-10", found: false), bare = Finding("2026-06-10", found: false, points: []);
        CalibrationRecord good = Passed("2025-12-10", months: 12);
        CalibrationPlan plan = Plan("2025-01-01T08:00:00Z", new PlannedFunction { Name = "torque", Unit = new Unit("N·m") });

        Assert.Equal(TraceReasons.NoValue, Reason(Register([good, finding]), finding, Use("U1", "2026-05-01", value: null)));
        Assert.Equal(TraceReasons.NoTolerance, Reason(Register([good, finding]), finding, Use("U1", "2026-05-01", tolerance: null)));
        Assert.Equal(TraceReasons.NoFoundData, Reason(Register([good, bare]), bare, Use("U1", "2026-05-01")));
        Assert.Equal(TraceReasons.OtherUnit, Reason(Register([good, finding], plan), finding, Use("U1", "2026-05-01", unit: "lbf·ft")));
    }

    [Fact]
    public void Uses_of_other_tools_and_other_functions_are_left_out_and_unstated_ones_are_not()
    {
        CalibrationRecord finding = Finding("2026-06-10", found: false, function: "cw");
        CalibrationRegister register = Register([Passed("2025-12-10", months: 12, function: "cw"), Passed("2026-03-10", months: 12, function: "ccw"), finding]);
        var other = new MeasuredUse { Id = "U9", Tool = new ToolId("T5"), At = At("2026-05-01T08:00:00Z"), Job = new JobId("J") };

        OutOfToleranceTrace trace = Trace(register, finding, [other, Use("U1", "2026-01-01", function: "cw"), Use("U2", "2026-01-01", function: "ccw"), Use("U3", "2026-01-01")]);

        Assert.Equal(Day("2025-12-10"), trace.LastGoodOn);
        Assert.Equal(["U1", "U3"], trace.Uses.Select(static one => one.Use.Id));
    }

    [Fact]
    public void Decisions_are_signed_later_ones_replace_earlier_ones_and_none_is_lost()
    {
        CalibrationRecord finding = Finding("2026-06-10", found: false);
        OutOfToleranceTrace trace = Trace(Register([Passed("2025-12-10", months: 12), finding]), finding, [Use("U1", "2026-01-01"), Use("U2", "2026-02-01")]);

        Assert.True(trace.TryWith([Decided("U1", UseDecision.ToBeDoneAgain, "2026-06-11T08:00:00Z")], out OutOfToleranceTrace? first, out _));
        Assert.Equal(2, first.OpenCount);
        Assert.True(first.TryWith([Decided("U1", UseDecision.DoneAgain, "2026-06-12T08:00:00Z")], out OutOfToleranceTrace? second, out _));
        Assert.Equal((1, 2, UseDecision.DoneAgain), (second.OpenCount, second.Dispositions.Count, second.Uses[0].Disposition!.Decision));
        Assert.Equal(2, trace.OpenCount);

        Assert.False(second.TryWith(
            [Decided("U7", UseDecision.NoEffect, "2026-06-12T08:00:00Z"), Decided("U2", UseDecision.NoEffect, "2026-06-08T08:00:00Z"), Decided("U1", UseDecision.NoEffect, "2026-06-12T08:00:00Z")],
            out OutOfToleranceTrace? refused, out IReadOnlyList<RecordIssue> issues));
        Assert.Null(refused);
        Assert.Equal(["trace.use-not-traced", "trace.decided-too-early", "trace.decided-twice"], issues.Select(static issue => issue.Rule));
    }

    [Fact]
    public void A_failed_check_is_traced_too_and_a_pass_is_not()
    {
        CalibrationCheck failed = Checked(CheckKind.InServiceCheck, "2026-06-10T09:00:00Z", isPassed: false), passed = Checked(CheckKind.InServiceCheck, "2026-06-10T09:00:00Z");
        CalibrationRegister register = Register([Passed("2025-12-10", months: 12)], failed);

        OutOfToleranceTrace trace = OutOfToleranceTrace.Of(register, T4, failed, [Use("U1", "2026-05-01"), Use("U2", "2026-06-11")], Now, P0, SiteCalendar.Utc);

        Assert.Equal((Day("2025-12-10"), "U1"), (trace.LastGoodOn, Assert.Single(trace.Uses).Use.Id));
        Assert.Throws<ArgumentException>(() => OutOfToleranceTrace.Of(register, T4, passed, [], Now, P0, SiteCalendar.Utc));
        Assert.Throws<ArgumentException>(() => Trace(register, Finding("2026-06-10", found: true), []));
        Assert.Throws<ArgumentException>(() => OutOfToleranceTrace.Of(register, T1, failed, [], Now, P0, SiteCalendar.Utc));
    }

    // The record of use of the custody log, as the trace sees it.
    [Fact]
    public void A_use_of_the_custody_log_is_traced_with_all_it_says()
    {
        var logged = new ToolUse
        {
            Id = new EntryId("E-7"),
            At = At("2026-05-01T09:00:00Z"),
            By = new PersonId("P"),
            Tool = T4.Id,
            Job = new JobId("J-7"),
            Equipment = new EquipmentId("Rig 2"),
            Function = "torque",
            Value = 100,
            Unit = new Unit("N·m"),
            Until = At("2026-05-01T10:00:00Z"),
        };
        CalibrationRecord finding = Finding("2026-06-10", found: false);

        TracedUse traced = Assert.Single(Trace(Register([Passed("2025-12-10", months: 12), finding]), finding, [MeasuredUse.Of(logged, tolerance: 4)]).Uses);

        Assert.Equal(("E-7", "J-7", "Rig 2", "torque", -7m, UseEffect.OutsideTolerance),
            (traced.Use.Id, traced.Use.Job.Value, traced.Use.Equipment.Value, traced.Use.Function, traced.Error!.Value, traced.Effect));
        Assert.Equal((logged.Until, logged.By, logged.Unit), (traced.Use.Until, traced.Use.By, traced.Use.Unit));
    }

    internal static UseDisposition Decided(string use, UseDecision decision, string at) => new()
    {
        Use = use,
        Decision = decision,
        Reason = "checked with a second wrench",
        By = new Signature { By = new PersonId("E"), At = At(at), Role = new Role("quality") },
    };

    internal static CalibrationRecord Finding(string day, bool found, CalibrationPoint[]? points = null, string? function = null) => new()
    {
        Tool = T4.Id,
        CalibratedOn = Day(day),
        IntervalMonths = 12,
        RecordedAt = At(day + "T15:00:00Z"),
        RecordedBy = Q,
        Function = function,
        Result = CalibrationResult.Passed,
        Certificate = "C-9",
        FoundInTolerance = found,
        AsFound = points ?? (found ? [] : AsFound),
    };

    internal static MeasuredUse Use(string id, string day, decimal? value = 100, decimal? tolerance = 5, string? function = null, string unit = "N·m") => new()
    {
        Id = id,
        Tool = T4.Id,
        At = At(day + "T09:00:00Z"),
        Job = new JobId("J-" + id),
        By = new PersonId("P"),
        Value = value,
        Tolerance = tolerance,
        Function = function,
        Unit = new Unit(unit),
    };

    private static ReasonKind Reason(CalibrationRegister register, CalibrationRecord finding, MeasuredUse use)
    {
        TracedUse traced = Assert.Single(Trace(register, finding, [use]).Uses);
        Assert.Equal(UseEffect.NotKnown, traced.Effect);
        return traced.Reason.Kind;
    }

    private static IReadOnlyList<UseReview> Review(CalibrationRegister register, MeasuredUse[] uses) => UseReview.Of(register, T4, uses, Now, P0, SiteCalendar.Utc);

    private static OutOfToleranceTrace Trace(CalibrationRegister register, CalibrationRecord finding, MeasuredUse[] uses) =>
        OutOfToleranceTrace.Of(register, T4, finding, uses, Now, P0, SiteCalendar.Utc);
}
