using System.Linq;
using ToolLedger.Calibration;
using ToolLedger.Reads;
using ToolLedger.Records;
using Xunit;
using static ToolLedger.Tests.Calibration.TorqueWrench;

namespace ToolLedger.Tests.Calibration;

/// <summary>Scenarios S78 to S91 of the trade, for the whole tool and for a use. S74, S75, S77, S79, S88 and S93 by date alone stand in <see cref="CalibrationStatusTests"/>; S92 with the reconciler.</summary>
public sealed class FitnessScenarioTests
{
    // Given due 2026-05-31 and an issue from 22:00 that evening to 06:00 the next day; when issued; then it warns of the lapse, and the tool is still fit at the start.
    [Theory]
    [InlineData("2026-06-01T06:00:00+02:00", true)]
    [InlineData("2026-05-31T23:59:00+02:00", false)]
    public void S78_an_issue_that_outlasts_the_calibration_is_told_at_issue(string until, bool lapses)
    {
        CalibrationRegister register = Register([Passed("2025-05-31", dueOn: "2026-05-31")]);

        CalibrationStatus status = register.Ask(new IntendedUse(At("2026-05-31T22:00:00+02:00")) { Until = At(until) }, calendar: SiteCalendar.Fixed("site", System.TimeSpan.FromHours(2)));

        Assert.Equal((CalibrationState.DueSoon, true, lapses), (status.State, status.IsFit, status.LapsesDuring));
        Assert.Equal(lapses ? ["In date only through 2026-05-31, and the planned use ends on 2026-06-01."] : [], status.Warnings.Select(static one => one.ToString()));
    }

    [Fact]
    public void S79_months_are_clamped_to_the_end_of_the_month()
    {
        Assert.Equal(Day("2025-02-28"), Register([Passed("2024-02-29", months: 12)]).Ask("2024-03-01T12:00:00Z").DueOn);
        Assert.Equal(Day("2026-02-28"), Register([Passed("2025-08-31", months: 6)]).Ask("2025-09-01T12:00:00Z").DueOn);
    }

    // Given an interval of 100 hours and a log of uses with a gap; when asked; then unknown, not valid.
    [Fact]
    public void S80_a_gap_in_the_log_of_uses_is_unknown_and_not_zero()
    {
        CalibrationRecord record = Passed("2026-01-05", interval: new CalibrationInterval { Hours = 100 });
        UsePeriod first = Used("2026-01-05", "2026-01-31", 10, UseMeasure.Hours), second = Used("2026-02-01", "2026-02-28", 20, UseMeasure.Hours);
        UsePeriod late = Used("2026-02-03", "2026-02-28", 20, UseMeasure.Hours);

        CalibrationStatus gap = Register([record], first, late).Ask("2026-02-28T21:00:00Z");
        CalibrationStatus whole = Register([record], first, second).Ask("2026-02-28T21:00:00Z");

        Assert.Equal((CalibrationState.Unknown, false, CalibrationReasons.UseUnknown), (gap.State, gap.IsFit, gap.Reason.Kind));
        Assert.Equal((CalibrationState.Current, true), (whole.State, whole.IsFit));
        Assert.Equal("Current: 30 of 100 hours since 2026-01-05.", whole.ToString());
        Assert.Equal(CalibrationState.Unknown, Register([record]).Ask("2026-01-07T08:00:00Z").State);
    }

    [Fact]
    public void S81_each_function_has_its_own_status_and_the_tool_is_limited()
    {
        CalibrationRegister register = Register(
            [Passed("2026-01-10", months: 12, function: "a"), Passed("2026-01-10", months: 4, function: "b")],
            Plan("2026-01-01T08:00:00Z", new PlannedFunction { Name = "a" }, new PlannedFunction { Name = "b" }));
        IntendedUse use = new(At("2026-05-11T08:00:00Z"));

        Assert.Equal(CalibrationState.Current, register.Ask(use with { Function = "a" }).State);
        Assert.Equal(CalibrationState.Overdue, register.Ask(use with { Function = "b" }).State);
        CalibrationStatus whole = register.Ask(use);
        Assert.Equal((CalibrationState.Limited, false), (whole.State, whole.IsFit));
        Assert.Equal([CalibrationState.Current, CalibrationState.Overdue], whole.Parts.Select(static part => part.State));
        Assert.Equal("Limited: Fit in part: 1 function fit, 1 function not, first b: overdue.", whole.ToString());
    }

