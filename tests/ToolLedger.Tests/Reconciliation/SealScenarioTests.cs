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

/// <summary>Sub-kits accepted by seal, and tools put in the place of others.</summary>
public sealed class SealScenarioTests
{
    private static readonly DateTimeOffset Inventoried = World.Start.AddDays(-3);

    [Fact]
    public void S37_An_intact_seal_of_the_right_number_accounts_for_what_is_inside_where_the_policy_accepts_seals()
    {
        ReconciliationResult result = Shift().Reconcile();

        Assert.All(result.Lines[2].Inner, static line =>
        {
            Assert.Equal((LineState.Accounted, AccountingBasis.Record), (line.State, line.Basis));
            string text = string.Join("; ", line.Reasons);
            Assert.Contains("seal N-77, applied 2026-02-27 14:57:00", text, StringComparison.Ordinal);
            Assert.Contains("seen intact 2026-03-02 14:56:00", text, StringComparison.Ordinal);
        });
        Assert.Equal(LineState.Accounted, result.Lines[2].State);
        Assert.Equal(KitState.Complete, result.Kit.State);
    }

    [Fact]
    public void S37_Without_that_policy_what_is_inside_is_not_assessed()
    {
        SubKitWorld shift = Shift();
        shift.World.Policy = new ReconciliationPolicy();
        AssertNotAssessed(shift, SealReasons.NotAccepted);
    }

    [Theory]
    [InlineData("broken", "line.seal-broken")]
    [InlineData("other number", "line.seal-of-other-number")]
    [InlineData("not checked", "line.seal-not-checked")]
    [InlineData("checked before it was applied", "line.seal-not-checked")]
    [InlineData("opened since", "line.seal-opened-since")]
    [InlineData("old", "line.seal-too-old")]
    [InlineData("older than the list", "line.seal-of-other-revision")]
    public void S37_A_seal_that_does_not_hold_leaves_what_is_inside_not_assessed(string fault, string code)
    {
        SubKitWorld shift = Shift();
        switch (fault)
        {
            case "broken":
                Look(shift, World.End, isIntact: false);
                break;
            case "other number":
                Look(shift, World.End, number: "N-78");
                break;
            case "not checked":
                shift.World.SealChecks.Clear();
                break;
            case "checked before it was applied":
                shift.World.SealChecks.Clear();
                Look(shift, Inventoried.AddMinutes(1));
                break;
            case "opened since":
                shift.World.Openings.Add(new KitOpening { Kit = SubKitWorld.K1a, By = World.P, At = World.Start.AddDays(-1) });
                break;
            case "old":
                shift.World.Policy = Accepting(TimeSpan.FromDays(2));
                break;
            default:
                Seal(shift, World.Start.AddDays(-39));
                shift.World.Seals.RemoveAt(0);
                shift.World.Policy = Accepting(TimeSpan.FromDays(60));
                break;
        }

        AssertNotAssessed(shift, SealReasons.All.Single(kind => kind.Code == code));
    }

    [Fact]
    public void S37_A_tool_read_or_sighted_itself_needs_no_seal()
    {
        SubKitWorld shift = Shift();
        shift.World.Policy = new ReconciliationPolicy();
        shift.ReadWell("A1").World.Sight("A2", "mark A2", SubKitWorld.K1a);
        LineConclusion[] inner = [.. shift.Reconcile().Lines[2].Inner];

        Assert.Equal([AccountingBasis.Read, AccountingBasis.Sighted], inner.Take(2).Select(static line => line.Basis));
        Assert.All(inner.Skip(2), static line => Assert.Equal(LineState.NotAssessed, line.State));
    }

    /// <summary>The safer reading: a tool heard elsewhere after the inventory that the seal closes is not behind that seal for certain.</summary>
    [Fact]
    public void A_tool_under_seal_that_was_read_with_another_kit_since_is_not_assessed()
    {
        SubKitWorld shift = Shift();
        ReconciliationResult result = shift.Reconcile(
            World.K1,
            shift.World.Session("S1", [World.K1]),
            shift.World.Session("S2", [World.K9], [new TagRead(World.TagOf("A3"), World.A1, World.Start.AddMinutes(-59.9))], World.Start.AddHours(-1)));

        Assert.Equal(LineState.NotAssessed, result.Lines[2].Inner[2].State);
        Assert.Contains(result.Lines[2].Inner[2].Reasons, static reason => reason.Kind == SealReasons.ReadElsewhere);
        Assert.Equal(LineState.Accounted, result.Lines[2].Inner[3].State);
    }

