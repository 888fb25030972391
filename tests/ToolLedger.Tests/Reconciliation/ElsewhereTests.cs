using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>What shows a tool somewhere else after it was read, counted or seen in its kit.</summary>
public sealed class ElsewhereTests
{
    private static readonly ReconciliationPolicy Lenient = new() { Inventory = new InventoryPolicy { SightingsWithoutKitAccepted = true } };

    [Fact]
    public void S18_A_tool_seen_in_a_wheel_well_is_not_back_in_its_kit()
    {
        // Given: T9's tag stays silent; Q reads its mark in a wheel well and says no kit.
        World world = new World().ReadAllBut("T9").CountAll().Sight("T9", "K1-9", default(KitId));

        // When, must conclude: the line is open, and where it was seen is the first thing to be told.
        ReconciliationResult result = world.Reconcile();
        Assert.Equal(LineState.NotRead, result.Lines[8].State);
        Assert.Equal(KitState.Open, result.Kit.State);
        Assert.Contains(result.Lines[8].Reasons, static reason => reason.Kind == ReconciliationReasons.SightedOutside);
        Finding finding = Assert.Single(result.Findings, static finding => finding.Code == ReconciliationReasons.FindingSeenOutside.Code);
        Assert.Contains("bench 2", finding.ToString(), StringComparison.Ordinal);
        Assert.Equal([9], finding.LineNumbers);
        Assert.Empty(result.Lines[8].Evidence.Persons);

        // The same words settle it where the site says that a sighting means its own kit, or where Q names the kit.
        Assert.True(new World { Policy = Lenient }.ReadAllBut("T9").CountAll().Sight("T9", "K1-9", default(KitId)).Reconcile().Lines[8].IsAccounted);
        Assert.True(new World().ReadAllBut("T9").CountAll().Sight("T9", "K1-9").Reconcile().Lines[8].IsAccounted);
    }

    [Theory]
    [InlineData(60, LineState.Weak)]
    [InlineData(10, LineState.Weak)]
    [InlineData(-60, LineState.Accounted)]
    public void Reads_count_only_from_a_session_that_began_after_the_tool_was_seen_somewhere_else(int seconds, LineState state)
    {
        World world = new World().ReadAllBut().CountAll().Sight("T9", "K1-9", default(KitId), World.Start.AddSeconds(seconds));
        ReconciliationResult result = world.Reconcile();
        Assert.Equal(state, result.Lines[8].State);
        Assert.Contains(result.Lines[8].Reasons, static reason => reason.Kind == ReconciliationReasons.SightedOutside);
        Assert.Contains(result.Findings, static finding => finding.Code == ReconciliationReasons.FindingSeenOutside.Code);
    }

    [Fact]
    public void An_earlier_sighting_in_the_kit_is_void_after_one_that_says_another_place_and_no_kit()
    {
        World world = new World().ReadAllBut("T9").Sight("T9", "K1-9", at: World.End).Sight("T9", "K1-9", default(KitId), World.End.AddSeconds(30));
        Assert.Equal(LineState.NotRead, world.Reconcile().Lines[8].State);
        Assert.True(world.Sight("T9", "K1-9", at: World.End.AddSeconds(60)).Reconcile().Lines[8].IsAccounted);

        // Of two at one instant the one that would not settle the line decides.
        Assert.Equal(LineState.NotRead, new World().ReadAllBut("T9").Sight("T9", "K1-9").Sight("T9", "K1-9", default(KitId)).Reconcile().Lines[8].State);
    }

    [Theory]
    [InlineData(0, false)]
    [InlineData(-60, true)]
    public void A_set_is_not_where_it_was_counted_when_its_container_was_seen_somewhere_else_since(int seconds, bool isAccounted)
    {
        World world = new World().ReadAllBut("H13").CountAll().Sight("H13", "K1-13", default(KitId), World.End.AddSeconds(seconds));
        Assert.Equal(isAccounted, world.Reconcile().Lines[12].IsAccounted);
    }

