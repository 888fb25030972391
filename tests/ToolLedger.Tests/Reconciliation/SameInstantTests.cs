using System;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using Xunit;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>Of entries of one instant the one that would not settle the line decides.</summary>
public sealed class SameInstantTests
{
    private static World Rags() => new World().ReadAllBut().Count(13, 10, "each").Count(14, 1, "spool");

    private static World Pins(decimal counted)
    {
        World world = Rags().Count(15, 6, "each");
        world.MoreLines.Add(new ConsumableLine { Number = 16, Description = "pins", Quantity = new Quantity(20, Unit.Each) });
        return world.Count(16, counted, "each");
    }

    private static LineState StateOf(World world, int line) => world.Reconcile().Lines.Single(judged => judged.Line.Number == line).State;

    [Theory]
    [InlineData("A")]
    [InlineData("Z")]
    public void A_count_of_joined_parts_gives_way_to_a_plain_count_that_falls_short(string by)
    {
        World world = Rags();
        world.Counts.Add(new LineCount { Kit = World.K1, LineNumber = 15, Quantity = new Quantity(5, Unit.Each), Parts = 2, By = new PersonId(by), Witness = World.Q, At = World.End });
        world.Join(15, 2, 1, World.End.AddSeconds(10));
        Assert.Equal(LineState.Accounted, StateOf(world, 15));

        world.Counts.Add(new LineCount { Kit = World.K1, LineNumber = 15, Quantity = new Quantity(5, Unit.Each), By = World.P, Witness = World.Q, At = World.End });
        Assert.NotEqual(LineState.Accounted, StateOf(world, 15));
    }

    [Fact]
    public void Two_joinings_that_differ_settle_nothing()
    {
        World world = Rags().CountParts(15, 5, 4, "each", World.End).Join(15, 4, 1, World.End);
        Assert.Equal(LineState.Accounted, StateOf(world, 15));
        Assert.NotEqual(LineState.Accounted, StateOf(world.Join(15, 4, 2, World.End), 15));
    }

    // In either order of entry the same is said, in the same words: one was decided by two persons, as the policy asks, the other by one alone.
    [Fact]
    public void Two_reconstructions_that_differ_in_the_witness_are_told_in_an_order_of_their_own()
    {
        string[] told = [.. ((PersonId[])[World.P, default]).Select(static first =>
        {
            World world = Rags().Reconstruct("T10", 3, World.End, first).Reconstruct("T10", 3, World.End, first.IsEmpty ? World.P : default);
            return string.Join("; ", world.Reconcile().Lines[9].Reasons);
        })];

        Assert.Contains("does not count", told[0], StringComparison.Ordinal);
        Assert.Equal(told[0], told[1]);
    }

    [Fact]
    public void Two_records_of_one_job_that_differ_settle_nothing()
    {
        World world = Pins(13).Use(16, "J", 7, "each", World.End.AddMinutes(-1));
        Assert.Equal(LineState.Accounted, StateOf(world, 16));
        world.Use(16, "J", 8, "each", World.End.AddMinutes(-1));
        Assert.NotEqual(LineState.Accounted, StateOf(world, 16));
        Assert.Contains(world.Reconcile().Lines.SelectMany(line => line.Reasons), reason => reason.Kind == PeopleReasons.EntriesDiffer);
    }

    [Fact]
    public void Two_shortages_that_differ_settle_nothing()
    {
        DateTimeOffset signed = World.Start.AddHours(-1);
        World world = Rags().Count(15, 5, "each").Annotate(15, AnnotationKind.Shortage, signed, shortBy: new Quantity(1, Unit.Each));
        Assert.Equal(LineState.Accounted, StateOf(world, 15));
        world.Annotate(15, AnnotationKind.Shortage, signed, shortBy: new Quantity(2, Unit.Each));
        Assert.NotEqual(LineState.Accounted, StateOf(world, 15));
    }

    [Fact]
    public void A_count_of_the_instant_of_a_job_record_is_not_later_than_the_job()
    {
        World world = Pins(13);
        DateTimeOffset counted = world.Counts[^1].At;
        Assert.NotEqual(LineState.Accounted, StateOf(world.Use(16, "J", 7, "each", counted), 16));
    }

    [Theory]
    [InlineData("j-1")]
    [InlineData("J 1")]
    [InlineData("J1")]
    [InlineData("\u0408-1")]
    public void A_job_number_written_otherwise_is_the_same_job(string other)
    {
        World world = Pins(6).Use(16, "J-1", 7, "each", World.End.AddMinutes(-20)).Use(16, other, 7, "each", World.End.AddMinutes(-10));
        Assert.NotEqual(LineState.Accounted, StateOf(world, 16));
    }

    [Fact]
    public void A_signature_of_the_instant_of_the_last_count_covers_nothing()
    {
        World world = Rags().Count(15, 6, "each");
        DateTimeOffset last = world.Counts.Max(count => count.At);
        world.Signatures.Add(new Signature { By = World.P, At = last });
        Assert.Empty(world.Reconcile().Signatures);
        world.Signatures.Add(new Signature { By = World.P, At = last.AddSeconds(1) });
        Assert.Single(world.Reconcile().Signatures);
    }
}