    [Theory]
    [InlineData("nothing", KitState.Complete)]
    [InlineData("box inside opened", KitState.Open)]
    [InlineData("seal inside broken", KitState.Open)]
    [InlineData("looks of one instant differ", KitState.Open)]
    [InlineData("broken before", KitState.Open)]
    [InlineData("sighted in another kit", KitState.Open)]
    [InlineData("sighted on a bench", KitState.Open)]
    [InlineData("counted none", KitState.Open)]
    [InlineData("no piece", KitState.Open)]
    [InlineData("broken tool", KitState.Open)]
    [InlineData("pin used", KitState.Open)]
    [InlineData("pin not used after all", KitState.Open)]
    public void A_contrary_word_after_the_inventory_that_the_seal_closes_voids_it_however_old(string word, KitState state)
    {
        SubKitWorld shift = Shift();
        shift.IsNestedTwice = true;
        DateTimeOffset then = World.Start.AddDays(-2);
        World world = shift.World;
        switch (word)
        {
            case "box inside opened":
                world.Openings.Add(new KitOpening { Kit = SubKitWorld.K1aa, By = World.P, At = then });
                break;
            case "seal inside broken":
                world.SealChecks.Add(new SealCheck { Kit = SubKitWorld.K1aa, NumberRead = "M-1", IsIntact = false, By = World.Q, At = then });
                break;
            case "looks of one instant differ":
                world.SealChecks.Add(new SealCheck { Kit = SubKitWorld.K1a, NumberRead = "N-99", IsIntact = true, By = World.P, At = World.End.AddSeconds(30) });
                break;
            case "broken before":
                world.SealChecks.Add(new SealCheck { Kit = SubKitWorld.K1a, NumberRead = "N-77", IsIntact = false, By = World.P, At = then });
                break;
            case "sighted in another kit":
                world.Sight("A3", "mark A3", World.K9, then);
                break;
            case "sighted on a bench":
                world.Sight("A3", "mark A3", at: then);
                break;
            case "counted none":
                world.Counts.Add(new LineCount { Kit = SubKitWorld.K1a, LineNumber = 3, Quantity = new Quantity(0, Unit.Each), By = World.Q, At = then });
                break;
            case "broken tool":
                world.Breakages.Add(new Breakage { Tool = new ToolId("A3"), Pieces = 2, By = World.Q, At = then });
                break;
            case "pin used" or "pin not used after all":
                // Whoever took a pin out of the box had it open, sealed or not; that it was put back does not close it again.
                world.Uses.Add(new ConsumableUse { Kit = SubKitWorld.K1a, LineNumber = 6, Job = "J-1", Unit = Unit.Each, Used = 1, By = World.P, At = then });
                if (word != "pin used")
                {
                    world.Uses.Add(new ConsumableUse { Kit = SubKitWorld.K1a, LineNumber = 6, Job = "J-1", Unit = Unit.Each, By = World.P, At = then.AddHours(1) });
                }

                shift.HasPins = true;
                break;
            case "no piece":
                world.Pieces.Add(new PieceCount { Tool = new ToolId("A3"), Pieces = 0, By = World.Q, At = then });
                break;
        }

        Assert.Equal(state, shift.Reconcile().Kit.State);
    }

    [Fact]
    public void S38_One_sealed_sub_kit_that_two_kits_hold_is_a_conflict_in_each_that_nothing_shows_it_to_be_in()
    {
        SubKitWorld shift = Shift().ReadWell("V1");
        shift.Others.Add(SubKitWorld.Manifest(World.K9, 1, SubKitWorld.Line(1, "V1"), new SubKitLine { Number = 7, Kit = SubKitWorld.K1a, Revision = 2 }));
        Assert.Equal(LineState.Accounted, shift.Reconcile(World.K1).Lines[2].State);

        shift.HasCase = false;
        LineConclusion[] lines = [shift.Reconcile(World.K1).Lines[2], shift.Reconcile(World.K9).Lines[1]];
        Assert.All(lines, static line => Assert.Equal(LineState.Conflict, line.State));
        Assert.All(lines, static line => Assert.Contains(line.Reasons, static reason => reason.Kind == ReconciliationReasons.SubKitNotSaid));
    }

    [Fact]
    public void A_seal_rests_on_people_so_the_policy_may_ask_for_a_second_person()
    {
        SubKitWorld shift = Shift();
        shift.World.Signatures.Clear();
        ReconciliationResult result = shift.Reconcile();

        Assert.Equal(KitState.Open, result.Kit.State);
        Assert.Contains(result.Kit.Reasons, static reason => reason.Kind == ReconciliationReasons.KitMorePersons);
    }

    [Fact]
    public void A_recorded_substitution_makes_the_alternate_expected_and_the_tool_it_replaced_unexpected()
    {
        SubKitWorld shift = Swapped("U2");
        ReconciliationResult result = shift.ReadWell("U1", "U2").Reconcile(World.K2);

        Assert.Equal(LineState.Accounted, result.Lines[0].State);
        Assert.Equal(new ToolId("U2"), result.Lines[0].Line.Tool!.Id);
        Assert.Contains(result.Lines[0].Reasons, static reason => reason.ToString().StartsWith("stands in for U1 since", StringComparison.Ordinal));
        Assert.Equal(ReadExplanationKind.Expected, result.Reads.Single(static read => read.Tool == new ToolId("U2")).Kind);
        ReadExplanation replaced = result.Reads.Single(static read => read.Tool == new ToolId("U1"));
        Assert.Equal((ReadExplanationKind.Unexpected, "tool U1 was replaced on line 3 on record"), (replaced.Kind, replaced.ToString()));
    }

