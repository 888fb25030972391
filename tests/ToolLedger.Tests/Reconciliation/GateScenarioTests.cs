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

/// <summary>Scenarios of the gate before operation, of openings and of items on no list, by id.</summary>
public sealed class GateScenarioTests
{
    [Fact]
    public void S61_An_inventory_from_before_the_last_opening_does_not_satisfy_the_gate()
    {
        // Given: K1 complete a minute after its session; opened ten minutes later.
        ReconciliationResult result = new World().ReadAllBut().CountAll().Reconcile();
        Assert.Equal(KitState.Complete, result.Kit.State);
        KitOpening opening = new() { Kit = World.K1, By = World.P, At = World.End.AddMinutes(10) };

        // When: an engine run is asked for ten minutes after that.
        GateAnswer answer = Gate.Ask(result, World.End.AddMinutes(20), opening);

        // Must conclude: not satisfied, because of the opening; inventory again.
        Assert.False(answer.IsSatisfied);
        Assert.Equal(PeopleReasons.GateOpened, Assert.Single(answer.Reasons).Kind);
        Assert.Equal(PeopleReasons.StepInventoryAgain, answer.Next!.Reason.Kind);
    }

    [Fact]
    public void S61_An_inventory_newer_than_the_last_opening_satisfies_it()
    {
        ReconciliationResult result = new World().ReadAllBut().CountAll().Open(World.Start.AddMinutes(-5)).Reconcile();
        KitOpening ofOther = new() { Kit = World.K2, By = World.P, At = World.End.AddMinutes(1) };
        KitOpening later = new() { Kit = World.K1, By = World.P, At = World.End.AddHours(1) };

        GateAnswer answer = Gate.Ask(result, World.End.AddMinutes(5), ofOther, later);

        Assert.True(answer.IsSatisfied);
        Assert.Null(answer.Next);
        Assert.Equal(PeopleReasons.GateSatisfied, Assert.Single(answer.Reasons).Kind);
    }

    [Fact]
    public void S61_A_kit_that_is_not_complete_an_old_inventory_and_one_of_later_never_satisfy_it()
    {
        ReconciliationResult open = new World().ReadAllBut("T7").CountAll().Reconcile();
        ReconciliationResult complete = new World().ReadAllBut().CountAll().Reconcile();

        Assert.Contains(Gate.Ask(open, World.End.AddMinutes(5)).Reasons, reason => reason.Kind == PeopleReasons.GateNotComplete);
        Assert.Contains(Gate.Ask(complete, World.End.AddHours(2)).Reasons, reason => reason.Kind == PeopleReasons.GateTooOld);
        Assert.Contains(Gate.Ask(complete, World.Start).Reasons, reason => reason.Kind == PeopleReasons.GateLater);
    }

    [Fact]
    public void S61_An_opening_at_the_very_instant_of_the_evidence_is_after_it()
    {
        World world = new World().ReadAllBut().CountAll();
        foreach (int i in Enumerable.Range(1, 12))
        {
            world.Sight($"T{i}", $"K1-{i}");
        }

        ReconciliationResult result = world.Reconcile();
        Assert.Equal(KitState.Complete, result.Kit.State);
        Assert.False(Gate.Ask(result, World.End.AddMinutes(5), new KitOpening { Kit = World.K1, By = World.P, At = World.End }).IsSatisfied);
    }

    [Fact]
    public void An_opening_on_the_sheet_is_told_with_the_lines_whose_evidence_is_older()
    {
        // Opened after reads and counts; T7 was sighted after that.
        World world = new World().ReadAllBut().CountAll().Sight("T7", "K1-7").Open(World.End.AddSeconds(30));
        ReconciliationResult result = world.Reconcile();

        Finding finding = Assert.Single(result.Findings, finding => finding.Code == PeopleReasons.FindingOpened.Code);
        Assert.DoesNotContain(7, finding.LineNumbers);
        Assert.Equal(14, finding.LineNumbers.Count);
        Assert.Equal(World.End.AddSeconds(30), result.Lines[0].Evidence.OpenedSince);
        Assert.Contains(result.Lines[0].Reasons, reason => reason.Kind == PeopleReasons.OpenedSince);
        Assert.Null(result.Lines[6].Evidence.OpenedSince);
        Assert.False(Gate.Ask(result, World.End.AddMinutes(5)).IsSatisfied);
    }

