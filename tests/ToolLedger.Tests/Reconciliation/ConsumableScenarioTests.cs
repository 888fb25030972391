using System;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using Xunit;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>Scenarios of consumables, by id; and the rules of the balance.</summary>
public sealed class ConsumableScenarioTests
{
    private static readonly DateTimeOffset Noon = World.Start.AddHours(-3);

    [Fact]
    public void S45_A_part_used_spool_is_counted_and_its_used_length_not_assessed()
    {
        // Given: two manifest lines, the spool (14) and its length (16); the spool comes back part-used and no job says how much.
        World world = Wire().ReadAllBut().CountAll();

        // When
        ReconciliationResult result = world.Reconcile();

        // Must conclude: the spool is there; nobody knows the length. The safer reading: without a local rule the length keeps the kit open.
        Assert.Equal((LineState.Accounted, AccountingBasis.Counted), (result.Lines[13].State, result.Lines[13].Basis));
        Assert.Equal("1 spool", result.Lines[13].Evidence.Counted.ToString());
        Assert.Equal(LineState.NotAssessed, result.Lines[15].State);
        Assert.Equal(KitState.Open, result.Kit.State);
    }

    [Fact]
    public void S45_Where_local_rule_asks_for_no_length_the_line_is_listed_apart_and_not_called_accounted_for()
    {
        World world = Wire().ReadAllBut().CountAll();
        world.Policy = new ReconciliationPolicy { Inventory = new InventoryPolicy { UnitsNotCounted = [new Unit("m")] } };
        ReconciliationResult result = world.Reconcile();

        Assert.Equal(16, Assert.Single(result.NotExpected).Line.Number);
        Assert.Null(result.NotExpected[0].Annotation);
        Assert.Equal(15, result.Lines.Count);
        Assert.Equal(KitState.Complete, result.Kit.State);

        // Whoever measured it all the same is heard.
        ReconciliationResult measured = world.Count(16, 12, "m").Reconcile();
        Assert.Equal(LineState.Partial, measured.Lines[15].State);
    }

    [Fact]
    public void S46_Twenty_pins_issued_twelve_back_and_seven_fitted_leave_one_unexplained()
    {
        // Given: a blister of 20 cotter pins; 12 are counted back; the job card says 7 fitted.
        World world = Pins().ReadAllBut().CountAll().Count(16, 12, "each").Use(16, "J-7", 7, "each", Noon);

        // When
        ReconciliationResult result = world.Reconcile();

        // Must conclude: DISCREPANT, 1 unexplained.
        LineConclusion line = result.Lines[15];
        Assert.Equal((LineState.Partial, true), (line.State, line.IsPositiveDifference));
        ConsumableBalance balance = line.Evidence.Balance!;
        Assert.Equal((20m, 7m, 12m, 0m, 1m), (balance.Issued, balance.Used, balance.Returned, balance.Scrapped, balance.Unexplained));
        Assert.Contains(line.Reasons, reason => reason.ToString().StartsWith("1 each unexplained", StringComparison.Ordinal));
        Assert.Equal(PeopleReasons.StepBalance, line.Next!.Reason.Kind);
        Assert.Equal(KitState.Discrepant, result.Kit.State);
    }

    [Fact]
    public void S46_The_scrapped_one_closes_the_balance_and_a_surplus_opens_it_again()
    {
        World world = Pins().ReadAllBut().CountAll().Count(16, 12, "each").Use(16, "J-7", 7, "each", Noon, scrapped: 1);

        ReconciliationResult balanced = world.Reconcile();
        Assert.Equal((LineState.Accounted, AccountingBasis.Counted), (balanced.Lines[15].State, balanced.Lines[15].Basis));
        Assert.Equal(KitState.Complete, balanced.Kit.State);

        ReconciliationResult over = world.Use(16, "J-8", 2, "each", Noon.AddMinutes(5)).Reconcile();
        Assert.Equal(LineState.Conflict, over.Lines[15].State);
        Assert.Equal(-2m, over.Lines[15].Evidence.Balance!.Unexplained);
        Assert.Equal(KitState.Discrepant, over.Kit.State);
    }

    [Fact]
    public void A_job_that_explains_everything_does_not_replace_the_count()
    {
        ReconciliationResult result = Pins().ReadAllBut().CountAll().Use(16, "J-7", 20, "each", Noon).Reconcile();

        Assert.Equal(LineState.NotAssessed, result.Lines[15].State);
    }

