using System;
using System.Linq;
using ToolLedger.Calibration;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>Scenarios S26 and S27 and what follows from them: two tags swapped, bindings doubted, cleared, made anew.</summary>
public sealed class SwapScenarioTests
{
    private static readonly DateTimeOffset Found = World.End.AddSeconds(20);
    private static readonly DateTimeOffset Later = World.End.AddSeconds(60);

    [Fact]
    public void S26_A_mark_that_is_another_tools_makes_both_a_conflict_and_proposes_to_quarantine_both_bindings()
    {
        // Given: the tags of T2 and T9 were swapped; both read. When: the tool that wears T2's tag shows T9's mark.
        ReconciliationResult result = Swapped().Reconcile();

        // Must conclude: T2 and T9 are conflicts, the kit is discrepant, all other lines are as before.
        Assert.Equal([LineState.Conflict, LineState.Conflict], new[] { result.Lines[1].State, result.Lines[8].State });
        Assert.Equal(KitState.Discrepant, result.Kit.State);
        Assert.Equal([2, 9], result.Lines.Where(line => !line.IsAccounted).Select(line => line.Line.Number));
        Finding proposal = Assert.Single(result.Findings, finding => finding.Code == ReconciliationReasons.QuarantineProposed.Code);
        Assert.Equal([2, 9], proposal.LineNumbers);
        Assert.Equal([World.TagOf("T2"), World.TagOf("T9")], proposal.Tags);
    }

    [Fact]
    public void S26_Both_may_then_be_signed_as_sighted_by_mark_and_their_reads_and_history_stay_out()
    {
        World world = Swapped().WithHistory().Sight("T2", "K1-2", at: Later).Sight("T9", "K1-9", at: Later);
        ReconciliationResult result = world.Reconcile();

        foreach (int index in new[] { 1, 8 })
        {
            Assert.Equal((LineState.Accounted, AccountingBasis.Sighted), (result.Lines[index].State, result.Lines[index].Basis));
            Assert.Empty(result.Lines[index].OtherBases);
            Assert.Null(result.Lines[index].Evidence.History);
        }

        Assert.Equal(KitState.Complete, result.Kit.State);
        Assert.Equal([2, 9], result.Findings.Where(finding => finding.Code == ReconciliationReasons.HistorySuspect.Code).SelectMany(finding => finding.LineNumbers));
    }

    [Fact]
    public void S26_Sighting_only_one_of_the_two_leaves_the_other_a_conflict()
    {
        ReconciliationResult result = Swapped().Sight("T2", "K1-2", at: Later).Reconcile();

        Assert.True(result.Lines[1].IsAccounted);
        Assert.Equal(LineState.Conflict, result.Lines[8].State);
    }

    [Fact]
    public void S26_Quarantined_bindings_are_conflicts_whether_their_tags_were_read_or_not_and_no_proposal_is_repeated()
    {
        World world = Swapped().Quarantine("T2", Found).Quarantine("T9", Found);
        ReconciliationResult read = world.Reconcile();
        ReconciliationResult silent = new World().ReadAllBut("T2", "T9").CountAll().Quarantine("T2", Found).Quarantine("T9", Found).Reconcile();
        ReconciliationResult noSession = new World().Quarantine("T2", Found).Reconcile([]);

        foreach (LineConclusion line in new[] { read.Lines[1], read.Lines[8], silent.Lines[1], silent.Lines[8], noSession.Lines[1] })
        {
            Assert.Equal(LineState.Conflict, line.State);
            Assert.Contains(line.Reasons, reason => reason.Code == ReconciliationReasons.Quarantined.Code);
            Assert.Equal(NextStepKind.SettleIdentity, line.Next?.Kind);
        }

        Assert.DoesNotContain(read.Findings, finding => finding.Code == ReconciliationReasons.QuarantineProposed.Code);
    }

    [Fact]
    public void A_sighting_made_before_the_quarantine_does_not_settle_it_and_one_made_after_it_does()
    {
        World world = new World().ReadAllBut().Quarantine("T2", Found);

        Assert.Equal(LineState.Conflict, world.Sight("T2", "K1-2", at: Found.AddSeconds(-1)).Reconcile().Lines[1].State);
        LineConclusion t2 = world.Sight("T2", "K1-2", at: Found.AddSeconds(1)).Reconcile().Lines[1];
        Assert.Equal((AccountingBasis.Sighted, 0), (t2.Basis, t2.OtherBases.Count));
    }