    [Fact]
    public void S51_A_phone_that_is_on_no_list_can_be_reported_gone_with_its_exposure()
    {
        // Given: a worker reports that his own phone is gone; it is on no list.
        World world = new World().ReadAllBut().CountAll();
        world.UnlistedItems.Add(new UnlistedItemReport
        {
            Description = "phone, black",
            Owner = World.P,
            By = World.P,
            At = World.End.AddMinutes(1),
            LastSeenAt = World.Start.AddHours(-4),
            LastSeenWhere = new Place("bay 2"),
            TouchedSince = [new Place("aircraft A, left wheel well"), new Place("aircraft B, cockpit")],
        });

        // When
        ReconciliationResult result = world.Reconcile();

        // Must conclude: the event stands in the result with what was touched since; the kit's own conclusion is another matter, and nothing is called lost.
        Assert.Single(result.UnlistedItems);
        Finding finding = Assert.Single(result.Findings, finding => finding.Code == PeopleReasons.FindingUnlisted.Code);
        Assert.Contains("aircraft A, left wheel well, aircraft B, cockpit", finding.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("lost", finding.ToString(), StringComparison.OrdinalIgnoreCase);
        Assert.Equal(KitState.Complete, result.Kit.State);

        // The safer reading of the gate: while such a report stands, no inventory of a kit satisfies it.
        GateAnswer answer = Gate.Ask(result, World.End.AddMinutes(5));
        Assert.False(answer.IsSatisfied);
        Assert.Equal(PeopleReasons.StepUnlistedItem, answer.Next!.Reason.Kind);
    }

    [Fact]
    public void S51_A_report_about_another_kit_is_not_shown_here_and_one_about_no_kit_everywhere()
    {
        World world = new();
        world.UnlistedItems.Add(new UnlistedItemReport { Description = "pen", By = World.P, At = World.End, Kit = World.K2 });
        world.UnlistedItems.Add(new UnlistedItemReport { Description = "cap", By = World.P, At = World.End });
        world.UnlistedItems.Add(new UnlistedItemReport { Description = "torch", By = World.P, At = World.End, Kit = new("K77") });

        Assert.Equal(["cap", "torch"], world.Reconcile().UnlistedItems.Select(report => report.Description), StringComparer.Ordinal);
    }

    [Fact]
    public void S35_A_mark_that_two_tools_share_identifies_neither()
    {
        // Given: T8 and T9 carry the same short mark; T8 is not read; a person enters that mark as a sighting of T8.
        World world = new World { SharedMark = "K1" }.ReadAllBut("T8").CountAll().Sight("T8", "K1");

        // When
        ReconciliationResult result = world.Reconcile();

        // Must conclude: refused as identification; the step asks for what tells the two apart.
        Assert.Equal(LineState.NotRead, result.Lines[7].State);
        Assert.Contains(result.Lines[7].Reasons, reason => reason.Kind == ReconciliationReasons.SharedMark);
        Assert.Equal((NextStepKind.SightTool, PeopleReasons.StepTellApart), (result.Lines[7].Next!.Kind, result.Lines[7].Next!.Reason.Kind));
        Assert.Equal(KitState.Open, result.Kit.State);

        // The same where no session can be used: to look for that mark once more would not help.
        Assert.Equal(PeopleReasons.StepTellApart, world.Reconcile([]).Lines[7].Next!.Reason.Kind);
    }

    [Fact]
    public void S35_Where_nothing_can_be_read_the_step_asks_for_what_tells_the_tools_apart()
    {
        World world = new World { SharedMark = "K1" }.ReadAllBut("T8").CountAll().Sight("T8", "K1");
        world.Bindings.RemoveAll(binding => binding.Tool.Value == "T8");

        LineConclusion line = world.Reconcile().Lines[7];
        Assert.Equal((LineState.NotAssessed, PeopleReasons.StepTellApart), (line.State, line.Next!.Reason.Kind));
        Assert.Contains("serial number, size or description", line.Next.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void S35_A_further_identification_counts_only_where_the_policy_accepts_it()
    {
        // The safer reading: by default the description a person gives beside a kit mark identifies nothing.
        World world = new World { SharedMark = "K1" }.ReadAllBut("T8").CountAll();
        world.Sightings.Add(new Sighting
        {
            Tool = new("T8"),
            MarkRead = "K1",
            AlsoIdentifiedBy = "13 mm, serial 4471",
            By = World.Q,
            At = World.End.AddMinutes(1),
            Where = new Place("bench 2"),
            InKit = World.K1,
        });

        Assert.Equal(LineState.NotRead, world.Reconcile().Lines[7].State);
        world.Policy = new ReconciliationPolicy { Inventory = new InventoryPolicy { FurtherIdentificationAccepted = true } };
        Assert.Equal((LineState.Accounted, AccountingBasis.Sighted), (world.Reconcile().Lines[7].State, world.Reconcile().Lines[7].Basis));
    }

    [Fact]
    public void S61_An_opening_of_the_kit_around_a_box_shuts_the_gate_for_the_box()
    {
        SubKitWorld world = new SubKitWorld().ReadWell("A1", "A2", "A3", "A4", "A5", "CASE");
        KitOpening around = new() { Kit = World.K1, By = World.P, At = World.End.AddMinutes(1) };
        ReconciliationResult result = world.Reconcile(SubKitWorld.K1a);
        Assert.DoesNotContain(Gate.Ask(result, World.End.AddMinutes(3)).Reasons, reason => reason.Kind == PeopleReasons.GateOpened);
        Assert.Contains(Gate.Ask(result, World.End.AddMinutes(3), around).Reasons, reason => reason.Kind == PeopleReasons.GateOpened);

        world.World.Openings.Add(around);
        Assert.Equal([around], world.Reconcile(SubKitWorld.K1a).Openings);
    }

    [Theory]
    [InlineData("a breakage", "gate.entries-since")]
    [InlineData("a use", "gate.entries-since")]
    [InlineData("a sighting elsewhere", "gate.entries-since")]
    [InlineData("a piece count", "gate.entries-since")]
    [InlineData("an item on no list", "gate.unlisted-item")]
    [InlineData("a quarantine", "gate.tags-since")]
    [InlineData("a tag retired", "gate.tags-since")]
    [InlineData("the kit read again", "gate.sessions-since")]
    [InlineData("a tool read with another kit", "gate.sessions-since")]
    public void S61_Whatever_became_known_after_the_inventory_shuts_the_gate(string what, string code)
    {
        // Given: K1 complete two minutes after its session, and the gate open a minute later.
        World world = new World().ReadAllBut().CountAll();
        ReconciliationInput then = world.Input(world.Session());
        ReconciliationResult result = new Reconciler(world.Policy).Reconcile(then);
        DateTimeOffset news = result.AsOf.AddMinutes(1);
        Assert.True(OperationGate.Judge(result, Known(world, news, [world.Session()])).IsSatisfied);
        ReadSession[] sessions = [world.Session()];
        TagRead[] control = [.. world.ControlReads().Select(read => new TagRead(read.Tag, read.Antenna, read.FirstSeen.AddMinutes(2.5)))];
        switch (what)
        {
            case "a breakage":
                world.Break("T3", 2, news);
                break;
            case "a use":
                world.Use(14, "J-1", 1, "spool", news);
                break;
            case "a sighting elsewhere":
                world.Sight("T3", "K1-3", default(KitId), news);
                break;
            case "a piece count":
                world.Pieces.Add(new PieceCount { Tool = new("T3"), Pieces = 0, By = World.P, At = news });
                break;
            case "an item on no list":
                world.UnlistedItems.Add(new UnlistedItemReport { Description = "phone", By = World.P, At = news });
                break;
            case "a quarantine":
                world.Quarantine("T3", news);
                break;
            case "a tag retired":
                world.Bindings.RemoveAll(static binding => binding.Tool.Value == "T3");
                world.Bindings.Add(new TagBinding { Tag = World.TagOf("T3"), Tool = new("T3"), From = World.Start.AddYears(-1), Until = news, BoundBy = World.Q });
                break;
            default:
                KitId kit = what == "the kit read again" ? World.K1 : World.K2;
                sessions = [.. sessions, world.Session("S2", [kit], [.. control, new TagRead(World.TagOf("T3"), World.A1, World.Start.AddMinutes(2.7))], World.Start.AddMinutes(2.5))];
                break;
        }

        // When asked at that instant, must conclude: shut for that reason, reconcile again. Asked a moment before, it knows nothing of it.
        GateAnswer answer = OperationGate.Judge(result, Known(world, news, sessions));
        Assert.False(answer.IsSatisfied);
        Assert.Equal(code, Assert.Single(answer.Reasons).Code);
        Assert.NotNull(answer.Next);
        Assert.True(OperationGate.Judge(result, Known(world, news.AddSeconds(-31), sessions)).IsSatisfied);
    }

    [Fact]
    public void What_became_known_of_another_kit_and_a_signature_leave_the_gate_open()
    {
        World world = new World().ReadAllBut().CountAll();
        ReconciliationResult result = world.Reconcile();
        DateTimeOffset news = result.AsOf.AddMinutes(1);
        world.Break("U3", 2, news).Signatures.Add(new Signature { By = World.P, At = news });
        world.Counts.Add(new LineCount { Kit = World.K2, LineNumber = 1, Quantity = new Quantity(1, Unit.Each), By = World.P, At = news });
        Assert.True(OperationGate.Judge(result, Known(world, news, [])).IsSatisfied);
    }

    private static ReconciliationInput Known(World world, DateTimeOffset asOf, ReadSession[] sessions)
    {
        world.AsOf = asOf;
        return world.Input(sessions);
    }
}
