using System;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using Xunit;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>Who must have looked, counted and signed, by policy.</summary>
public sealed class PersonRuleTests
{
    [Fact]
    public void Where_a_sighting_needs_a_witness_one_person_alone_settles_no_line()
    {
        World world = new World().ReadAllBut("T7").CountAll().Sight("T7", "K1-7");
        world.Policy = With(new InventoryPolicy { SightingWitnessNeeded = true });

        LineConclusion alone = world.Reconcile().Lines[6];
        Assert.Equal(LineState.NotRead, alone.State);
        Assert.Contains(alone.Reasons, reason => reason.Kind == PeopleReasons.WitnessNeeded);

        world.Sightings.Add(new Sighting
        {
            Tool = new("T7"),
            MarkRead = "K1-7",
            By = World.Q,
            Witness = World.P,
            At = World.End.AddMinutes(1),
            Where = new Place("bench 2"),
            InKit = World.K1,
        });
        LineConclusion seen = world.Reconcile().Lines[6];
        Assert.Equal((LineState.Accounted, AccountingBasis.Sighted), (seen.State, seen.Basis));
        Assert.Equal([World.P, World.Q], seen.Evidence.Persons.OrderBy(person => person.Value, StringComparer.Ordinal));
    }

    [Fact]
    public void A_sighting_without_a_witness_that_contradicts_is_heard_all_the_same()
    {
        World world = new World().ReadAllBut().CountAll().Sight("T7", "K1-3");
        world.Policy = With(new InventoryPolicy { SightingWitnessNeeded = true });

        Assert.Equal(LineState.Conflict, world.Reconcile().Lines[6].State);
    }

    [Fact]
    public void Where_a_count_needs_a_witness_one_person_alone_can_contradict_and_settles_nothing()
    {
        World Alone(decimal rags)
        {
            World world = new World { T10Pieces = 3 }.ReadAllBut().Count(13, 10, "each").Count(14, 1, "spool").CountPieces("T10", 3);
            world.Counts.Add(new LineCount { Kit = World.K1, LineNumber = 15, Quantity = new Quantity(rags, Unit.Each), By = World.P, At = World.End });
            world.Policy = With(new InventoryPolicy { CountWitnessNeeded = true });
            return world;
        }

        ReconciliationResult full = Alone(6).Reconcile();
        Assert.Equal(LineState.NotAssessed, full.Lines[14].State);
        Assert.Equal(PeopleReasons.StepSecondPerson, full.Lines[14].Next!.Reason.Kind);
        Assert.Equal(LineState.Partial, Alone(5).Reconcile().Lines[14].State);
        Assert.Equal(LineState.Conflict, Alone(7).Reconcile().Lines[14].State);

        // The set, counted with a witness, is settled; the pieces of T10, counted by one person, are not, although its tag reads well.
        Assert.True(full.Lines[12].IsAccounted);
        Assert.Equal(LineState.NotAssessed, full.Lines[9].State);
    }

    [Fact]
    public void Who_counted_may_not_sign_where_the_policy_bans_it()
    {
        World world = new World().ReadAllBut().CountAll();
        world.Signatures.Add(new Signature { By = new PersonId("p"), At = World.End.AddMinutes(1) });
        world.Signatures.Add(new Signature { By = new PersonId("S"), At = World.End.AddMinutes(1) });
        Assert.Equal(2, world.Reconcile().Signatures.Count);

        world.Policy = With(new InventoryPolicy { CounterMaySign = false });
        ReconciliationResult banned = world.Reconcile();
        Assert.Equal("S", Assert.Single(banned.Signatures).By.Value);
        Assert.Contains(banned.Findings, finding => finding.ToString().Contains("bans signing", StringComparison.Ordinal));
    }

    [Fact]
    public void Only_roles_that_the_policy_names_sign()
    {
        World world = new World().ReadAllBut().CountAll();
        world.Signatures.Add(new Signature { By = new PersonId("S"), At = World.End.AddMinutes(1), Role = new Role("supervisor") });
        world.Signatures.Add(new Signature { By = World.Q, At = World.End.AddMinutes(1) });
        world.Policy = With(new InventoryPolicy { RolesThatMaySign = [new Role("supervisor")] });

        Assert.Equal("S", Assert.Single(world.Reconcile().Signatures).By.Value);
    }

