using System;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>Kits inside kits: what is inside is looked at line by line, and a box is not its contents.</summary>
public sealed class SubKitScenarioTests
{
    [Fact]
    public void S36_A_case_and_three_of_five_tools_read_leave_the_sub_kit_partial_and_the_kit_open()
    {
        ReconciliationResult result = new SubKitWorld().ReadWell("T1", "T2", "CASE", "A1", "A2", "A3").Reconcile();
        LineConclusion subKit = result.Lines[2];

        Assert.Equal(LineState.Partial, subKit.State);
        Assert.False(subKit.IsPositiveDifference);
        Assert.Equal(["7.1 accounted", "7.2 accounted", "7.3 accounted", "7.4 notread", "7.5 notread"], subKit.Inner.Select(Text));
        Assert.Equal(KitState.Open, result.Kit.State);
        Assert.Equal(8, result.Kit.LineCount);
        Assert.Equal((5, 2, 1), (result.Kit.CountOf(LineState.Accounted), result.Kit.CountOf(LineState.NotRead), result.Kit.CountOf(LineState.Partial)));
        Assert.Equal(["7.4", "7.5", "7"], result.ChaseList.Select(static line => line.Label));
        Assert.Equal("open it and settle lines 7.4, 7.5", subKit.Next?.ToString());
        Assert.Equal((NextStepKind.SettleSubKit, NextStepKind.PresentAgain), (subKit.Next!.Kind, result.ChaseList[0].Next!.Kind));
    }

    [Fact]
    public void S36_Every_read_of_the_case_and_of_what_is_in_it_is_expected()
    {
        SubKitWorld shift = new SubKitWorld().ReadWell("T1", "CASE", "A1");
        ReconciliationResult result = shift.Reconcile();

        Assert.All(result.Reads, static read => Assert.Equal(ReadExplanationKind.Expected, read.Kind));
        Assert.Contains(result.Reads, static read => read.ToString().EndsWith("line 7.1", StringComparison.Ordinal));
        Assert.DoesNotContain(result.Findings, static finding => finding.Level == FindingLevel.Session);
        Assert.Equal(shift.World.Reads.Count + shift.World.ControlReads().Count(), Enum.GetValues<ReadExplanationKind>().Sum(result.CountOf));
    }

    [Fact]
    public void S36_With_the_case_and_every_tool_read_the_kit_is_complete()
    {
        ReconciliationResult result = new SubKitWorld().ReadWell("T1", "T2", "CASE", "A1", "A2", "A3", "A4", "A5").Reconcile();

        Assert.Equal((LineState.Accounted, AccountingBasis.Read), (result.Lines[2].State, result.Lines[2].Basis));
        Assert.Contains(result.Lines[2].Reasons, static reason => reason.Kind == ReconciliationReasons.SubKitWhole);
        Assert.Equal(KitState.Complete, result.Kit.State);
        Assert.Contains(result.Inputs, static input => input.Name is "manifest of sub-kit K1a");
    }

    [Fact]
    public void A_full_sub_kit_whose_case_is_silent_is_not_read()
    {
        ReconciliationResult result = new SubKitWorld().ReadWell("T1", "T2", "A1", "A2", "A3", "A4", "A5").Reconcile();

        Assert.Equal(LineState.NotRead, result.Lines[2].State);
        Assert.Equal(KitState.Open, result.Kit.State);
    }

    [Fact]
    public void A_silent_sub_kit_is_not_read_and_one_without_a_case_rests_on_its_lines()
    {
        var shift = new SubKitWorld { HasCase = false };
        Assert.Equal(LineState.NotRead, shift.ReadWell("T1", "T2").Reconcile().Lines[2].State);
        Assert.Equal(LineState.Partial, shift.ReadWell("A1").Reconcile().Lines[2].State);

        LineConclusion whole = shift.ReadWell("A2", "A3", "A4", "A5").Reconcile().Lines[2];
        Assert.Equal((LineState.Accounted, AccountingBasis.Inside, 0), (whole.State, whole.Basis, whole.OtherBases.Count));
        Assert.Equal("line 7: accounted for (all lines inside)", whole.ToString());
    }

