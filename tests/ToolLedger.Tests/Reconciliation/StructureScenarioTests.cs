using System;
using System.Linq;
using ToolLedger.Calibration;
using ToolLedger.Kits;
using ToolLedger.Reconciliation;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>Scenarios of structure, counts, pieces and calibration, by id.</summary>
public sealed class StructureScenarioTests
{
    [Fact]
    public void S41_A_set_counted_one_short_is_partial_and_the_kit_discrepant()
    {
        ReconciliationResult result = new World().ReadAllBut().CountAll().Count(13, 9, "each", World.End.AddSeconds(20)).Reconcile();

        Assert.Equal(LineState.Partial, result.Lines[12].State);
        Assert.True(result.Lines[12].IsPositiveDifference);
        Assert.Contains("9 of 10 each", string.Join("; ", result.Lines[12].Reasons), StringComparison.Ordinal);
        Assert.Equal(KitState.Discrepant, result.Kit.State);
    }

    [Fact]
    public void S42_A_tag_on_the_handle_says_nothing_of_the_tip()
    {
        World world = new World { T10Pieces = 3 }.ReadAllBut().CountAll();
        for (int i = 0; i < 50; i++)
        {
            world.Read("T10", World.A1, 5 + (i * 0.4));
        }

        ReconciliationResult uncounted = world.Reconcile();
        Assert.Equal(LineState.Partial, uncounted.Lines[9].State);
        Assert.Equal(KitState.Open, uncounted.Kit.State);

        ReconciliationResult short2 = world.CountPieces("T10", 2).Reconcile();
        Assert.Equal(LineState.Partial, short2.Lines[9].State);
        Assert.Equal(KitState.Discrepant, short2.Kit.State);
        Assert.Equal(NextStepKind.SearchShortage, short2.Lines[9].Next?.Kind);

        World whole = new World { T10Pieces = 3 }.ReadAllBut().CountAll().CountPieces("T10", 3);
        Assert.Equal(KitState.Complete, whole.Reconcile().Kit.State);
    }

    [Fact]
    public void S48_A_rag_too_many_is_a_discrepancy_too()
    {
        ReconciliationResult result = new World().ReadAllBut().CountAll().Count(15, 7, "each", World.End.AddSeconds(20)).Reconcile();

        Assert.Equal((LineState.Conflict, true), (result.Lines[14].State, result.Lines[14].IsPositiveDifference));
        Assert.Contains(result.Lines[14].Reasons, reason => reason.ToString().StartsWith("1 more than 6", StringComparison.Ordinal));
        Assert.Equal(NextStepKind.ResolveSurplus, result.Lines[14].Next?.Kind);
        Assert.Equal(KitState.Discrepant, result.Kit.State);
    }

    [Fact]
    public void S92_Accounted_and_overdue_are_two_answers()
    {
        World world = new World().ReadAllBut().CountAll();
        world.Calibrations.Add(new CalibrationRecord
        {
            Tool = new ToolId("T4"),
            CalibratedOn = new DateOnly(2025, 2, 1),
            DueOn = new DateOnly(2026, 2, 1),
            RecordedAt = World.Start.AddYears(-1),
            RecordedBy = World.Q,
        });
        ReconciliationResult result = world.Reconcile();

        Assert.Equal((LineState.Accounted, AccountingBasis.Read), (result.Lines[3].State, result.Lines[3].Basis));
        Assert.Equal(CalibrationState.Overdue, result.Lines[3].Calibration?.State);
        Assert.Contains(result.Findings, finding => finding.Code == ReconciliationReasons.CalibrationNotFit.Code);
        Assert.Equal(KitState.Complete, result.Kit.State);
    }

    [Fact]
    public void One_tool_on_two_manifests_is_shown_as_a_data_fault()
    {
        World world = new World().ReadAllBut();
        ReconciliationInput plain = world.Input(world.Session());
        var also = new KitManifest(World.K2, 2, "also lists T6", World.Start.AddDays(-10), world.K1Revision3().SignedBy,
        [
            new ToolLine { Number = 1, Tool = new Tool { Id = new ToolId("T6"), Description = "tool 6", Mark = "K1-6" } },
        ]);
        var input = new ReconciliationInput
        {
            Kits = new KitRegister([world.K1Revision3(), also]),
            Subject = World.K1,
            Sessions = plain.Sessions,
            Tags = plain.Tags,
            AsOf = plain.AsOf,
        };
        ReconciliationResult result = new Reconciler(world.Policy).Reconcile(input);

        Assert.NotEmpty(input.Kits.Faults);
        Assert.Contains(result.Findings, finding => finding.Code == ReconciliationReasons.ToolInTwoKits.Code && finding.LineNumbers.SequenceEqual([6]));
    }
}
