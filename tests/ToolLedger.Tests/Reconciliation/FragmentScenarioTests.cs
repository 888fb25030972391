using System;
using ToolLedger.Inventory;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using Xunit;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>Scenarios of broken tools and joined parts, by id; and what stands between them.</summary>
public sealed class FragmentScenarioTests
{
    private static readonly DateTimeOffset Broke = World.Start.AddHours(-2);

    [Fact]
    public void S43_Pliers_in_three_with_two_fragments_bagged_are_partial_and_the_lost_item_rules_cover_the_third()
    {
        // Given: T5, a tool of one piece, broke into three; its tag reads well; two fragments are counted into the bag.
        World world = new World().ReadAllBut().CountAll().Break("T5", 3, Broke).CountPieces("T5", 2);

        // When
        ReconciliationResult result = world.Reconcile();

        // Must conclude: PARTIAL 2 of 3, positive evidence, and the step names what covers a portion of a broken tool.
        LineConclusion line = result.Lines[4];
        Assert.Equal((LineState.Partial, true), (line.State, line.IsPositiveDifference));
        Assert.Contains(line.Reasons, reason => reason.ToString().StartsWith("2 of 3 pieces counted", StringComparison.Ordinal));
        Assert.Equal((NextStepKind.SearchShortage, PeopleReasons.StepSearchPieces), (line.Next!.Kind, line.Next.Reason.Kind));
        Assert.Contains("lost-tool procedure", line.Next.ToString(), StringComparison.Ordinal);
        Assert.Equal(KitState.Discrepant, result.Kit.State);
        Assert.Contains(result.Findings, finding => finding.Code == PeopleReasons.FindingBroken.Code);
    }

    [Fact]
    public void S43_All_three_in_the_bag_account_for_the_broken_tool()
    {
        ReconciliationResult result = new World().ReadAllBut().CountAll().Break("T5", 3, Broke).CountPieces("T5", 3).Reconcile();

        Assert.Equal((LineState.Accounted, AccountingBasis.Read), (result.Lines[4].State, result.Lines[4].Basis));
        Assert.Contains(result.Findings, finding => finding.Code == PeopleReasons.FindingBroken.Code);
        Assert.Equal(KitState.Complete, result.Kit.State);
    }

    [Fact]
    public void S43_A_broken_tool_whose_pieces_nobody_counted_is_partial_by_silence()
    {
        ReconciliationResult result = new World().ReadAllBut().CountAll().Break("T5", 3, Broke).Reconcile();

        Assert.Equal((LineState.Partial, false), (result.Lines[4].State, result.Lines[4].IsPositiveDifference));
        Assert.Equal(KitState.Open, result.Kit.State);
    }

    [Fact]
    public void A_count_of_pieces_made_before_the_tool_broke_says_nothing()
    {
        ReconciliationResult result = new World { T10Pieces = 3 }.ReadAllBut().CountAll().CountPieces("T10", 3).Break("T10", 4, World.End.AddSeconds(30)).Reconcile();

        Assert.Equal(LineState.Partial, result.Lines[9].State);
        Assert.Contains(result.Lines[9].Reasons, reason => reason.Kind == PeopleReasons.PieceCountBefore);
    }

    [Fact]
    public void S44_An_unknown_number_of_fragments_cannot_be_met_by_any_count()
    {
        // Given: T5 shattered, the number of pieces is not known; whatever is counted afterwards, the total is not known.
        World world = new World().ReadAllBut().CountAll().Break("T5", null, Broke).CountPieces("T5", 40);

        // When, must conclude
        ReconciliationResult result = world.Reconcile();
        Assert.Equal((LineState.Partial, true), (result.Lines[4].State, result.Lines[4].IsPositiveDifference));
        Assert.Contains(result.Lines[4].Reasons, reason => reason.Kind == ReconciliationReasons.PiecesUnknown);
        Assert.Equal(PeopleReasons.StepReconstruct, result.Lines[4].Next!.Reason.Kind);
        Assert.Equal(KitState.Discrepant, result.Kit.State);
    }

    [Fact]
    public void S44_The_statement_that_the_number_is_unknown_is_not_settled_by_a_later_count_alone()
    {
        // The safer reading: a later count of "all" is what one person believes; a named decision is what settles the number.
        World world = new World { T10Pieces = 3 }.ReadAllBut().CountAll();
        world.Pieces.Add(new PieceCount { Tool = new("T10"), Pieces = null, By = World.P, At = World.End.AddMinutes(-10) });

        Assert.Equal(LineState.Partial, world.CountPieces("T10", 3).Reconcile().Lines[9].State);
        Assert.Equal(LineState.Accounted, world.Reconstruct("T10", 3, World.End.AddMinutes(-5), World.Q).Reconcile().Lines[9].State);
    }