    [Fact]
    public void A_quarantine_that_begins_later_changes_no_earlier_answer()
    {
        World world = new World { AsOf = Found.AddSeconds(-1) }.ReadAllBut().Quarantine("T2", Found);

        Assert.Equal(AccountingBasis.Read, world.Reconcile().Lines[1].Basis);
        world.AsOf = Found;
        Assert.Equal(LineState.Conflict, world.Reconcile().Lines[1].State);
    }

    [Fact]
    public void After_the_clearing_only_sessions_that_began_later_count_again()
    {
        World before = new World().ReadAllBut().Quarantine("T2", World.Start.AddDays(-1), clearedAt: World.Start);
        World during = new World().ReadAllBut().Quarantine("T2", World.Start.AddDays(-1), clearedAt: World.Start.AddSeconds(1));

        Assert.Equal(AccountingBasis.Read, before.Reconcile().Lines[1].Basis);
        LineConclusion t2 = during.Reconcile().Lines[1];
        Assert.Equal(LineState.Weak, t2.State);
        Assert.Contains(t2.Reasons, reason => reason.Code == ReconciliationReasons.ReadBeforeClearing.Code);
    }

    [Fact]
    public void A_session_begun_after_the_clearing_counts_beside_one_begun_before()
    {
        World world = new World().ReadAllBut().Quarantine("T2", World.Start.AddDays(-1), clearedAt: World.End.AddSeconds(1));
        ReadSession early = world.Session("S1");
        ReadSession late = world.Session("S2", [World.K1], [.. world.ControlReads().Concat(world.Reads).Select(read => Shifted(read, 60))], World.Start.AddSeconds(60));

        Assert.Equal(LineState.Weak, world.Reconcile(early).Lines[1].State);
        Assert.Equal(AccountingBasis.Read, world.Reconcile(early, late).Lines[1].Basis);
    }

    [Fact]
    public void A_tag_bound_anew_after_the_mismatch_speaks_for_its_tool_again()
    {
        World world = Swapped();
        foreach ((string tag, string tool) in new[] { ("T2", "T9"), ("T9", "T2") })
        {
            TagBinding old = Assert.Single(world.Bindings, binding => binding.Tag == World.TagOf(tag) && binding.Tool.Value == tag);
            world.Bindings.Remove(old);
            world.Bindings.Add(new TagBinding { Tag = old.Tag, Tool = old.Tool, From = old.From, Until = Found.AddSeconds(10) });
            world.Bindings.Add(new TagBinding { Tag = old.Tag, Tool = new ToolId(tool), From = Found.AddSeconds(10) });
        }

        ReadSession again = world.Session("S2", [World.K1], [.. world.ControlReads().Concat(world.Reads).Select(read => Shifted(read, 60))], World.Start.AddSeconds(60));
        world.Sightings.Clear();
        world.Sight("T2", "K1-9", at: Found);
        world.AsOf = World.Start.AddMinutes(3);
        ReconciliationResult result = world.Reconcile(again);

        Assert.Equal(AccountingBasis.Read, result.Lines[8].Basis);
        Assert.DoesNotContain(result.Findings, finding => finding.Code == ReconciliationReasons.QuarantineProposed.Code);
    }

    [Fact]
    public void A_mismatch_too_old_to_be_a_conflict_still_withholds_the_reads_of_both_tags()
    {
        World world = new World().ReadAllBut().Sight("T2", "K1-9", at: World.Start.AddDays(-1));
        ReconciliationResult result = world.Reconcile();

        Assert.Equal([LineState.Weak, LineState.Weak], new[] { result.Lines[1].State, result.Lines[8].State });
        Assert.Contains(result.Findings, finding => finding.Code == ReconciliationReasons.QuarantineProposed.Code);
    }

    [Fact]
    public void A_mark_that_another_kit_uses_for_a_tool_of_its_own_swaps_nothing_here()
    {
        // K2 has a tool U5 marked "K2-5"; reading that mark on U5 concerns no tool of K1, and reading "K1-9" on U5 concerns T9.
        Assert.Equal(AccountingBasis.Read, new World().ReadAllBut().Sight("U5", "K2-5").Reconcile().Lines[8].Basis);
        Assert.Equal(LineState.Conflict, new World().ReadAllBut().Sight("U5", "K1-9").Reconcile().Lines[8].State);
    }

