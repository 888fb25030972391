using System;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>What two people, or two sessions, say of the same thing. Each case was once found by a law over generated shifts.</summary>
public sealed class AgreementTests
{
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Of_two_counts_at_one_instant_the_one_that_differs_from_the_list_decides(bool isRightFirst)
    {
        World world = AllRead();
        world.Counts.Remove(world.Counts.Single(count => count.LineNumber == 15));
        foreach (int amount in isRightFirst ? new[] { 6, 7 } : [7, 6])
        {
            world.Count(15, amount, "each");
        }

        ReconciliationResult result = world.Reconcile();

        Assert.Equal(KitState.Discrepant, result.Kit.State);
        Assert.Equal((LineState.Conflict, 7m), (result.Lines[14].State, result.Lines[14].Evidence.Counted!.Value.Amount));
    }

    [Theory]
    [InlineData(4)]
    [InlineData(2)]
    [InlineData(null)]
    public void Of_two_piece_counts_at_one_instant_the_one_that_differs_from_the_list_decides(int? pieces)
    {
        World world = AllRead();
        world.T10Pieces = 3;
        world.CountPieces("T10", 3).CountPieces("T10", pieces);

        Assert.Equal(KitState.Discrepant, world.Reconcile().Kit.State);
    }

    [Theory]
    [InlineData("K1-3", "K0-3")]
    [InlineData("K1-3", "K9-3")]
    public void Of_two_sightings_at_one_instant_the_contrary_one_decides(string own, string other)
    {
        LineConclusion line = AllRead().Sight("T3", own).Sight("T3", other).Reconcile().Lines[2];

        Assert.Equal(LineState.Conflict, line.State);
        Assert.Contains(line.Reasons, reason => reason.Code == ReconciliationReasons.OtherMark.Code);
    }

    [Fact]
    public void Two_people_who_counted_the_same_one_after_the_other_both_took_part()
    {
        World world = OneWitnessless();
        Assert.Equal(KitState.Open, world.Reconcile().Kit.State);

        world.Counts.AddRange(world.Counts.Select(count => Again(count, World.Q, World.End.AddSeconds(-40), count.Quantity)).ToArray());
        ReconciliationResult result = world.Reconcile();

        Assert.Equal(KitState.Complete, result.Kit.State);
        Assert.Equal([World.P, World.Q], result.Lines[14].Evidence.Persons);
    }

    [Fact]
    public void A_person_who_was_contradicted_since_does_not_count_as_one_who_agrees()
    {
        World world = OneWitnessless();
        LineCount[] last = [.. world.Counts];
        world.Counts.AddRange(last.Select(count => Again(count, World.Q, World.End.AddSeconds(-40), count.Quantity)));
        world.Counts.AddRange(last.Select(count => Again(count, World.P, World.End.AddSeconds(-20), new Quantity(count.Quantity.Amount + 1, count.Quantity.Unit))));
        ReconciliationResult result = world.Reconcile();

        Assert.Equal(KitState.Open, result.Kit.State);
        Assert.Equal([World.P], result.Persons);
    }

    [Fact]
    public void One_who_counts_the_same_again_alone_takes_nothing_from_those_who_counted_it_together()
    {
        World world = AllRead();
        world.Policy = new ReconciliationPolicy { Inventory = new InventoryPolicy { CountWitnessNeeded = true } };
        LineCount[] again = [.. world.Counts.Select(count => Again(count, World.P, World.End.AddSeconds(40), count.Quantity))];
        Assert.Equal(KitState.Complete, world.Reconcile().Kit.State);

        world.Counts.AddRange(again);

        Assert.Equal(KitState.Complete, world.Reconcile().Kit.State);
    }

    // Two tags of one tool: another kit's session heard one of them more often than this kit's did. The better-read other tag once hid that.
    [Fact]
    public void What_another_kits_session_heard_more_often_weighs_for_either_tag_of_a_tool()
    {
        World world = AllRead();
        world.Bindings.Add(World.Binding(World.TagOf("T3b"), new ToolId("T3")));
        world.Read("T3b", World.A1, 8);
        var other = new World();
        other.Read("T3b", World.A1, 1, 4).Read("T3b", World.A2, 9, 12);
        LineConclusion line = world.Reconcile(world.Session(), other.Session("S2", World.K2)).Lines[2];

        Assert.Equal(LineState.Weak, line.State);
        Assert.Contains(line.Reasons, reason => reason.Code == ReconciliationReasons.BetterElsewhere.Code);
    }

    // The one look of this kit's own session once mattered: without it the other kit's looks at the same tag were not compared at all.
    [Fact]
    public void What_another_kits_session_heard_weighs_where_this_kits_own_heard_nothing_of_that_tag()
    {
        World world = AllRead();
        world.Bindings.Add(World.Binding(World.TagOf("T3b"), new ToolId("T3")));
        var other = new World();
        other.Read("T3b", World.A1, 1, 4);

        Assert.Equal(LineState.Weak, world.Reconcile(world.Session(), other.Session("S2", World.K2)).Lines[2].State);
    }