    [Theory]
    [InlineData(120, false)]
    [InlineData(100, true)]
    [InlineData(20, true)]
    [InlineData(19.9, false)]
    public void S82_a_limited_calibration_is_fit_only_within_its_range_although_in_date(double value, bool isFit)
    {
        CalibrationRegister register = Register([Passed("2026-01-10", months: 12)], Label(LabelKind.Limited, "2026-01-10T12:00:00Z", new CalibrationLimitation { From = 20, To = 100 }));

        CalibrationStatus status = register.Ask(new IntendedUse(At("2026-02-01T08:00:00Z")) { Value = (decimal)value });

        Assert.Equal((isFit, isFit ? CalibrationState.Current : CalibrationState.Limited), (status.IsFit, status.State));
        Assert.Equal(Day("2027-01-10"), status.DueOn);
        Assert.Equal(CalibrationState.Limited, register.Ask("2026-02-01T08:00:00Z").State);
    }

    [Fact]
    public void S83_a_rejected_label_outranks_a_due_date_in_the_future()
    {
        CalibrationRegister register = Register([Passed("2026-01-10", dueOn: "2027-01-10")], Label(LabelKind.Rejected, "2026-02-01T08:00:00Z"));

        Assert.Equal(CalibrationState.Current, register.Ask("2026-02-01T07:59:59Z").State);
        CalibrationStatus status = register.Ask("2026-02-01T08:00:00Z");
        Assert.Equal((CalibrationState.Rejected, false), (status.State, status.IsFit));
        Assert.Equal("Rejected: Labelled rejected on 2026-02-01: by the laboratory. Must not be used, whatever its date.", status.ToString());
    }

    // A rejection ends with a calibration after it and a further label; neither alone is enough.
    [Fact]
    public void S83_a_rejection_is_ended_by_a_calibration_and_a_label_that_says_why()
    {
        CalibrationRecord before = Passed("2026-01-10", dueOn: "2027-01-10"), after = Passed("2026-02-10", dueOn: "2027-02-10");
        CalibrationLabel rejected = Label(LabelKind.Rejected, "2026-02-01T08:00:00Z"), cleared = Label(LabelKind.Calibrated, "2026-02-11T08:00:00Z");
        const string Later = "2026-02-12T08:00:00Z";

        Assert.Equal(CalibrationState.Rejected, Register([before, after], rejected).Ask(Later).State);
        Assert.Equal(CalibrationState.Rejected, Register([before], rejected, cleared).Ask(Later).State);
        Assert.Equal(CalibrationState.Current, Register([before, after], rejected, cleared).Ask(Later).State);
    }

    [Fact]
    public void S84_an_inactive_tool_is_refused_until_recalibrated()
    {
        CalibrationRecord before = Passed("2026-01-10", dueOn: "2027-01-10");
        CalibrationLabel inactive = Label(LabelKind.Inactive, "2026-02-01T08:00:00Z"), relabelled = Label(LabelKind.Calibrated, "2026-02-02T08:00:00Z");

        Assert.Equal(CalibrationState.Inactive, Register([before], inactive).Ask("2026-02-03T08:00:00Z").State);
        Assert.Equal(CalibrationState.Inactive, Register([before], inactive, relabelled).Ask("2026-02-03T08:00:00Z").State);
        Assert.Equal(CalibrationState.Current, Register([before, Passed("2026-02-04", months: 12)], inactive).Ask("2026-02-04T10:00:00Z").State);
    }

    [Fact]
    public void S85_no_calibration_required_is_a_restriction_and_not_an_exemption()
    {
        CalibrationRegister register = Register([], Label(LabelKind.NotRequired, "2026-01-10T08:00:00Z"));

        CalibrationStatus status = register.Ask(new IntendedUse(At("2026-02-01T08:00:00Z")) { Value = 12.5m });

        Assert.Equal((CalibrationState.NotRequired, false), (status.State, status.IsFit));
        Assert.Equal("Not required: Labelled \"no calibration required\" on 2026-01-10: not for quantitative measurement.", status.ToString());
    }