    [Fact]
    public void Two_levels_down_one_silent_tool_keeps_every_box_above_it_open()
    {
        SubKitWorld shift = new SubKitWorld { IsNestedTwice = true }.ReadWell("T1", "T2", "CASE", "A1", "A2", "A3", "A4", "A5", "B1");
        ReconciliationResult result = shift.Reconcile();

        LineConclusion inner = result.Lines[2].Inner[5];
        Assert.Equal(("7.9", LineState.Partial), (inner.Label, inner.State));
        Assert.Equal(["7.9.1 accounted", "7.9.2 notread"], inner.Inner.Select(Text));
        Assert.Equal(LineState.Partial, result.Lines[2].State);
        Assert.Equal(["7.9.2", "7", "7.9"], result.ChaseList.Select(static line => line.Label));
        Assert.Equal(11, Enum.GetValues<LineState>().Sum(result.Kit.CountOf));
        Assert.Equal(KitState.Complete, shift.ReadWell("B2").Reconcile().Kit.State);
    }

    /// <summary>A difference inside is positive evidence, so the kit is discrepant and not only open.</summary>
    [Fact]
    public void A_conflict_inside_makes_the_kit_discrepant_and_names_the_inner_line()
    {
        SubKitWorld shift = new SubKitWorld().ReadWell("T1", "T2", "CASE", "A1", "A2", "A3", "A4", "A5");
        shift.World.Sight("A4", "another mark");
        ReconciliationResult result = shift.Reconcile();

        Assert.Equal(LineState.Conflict, result.Lines[2].Inner[3].State);
        Assert.Equal((LineState.Partial, true), (result.Lines[2].State, result.Lines[2].IsPositiveDifference));
        Assert.Equal(KitState.Discrepant, result.Kit.State);
        Assert.Contains("line 7.4", result.Kit.Reasons[0].ToString(), StringComparison.Ordinal);
        Assert.Equal("7.4", result.ChaseList[0].Label);
    }

    [Fact]
    public void A_tool_sighted_in_the_parent_is_accounted_for_inside_it_and_one_sighted_in_another_kit_is_not()
    {
        SubKitWorld here = new SubKitWorld().ReadWell("T1", "T2", "CASE", "A1", "A2", "A3", "A4");
        here.World.Sight("A5", "mark A5", World.K1);
        Assert.Equal((LineState.Accounted, AccountingBasis.Sighted), (here.Reconcile().Lines[2].Inner[4].State, here.Reconcile().Lines[2].Inner[4].Basis));

        SubKitWorld elsewhere = new SubKitWorld().ReadWell("T1", "T2", "CASE", "A1", "A2", "A3", "A4");
        elsewhere.World.Sight("A5", "mark A5", World.K2);
        Assert.Equal(LineState.Conflict, elsewhere.Reconcile().Lines[2].Inner[4].State);
    }

    [Fact]
    public void A_foreign_tool_sighted_inside_the_sub_kit_is_a_difference_of_the_parent()
    {
        SubKitWorld shift = new SubKitWorld().ReadWell("T1", "T2", "CASE", "A1", "A2", "A3", "A4", "A5");
        shift.World.Sight("U1", "K2-1", SubKitWorld.K1a);

        Assert.Equal(KitState.Discrepant, shift.Reconcile().Kit.State);
    }

    [Fact]
    public void A_sub_kit_whose_manifest_is_not_at_hand_is_not_assessed_even_if_its_case_was_read()
    {
        ReconciliationResult result = new SubKitWorld { IsK1aRegistered = false }.ReadWell("T1", "T2", "CASE").Reconcile();

        Assert.Equal((LineState.NotAssessed, NextStepKind.HandInManifest), (result.Lines[2].State, result.Lines[2].Next!.Kind));
        Assert.Contains(result.Lines[2].Reasons, static reason => reason.Kind == ReconciliationReasons.SubKitUnresolved);
        Assert.Equal("sub-kit K1a revision 2", Assert.Single(result.Totals.Unresolved).Description);
        Assert.Equal(KitState.Open, result.Kit.State);
    }

