using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Custody;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Presence;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>A kit counts as packed only where nothing on record speaks against it: each of these entries, after a turn-in on a signed inventory, takes the word away or gives a larger one. Kits, persons and shares are invented.</summary>
public sealed class CustodyTouchTests
{
    private const decimal Usual = 0.01m, PackedShare = 0.005m, Half = 0.5m;
    private static readonly DateTimeOffset Eight = World.Start.AddHours(-8);
    private static readonly DateTimeOffset After = Eight.AddHours(7);
    private static readonly ToolId T5 = new("T5");
    private static readonly StatedRiskPolicy Policy = new() { Model = new(0.05m, new BetaRate(4, 60), 0.02m, new BetaRate(0.2m, 60)), KitRiskLimit = 0.01m, CustodyShares = new CustodyShares { Packed = PackedShare } };

    [Fact]
    public void A_turn_in_lowers_nothing_by_default()
    {
        Assert.Equal(new StatedRiskPolicy().AbsentShare, new CustodyShares().Packed);
        World world = Read(Issue(), TurnIn());
        Assert.Equal((PackedShare, RiskReasons.PriorPacked), Share(world));
        world.Policy = new ReconciliationPolicy { Presence = new StatedRiskPolicy() };
        Assert.Equal((Usual, RiskReasons.PriorPacked), Share(world));
    }

    [Theory]
    [InlineData("opening")]
    [InlineData("visit")]
    [InlineData("visit that began before")]
    [InlineData("use of the tool")]
    [InlineData("use of another tool of the kit")]
    [InlineData("use that began before")]
    [InlineData("refused issue")]
    [InlineData("refused visit")]
    [InlineData("departure from an unknown visit")]
    [InlineData("loan of another tool of the kit")]
    [InlineData("carried into a zone")]
    [InlineData("annotation")]
    [InlineData("annotation from before")]
    [InlineData("sighting elsewhere")]
    [InlineData("consumable used")]
    [InlineData("breakage of another tool")]
    [InlineData("listed only since")]
    public void What_was_done_since_makes_it_the_usual_share(string what)
    {
        World world = Read(Issue(), TurnIn());
        bool isRefused = what.StartsWith("refused", StringComparison.Ordinal) || what.StartsWith("departure", StringComparison.Ordinal);
        if (EntryOf(what) is { } entry)
        {
            world.Custody.Add(entry);
        }
        else
        {
            SayOf(world, what);
        }

        Assert.Equal(isRefused ? 1 : 0, world.Input(world.Session()).Custody.Refused.Count);
        Assert.Equal((Usual, null), Share(world, what == "listed only since" ? 16 : 5));
    }

    [Theory]
    [InlineData("count")]
    [InlineData("sighting inside")]
    [InlineData("entry of another kit")]
    [InlineData("use that ended before")]
    [InlineData("tool room inventory")]
    [InlineData("later than the session began")]
    public void What_speaks_for_it_or_is_of_something_else_leaves_the_word(string what)
    {
        World world = Read(Issue(), TurnIn());
        switch (what)
        {
            case "count":
                world.Count(15, 6, "each", After);
                break;
            case "sighting inside":
                world.Sight("T5", "K1-5", World.K1, After);
                break;
            case "entry of another kit":
                world.Custody.AddRange([Use("U3", After, null), Loan("U4", World.K2)]);
                break;
            case "use that ended before":
                world.Custody.Add(Use("T5", Eight.AddHours(1), Eight.AddHours(2)));
                break;
            case "tool room inventory":
                world.Custody.Add(new ToolRoomInventory { Id = new EntryId("N1"), At = After, By = World.P, IncomingBy = new Signature { By = World.Q, At = After }, Present = [World.K1] });
                break;
            default:
                world.Custody.Add(Use("T5", World.Start.AddMinutes(1), null));
                break;
        }

        Assert.Equal((PackedShare, RiskReasons.PriorPacked), Share(world));
    }

    [Fact]
    public void A_line_open_at_issue_stays_so_after_the_turn_in_until_the_kit_is_issued_without_it()
    {
        Assert.Equal((Half, RiskReasons.PriorOpenAtIssue), Share(Read(Issue(5), TurnIn())));
        Assert.Equal((PackedShare, RiskReasons.PriorPacked), Share(Read(Issue(5), TurnIn()), 6));
        Assert.Equal((Usual, RiskReasons.PriorIssued), Share(Read(Issue(5), TurnIn(), Issue(id: "I2", at: After))));
        Assert.Equal((PackedShare, RiskReasons.PriorPacked), Share(Read(Issue(5), TurnIn(Eight.AddHours(1)), Issue(id: "I2", at: Eight.AddHours(2)), TurnIn(Eight.AddHours(3), id: "B2"))));

        // Signed as open at a transfer, or on an issue that took no effect for want of the receiver: the word is the same.
        Signature receiver = new() { By = World.Q, At = Eight.AddHours(2) };
        var transfer = new KitTransfer { Id = new EntryId("X1"), At = Eight.AddHours(2), By = World.P, Kit = World.K1, ReceivedBy = receiver, InventoriedAt = Eight.AddHours(2), OpenLines = [5], GiverAcknowledges = [5], ReceiverAcknowledges = [5], ExpectedReturn = World.End.AddHours(1) };
        Assert.Equal((Half, RiskReasons.PriorOpenAtIssue), Share(Read(Issue(), transfer)));
        var refused = new KitIssue { Id = new EntryId("I2"), At = After, By = new PersonId("C"), Kit = World.K1, Revision = 3, OpenLines = [5] };
        Assert.Equal((Half, RiskReasons.PriorOpenAtIssue), Share(Read(Issue(), TurnIn(), refused)));
    }