    [Fact]
    public void A_tool_read_later_and_as_well_with_another_kit_is_open_here_and_told()
    {
        // Given: T3 well read in K1's session at 15:55; ten minutes later as well in K2's session.
        World world = new World { AsOf = World.End.AddMinutes(15) }.ReadAllBut().CountAll();
        ReadSession own = world.Session();
        ReadSession other = Later(world, World.K2, "T3", 3);
        Assert.Equal(KitState.Complete, world.Reconcile(own).Kit.State);

        // When, must conclude: the earlier reads have lost their force, and the finding says where it was read last.
        ReconciliationResult result = world.Reconcile(own, other);
        Assert.Equal(LineState.Weak, result.Lines[2].State);
        Assert.Contains(result.Lines[2].Reasons, static reason => reason.Kind == ReconciliationReasons.ReadLaterElsewhere);
        Finding finding = Assert.Single(result.Findings, static finding => finding.Code == ReconciliationReasons.FindingReadLater.Code);
        Assert.Contains("K2", finding.ToString(), StringComparison.Ordinal);
        Assert.Equal([3], finding.LineNumbers);
        Assert.All(result.Lines.Where(static line => line.Line.Number != 3), static line => Assert.True(line.IsAccounted));

        // A sighting in the kit settles it; so does a session of the kit that reads it after that.
        Assert.True(world.Sight("T3", "K1-3", at: World.End.AddMinutes(12)).Reconcile(own, other).Lines[2].IsAccounted);
        world.Sightings.Clear();
        Assert.True(world.Reconcile(own, other, Again(world, 12)).Lines[2].IsAccounted);
    }

    [Fact]
    public void Where_one_of_its_tags_was_read_the_tool_was_whatever_another_of_them_says()
    {
        // T3 wears two tags, both well read here; the first of them was read as well with K2 afterwards. The second may lie loose in the bag.
        World world = new World { AsOf = World.End.AddMinutes(15) }.ReadAllBut().CountAll();
        world.Bindings.Add(World.Binding(World.TagOf("Z3"), new ToolId("T3")));
        world.ReadWell("Z3");
        Assert.True(world.Reconcile(world.Session()).Lines[2].IsAccounted);
        Assert.Equal(LineState.Weak, world.Reconcile(world.Session(), Later(world, World.K2, "T3", 3)).Lines[2].State);

        // A tag that had been taken off by then says nothing of the tool.
        world.Bindings.RemoveAll(static binding => binding.Tag == World.TagOf("T3"));
        world.Bindings.Add(new TagBinding { Tag = World.TagOf("T3"), Tool = new ToolId("T3"), From = World.Start.AddYears(-1), Until = World.End.AddMinutes(1), BoundBy = World.Q });
        Assert.True(world.Reconcile(world.Session(), Later(world, World.K2, "T3", 3)).Lines[2].IsAccounted);
    }

    [Fact]
    public void Looks_from_before_it_was_read_elsewhere_do_not_help_those_from_after()
    {
        // T3: five looks at 15:55, as many with K2 at 16:05, those of one antenna in K1's session of 16:07. One antenna in one pass is not enough, and the five are from before.
        World world = new World { AsOf = World.End.AddMinutes(15) }.ReadAllBut().CountAll();
        ReadSession last = Again(world, 12, read => read.Tag != World.TagOf("T3") || read.Antenna == World.A2);
        Assert.True(world.Reconcile(world.Session(), last).Lines[2].IsAccounted);
        Assert.Equal(LineState.Weak, world.Reconcile(world.Session(), Later(world, World.K2, "T3", 3), last).Lines[2].State);
    }

    [Fact]
    public void A_later_session_that_hears_it_only_just_takes_the_earlier_reads_their_force()
    {
        // T3 was taken out after 15:55; one look of it came from elsewhere in K1's session of 16:07.
        World world = new World { AsOf = World.End.AddMinutes(15) }.ReadAllBut().CountAll();
        ReadSession last = Again(world, 12, read => read.Tag != World.TagOf("T3") || read.FirstSeen == World.Start.AddSeconds(6));
        LineConclusion line = world.Reconcile(world.Session(), last).Lines[2];
        Assert.Equal(LineState.Weak, line.State);
        Assert.Contains(line.Reasons, static reason => reason.Kind == ReconciliationReasons.LaterFew);
    }

    [Fact]
    public void A_single_look_in_another_kits_later_session_is_a_hint_and_takes_nothing_away()
    {
        // S11 the other way round: read in someone else's presentation proves nearness.
        World world = new World { AsOf = World.End.AddMinutes(15) }.ReadAllBut().CountAll();
        ReconciliationResult result = world.Reconcile(world.Session(), Later(world, World.K2, "T3", 1));
        Assert.True(result.Lines[2].IsAccounted);
        Finding hint = Assert.Single(result.Findings, static finding => finding.Code == ReconciliationReasons.Proximity.Code);
        Assert.Equal([3], hint.LineNumbers);
    }

    [Fact]
    public void A_kit_that_was_noted_as_standing_nearby_explains_that_its_tools_were_heard()
    {
        World world = new World { AsOf = World.End.AddMinutes(15) }.ReadAllBut().CountAll();
        ReadSession own = world.Session();
        world.Nearby.Add(new NearbyKit(World.K1, World.Start.AddMinutes(10), null));
        Assert.Equal(KitState.Complete, world.Reconcile(own, Later(world, World.K2, "T3", 3)).Kit.State);
    }