    // A silent session over both passes of another once made one pass of the two.
    [Fact]
    public void A_silent_session_makes_no_single_pass_of_two_that_it_overlaps()
    {
        var world = new World();
        world.PassStarts.Add(World.Start.AddSeconds(15));
        world.Read("T3", World.A1, 6, 9, 21);
        ReconciliationResult alone = world.Reconcile(), beside = world.Reconcile(world.Session(), new World().Session("S0"));

        Assert.Equal((LineState.Accounted, 2), (alone.Lines[2].State, alone.Lines[2].Evidence.PassCount));
        Assert.Equal((LineState.Accounted, 2), (beside.Lines[2].State, beside.Lines[2].Evidence.PassCount));
    }

    // Its only tag was retired after the session. Where the session became unusable the count once identified the tool.
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_count_identifies_no_tool_that_wore_a_tag_this_shift_whatever_became_of_the_session(bool isUsable)
    {
        var world = new World { IsT9Marked = false, ClockAfter = isUsable ? TimeSpan.Zero : null };
        TagBinding former = world.Bindings.Single(binding => binding.Tool == new ToolId("T9"));
        world.Bindings.Remove(former);
        world.Bindings.Add(new TagBinding { Tag = former.Tag, Tool = former.Tool, From = former.From, Until = World.End.AddSeconds(30), BoundBy = World.Q });
        LineConclusion line = world.Count(9, 1, "each", World.End.AddSeconds(60)).Reconcile().Lines[8];

        Assert.False(line.IsAccounted);
        Assert.Contains(line.Reasons, reason => reason.Code == ReconciliationReasons.CountNotIdentity.Code);
    }

    // A look in a session over both passes of another once made one pass of the two; the looks of what overlaps still do not add up.
    [Fact]
    public void A_session_makes_no_single_pass_of_two_that_it_overlaps_and_adds_no_looks_to_them()
    {
        var world = new World();
        world.PassStarts.Add(World.Start.AddSeconds(15));
        world.Read("T3", World.A1, 6, 9, 21);
        var over = new World();
        over.Read("T3", World.A1, 12);
        LineConclusion line = world.Reconcile(world.Session(), over.Session("S0")).Lines[2];

        Assert.Equal((LineState.Accounted, 2, 3), (line.State, line.Evidence.PassCount, line.Evidence.LookCount));
    }

    // Overlapping sessions show the same time: neither two passes nor more looks than the better of them.
    [Fact]
    public void Two_sessions_of_the_same_time_are_one_view_with_the_looks_of_the_better_one()
    {
        var one = new World();
        one.Read("T3", World.A1, 6, 9);
        var other = new World();
        other.Read("T3", World.A1, 7);
        LineConclusion line = one.Reconcile(one.Session(), other.Session("S0")).Lines[2];

        Assert.Equal((LineState.Weak, 1, 2), (line.State, line.Evidence.PassCount, line.Evidence.LookCount));
    }

    [Fact]
    public void The_order_of_entry_of_foreign_tools_decides_nothing()
    {
        World one = AllRead().Sight("U1", "K2-1", World.K1, World.End).Sight("U1", "K2-1", World.K1);
        World other = AllRead().Sight("U1", "K2-1", World.K1).Sight("U1", "K2-1", World.K1, World.End);

        Assert.Equal(one.Reconcile().Kit.Reasons, other.Reconcile().Kit.Reasons);
    }

    // A session that overlaps, and whose second antenna proved nothing, once made the looks of the good one degraded; without it the tool was accounted for.
    [Fact]
    public void A_poor_session_that_overlaps_a_good_one_takes_nothing_from_it()
    {
        var poor = new World { ControlOnA2 = false };
        var good = new World();
        good.ReadAllBut();
        DateTimeOffset later = World.Start.AddSeconds(15);
        ReconciliationResult result = AllRead().Reconcile(
            poor.Session("S1"),
            good.Session("S2", [World.K1], good.ControlReads().Concat(good.Reads).Select(read => new TagRead(read.Tag, read.Antenna, read.FirstSeen.AddSeconds(15))), later));

        Assert.All(result.Lines.Take(12), line => Assert.Equal((LineState.Accounted, AccountingBasis.Read), (line.State, line.Basis)));
    }

    private static World AllRead()
    {
        var world = new World();
        world.ReadAllBut().CountAll();
        return world;
    }

    private static World OneWitnessless()
    {
        World world = AllRead();
        LineCount[] counts = [.. world.Counts.Select(count => Again(count, World.P, count.At, count.Quantity))];
        world.Counts.Clear();
        world.Counts.AddRange(counts);
        return world;
    }

    private static LineCount Again(LineCount count, PersonId by, DateTimeOffset at, Quantity quantity)
        => new() { Kit = count.Kit, LineNumber = count.LineNumber, Quantity = quantity, By = by, At = at };
}