    [Fact]
    public void A_tool_sent_away_without_a_receipt_is_as_likely_elsewhere_as_on_one_until_a_receipt_or_an_issue()
    {
        var note = new DispatchNote { Id = new EntryId("D1"), At = After, By = World.Q, Tool = T5, Kit = World.K1, To = new Place("laboratory") };
        Assert.Equal((Half, RiskReasons.PriorSent), Share(Read(Issue(), TurnIn(), note)));
        Assert.Equal((Usual, null), Share(Read(Issue(), TurnIn(), note), 6));
        var refused = new ToolLoan { Id = new EntryId("L9"), At = After, By = World.P, Tool = T5, Kit = World.K1 };
        Assert.Equal((Half, RiskReasons.PriorSent), Share(Read(Issue(), TurnIn(), refused)));
        Assert.Equal((Usual, RiskReasons.PriorIssued), Share(Read(Issue(), TurnIn(), note, Issue(id: "I2", at: After.AddMinutes(5)))));
    }

    [Theory]
    [InlineData("nothing", "packed")]
    [InlineData("issue and turn-in of the outer kit", "usual")]
    [InlineData("job of the outer kit", "usual")]
    [InlineData("opening of the outer kit", "usual")]
    [InlineData("tool of the outer kit used", "usual")]
    [InlineData("outer kit still out", "issued")]
    [InlineData("line of the inner kit open at the outer issue", "open")]
    [InlineData("that line open, and turned in", "open")]
    [InlineData("that line open, and issued again without it", "usual")]
    [InlineData("another line of the outer kit open", "usual")]
    public void An_inner_kit_packed_by_itself_is_touched_by_what_happens_to_the_kit_around_it(string what, string word)
    {
        var kits = new SubKitWorld();
        World world = kits.World;
        world.Policy = new ReconciliationPolicy { Presence = Policy };
        kits.ReadWell("T1", "T2", "A1", "A2", "A3", "A4", "A5", "CASE");
        world.Custody.AddRange([Issue(kit: SubKitWorld.K1a, revision: 2, id: "I0"), TurnIn(Eight.AddHours(1), SubKitWorld.K1a, "B0")]);
        KitIssue Outer(int open = 0) => Issue(open, Eight.AddHours(2), "I3");
        KitTurnIn Back() => TurnIn(Eight.AddHours(5), id: "B3", isInventoried: false);
        world.Custody.AddRange(what switch
        {
            "issue and turn-in of the outer kit" => (CustodyEntry[])[Outer(), Back()],
            "job of the outer kit" => [Visit(Eight.AddHours(3), Eight.AddHours(4))],
            "tool of the outer kit used" => [Use("T1", Eight.AddHours(3), null)],
            "outer kit still out" => [Outer()],
            "line of the inner kit open at the outer issue" => [Outer(7)],
            "that line open, and turned in" => [Outer(7), Back()],
            "that line open, and issued again without it" => [Outer(7), Back(), Issue(at: After, id: "I4"), TurnIn(After.AddMinutes(5), id: "B4")],
            "another line of the outer kit open" => [Outer(1), Back()],
            _ => [],
        });
        if (what == "opening of the outer kit")
        {
            world.Open(After);
        }

        IEnumerable<LineConclusion> inner = kits.Reconcile().AllLines.Where(static line => line.Line.Tool?.Id.Value[0] == 'A');

        Assert.Equal(5, inner.Count());
        Assert.All(inner, line => Assert.Equal(word switch
        {
            "packed" => (PackedShare, RiskReasons.PriorPacked),
            "issued" => (Usual, RiskReasons.PriorIssued),
            "open" => (Half, RiskReasons.PriorOpenAtIssue),
            _ => (Usual, null),
        }, Share(line)));
    }

    [Fact]
    public void A_share_that_is_not_below_the_usual_one_holds_for_every_kit_turned_in_touched_or_not()
    {
        World world = Read(Issue(), TurnIn()).Open(After);
        world.Policy = new ReconciliationPolicy { Presence = new StatedRiskPolicy { CustodyShares = new CustodyShares { Packed = 0.02m } } };
        Assert.Equal((0.02m, RiskReasons.PriorPacked), Share(world));
        world.Policy = new ReconciliationPolicy { Presence = new StatedRiskPolicy() };
        Assert.Equal((Usual, RiskReasons.PriorPacked), Share(world));
    }

