using System;
using System.Linq;
using ToolLedger.Calibration;
using ToolLedger.Custody;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>The gate before issue and the calibration of T4, line 4: scenarios S78, S83, S84 and S92 at the counter of the tool room.</summary>
public sealed class IssueCalibrationTests
{
    private static readonly ToolId T4 = new("T4");
    private static readonly PersonId Laboratory = new("L");

    // Given T4 in date through the day of issue, and the kit due back the next day; then the gate warns and is not shut.
    [Theory]
    [InlineData(24, true)]
    [InlineData(0, false)]
    public void S78_an_issue_that_outlasts_a_calibration_is_warned_of(int hours, bool isWarned)
    {
        var world = new World();
        world.Calibrations.Add(Due(world, days: 0));

        GateAnswer answer = Judge(world, back: world.AsOf.AddHours(hours));

        Assert.Equal(isWarned ? ["issue.calibration-lapses"] : [], Codes(answer));
        Assert.DoesNotContain(answer.Reasons, static reason => reason.ToString().Contains('{', StringComparison.Ordinal));
    }

    [Fact]
    public void S78_a_calibration_that_lapsed_between_inventory_and_issue_is_not_fit()
    {
        var world = new World();
        world.Calibrations.Add(Due(world, days: 0));

        Assert.Equal(["issue.not-fit"], Codes(Judge(world, at: world.AsOf.AddDays(1))));
    }

    [Theory]
    [InlineData(LabelKind.Rejected)]
    [InlineData(LabelKind.Inactive)]
    public void S83_and_S84_a_rejected_or_inactive_tool_does_not_go_out_as_fit_although_its_date_lies_ahead(LabelKind label)
    {
        var world = new World();
        world.Calibrations.Add(Due(world, days: 200));
        world.CalibrationEvents.Add(new CalibrationLabel { Tool = T4, Label = label, RecordedAt = world.AsOf.AddHours(-1), RecordedBy = Laboratory, Note = "worn" });

        Assert.Equal(["issue.not-fit"], Codes(Judge(world)));
        Assert.Empty(Codes(Judge(world, notForMeasurement: [4])));
    }

    [Fact]
    public void A_dropped_tool_does_not_go_out_as_fit()
    {
        var world = new World();
        world.Calibrations.Add(Due(world, days: 200));
        world.CalibrationEvents.Add(new ConditionReport { Tool = T4, Condition = ConditionKind.Dropped, At = world.AsOf.AddHours(-1), RecordedAt = world.AsOf.AddHours(-1), RecordedBy = Laboratory });

        Assert.Equal(["issue.not-fit"], Codes(Judge(world)));
    }

    // Accountability and serviceability are two answers: the label shuts the gate for measurement, and the line stays as accounted as it was.
    [Fact]
    public void S92_a_rejected_label_changes_no_conclusion()
    {
        World plain = new World().ReadAllBut(), rejected = new World().ReadAllBut();
        rejected.CalibrationEvents.Add(new CalibrationLabel { Tool = T4, Label = LabelKind.Rejected, RecordedAt = rejected.AsOf.AddHours(-1), RecordedBy = Laboratory, Note = "worn" });

        ReconciliationResult one = plain.Reconcile(), other = rejected.Reconcile();

        Assert.Equal(one.AllLines.Select(static line => (line.Label, line.State, line.Basis)), other.AllLines.Select(static line => (line.Label, line.State, line.Basis)));
        Assert.Equal(CalibrationState.Rejected, other.AllLines.Single(static line => line.Line.Tool?.Id == T4).Calibration!.State);
        Assert.Contains(other.Findings, static finding => finding.Reason.Kind == ReconciliationReasons.CalibrationNotFit);
    }

    private static CalibrationRecord Due(World world, int days)
    {
        DateOnly today = DateOnly.FromDateTime(world.AsOf.UtcDateTime);
        return new CalibrationRecord { Tool = T4, CalibratedOn = today.AddDays(-100), DueOn = today.AddDays(days), RecordedAt = world.AsOf.AddDays(-99), RecordedBy = Laboratory };
    }

    private static GateAnswer Judge(World world, DateTimeOffset? at = null, DateTimeOffset? back = null, int[]? notForMeasurement = null) => IssueGate.Judge(
        new KitIssue
        {
            Id = new EntryId("I9"),
            At = at ?? world.AsOf,
            By = new PersonId("C"),
            Kit = World.K1,
            Revision = 3,
            ReceivedBy = new Signature { By = World.P, At = at ?? world.AsOf },
            NotForMeasurement = notForMeasurement ?? [],
            ExpectedReturn = back,
        },
        world.ReadAllBut().Reconcile());

    private static string[] Codes(GateAnswer answer) => [.. answer.Reasons.Select(static reason => reason.Code).Where(static code => code is "issue.not-fit" or "issue.calibration-lapses")];
}
