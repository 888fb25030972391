using System;
using System.Linq;
using ToolLedger.Custody;
using ToolLedger.Kits;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>Scenario S61 with custody: what was signed for, lent, used or sent away after an inventory shuts the gate before operation, also where the entry was refused. All invented.</summary>
public sealed class GateCustodyTests
{
    private static readonly DateTimeOffset Inventoried = World.End.AddMinutes(2);
    private static readonly DateTimeOffset News = Inventoried.AddMinutes(1);

    [Theory]
    [InlineData("issue", false)]
    [InlineData("issue", true)]
    [InlineData("turn-in", false)]
    [InlineData("transfer", false)]
    [InlineData("transfer", true)]
    [InlineData("loan", false)]
    [InlineData("loan", true)]
    [InlineData("loan of a tool on no list", true)]
    [InlineData("loan into the kit", false)]
    [InlineData("laboratory", false)]
    [InlineData("closure", false)]
    [InlineData("closure of an unknown receipt", true)]
    [InlineData("note", false)]
    [InlineData("visit", false)]
    [InlineData("visit", true)]
    [InlineData("departure", false)]
    [InlineData("use", false)]
    [InlineData("use that went on", false)]
    [InlineData("zone", false)]
    public void S61_Custody_after_the_inventory_shuts_the_gate(string what, bool isRefused)
    {
        // Given: K1 out with P since the morning (but for an issue), complete at its inventory; then the entry a minute later.
        World world = new World().ReadAllBut().CountAll();
        CustodyEntry[] before = what switch
        {
            "issue" => [],
            "closure" => [Issue(World.Start.AddHours(-8), "I0"), Loan("T5", World.Start.AddHours(-4), "L0", World.K1)],
            "departure" => [Issue(World.Start.AddHours(-8), "I0"), Visit(World.Start.AddHours(-4), "V0")],
            _ => [Issue(World.Start.AddHours(-8), "I0")],
        };
        CustodyEntry entry = EntryOf(what, isRefused);
        world.Custody.AddRange(before);
        ReconciliationResult result = world.Reconcile();
        Assert.Equal((KitState.Complete, Inventoried), (result.Kit.State, result.AsOf));
        Assert.True(Judge(world, result, News).IsSatisfied);
        world.Custody.Add(entry);
        Assert.Equal(isRefused ? [entry] : [], world.Input().Custody.Refused.Select(static one => one.Entry));

        // When asked at that instant, must conclude: shut, by that entry. Asked a moment before, it knows nothing of it.
        GateAnswer answer = Judge(world, result, News);
        Reason reason = Assert.Single(answer.Reasons);
        Assert.Equal((false, PeopleReasons.GateCustody), (answer.IsSatisfied, reason.Kind));
        Assert.Contains($": {entry.Kind} {entry.Id.Value} by {entry.By.Value} at ", reason.ToString(), StringComparison.Ordinal);
        Assert.Equal(isRefused, reason.ToString().EndsWith("(refused)", StringComparison.Ordinal));
        Assert.Equal(PeopleReasons.StepInventoryAgain, answer.Next!.Reason.Kind);
        Assert.True(Judge(world, result, News.AddSeconds(-1)).IsSatisfied);
    }

    [Fact]
    public void S61_Custody_before_the_inventory_of_other_kits_and_of_boxes_as_such_leaves_the_gate_open()
    {
        World world = new World().ReadAllBut().CountAll();
        world.Custody.AddRange([Issue(World.Start.AddHours(-8), "I0"), Visit(World.Start.AddHours(-1), "V0")]);
        ReconciliationResult result = world.Reconcile();
        world.Custody.AddRange(
        [
            Issue(News, "I9", World.K2, 1),
            Loan("U4", News, "L9", World.K2),
            new ToolRoomInventory { Id = new EntryId("N1"), At = News, By = World.Q, IncomingBy = new Signature { By = new PersonId("R"), At = News }, Present = [World.K9] },
        ]);

        Assert.Empty(world.Input().Custody.Refused);
        Assert.True(Judge(world, result, News).IsSatisfied);
    }

    [Fact]
    public void That_the_kit_is_handed_back_on_its_inventory_leaves_the_gate_open()
    {
        World world = new World().ReadAllBut().CountAll();
        world.Custody.Add(Issue(World.Start.AddHours(-8), "I0"));
        ReconciliationResult result = world.Reconcile();
        world.Custody.Add(new KitTurnIn
        {
            Id = new EntryId("B1"),
            At = News,
            By = World.P,
            Kit = World.K1,
            AcceptedBy = new Signature { By = World.Q, At = News },
            Inventory = Digest.Of("the inventory"u8),
        });

        Assert.Empty(world.Input().Custody.Refused);
        Assert.True(Judge(world, result, News).IsSatisfied);
    }