    [Fact]
    public void A_tool_on_no_manifest_at_hand_is_not_called_a_spare_while_the_manifest_of_a_sub_kit_is_not_at_hand()
    {
        ReadExplanation without = new SubKitWorld { IsK1aRegistered = false }.ReadWell("A1").Reconcile().Reads.Single(static read => read.Tool?.Value == "A1");
        Assert.Equal((ReadExplanationKind.Unexpected, ReconciliationReasons.ReadUnlisted.Code), (without.Kind, without.Reason.Code));
        Assert.Contains("tool A1 is on no manifest handed in; that of K1a was not", without.Reason.ToString(), StringComparison.Ordinal);

        ReadExplanation spare = new SubKitWorld().ReadWell("B1").Reconcile().Reads.Single(static read => read.Tool?.Value == "B1");
        Assert.Equal(ReconciliationReasons.ReadSpare.Code, spare.Reason.Code);
    }

    /// <summary>Two signed lists disagree about what must be in the box; the safer reading is that neither settles it.</summary>
    [Fact]
    public void A_sub_kit_listed_by_a_revision_no_longer_in_force_is_not_assessed()
    {
        var shift = new SubKitWorld();
        shift.Others.Add(SubKitWorld.Manifest(SubKitWorld.K1a, 3, SubKitWorld.Line(1, "A1")));
        ReconciliationResult result = shift.ReadWell("T1", "T2", "CASE", "A1", "A2", "A3", "A4", "A5").Reconcile();

        Assert.Equal(LineState.NotAssessed, result.Lines[2].State);
        Assert.All(result.Lines[2].Inner, static inner => Assert.True(inner.IsAccounted));
        Assert.Contains(shift.Kits().Faults, static fault => fault.Rule == KitRules.SubKitNotInForce.Code);
    }

    [Fact]
    public void A_sub_kit_can_be_reconciled_alone()
    {
        ReconciliationResult result = new SubKitWorld().ReadWell("A1", "A2", "A3", "A4", "A5").Reconcile(SubKitWorld.K1a);

        Assert.Equal(KitState.Complete, result.Kit.State);
        Assert.Equal(["1", "2", "3", "4", "5"], result.Lines.Select(static line => line.Label));
    }

    /// <summary>One sub-kit cannot be in two bags: presented with both, its tools settle nothing in either.</summary>
    [Fact]
    public void A_sub_kit_on_two_manifests_that_was_read_where_both_were_presented_settles_nothing()
    {
        var shift = new SubKitWorld();
        shift.Others.Add(SubKitWorld.Manifest(World.K2, 1, new SubKitLine { Number = 1, Kit = SubKitWorld.K1a, Revision = 2 }));
        shift.ReadWell("T1", "T2", "CASE", "A1", "A2", "A3", "A4", "A5");
        ReadSession both = shift.World.Session("S1", [World.K1, World.K2]);

        Assert.Contains(shift.Kits().Faults, static fault => fault.Rule == KitRules.SubKitInTwoKits.Code);
        Assert.All(shift.Reconcile(World.K1, both).Lines[2].Inner, static inner => Assert.Equal(LineState.Conflict, inner.State));
        Assert.All(shift.Reconcile(World.K2, both).Lines[0].Inner, static inner => Assert.Equal(LineState.Conflict, inner.State));
    }

    [Fact]
    public void A_sub_kit_reached_twice_within_one_kit_counts_at_the_first_place_only()
    {
        var shift = new SubKitWorld { IsNestedTwice = true };
        shift.Others.Add(SubKitWorld.Manifest(World.K2, 1, new SubKitLine { Number = 1, Kit = SubKitWorld.K1a, Revision = 2 }, new SubKitLine { Number = 2, Kit = SubKitWorld.K1aa, Revision = 1 }));
        ReconciliationResult result = shift.ReadWell("A1", "A2", "A3", "A4", "A5", "B1", "B2").Reconcile(World.K2);

        Assert.Contains(result.Lines[1].Reasons, static reason => reason.Kind == ReconciliationReasons.SubKitTwice);
        Assert.Equal(LineState.NotAssessed, result.Lines[1].State);
        Assert.Empty(result.Lines[1].Inner);
        Assert.Equal(2 + 6 + 2, result.Totals.Kit.LineCount);
    }