    [Fact]
    public void S86_a_tool_of_user_calibration_is_not_fit_without_a_check_of_the_day()
    {
        CalibrationLabel label = Label(LabelKind.UserCalibration, "2026-01-10T08:00:00Z");
        CalibrationRegister register = Register([], label, Checked(CheckKind.UserCheck, "2026-02-01T07:00:00Z"));

        Assert.Equal((CalibrationState.Current, true), (register.Ask("2026-02-01T08:00:00Z").State, register.Ask("2026-02-01T08:00:00Z").IsFit));
        Assert.False(register.Ask("2026-02-01T06:59:59Z").IsFit);
        CalibrationStatus next = register.Ask("2026-02-02T08:00:00Z");
        Assert.Equal((CalibrationState.Overdue, false), (next.State, next.IsFit));
        Assert.Equal("Overdue: Needs a passed check by its user every 1 day, and none counts on 2026-02-02. Not fit for use.", next.ToString());
        Assert.False(Register([], label, Checked(CheckKind.UserCheck, "2026-02-01T07:00:00Z", isPassed: false)).Ask("2026-02-01T08:00:00Z").IsFit);
    }

    // A tool that is checked by its user and calibrated too: whichever lapses first, and the range decides as ever.
    [Fact]
    public void S86_a_check_by_the_user_beside_a_calibration_ends_first_and_keeps_to_the_range()
    {
        CalibrationRegister register = Register(
            [Passed("2026-01-10", months: 12)],
            Plan("2026-01-01T08:00:00Z", new PlannedFunction { Name = "torque", From = 20, To = 200, UserCheckDays = 7 }),
            Checked(CheckKind.UserCheck, "2026-02-01T07:00:00Z"));
        IntendedUse use = new(At("2026-02-07T08:00:00Z")) { Value = 100, Until = At("2026-02-08T08:00:00Z") };

        CalibrationStatus status = register.Ask(use);
        Assert.Equal((true, true, Day("2026-02-07")), (status.IsFit, status.LapsesDuring, status.DueOn));
        Assert.Equal("Limited: Covered from 20 to 200; 210 lies outside. Not fit for this use, although in date through 2026-02-07.", register.Ask(use with { Value = 210 }).ToString());
        Assert.Equal(CalibrationReasons.NoUserCheck, register.Ask(use with { At = At("2026-02-08T08:00:00Z") }).Reason.Kind);
    }

    [Fact]
    public void S87_a_broken_seal_voids_the_calibration_whatever_its_date()
    {
        CalibrationRecord record = Passed("2026-01-10", dueOn: "2027-01-10");
        ConditionReport broken = Happened(ConditionKind.SealBroken, "2026-02-01T08:00:00Z");

        CalibrationStatus status = Register([record], broken, Checked(CheckKind.InServiceCheck, "2026-02-01T09:00:00Z")).Ask("2026-02-01T10:00:00Z");

        Assert.Equal((CalibrationState.Suspended, CalibrationReasons.Void), (status.State, status.Reason.Kind));
        Assert.Equal(CalibrationState.Current, Register([record, Passed("2026-02-02", months: 12)], broken).Ask("2026-02-02T10:00:00Z").State);
    }

    // A class of tool that needs calibration and has nothing in the register but a plan is unknown, and treated as not fit.
    [Fact]
    public void S88_a_plan_without_a_record_is_no_permission()
    {
        CalibrationStatus status = Register([], Plan("2026-01-01T08:00:00Z", new PlannedFunction { Name = "torque", Interval = CalibrationInterval.HandTorqueTool })).Ask("2026-02-01T08:00:00Z");

        Assert.Equal((CalibrationState.Unknown, false, CalibrationReasons.NoRecord), (status.State, status.IsFit, status.Reason.Kind));
    }

    [Fact]
    public void S89_a_certificate_dated_tomorrow_is_refused_and_an_earlier_use_stays_uncovered()
    {
        var tomorrow = new CalibrationRecord
        {
            Tool = T4.Id,
            CalibratedOn = Day("2026-03-01"),
            IntervalMonths = 12,
            RecordedAt = At("2026-03-01T08:00:00Z"),
            RecordedBy = Q,
            CertifiedOn = Day("2026-03-03"),
        };
        Assert.False(CalibrationRegister.TryCreate([tomorrow], out _, out var issues));
        Assert.Equal("calibration.certified-in-future", Assert.Single(issues).Rule);

        // Done on the first, entered on the fifth: the use on the third was not covered by anything anybody could show.
        CalibrationRegister register = Register([Passed("2026-03-01", months: 12, recordedAt: "2026-03-05T08:00:00Z")]);
        Assert.Equal(CalibrationState.Unknown, register.Ask(new IntendedUse(At("2026-03-03T08:00:00Z")) { KnownAt = At("2026-06-01T08:00:00Z") }).State);
        Assert.Equal(CalibrationState.Current, register.Ask("2026-03-05T08:00:00Z").State);
    }