    [Fact]
    public void S61_A_box_shuts_the_gate_of_the_bag_and_the_bag_that_of_the_box()
    {
        SubKitWorld kits = new SubKitWorld().ReadWell("T1", "T2", "A1", "A2", "A3", "A4", "A5", "CASE");
        ReconciliationResult bag = kits.Reconcile(), box = kits.Reconcile(SubKitWorld.K1a);
        foreach (CustodyEntry entry in (CustodyEntry[])[Issue(News, "I1", SubKitWorld.K1a, 2), Issue(News, "I1"), Loan("A3", News, "L1", SubKitWorld.K1a)])
        {
            var custody = new CustodyRegister(CustodyPolicy.Default, kits.Kits(), new CustodyLog([entry]));
            ReconciliationInput Known(KitId kit) => new() { Kits = kits.Kits(), Subject = kit, Custody = custody, AsOf = News };
            Assert.Empty(custody.Refused);
            Assert.Equal(PeopleReasons.GateCustody, Assert.Single(OperationGate.Judge(bag, Known(World.K1)).Reasons).Kind);
            Assert.Equal(PeopleReasons.GateCustody, Assert.Single(OperationGate.Judge(box, Known(SubKitWorld.K1a)).Reasons).Kind);
        }
    }

    [Fact]
    public void Ten_entries_are_named_and_all_are_counted()
    {
        World world = new World().ReadAllBut().CountAll();
        ReconciliationResult result = world.Reconcile();
        world.Custody.AddRange(Enumerable.Range(1, 12).Select(static i => Use(News.AddSeconds(i), null, $"U{i:00}")));

        string reason = Assert.Single(Judge(world, result, News.AddMinutes(1)).Reasons).ToString();
        Assert.StartsWith("12 custody entries", reason, StringComparison.Ordinal);
        Assert.Contains("U10 by", reason, StringComparison.Ordinal);
        Assert.DoesNotContain("U11 by", reason, StringComparison.Ordinal);
        Assert.EndsWith("; ...", reason, StringComparison.Ordinal);
    }

    private static GateAnswer Judge(World world, ReconciliationResult result, DateTimeOffset asOf)
    {
        world.AsOf = asOf;
        return OperationGate.Judge(result, world.Input());
    }

    private static CustodyEntry EntryOf(string what, bool isRefused)
    {
        PersonId other = new("B");
        Signature? received = isRefused ? null : new Signature { By = other, At = News };
        return what switch
        {
            "issue" => Issue(News, "I1", isReceived: !isRefused),
            "turn-in" => new KitTurnIn { Id = new EntryId("B1"), At = News, By = World.P, Kit = World.K1, AcceptedBy = new Signature { By = World.Q, At = News } },
            "transfer" => new KitTransfer { Id = new EntryId("X1"), At = News, By = World.P, Kit = World.K1, ReceivedBy = received, InventoriedAt = News },
            "loan" => Loan("T5", News, "L1", World.K1, isReceived: !isRefused),
            "loan of a tool on no list" => Loan("TX", News, "L1", World.K1),
            "loan into the kit" => new ToolLoan { Id = new EntryId("L1"), At = News, By = World.Q, Tool = new ToolId("U1"), Kit = World.K2, ToKit = World.K1, ReceivedBy = received, Due = News.AddHours(2) },
            "laboratory" => new LaboratoryReceipt { Id = new EntryId("L1"), At = News, By = World.P, Tool = new ToolId("T4"), Where = new Place("laboratory"), ReceivedBy = received },
            "closure" => new ReceiptClosure { Id = new EntryId("R1"), At = News, By = other, Receipt = new EntryId("L0"), AcceptedBy = new Signature { By = World.P, At = News }, ToKit = World.K1 },
            "closure of an unknown receipt" => new ReceiptClosure { Id = new EntryId("R1"), At = News, By = other, Receipt = new EntryId("L77"), AcceptedBy = new Signature { By = World.P, At = News } },
            "note" => new DispatchNote { Id = new EntryId("D1"), At = News, By = World.Q, Tool = new ToolId("T5"), To = new Place("laboratory") },
            "visit" => Visit(News, "V1", isRefused ? News.AddMinutes(-1) : null),
            "departure" => new JobDeparture { Id = new EntryId("E1"), At = News, By = World.P, Visit = new EntryId("V0") },
            "use" => Use(News, null),
            "use that went on" => Use(World.Start.AddMinutes(-5), News),
            _ => new ZoneEntry { Id = new EntryId("Z1"), At = News, By = World.P, Zone = new Place("tank 2"), Item = "T5", Quantity = new Quantity(1, Unit.Each), Carrier = World.P, Direction = CarriedDirection.In },
        };
    }

    private static ToolUse Use(DateTimeOffset at, DateTimeOffset? until, string id = "U1") => new() { Id = new EntryId(id), At = at, By = World.P, Tool = new ToolId("T5"), Job = new JobId("J1"), Until = until };

    private static JobVisit Visit(DateTimeOffset at, string id, DateTimeOffset? until = null) => new() { Id = new EntryId(id), At = at, By = World.P, Kit = World.K1, Job = new JobId("J1"), Until = until };

    private static KitIssue Issue(DateTimeOffset at, string id, KitId? kit = null, int revision = 3, bool isReceived = true) => new()
    {
        Id = new EntryId(id),
        At = at,
        By = new PersonId("C"),
        Kit = kit ?? World.K1,
        Revision = revision,
        ReceivedBy = isReceived ? new Signature { By = World.P, At = at } : null,
        ExpectedReturn = World.End.AddHours(3),
    };

    private static ToolLoan Loan(string tool, DateTimeOffset at, string id, KitId kit, bool isReceived = true) => new()
    {
        Id = new EntryId(id),
        At = at,
        By = World.P,
        Tool = new ToolId(tool),
        Kit = kit,
        ReceivedBy = isReceived ? new Signature { By = new PersonId("B"), At = at } : null,
        Due = at.AddHours(8),
    };
}
