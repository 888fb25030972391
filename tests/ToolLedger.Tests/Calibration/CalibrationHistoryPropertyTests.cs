using System;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ToolLedger.Calibration;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Testing.Generators;
using ToolLedger.Tests.Records;
using ToolLedger.Tests.Reports;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Calibration;

/// <summary>What holds for any history of calibrations, labels, drops and uses, at any instant and under any policy.</summary>
public sealed class CalibrationHistoryPropertyTests
{
    private static readonly Tool[] Tools =
        [.. Enumerable.Range(1, 6).Select(static n => new Tool { Id = new ToolId(FormattableString.Invariant($"T{n}")), Description = "tool", NeedsCalibration = n % 2 == 1 })];

    private static readonly SiteCalendar Site = SiteCalendar.Fixed("site", TimeSpan.FromHours(-7));

    [Property(Arbitrary = [typeof(CalibrationHistoryGenerators)])]
    public void What_is_written_is_read_again_with_the_same_digest_and_keeps_the_schema(CalibrationRegister register)
    {
        byte[] json = register.ToJson();

        bool isFirstForm = register.Events.Count == 0 && register.Records.Count == 0;
        StoredSchema.AssertAccepts(isFirstForm ? "calibration-register" : "calibration-register-2", json);
        CalibrationRegister read = CalibrationRegister.Parse(json);
        Assert.Equal(json, read.ToJson());
        Assert.Equal(register.Digest, read.Digest);
    }

    [Property(Arbitrary = [typeof(CalibrationHistoryGenerators)])]
    public void The_order_of_entries_changes_no_byte(CalibrationRegister register) =>
        Assert.Equal(register.ToJson(), new CalibrationRegister(register.Records.Reverse(), register.Events.Reverse()).ToJson());

    [Property(Arbitrary = [typeof(CalibrationHistoryGenerators)])]
    public Property TryParse_never_throws(CalibrationRegister register, PositiveInt[] places, byte[] values) =>
        DamagedRecord.IsReadOrRefused<CalibrationRegister>(register.ToJson(), places, values, CalibrationRegister.TryParse);

    // Property 8 of the trade. Entered after all that is known at the question: it was not there.
    [Property(Arbitrary = [typeof(CalibrationHistoryGenerators), typeof(CalibrationGenerators)])]
    public Property What_is_entered_after_the_question_changes_no_answer(CalibrationRegister register, CalibrationEvent later, CalibrationPolicy policy, IntendedUse use)
    {
        CalibrationRegister longer = With(register, later);
        IntendedUse before = later.RecordedAt > Known(use) ? use : use with { At = later.RecordedAt.AddTicks(-1 - use.At.Second), KnownAt = default };

        return SameAnswers(register, longer, before, policy).ToProperty();
    }

    // The status depends only on what was effective then: what happened, or takes effect, after the use is no part of the answer, whenever it is known.
    [Property(Arbitrary = [typeof(CalibrationHistoryGenerators), typeof(CalibrationGenerators)])]
    public Property What_happens_after_the_use_changes_no_answer_however_late_it_is_asked(CalibrationRegister register, CalibrationPolicy policy, IntendedUse use)
    {
        var until = new CalibrationRegister(
            register.Records.Where(record => record.RecordedAt <= use.At || record.CalibratedOn <= Site.DateAt(use.At)),
            register.Events.Where(one => one switch
            {
                CalibrationCheck check => check.At <= use.At,
                ConditionReport report => report.At <= use.At,
                UsePeriod period => period.From <= Site.DateAt(use.At),
                _ => one.RecordedAt <= use.At,
            }));

        return SameAnswers(register, until, use, policy).ToProperty();
    }

    // What becomes known later never makes an earlier use look fitter.
    [Property(Arbitrary = [typeof(CalibrationHistoryGenerators), typeof(CalibrationGenerators)])]
    public Property Later_knowledge_never_grants(CalibrationRegister register, CalibrationPolicy policy, IntendedUse use, PositiveInt days)
    {
        // A log of uses that is filled in later may turn unknown into known; without one, knowledge only takes away.
        var plain = new CalibrationRegister(register.Records, register.Events.Where(static one => one is not UsePeriod));
        IntendedUse then = use with { KnownAt = default }, now = use with { KnownAt = use.At.AddDays(days.Get) };

        return Tools.All(tool => !plain.Judge(tool, now, policy, Site).IsFit || plain.Judge(tool, then, policy, Site).IsFit).ToProperty();
    }

    [Property(Arbitrary = [typeof(CalibrationHistoryGenerators), typeof(CalibrationGenerators)])]
    public Property A_rejected_label_outranks_every_date(CalibrationRegister register, CalibrationPolicy policy, IntendedUse use)
    {
        CalibrationRegister rejected = Tools.Aggregate(register, (all, tool) => With(all, new CalibrationLabel
        {
            Tool = tool.Id,
            Label = LabelKind.Rejected,
            RecordedAt = use.At,
            RecordedBy = new PersonId("Q"),
            Note = "worn",
        }));

        return Tools.All(tool => !rejected.Judge(tool, use, policy, Site).IsFit).ToProperty();
    }