    [Fact]
    public void Substitutions_of_one_instant_that_differ_put_neither_tool_in_place()
    {
        // Given: the list names U5 and U6 as alternates of U1; two records of one instant say U5 and U6.
        foreach (string read in (string[])["U1", "U5", "U6"])
        {
            var shift = new SubKitWorld();
            shift.Others.Add(SubKitWorld.Manifest(World.K2, 1, new ToolLine { Number = 1, Tool = SubKitWorld.Tool("U1"), Alternates = [SubKitWorld.Tool("U5"), SubKitWorld.Tool("U6")] }));
            Swap(shift, "U5", World.Start.AddHours(-1));
            Swap(shift, "U6", World.Start.AddHours(-1));

            // When one of the three is read, must conclude: nobody can tell which belongs there, so none settles the line.
            LineConclusion line = shift.ReadWell(read).Reconcile(World.K2).Lines[0];
            Assert.Equal(LineState.Conflict, line.State);
            Assert.Contains(line.Reasons, static reason => reason.Kind == SealReasons.SubstitutionsDiffer);

            // A later record ends it; two that say the same never raised it.
            Swap(shift, "U6", World.Start.AddMinutes(-30));
            Swap(shift, "U6", World.Start.AddMinutes(-30));
            Assert.Equal(read == "U6", shift.Reconcile(World.K2).Lines[0].IsAccounted);
        }
    }

    /// <summary>At the stated limit of a sheet: a search that looks through all others of the instant for each of them would not come to an end here.</summary>
    [Fact]
    public void As_many_unwitnessed_sightings_of_one_instant_as_a_sheet_holds_settle_nothing_and_are_gone_through_once()
    {
        World world = new World { Policy = new ReconciliationPolicy { Inventory = new InventoryPolicy { SightingWitnessNeeded = true } } }.ReadAllBut("T7");
        world.Sightings.AddRange(Enumerable.Range(0, InventorySheet.MaxEntryCount - 1).Select(static i => new Sighting
        {
            Tool = new ToolId("T7"),
            MarkRead = "K1-7",
            By = new PersonId("P-" + i.ToString(CultureInfo.InvariantCulture)),
            At = World.End,
            Where = new Place("bench 2"),
            InKit = World.K1,
        }));
        Assert.Equal(LineState.NotRead, world.Reconcile().Lines[6].State);

        // All of them took part as soon as one was witnessed; each is named once.
        world.Sightings.Add(new Sighting { Tool = new ToolId("T7"), MarkRead = "K1-7", By = World.Q, Witness = World.P, At = World.End, Where = new Place("bench 2"), InKit = World.K1 });
        world.Policy = new ReconciliationPolicy();
        LineConclusion line = world.Reconcile().Lines[6];
        Assert.True(line.IsAccounted);
        Assert.Equal(InventorySheet.MaxEntryCount + 1, line.Evidence.Persons.Count);
    }

    private static void Swap(SubKitWorld shift, string tool, DateTimeOffset at) => shift.World.Substitutions.Add(new Substitution
    {
        Kit = World.K2,
        LineNumber = 1,
        InPlace = new ToolId(tool),
        Reason = "like for like",
        By = World.P,
        At = at,
    });

    /// <summary>Another kit's session ten minutes later, at the same station, in which a tool of K1 has so many looks on each antenna.</summary>
    private static ReadSession Later(World world, KitId kit, string tool, int looks)
    {
        IEnumerable<TagRead> reads = Enumerable.Range(0, looks).SelectMany(i => (TagRead[])
        [
            new(World.TagOf(tool), World.A1, World.Start.AddSeconds(5 + (2 * i))),
            .. looks > 1 ? (TagRead[])[new(World.TagOf(tool), World.A2, World.Start.AddSeconds(6 + (2 * i)))] : [],
        ]);
        return world.Session("S2", [kit], Shift(world.ControlReads().Concat(reads), 10), World.Start.AddMinutes(10));
    }

    /// <summary>K1 presented again some minutes later, with the reads of the first time or some of them.</summary>
    private static ReadSession Again(World world, int minutes, Func<TagRead, bool>? isRead = null)
        => world.Session("S3", [World.K1], World.Later(world, minutes, isRead), World.Start.AddMinutes(minutes));

    private static IEnumerable<TagRead> Shift(IEnumerable<TagRead> reads, int minutes)
        => reads.Select(read => new TagRead(read.Tag, read.Antenna, read.FirstSeen.AddMinutes(minutes)) { Strength = read.Strength });
}
