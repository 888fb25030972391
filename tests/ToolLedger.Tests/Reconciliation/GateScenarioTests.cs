using System;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
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
        GateAnswer answer = OperationGate.Judge(result, [opening], World.End.AddMinutes(20));

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

        GateAnswer answer = OperationGate.Judge(result, [ofOther, later], World.End.AddMinutes(5));

        Assert.True(answer.IsSatisfied);
        Assert.Null(answer.Next);
        Assert.Equal(PeopleReasons.GateSatisfied, Assert.Single(answer.Reasons).Kind);
    }

    [Fact]
    public void S61_A_kit_that_is_not_complete_an_old_inventory_and_one_of_later_never_satisfy_it()
    {
        ReconciliationResult open = new World().ReadAllBut("T7").CountAll().Reconcile();
        ReconciliationResult complete = new World().ReadAllBut().CountAll().Reconcile();

        Assert.Contains(OperationGate.Judge(open, [], World.End.AddMinutes(5)).Reasons, reason => reason.Kind == PeopleReasons.GateNotComplete);
        Assert.Contains(OperationGate.Judge(complete, [], World.End.AddHours(2)).Reasons, reason => reason.Kind == PeopleReasons.GateTooOld);
        Assert.Contains(OperationGate.Judge(complete, [], World.Start).Reasons, reason => reason.Kind == PeopleReasons.GateLater);
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
        Assert.False(OperationGate.Judge(result, [new KitOpening { Kit = World.K1, By = World.P, At = World.End }], World.End.AddMinutes(5)).IsSatisfied);
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
        Assert.False(OperationGate.Judge(result, [], World.End.AddMinutes(5)).IsSatisfied);
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
        GateAnswer answer = OperationGate.Judge(result, [], World.End.AddMinutes(5));
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
        Assert.DoesNotContain(OperationGate.Judge(result, [], World.End.AddMinutes(3)).Reasons, reason => reason.Kind == PeopleReasons.GateOpened);
        Assert.Contains(OperationGate.Judge(result, [around], World.End.AddMinutes(3)).Reasons, reason => reason.Kind == PeopleReasons.GateOpened);

        world.World.Openings.Add(around);
        Assert.Equal([around], world.Reconcile(SubKitWorld.K1a).Openings);
    }

    [Fact]
    public void An_opening_that_is_null_is_refused()
    {
        ReconciliationResult result = new World().ReadAllBut().CountAll().Reconcile();
        Assert.Throws<ArgumentException>(() => OperationGate.Judge(result, [null!], World.End.AddMinutes(3)));
    }
}
