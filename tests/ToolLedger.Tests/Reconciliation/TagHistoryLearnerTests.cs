using System;
using System.Collections.Generic;
using System.Linq;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Reconciliation;

public sealed class TagHistoryLearnerTests
{
    private static readonly TagHistoryRegister Nothing = TagHistoryRegister.Empty(World.Start.AddYears(-1));
    private static readonly DateTimeOffset Night = World.End.AddHours(2);

    [Fact]
    public void A_complete_kit_teaches_that_its_tags_were_presented_and_read_and_how_strongly()
    {
        World world = new World().ReadAllBut().CountAll();
        TagHistoryRegister learned = Learn(Nothing, world, world.Reconcile());

        Assert.Equal(13, learned.Entries.Count);
        Assert.All(learned.Entries, entry => Assert.Equal((1, 1, 1, World.Baseline * 100), (entry.SessionsPresented, entry.SessionsRead, entry.StrengthCount, entry.StrengthSumCentiDbm)));
        Assert.Equal(Night, learned.AsOf);
    }

    [Fact]
    public void An_open_kit_teaches_nothing_that_no_person_confirmed()
    {
        World world = new World().ReadAllBut("T7");
        Assert.Empty(Learn(Nothing, world, world.Reconcile()).Entries);
    }

    [Fact]
    public void A_silent_tag_counts_as_presented_only_when_its_tool_was_sighted_inside_the_kit()
    {
        World inside = new World().ReadAllBut("T7").CountAll().Sight("T7", "K1-7", World.K1);
        World somewhere = new World { Policy = new ReconciliationPolicy { Inventory = new InventoryPolicy { SightingsWithoutKitAccepted = true } } }
            .ReadAllBut("T7").CountAll().Sight("T7", "K1-7", default(KitId));

        TagHistory t7 = Learn(Nothing, inside, inside.Reconcile()).Histories[World.TagOf("T7")];
        Assert.Equal((1, 0), (t7.SessionsPresented, t7.SessionsRead));
        Assert.False(Learn(Nothing, somewhere, somewhere.Reconcile()).Histories.ContainsKey(World.TagOf("T7")));
    }

    [Fact]
    public void S09_A_wet_day_teaches_nothing_even_when_people_have_sighted_every_tool()
    {
        World world = new World().WithHistory().CountAll();
        foreach (string tool in new[] { "T1", "T2", "T3", "H13" })
        {
            world.ReadAt(World.TagOf(tool), World.A1, World.Baseline - 12, 5, 7).ReadAt(World.TagOf(tool), World.A2, World.Baseline - 12, 9);
        }

        for (int i = 4; i <= 12; i++)
        {
            if (i <= 7)
            {
                world.ReadAt(World.TagOf($"T{i}"), World.A1, World.Baseline - 14, 8);
            }

            world.Sight($"T{i}", $"K1-{i}", World.K1);
        }

        ReconciliationResult result = world.Reconcile();
        Assert.Equal(KitState.Complete, result.Kit.State);
        Assert.Empty(Learn(Nothing, world, result).Entries);
    }

    [Fact]
    public void Nothing_is_learned_of_degraded_sessions_discrepant_kits_silent_bags_and_doubted_tags()
    {
        World degraded = new World { ControlOnA2 = false }.ReadAllBut().CountAll();
        degraded.PassStarts.Add(World.Start.AddSeconds(8));
        Assert.Equal(KitState.Complete, degraded.Reconcile().Kit.State);
        Assert.Empty(Learn(Nothing, degraded, degraded.Reconcile()).Entries);

        World surplus = new World().ReadAllBut().CountAll().Sight("T1", "K1-1", World.K1).Count(15, 7, "each", World.End.AddSeconds(1));
        Assert.Empty(Learn(Nothing, surplus, surplus.Reconcile()).Entries);

        World silent = new World().CountAll();
        Enumerable.Range(1, 12).ToList().ForEach(i => silent.Sight($"T{i}", $"K1-{i}", World.K1));
        Assert.Empty(Learn(Nothing, silent, silent.Reconcile()).Entries);

        World doubted = new World().ReadAllBut().CountAll().Quarantine("T2", World.End).Sight("T2", "K1-2", World.K1);
        Assert.Equal(KitState.Complete, doubted.Reconcile().Kit.State);
        Assert.Equal(12, Learn(Nothing, doubted, doubted.Reconcile()).Entries.Count);
    }

    [Fact]
    public void A_session_counts_once_whatever_number_of_results_tells_of_it_and_one_abnormal_result_leaves_it_out()
    {
        World world = new World().ReadAllBut().CountAll();
        ReadSession session = world.Session();
        ReconciliationResult early = world.Reconcile(session);
        world.AsOf = World.End.AddMinutes(30);
        ReconciliationResult late = world.Reconcile(session);
        Assert.All(Learn(Nothing, world, early, late, early).Entries, entry => Assert.Equal(1, entry.SessionsPresented));

        world.Count(15, 7, "each", World.End.AddMinutes(20));
        Assert.Empty(Learn(Nothing, world, early, world.Reconcile(session)).Entries);
    }