    [Fact]
    public void One_use_entered_twice_hides_no_shortage()
    {
        // Seven of the pins are gone: the job record, entered again by a second person, must not explain them.
        World world = Pins().ReadAllBut().CountAll().Count(16, 6, "each").Use(16, "J-7", 7, "each", Noon).Use(16, "J-7", 7, "each", Noon.AddMinutes(1));

        LineConclusion line = world.Reconcile().Lines[15];
        Assert.Equal((LineState.Partial, 7m), (line.State, line.Evidence.Balance!.Unexplained));
        Assert.Contains(line.Reasons, reason => reason.Kind == PeopleReasons.UseNotUsed);
    }

    [Fact]
    public void A_wrong_job_record_is_withdrawn_by_a_later_one_of_the_same_job_that_says_nothing_was_taken()
    {
        // Seven pins were written on the wrong kit's line: all twenty are there, and counted after the correction.
        World world = Pins().ReadAllBut().CountAll().Count(16, 20, "each").Use(16, "J-4411", 7, "each", World.Start.AddHours(-2));
        Assert.Equal(KitState.Discrepant, world.Reconcile().Kit.State);

        world.Use(16, "J-4411", 0, "each", World.Start.AddHours(-1));
        Assert.Equal(LineState.Accounted, world.Reconcile().Lines[15].State);

        // The safer reading: a correction after the count leaves open what was counted, and one of another job withdraws nothing.
        Assert.NotEqual(LineState.Accounted, Pins().ReadAllBut().CountAll().Count(16, 20, "each").Use(16, "J-4411", 7, "each", World.Start.AddHours(-2)).Use(16, "J-4411", 0, "each", World.End).Reconcile().Lines[15].State);
        Assert.NotEqual(LineState.Accounted, Pins().ReadAllBut().CountAll().Count(16, 20, "each").Use(16, "J-4411", 7, "each", World.Start.AddHours(-2)).Use(16, "J-4412", 0, "each", World.Start.AddHours(-1)).Reconcile().Lines[15].State);
    }

    [Fact]
    public void A_use_after_the_count_makes_the_count_void()
    {
        // Counted 12 of 20 with 7 used: one is short. Someone then takes one more; 12 + 8 would look balanced although 11 are there.
        World world = Pins().ReadAllBut().CountAll().Count(16, 12, "each").Use(16, "J-7", 7, "each", Noon).Use(16, "J-8", 1, "each", World.End.AddSeconds(30));

        LineConclusion line = world.Reconcile().Lines[15];
        Assert.Equal(LineState.NotAssessed, line.State);
        Assert.Contains(line.Reasons, reason => reason.Kind == PeopleReasons.UsedSinceCounted);
        Assert.Equal(PeopleReasons.StepCountAgain, line.Next!.Reason.Kind);
    }

    [Fact]
    public void A_job_record_of_yesterday_or_in_another_unit_explains_nothing()
    {
        World world = Pins().ReadAllBut().CountAll().Count(16, 13, "each").Use(16, "J-6", 7, "each", World.Start.AddHours(-20)).Use(16, "J-7", 7, "box", Noon);

        LineConclusion line = world.Reconcile().Lines[15];
        Assert.Equal(LineState.Partial, line.State);
        Assert.Equal(2, line.Reasons.Count(reason => reason.Kind == PeopleReasons.UseNotUsed));
    }

    [Fact]
    public void A_job_record_of_a_line_that_is_no_consumable_is_told()
    {
        ReconciliationResult result = new World().ReadAllBut().CountAll().Use(15, "J-7", 1, "each", Noon).Reconcile();

        Assert.Equal(KitState.Complete, result.Kit.State);
        Assert.Contains(result.Findings, finding => finding.Code == ReconciliationReasons.EntryNotUsed.Code && finding.ToString().Contains("only consumable lines", StringComparison.Ordinal));
    }

    private static World Wire()
    {
        var world = new World();
        world.MoreLines.Add(new ConsumableLine { Number = 16, Description = "safety wire, length and off-cuts", Quantity = new Quantity(30, new Unit("m")) });
        return world;
    }

    private static World Pins()
    {
        var world = new World();
        world.MoreLines.Add(new ConsumableLine { Number = 16, Description = "cotter pins", Quantity = new Quantity(20, Unit.Each) });
        return world;
    }
}