    private static CustodyEntry? EntryOf(string what) => what switch
    {
        "visit" => Visit(After, After.AddMinutes(5)),
        "visit that began before" => Visit(Eight.AddHours(3), null),
        "use of the tool" => Use("T5", After, null),
        "use of another tool of the kit" => Use("T9", After, null),
        "use that began before" => Use("T5", Eight.AddHours(5), After),
        "refused issue" => new KitIssue { Id = new EntryId("I2"), At = After, By = new PersonId("C"), Kit = World.K1, Revision = 3 },
        "refused visit" => Visit(After, After.AddMinutes(-1)),
        "departure from an unknown visit" => new JobDeparture { Id = new EntryId("E1"), At = After, By = World.P, Visit = new EntryId("V9") },
        "loan of another tool of the kit" => Loan("T9"),
        "carried into a zone" => new ZoneEntry { Id = new EntryId("Z1"), At = After, By = World.P, Zone = new Place("tank 2"), Item = "T5", Quantity = new Quantity(1, Unit.Each), Carrier = World.P, Direction = CarriedDirection.In },
        _ => null,
    };

    private static void SayOf(World world, string what)
    {
        switch (what)
        {
            case "opening":
                world.Open(After);
                break;
            case "annotation":
                world.Annotate(5, AnnotationKind.Shortage, After, shortBy: new Quantity(1, Unit.Each));
                break;
            case "annotation from before":
                world.Annotate(5, AnnotationKind.Restored, Eight.AddHours(5));
                break;
            case "sighting elsewhere":
                world.Sightings.Add(new Sighting { Tool = T5, MarkRead = "K1-5", By = World.Q, At = After, Where = new Place("hangar 4") });
                break;
            case "consumable used":
                world.Use(14, "J9", 0, "spool", After);
                break;
            case "breakage of another tool":
                world.Break("T6", 2, After);
                break;
            default:
                world.LaterRevisions.Add(new KitManifest(World.K1, 4, "invented", After, new Signature { By = new PersonId("S"), At = After }, [.. world.K1Revision3().Lines, new ToolLine { Number = 16, Tool = new Tool { Id = new ToolId("T16"), Description = "tool 16", Mark = "K1-16" } }]));
                world.Bindings.Add(World.Binding(World.TagOf("T16"), new ToolId("T16")));
                world.Read("T16", World.A1, 6, 8, 10, 12, 14, 16);
                break;
        }
    }

    private static (decimal Share, ReasonKind? Why) Share(World world, int line = 5) => Share(world.Reconcile().Lines.Single(one => one.Line.Number == line));

    private static (decimal Share, ReasonKind? Why) Share(LineConclusion line) => (line.Evidence.Risk!.AbsentShare, line.Evidence.Risk.AbsentShareWhy?.Kind);

    private static World Read(params CustodyEntry[] custody)
    {
        var world = new World { Policy = new ReconciliationPolicy { Presence = Policy } };
        world.Custody.AddRange(custody);
        foreach (string tool in World.AllTools().Where(static tool => tool[0] is 'T' or 'H'))
        {
            world.Read(tool, World.A1, 6, 8, 10, 12, 14, 16);
        }

        return world.CountAll();
    }

    private static JobVisit Visit(DateTimeOffset at, DateTimeOffset? until) => new() { Id = new EntryId("V1"), At = at, By = World.P, Kit = World.K1, Job = new JobId("J1"), Until = until };

    private static ToolUse Use(string tool, DateTimeOffset at, DateTimeOffset? until) => new() { Id = new EntryId("U1"), At = at, By = World.P, Tool = new ToolId(tool), Job = new JobId("J1"), Until = until };

    private static ToolLoan Loan(string tool, KitId? kit = null) => new()
    {
        Id = new EntryId("L1"),
        At = After,
        By = World.P,
        Tool = new ToolId(tool),
        Kit = kit ?? World.K1,
        ReceivedBy = new Signature { By = new PersonId("B"), At = After },
        Due = World.End.AddHours(2),
    };

    private static KitIssue Issue(int open = 0, DateTimeOffset? at = null, string id = "I1", KitId? kit = null, int revision = 3) => new()
    {
        Id = new EntryId(id),
        At = at ?? Eight,
        By = new PersonId("C"),
        Kit = kit ?? World.K1,
        Revision = revision,
        ReceivedBy = new Signature { By = World.P, At = at ?? Eight },
        ExpectedReturn = World.End.AddHours(1),
        OpenLines = open == 0 ? [] : [open],
    };

    private static KitTurnIn TurnIn(DateTimeOffset? at = null, KitId? kit = null, string id = "B1", bool isInventoried = true) => new()
    {
        Id = new EntryId(id),
        At = at ?? Eight.AddHours(6),
        By = World.P,
        Kit = kit ?? World.K1,
        AcceptedBy = new Signature { By = World.Q, At = at ?? Eight.AddHours(6) },
        Inventory = isInventoried ? Digest.Of("signed inventory"u8) : default,
    };
}