    [Fact]
    public void A_sub_kit_removed_on_record_is_not_expected_and_reads_of_what_is_in_it_are_not_either()
    {
        SubKitWorld shift = new SubKitWorld().ReadWell("T1", "T2", "A1");
        shift.World.Annotations.Add(new Annotation
        {
            Kit = World.K1,
            LineNumber = 7,
            Kind = AnnotationKind.Removed,
            Reason = "lent to the next bay",
            SignedBy = new Signature { By = World.Q, At = World.Start.AddHours(-1) },
        });
        ReconciliationResult result = shift.Reconcile();

        Assert.Equal(["1", "2"], result.AllLines.Select(static line => line.Label));
        Assert.Equal("7", Assert.Single(result.NotExpected).Label);
        Assert.Equal(ReadExplanationKind.Unexpected, Assert.Single(result.Reads, static read => read.Tool == new ToolId("A1")).Kind);
    }

    [Fact]
    public void The_gate_is_closed_by_an_opening_of_a_sub_kit_after_its_tools_were_read()
    {
        SubKitWorld shift = new SubKitWorld { HasCase = false }.ReadWell("T1", "T2", "A1", "A2", "A3", "A4", "A5");
        ReconciliationResult result = shift.Reconcile();
        DateTimeOffset soon = World.End.AddMinutes(5);

        Assert.True(Gate.Ask(result, soon).IsSatisfied);
        Assert.False(Gate.Ask(result, soon, new KitOpening { Kit = SubKitWorld.K1a, By = World.P, At = World.End.AddMinutes(3) }).IsSatisfied);
    }

    [Fact]
    public void Counts_for_lines_the_sub_kit_does_not_have_are_shown_as_not_used()
    {
        SubKitWorld shift = new SubKitWorld().ReadWell("T1", "T2", "CASE", "A1", "A2", "A3", "A4", "A5");
        shift.World.Counts.Add(new LineCount
        {
            Kit = SubKitWorld.K1a,
            LineNumber = 44,
            Quantity = new Quantity(1, Unit.Each),
            By = World.P,
            At = World.End,
        });

        Assert.Contains(shift.Reconcile().Findings, static finding => finding.Code == ReconciliationReasons.EntryNotUsed.Code);
    }

    [Fact]
    public void A_finding_inside_names_the_outer_line_and_the_inner_number()
    {
        SubKitWorld shift = new SubKitWorld().ReadWell("T1", "T2", "CASE", "A1", "A2", "A3", "A4");
        shift.World.Sight("A5", "mark A5", SubKitWorld.K1a);
        Finding finding = Assert.Single(shift.Reconcile().Findings, static finding => finding.Code == ReconciliationReasons.TagToReplace.Code);

        Assert.Equal([7], finding.LineNumbers);
        Assert.Equal(["7.5"], finding.LineLabels);
    }

    [Fact]
    public void An_alternate_without_a_recorded_substitution_is_unexpected_and_says_for_which_line()
    {
        var shift = new SubKitWorld();
        shift.Others.Add(SubKitWorld.Manifest(World.K2, 1, new ToolLine { Number = 3, Tool = SubKitWorld.Tool("U1"), Alternates = [SubKitWorld.Tool("U2")] }));
        ReconciliationResult result = shift.ReadWell("U2").Reconcile(World.K2);
        ReadExplanation read = Assert.Single(result.Reads, static read => read.Tool == new ToolId("U2"));

        Assert.Equal(ReadExplanationKind.Unexpected, read.Kind);
        Assert.Equal("tool U2 is an alternate of line 3, and no substitution is recorded", read.ToString());
        Assert.Equal(LineState.NotRead, result.Lines[0].State);
    }

    private static string Text(LineConclusion line) => $"{line.Label} {line.State.ToString().ToLowerInvariant()}";
}