    [Fact]
    public void S27_While_two_tools_cannot_be_told_apart_the_calibration_of_both_is_unknown()
    {
        // Given: as S26, but one of the two is the torque wrench T4, in date until 2027 by its own record.
        World world = new World().ReadAllBut().CountAll().Sight("T2", "K1-4", at: Found);
        world.Calibrations.Add(InDate());
        ReconciliationResult result = world.Reconcile();

        Assert.Equal([LineState.Conflict, LineState.Conflict], new[] { result.Lines[1].State, result.Lines[3].State });
        Assert.All(new[] { 1, 3 }, index =>
        {
            Assert.Equal(CalibrationState.Unknown, result.Lines[index].Calibration!.State);
            Assert.Equal(CalibrationReasons.IdentityUnknown.Code, result.Lines[index].Calibration!.Reason.Code);
        });

        // Settled by mark, each has its own answer again.
        ReconciliationResult settled = world.Sight("T2", "K1-2", at: Later).Sight("T4", "K1-4", at: Later).Reconcile();
        Assert.Equal([CalibrationState.NotRequired, CalibrationState.Current], new[] { settled.Lines[1].Calibration!.State, settled.Lines[3].Calibration!.State });
        Assert.True(settled.Lines[1].IsAccounted && settled.Lines[3].IsAccounted);
    }

    [Fact]
    public void S27_A_quarantined_binding_leaves_both_answers_unknown_until_the_tool_is_sighted_or_the_doubt_cleared()
    {
        World world = new World().ReadAllBut().Quarantine("T4", Found);
        world.Calibrations.Add(InDate());
        LineConclusion doubted = world.Reconcile().Lines[3];
        Assert.Equal((LineState.Conflict, CalibrationState.Unknown), (doubted.State, doubted.Calibration!.State));

        LineConclusion sighted = world.Sight("T4", "K1-4", at: Later).Reconcile().Lines[3];
        Assert.Equal((AccountingBasis.Sighted, CalibrationState.Current), (sighted.Basis, sighted.Calibration!.State));
    }

    [Fact]
    public void S27_Two_tools_that_are_never_calibrated_stay_so_while_it_is_unknown_which_is_which()
    {
        // Neither T2 nor T9 is ever calibrated: which of the two is which changes no label.
        ReconciliationResult swapped = Swapped().Reconcile();
        Assert.Equal([LineState.Conflict, LineState.Conflict], new[] { swapped.Lines[1].State, swapped.Lines[8].State });
        Assert.Equal([CalibrationState.NotRequired, CalibrationState.NotRequired], new[] { swapped.Lines[1].Calibration!.State, swapped.Lines[8].Calibration!.State });
        Assert.DoesNotContain(swapped.Findings, finding => finding.Code == ReconciliationReasons.CalibrationNotFit.Code && finding.LineNumbers is [2] or [9]);

        // A record of T9 makes it a calibrated tool; then either may wear the label of the other.
        World recorded = Swapped();
        recorded.Calibrations.Add(InDate("T9"));
        Assert.Equal(CalibrationState.Unknown, recorded.Reconcile().Lines[1].Calibration!.State);

        // A quarantine says which two tools it is about as little as a mark that no tool has: then it may be a calibrated one.
        Assert.Equal(CalibrationState.NotRequired, Swapped().Quarantine("T2", Found).Reconcile().Lines[1].Calibration!.State);
        Assert.Equal(CalibrationState.Unknown, new World().ReadAllBut().Quarantine("T2", Found).Reconcile().Lines[1].Calibration!.State);
        Assert.Equal(CalibrationState.Unknown, new World().ReadAllBut().Sight("T2", "K7-77", at: Found).Reconcile().Lines[1].Calibration!.State);
    }

    private static World Swapped() => new World().ReadAllBut().CountAll().Sight("T2", "K1-9", at: Found);

    private static TagRead Shifted(TagRead read, double seconds) => new(read.Tag, read.Antenna, read.FirstSeen.AddSeconds(seconds)) { Strength = read.Strength };

    private static CalibrationRecord InDate(string tool = "T4") => new()
    {
        Tool = new ToolId(tool),
        CalibratedOn = new DateOnly(2026, 1, 10),
        DueOn = new DateOnly(2027, 1, 10),
        RecordedAt = World.Start.AddDays(-30),
        RecordedBy = World.Q,
    };
}