    [Fact]
    public void What_ended_or_was_concluded_later_is_not_learned_and_what_was_counted_is_not_counted_again()
    {
        World world = new World().ReadAllBut().CountAll();
        ReconciliationResult result = world.Reconcile();
        TagHistoryRegister learned = Learn(Nothing, world, result);

        Assert.Equal(learned.ToJson(), Learn(learned, world, result).ToJson());
        Assert.Empty(TagHistoryLearner.Learn(Nothing, [result], new TagRegister(world.Bindings), world.AsOf.AddTicks(-1)).Entries);
        Assert.Throws<ArgumentException>(() => TagHistoryLearner.Learn(learned, [], TagRegister.Empty, Night.AddTicks(-1)));
    }

    [Fact]
    public void A_tag_that_went_to_another_tool_begins_anew()
    {
        World world = new World().ReadAllBut().CountAll();
        var before = new TagHistoryRegister(World.Start.AddYears(-1),
        [
            new TagHistoryEntry(World.TagOf("T1"), new ToolId("U1"), 50, 20, 20, -120_000),
            new TagHistoryEntry(World.TagOf("T2"), new ToolId("T2"), 50, 20, 20, -120_000),
            new TagHistoryEntry(World.TagOf("V1"), new ToolId("V1"), 9, 9, 0, 0),
        ]);
        TagHistoryRegister learned = Learn(before, world, world.Reconcile());

        Assert.Equal([(1, 1), (51, 21), (9, 9)], new[] { "T1", "T2", "V1" }
            .Select(name => learned.Histories[World.TagOf(name)]).Select(history => (history.SessionsPresented, history.SessionsRead)));
    }

    /// <summary>Ten shifts, of which some are complete, some open and settled by sightings, some abnormal.</summary>
    [Property(Arbitrary = [typeof(ShiftCase)], MaxTest = 40)]
    public void The_order_of_results_changes_nothing_and_learning_in_two_steps_is_learning_at_once(ShiftCase shift, int seed)
    {
        var random = new Random(seed);
        var world = new World();
        ReconciliationResult[] results = [.. Enumerable.Range(0, 10).Select(day => Shift(shift, random.Next(6), day))];
        var tags = new TagRegister(world.Bindings);
        TagHistoryRegister once = TagHistoryLearner.Learn(Nothing, results, tags, World.End.AddDays(20));

        ReconciliationResult[] shuffled = [.. results];
        random.Shuffle(shuffled);
        Assert.Equal(once.ToJson(), TagHistoryLearner.Learn(Nothing, shuffled, tags, World.End.AddDays(20)).ToJson());

        DateTimeOffset between = World.Start.AddDays(random.Next(11)).AddHours(-1);
        TagHistoryRegister first = TagHistoryLearner.Learn(Nothing, shuffled, tags, between);
        Assert.Equal(once.ToJson(), TagHistoryLearner.Learn(first, shuffled, tags, World.End.AddDays(20)).ToJson());
    }

    [Fact]
    public void The_drawn_shifts_do_teach_reads_and_silences()
    {
        var random = new Random(7);
        ShiftCase shift = ShiftCase.Arbitrary().Generator.Sample(1).First();
        ReconciliationResult[] results = [.. Enumerable.Range(0, 30).Select(day => Shift(shift, random.Next(6), day))];
        TagHistoryRegister learned = TagHistoryLearner.Learn(Nothing, results, new TagRegister(new World().Bindings), World.End.AddDays(40));

        Assert.Contains(learned.Entries, entry => entry.SessionsRead > 5 && entry.History.StrengthBaseline is not null);
        Assert.Contains(learned.Entries, entry => entry.SessionsRead < entry.SessionsPresented);
    }

    private static ReconciliationResult Shift(ShiftCase drawn, int kind, int day)
    {
        World world = kind switch
        {
            0 => (drawn with { TwoPasses = false }).ToWorld(),
            1 => new World().ReadAllBut($"T{1 + (day % 12)}").CountAll().Sight($"T{1 + (day % 12)}", $"K1-{1 + (day % 12)}", World.K1),
            2 => new World().ReadAllBut("T3").CountAll(),
            _ => new World().ReadAllBut().CountAll(),
        };
        ReadSession session = world.Session($"day {day}", [World.K1], [.. world.ControlReads().Concat(world.Reads)
            .Select(read => new TagRead(read.Tag, read.Antenna, read.FirstSeen.AddDays(day)) { Strength = read.Strength })], World.Start.AddDays(day));
        Move(world, day);
        world.AsOf = World.End.AddDays(day).AddMinutes(2);
        return world.Reconcile(session);
    }

    private static void Move(World world, int day)
    {
        (string Tool, string Mark, KitId Kit, DateTimeOffset At)[] sightings = [.. world.Sightings.Select(sighting => (sighting.Tool.Value, sighting.MarkRead, sighting.InKit, sighting.At))];
        world.Sightings.Clear();
        foreach (var (tool, mark, kit, at) in sightings)
        {
            world.Sight(tool, mark, kit, at.AddDays(day));
        }

        (int Line, decimal Amount, string Unit, DateTimeOffset At)[] counts = [.. world.Counts.Select(count => (count.LineNumber, count.Quantity.Amount, count.Quantity.Unit.Value, count.At))];
        world.Counts.Clear();
        foreach (var (line, amount, unit, at) in counts)
        {
            world.Count(line, amount, unit, at.AddDays(day));
        }
    }

    private static TagHistoryRegister Learn(TagHistoryRegister before, World world, params IEnumerable<ReconciliationResult> results) =>
        TagHistoryLearner.Learn(before, results, new TagRegister(world.Bindings, world.Quarantines), Night);
}
