using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using CalibrationDesk;
using ToolLedger.Calibration;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Samples.Tests.CalibrationDesk;

/// <summary>
/// A decade of an invented fleet: every entry is accepted, no answer contradicts another, and what the whole register says of an instant is what a register of the entries made by then said.
/// TOOLLEDGER_FLEET sets the number of instruments; the default keeps the test short, 10000 is the size it was made for.
/// </summary>
public sealed class DecadeTests
{
    private static readonly int Count = int.TryParse(Environment.GetEnvironmentVariable("TOOLLEDGER_FLEET"), NumberStyles.None, CultureInfo.InvariantCulture, out int count) ? count : 1000;
    private static readonly FleetData Fleet = DemoFleet.Make(Count, seed: 10);

    [Fact]
    public void Replaying_the_whole_register_gives_what_was_said_at_every_checkpoint()
    {
        for (DateTimeOffset at = DemoFleet.Start.AddDays(100); at < DemoFleet.End; at = at.AddDays(365))
        {
            var known = new CalibrationRegister(Fleet.Register.Records.Where(record => record.RecordedAt <= at), Fleet.Register.Events.Where(one => one.RecordedAt <= at));
            var use = new IntendedUse(at);
            Assert.All(Fleet.Tools, tool => Assert.Equal(Said(known, tool, use), Said(Fleet.Register, tool, use)));
        }
    }

    [Fact]
    public void A_due_list_moved_entry_by_entry_is_the_one_built_at_the_end()
    {
        var numbers = Fleet.Tools.Select(static (tool, number) => (tool.Id, number)).ToDictionary(static one => one.Id, static one => one.number);
        var moving = new DueList([.. Fleet.Tools.Select(static _ => DueList.Never)]);
        foreach (CalibrationRecord record in Fleet.Register.Records.OrderBy(static record => record.RecordedAt))
        {
            var tool = Fleet.Tools[numbers[record.Tool]];
            moving.Move(numbers[record.Tool], DueOn(tool, record.RecordedAt));
        }

        foreach (Tool tool in Fleet.Tools)
        {
            moving.Move(numbers[tool.Id], DueOn(tool, DemoFleet.End));
        }

        var built = new DueList([.. Fleet.Tools.Select(tool => DueOn(tool, DemoFleet.End))]);
        Assert.True(moving.Through(DateOnly.MaxValue).SequenceEqual(built.Through(DateOnly.MaxValue)));
        Assert.True(built.Through(DateOnly.MaxValue).Length > Count / 2);
    }

    [Fact]
    public void No_answer_contradicts_another()
    {
        var chance = new DemoChance(99);
        var seen = new HashSet<CalibrationState>();
        foreach (Tool tool in Fleet.Tools)
        {
            for (int n = 0; n < 20; n++)
            {
                DateTimeOffset at = DemoFleet.Start.AddHours(chance.Below(10 * 365 * 24));
                CalibrationStatus status = Fleet.Register.StatusOf(tool, at, Fleet.Policy, Fleet.Calendar);
                seen.Add(status.State);
                bool isInDate = status.DueOn is null || status.DueOn >= status.SiteDate;
                Assert.True(!status.IsFit || isInDate, $"{tool.Id} at {at:O} is fit and past its date: {status}");
                Assert.True(status.Reason.Kind != CalibrationReasons.Overdue || !isInDate, $"{tool.Id} at {at:O}: {status}");
                Assert.Equal(status.IsFit, status.IsInDate);

                // Known later, an earlier use may look worse, never better.
                CalibrationVerdict later = Fleet.Register.Judge(tool, new IntendedUse(at) { KnownAt = DemoFleet.End }, Fleet.Policy, Fleet.Calendar);
                Assert.True(!later.IsFit || status.IsFit || status.Reason.Kind == CalibrationReasons.UseUnknown, $"{tool.Id} at {at:O}: {status}, later {later.State}");
            }
        }

        Assert.Superset(new HashSet<CalibrationState> { CalibrationState.Current, CalibrationState.DueSoon, CalibrationState.Overdue, CalibrationState.Suspended, CalibrationState.NotRequired, CalibrationState.Limited, CalibrationState.Unknown }, seen);
    }

    [Fact]
    public void Every_trace_starts_at_a_good_calibration_and_ends_at_the_finding()
    {
        CalibrationRecord[] findings = [.. Fleet.Register.Records.Where(static record => record.WasFoundInTolerance == false).Take(200)];
        Assert.NotEmpty(findings);
        ILookup<ToolId, MeasuredUse> uses = Fleet.Uses.ToLookup(static use => use.Tool);
        Assert.All(findings, finding =>
        {
            Tool tool = Fleet.Tools.Single(tool => tool.Id == finding.Tool);
            OutOfToleranceTrace trace = OutOfToleranceTrace.Of(Fleet.Register, tool, finding, uses[tool.Id], DemoFleet.End, Fleet.Policy, Fleet.Calendar);
            Assert.Equal(finding.CalibratedOn, trace.FoundOn);
            Assert.True(trace.LastGoodOn is null || trace.LastGoodOn < trace.FoundOn);
            Assert.All(trace.Uses, one => Assert.True(Fleet.Calendar.DateAt(one.Use.At) <= trace.FoundOn && (trace.LastGoodOn is null || Fleet.Calendar.DateAt(one.Use.At) >= trace.LastGoodOn)));
        });
    }

    private static DateOnly DueOn(Tool tool, DateTimeOffset at) =>
        Fleet.Register.Judge(tool, new IntendedUse(at), Fleet.Policy, Fleet.Calendar).Until ?? DueList.Never;

    private static string Said(CalibrationRegister register, Tool tool, in IntendedUse use) => $"{tool.Id} {register.StatusOf(tool, use, Fleet.Policy, Fleet.Calendar)}";
}