    [Property(Arbitrary = [typeof(CalibrationHistoryGenerators), typeof(CalibrationGenerators)])]
    public Property The_answer_with_words_and_the_one_without_are_the_same(CalibrationRegister register, CalibrationPolicy policy, IntendedUse use) => Tools.All(tool =>
    {
        CalibrationVerdict verdict = register.Judge(tool, use, policy, Site);
        CalibrationStatus status = register.StatusOf(tool, use, policy, Site);
        string said = status.ToString();
        return status.State == verdict.State && status.IsFit == verdict.IsFit && status.DueOn == verdict.Until && status.Reason.Code == verdict.Code
            && !said.Contains('{', StringComparison.Ordinal) && status.Warnings.All(static one => !one.ToString().Contains('{', StringComparison.Ordinal))
            && (!status.IsFit || status.State is CalibrationState.Current or CalibrationState.DueSoon);
    }).ToProperty();

    [Property(Arbitrary = [typeof(CalibrationHistoryGenerators), typeof(CalibrationGenerators)])]
    public Property The_whole_tool_is_fit_only_if_each_function_is(CalibrationRegister register, CalibrationPolicy policy, IntendedUse use) => Tools.All(tool =>
    {
        CalibrationStatus whole = register.StatusOf(tool, use with { Function = null }, policy, Site);
        return whole.Parts.Count == 0 || whole.IsFit == whole.Parts.All(static part => part.IsFit);
    }).ToProperty();

    // Due never before its anchor: a calibration that passed is in date at least on its own day, unless the label or certificate prints an earlier one, which is refused.
    [Property(Arbitrary = [typeof(CalibrationHistoryGenerators), typeof(CalibrationGenerators)])]
    public Property Due_is_never_before_the_day_it_counts_from(CalibrationRegister register, CalibrationPolicy policy, IntendedUse use) => Tools.All(tool =>
    {
        CalibrationStatus status = register.StatusOf(tool, use, policy, Site);
        return status.Record is not { } record || status.DueOn is not { } due || due >= record.CalibratedOn;
    }).ToProperty();

    // Chains count from the anchor: n calibrations, each on its due date, end n intervals after the anchor, whatever the months in between.
    [Property]
    public Property A_row_of_due_dates_keeps_to_its_anchor(PositiveInt start, PositiveInt interval, PositiveInt count)
    {
        DateOnly anchor = new DateOnly(2000, 1, 1).AddDays(start.Get % 3000);
        int months = 1 + (interval.Get % 36), n = 1 + (count.Get % 12);
        CalibrationRecord[] records = [.. Enumerable.Range(0, n).Select(k => TorqueWrench.Passed(anchor.AddMonths(k * months).ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture), months: months))];
        DateTimeOffset at = new(records[^1].CalibratedOn, new TimeOnly(12, 0), TimeSpan.Zero);

        CalibrationStatus status = new CalibrationRegister(records).StatusOf(TorqueWrench.T4, at, new CalibrationPolicy { Convention = DueConvention.FixedAnchor }, SiteCalendar.Utc);

        return (status.DueOn == anchor.AddMonths(n * months)).ToProperty();
    }

    [Fact]
    public void The_verdict_allocates_nothing()
    {
        CalibrationRegister register = TorqueWrench.Register(
            [TorqueWrench.Passed("2026-01-10", months: 12, interval: new CalibrationInterval { Cycles = 5000 })],
            TorqueWrench.Plan("2026-01-01T08:00:00Z", new PlannedFunction { Name = "cw" }, new PlannedFunction { Name = "ccw", From = 10, To = 200 }),
            TorqueWrench.Label(LabelKind.Calibrated, "2026-01-10T12:00:00Z"),
            TorqueWrench.Happened(ConditionKind.Dropped, "2026-01-11T08:00:00Z"),
            TorqueWrench.Checked(CheckKind.InServiceCheck, "2026-01-11T09:00:00Z"),
            TorqueWrench.Used("2026-01-10", "2026-01-31", 100));
        IntendedUse use = new(TorqueWrench.At("2026-02-01T08:00:00Z"));
        Assert.True(register.Judge(TorqueWrench.T4, use, TorqueWrench.P0, Site).IsFit);

        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int turn = 0; turn < 1000; turn++)
        {
            register.Judge(TorqueWrench.T4, use, TorqueWrench.P0, Site);
        }

        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
    }

    private static DateTimeOffset Known(in IntendedUse use) => use.KnownAt > use.At ? use.KnownAt : use.At;

    private static CalibrationRegister With(CalibrationRegister register, CalibrationEvent later) =>
        new(register.Records, register.Events.Append(later).DistinctBy(static one => (one.Tool, one.Kind, one.Function, one.RecordedAt.UtcTicks)));

    private static bool SameAnswers(CalibrationRegister one, CalibrationRegister other, IntendedUse use, CalibrationPolicy policy) => Tools.All(tool =>
    {
        CalibrationStatus first = one.StatusOf(tool, use, policy, Site), second = other.StatusOf(tool, use, policy, Site);
        return first.State == second.State && first.IsFit == second.IsFit && first.DueOn == second.DueOn && first.Reason.Equals(second.Reason) && first.Warnings.SequenceEqual(second.Warnings);
    });
}