    [Fact]
    public void After_a_substitution_the_tool_it_replaced_does_not_account_for_the_line()
        => Assert.Equal(LineState.NotRead, Swapped("U2").ReadWell("U1").Reconcile(World.K2).Lines[0].State);

    [Fact]
    public void The_latest_record_stands_so_a_tool_put_back_is_expected_again()
    {
        SubKitWorld shift = Swapped("U2");
        Swap(shift, "U1", World.Start.AddHours(-1));
        ReconciliationResult result = shift.ReadWell("U1").Reconcile(World.K2);

        Assert.Equal((LineState.Accounted, new ToolId("U1")), (result.Lines[0].State, result.Lines[0].Line.Tool!.Id));
    }

    [Fact]
    public void A_substitution_by_a_tool_the_list_does_not_name_puts_nothing_in_place_and_is_shown()
    {
        ReconciliationResult result = Swapped("U5").ReadWell("U5").Reconcile(World.K2);

        Assert.Equal((LineState.NotRead, new ToolId("U1")), (result.Lines[0].State, result.Lines[0].Line.Tool!.Id));
        Finding finding = Assert.Single(result.Findings, static finding => finding.Code == ReconciliationReasons.EntryNotUsed.Code);
        Assert.Contains("names no such alternate", finding.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_seal_before_the_inventory_it_closes_is_refused()
    {
        var seal = new SealRecord { Kit = World.K1, Number = "N-1", InventoriedAt = World.End, By = World.P, At = World.Start };
        Assert.False(InventorySheet.TryCreate(new InventoryEntries { Seals = [seal] }, out _, out var issues));
        Assert.Equal(InventoryRules.SealBeforeInventory.Code, Assert.Single(issues).Rule);
    }

    private static void AssertNotAssessed(SubKitWorld shift, ReasonKind why)
    {
        ReconciliationResult result = shift.Reconcile();
        Assert.All(result.Lines[2].Inner, line =>
        {
            Assert.Equal(LineState.NotAssessed, line.State);
            Assert.Contains(line.Reasons, reason => reason.Kind == why);
        });
        Assert.Equal(LineState.Partial, result.Lines[2].State);
        Assert.Equal(KitState.Open, result.Kit.State);
    }

    /// <summary>T1, T2 and the case of K1a were read; K1a is closed with seal N-77, which Q has looked at; P signed the sheet.</summary>
    private static SubKitWorld Shift()
    {
        SubKitWorld shift = new SubKitWorld().ReadWell("T1", "T2", "CASE");
        shift.World.Policy = Accepting(TimeSpan.FromDays(30));
        Seal(shift, Inventoried);
        Look(shift, World.End.AddSeconds(30));
        shift.World.Signatures.Add(new Signature { By = World.P, At = World.End.AddSeconds(90) });
        return shift;
    }

    private static ReconciliationPolicy Accepting(TimeSpan age) => new() { Inventory = new InventoryPolicy { SealsAccepted = true, SealAgeMax = age } };

    private static void Seal(SubKitWorld shift, DateTimeOffset inventoried) => shift.World.Seals.Add(new SealRecord
    {
        Kit = SubKitWorld.K1a,
        Number = "N-77",
        InventoriedAt = inventoried,
        By = World.P,
        At = inventoried.AddMinutes(2),
        Witness = World.Q,
    });

    private static void Look(SubKitWorld shift, DateTimeOffset at, string number = "N-77", bool isIntact = true)
    {
        shift.World.SealChecks.RemoveAll(check => check.At >= at);
        shift.World.SealChecks.Add(new SealCheck { Kit = SubKitWorld.K1a, NumberRead = number, IsIntact = isIntact, By = World.Q, At = at });
    }

    private static SubKitWorld Swapped(string inPlace)
    {
        var shift = new SubKitWorld();
        shift.Others.Add(SubKitWorld.Manifest(World.K2, 1, new ToolLine { Number = 3, Tool = SubKitWorld.Tool("U1"), Alternates = [SubKitWorld.Tool("U2")] }));
        Swap(shift, inPlace, World.Start.AddHours(-2));
        return shift;
    }

    private static void Swap(SubKitWorld shift, string inPlace, DateTimeOffset at) => shift.World.Substitutions.Add(new Substitution
    {
        Kit = World.K2,
        LineNumber = 3,
        InPlace = new ToolId(inPlace),
        Reason = "jaw worn",
        By = World.P,
        At = at,
    });
}