    // A sighting at noon and a piece count after the signature: the signature does not cover the pieces.
    [Fact]
    public void A_signature_must_be_later_than_every_entry_that_counts_for_a_line()
    {
        World world = new World { T10Pieces = 3 }.ReadAllBut().CountAll().Sight("T10", "K1-10", at: World.End.AddSeconds(5));
        world.Pieces.Add(new PieceCount { Tool = new("T10"), Pieces = 3, By = World.P, At = World.End.AddSeconds(60) });
        world.Signatures.Add(new Signature { By = new PersonId("S"), At = World.End.AddSeconds(30) });

        ReconciliationResult early = world.Reconcile();
        Assert.True(early.Lines[9].IsAccounted);
        Assert.Equal(World.End.AddSeconds(60), early.Lines[9].Evidence.LatestAt);
        Assert.Empty(early.Signatures);

        world.Signatures.Add(new Signature { By = new PersonId("S"), At = World.End.AddSeconds(61) });
        Assert.Single(world.Reconcile().Signatures);
    }

    [Fact]
    public void Policies_with_the_same_settings_are_equal_and_those_with_another_list_are_not()
    {
        InventoryPolicy one = new() { RolesThatMaySign = [new Role("supervisor")], UnitsNotCounted = [new Unit("m")] };
        InventoryPolicy same = new() { RolesThatMaySign = [new Role("supervisor")], UnitsNotCounted = [new Unit("m")] };

        Assert.Equal(one, same);
        Assert.Equal(one.GetHashCode(), same.GetHashCode());
        Assert.NotEqual(one, one with { RolesThatMaySign = [] });
        Assert.NotEqual(one, one with { CountWitnessNeeded = true });
        Assert.Throws<ArgumentException>(() => new InventoryPolicy { RolesThatMaySign = [default] });
        Assert.Throws<ArgumentException>(() => new InventoryPolicy { UnitsNotCounted = [.. Enumerable.Range(0, 33).Select(i => new Unit($"u{i}"))] });
    }

    private static ReconciliationPolicy With(InventoryPolicy policy) => new() { Inventory = policy };

    [Theory]
    [InlineData("P\u0410T", "PAT")]
    [InlineData("\u0440at", "PAT")]
    [InlineData("\uFF30at", "pat")]
    [InlineData("stra\u00DFe", "STRASSE")]
    [InlineData("\u03C3", "\u03C2")]
    [InlineData("p-1", "P 1")]
    public void An_id_that_looks_the_same_is_no_second_person(string one, string other)
    {
        World world = new World().ReadAllBut().CountAll();
        world.Counts.Clear();
        foreach ((int line, decimal amount, Unit unit) in new[] { (13, 10m, Unit.Each), (14, 1m, new Unit("spool")), (15, 6m, Unit.Each) })
        {
            world.Counts.Add(new LineCount { Kit = World.K1, LineNumber = line, Quantity = new Quantity(amount, unit), By = new PersonId(one), Witness = new PersonId(other), At = World.End });
        }

        world.Policy = With(new InventoryPolicy { CountWitnessNeeded = true });
        Assert.NotEqual(LineState.Accounted, world.Reconcile().Lines[14].State);
    }

    [Fact]
    public void Who_counted_before_the_last_opening_is_no_second_person()
    {
        World world = new World();
        world.Counts.Add(new LineCount { Kit = World.K1, LineNumber = 15, Quantity = new Quantity(6, Unit.Each), By = World.Q, At = World.End.AddSeconds(-30) });
        world.Counts.Add(new LineCount { Kit = World.K1, LineNumber = 15, Quantity = new Quantity(6, Unit.Each), By = World.P, At = World.End });
        Assert.Equal(2, world.Reconcile().Lines[14].Evidence.Persons.Count);

        world.Open(World.End.AddSeconds(-10));
        Assert.Equal([World.P], world.Reconcile().Lines[14].Evidence.Persons);
    }

    [Fact]
    public void A_sighting_in_another_kit_speaks_against_a_tool_although_its_mark_is_shared()
    {
        World world = new World { SharedMark = "KITMARK" }.ReadAllBut().CountAll().Sight("T7", "KITMARK", World.K2, World.End.AddMinutes(1));
        Assert.Equal(LineState.Conflict, world.Reconcile().Lines[6].State);

        World here = new World { SharedMark = "KITMARK" }.ReadAllBut().CountAll().Sight("T7", "KITMARK", World.K1, World.End.AddMinutes(1));
        Assert.Equal(LineState.Conflict, here.Reconcile().Lines[6].State);
    }

}