    [Fact]
    public void S90_an_extension_holds_for_its_job_and_its_days_only()
    {
        CalibrationRegister register = Register([Passed("2025-05-01", dueOn: "2026-05-01")], Extension("2026-05-15", "2026-05-01T16:00:00Z", job: "J"));
        IntendedUse use = new(At("2026-05-15T22:00:00Z")) { Job = new JobId("J") };

        CalibrationStatus status = register.Ask(use);
        Assert.Equal((CalibrationState.DueSoon, true, Day("2026-05-15")), (status.State, status.IsFit, status.DueOn));
        Assert.Equal("Due soon: In date through 2026-05-15 by an extension that A allowed: test in progress. Without it, through 2026-05-01, by printed day.", status.ToString());
        Assert.Equal(CalibrationState.Overdue, register.Ask(use with { Job = new JobId("K") }).State);
        Assert.Equal(CalibrationState.Overdue, register.Ask(use with { Job = default }).State);
        Assert.Equal(CalibrationState.Overdue, register.Ask(use with { At = At("2026-05-16T00:00:00Z") }).State);
    }

    [Theory]
    [InlineData("2026-02-01T09:59:59Z", CalibrationState.Current)]
    [InlineData("2026-02-01T10:30:00Z", CalibrationState.Suspended)]
    public void S91_a_drop_suspends_from_then_on_and_leaves_earlier_uses_alone(string at, CalibrationState expected)
    {
        CalibrationRegister register = Register([Passed("2026-01-10", dueOn: "2027-01-10")], Happened(ConditionKind.Dropped, "2026-02-01T10:00:00Z"));

        Assert.Equal(expected, register.Ask(at).State);
    }

    // Entered at noon, happened at ten: at half past ten nobody knew, but who reviews that use later must.
    [Fact]
    public void S91_a_drop_that_was_entered_late_counts_for_the_reviewer()
    {
        CalibrationRegister register = Register([Passed("2026-01-10", dueOn: "2027-01-10")], Happened(ConditionKind.Dropped, "2026-02-01T10:00:00Z", recordedAt: "2026-02-01T12:00:00Z"));
        IntendedUse use = new(At("2026-02-01T10:30:00Z"));

        Assert.Equal(CalibrationState.Current, register.Ask(use).State);
        Assert.Equal(CalibrationState.Suspended, register.Ask(use with { KnownAt = At("2026-02-02T08:00:00Z") }).State);
    }

    [Fact]
    public void S91_a_passed_check_clears_a_drop_and_an_overload_takes_a_calibration()
    {
        CalibrationRecord record = Passed("2026-01-10", dueOn: "2027-01-10");
        CalibrationCheck check = Checked(CheckKind.InServiceCheck, "2026-02-01T11:00:00Z");

        Assert.Equal(CalibrationState.Current, Register([record], Happened(ConditionKind.Dropped, "2026-02-01T10:00:00Z"), check).Ask("2026-02-01T11:30:00Z").State);
        Assert.Equal(CalibrationState.Suspended, Register([record], Happened(ConditionKind.Overloaded, "2026-02-01T10:00:00Z"), check).Ask("2026-02-01T11:30:00Z").State);
        Assert.Equal(CalibrationState.Current, Register([record], Happened(ConditionKind.Overloaded, "2026-02-01T10:00:00Z"), check)
            .Ask("2026-02-01T11:30:00Z", P0 with { CheckClearsRepair = true }).State);
    }

    // The calibration half of S27: where it is not settled which tool this is, no record is its own. With the reconciler: SwapScenarioTests.
    [Fact]
    public void S27_an_unsettled_identity_makes_the_status_unknown()
    {
        CalibrationStatus status = Register([Passed("2026-01-10", dueOn: "2027-01-10")]).Ask(new IntendedUse(At("2026-02-01T08:00:00Z")) { IsIdentityInDoubt = true });

        Assert.Equal((CalibrationState.Unknown, false, CalibrationReasons.IdentityUnknown), (status.State, status.IsFit, status.Reason.Kind));
    }
}