    [Fact]
    public void S44_A_reconstruction_by_two_named_persons_settles_the_number_and_then_the_count_decides()
    {
        World Shattered(int counted) => new World().ReadAllBut().CountAll().Break("T5", null, Broke).CountPieces("T5", counted);
        DateTimeOffset decided = World.End.AddMinutes(-1);

        Assert.Equal(LineState.Accounted, Shattered(7).Reconstruct("T5", 7, decided, World.Q).Reconcile().Lines[4].State);
        Assert.Equal(LineState.Partial, Shattered(6).Reconstruct("T5", 7, decided, World.Q).Reconcile().Lines[4].State);
        Assert.Equal(LineState.Conflict, Shattered(8).Reconstruct("T5", 7, decided, World.Q).Reconcile().Lines[4].State);
    }

    [Fact]
    public void S44_One_person_alone_settles_no_number_unless_the_policy_lets_one()
    {
        World world = new World().ReadAllBut().CountAll().Break("T5", null, Broke).CountPieces("T5", 7).Reconstruct("T5", 7, World.End.AddMinutes(-1));

        LineConclusion alone = world.Reconcile().Lines[4];
        Assert.Equal(LineState.Partial, alone.State);
        Assert.Contains(alone.Reasons, reason => reason.Kind == PeopleReasons.ReconstructionNotUsed);

        world.Policy = new ReconciliationPolicy { Inventory = new InventoryPolicy { ReconstructionPersonsNeeded = 1 } };
        Assert.Equal(LineState.Accounted, world.Reconcile().Lines[4].State);
    }

    [Fact]
    public void S44_A_reconstruction_from_before_the_tool_shattered_again_settles_nothing()
    {
        World world = new World().ReadAllBut().CountAll().Reconstruct("T5", 2, Broke.AddMinutes(-5), World.Q).Break("T5", null, Broke).CountPieces("T5", 2);

        Assert.Equal(LineState.Partial, world.Reconcile().Lines[4].State);
    }

    [Fact]
    public void S47_Five_rags_and_two_halves_are_not_assessed_until_a_person_joins_the_halves()
    {
        // Given: six rags issued; five whole ones and two halves come back.
        World world = new World().ReadAllBut().CountAll().CountParts(15, 5, 2, "each", World.End.AddSeconds(20));

        // Must conclude first: neither five of six nor six of six.
        ReconciliationResult open = world.Reconcile();
        Assert.Equal((LineState.NotAssessed, false), (open.Lines[14].State, open.Lines[14].IsPositiveDifference));
        Assert.Equal(PeopleReasons.StepJoinParts, open.Lines[14].Next!.Reason.Kind);
        Assert.Equal(KitState.Open, open.Kit.State);

        // When a person states that the halves are one rag: COUNTED 6, with the remark.
        ReconciliationResult joined = world.Join(15, 2, 1, World.End.AddSeconds(40)).Reconcile();
        Assert.Equal((LineState.Accounted, AccountingBasis.Counted), (joined.Lines[14].State, joined.Lines[14].Basis));
        Assert.Equal("6 each", joined.Lines[14].Evidence.Counted.ToString());
        Assert.Contains(joined.Lines[14].Reasons, reason => reason.Kind == PeopleReasons.Joined);
        Assert.Equal(KitState.Complete, joined.Kit.State);
    }

    [Fact]
    public void S47_A_joining_of_other_parts_or_from_before_the_count_joins_nothing()
    {
        DateTimeOffset counted = World.End.AddSeconds(20);
        World World47() => new World().ReadAllBut().CountAll().CountParts(15, 5, 2, "each", counted);

        Assert.Equal(LineState.NotAssessed, World47().Join(15, 3, 1, counted.AddSeconds(5)).Reconcile().Lines[14].State);
        Assert.Equal(LineState.NotAssessed, World47().Join(15, 2, 1, counted.AddSeconds(-5)).Reconcile().Lines[14].State);
    }

    [Fact]
    public void S47_One_whole_of_one_part_is_refused()
    {
        var entries = new InventoryEntries
        {
            Joinings = [new JoiningStatement { Kit = World.K1, LineNumber = 15, Parts = 2, Wholes = 2, By = World.Q, At = World.End }],
        };

        Assert.False(InventorySheet.TryCreate(entries, out _, out System.Collections.Generic.IReadOnlyList<RecordIssue> issues));
        Assert.Equal("inventory.too-few-parts", Assert.Single(issues).Rule);
    }
}
