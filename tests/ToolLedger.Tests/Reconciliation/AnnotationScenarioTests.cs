using System;
using System.Linq;
using System.Text;
using ToolLedger.Inventory;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using Xunit;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>Scenarios of known shortages, by id; and when an annotation counts.</summary>
public sealed class AnnotationScenarioTests
{
    private static readonly DateTimeOffset AtIssue = World.Start.AddHours(-8);

    [Fact]
    public void S50_A_line_removed_on_record_is_not_expected_and_listed_apart()
    {
        // Given: T12 was removed, signed and dated, at issue; all else is there.
        World world = new World().ReadAllBut("T12").CountAll().AnnotateRemoved(12, AtIssue);

        // When
        ReconciliationResult result = world.Reconcile();

        // Must conclude: no conclusion for T12, shown as removed on record with who and when; the kit is complete without it.
        Assert.DoesNotContain(result.Lines, line => line.Line.Number == 12);
        LineNotExpected removed = Assert.Single(result.NotExpected);
        Assert.Equal((12, "removed on record by S"), (removed.Line.Number, removed.Reason.ToString()[..22]));
        Assert.Equal(AtIssue, removed.Annotation!.SignedBy.At);
        Assert.Equal(KitState.Complete, result.Kit.State);
        Assert.Equal(14, result.Kit.LineCount);
    }

    [Fact]
    public void S50_A_tool_removed_on_record_that_is_read_is_unexpected_and_told()
    {
        ReconciliationResult result = new World().ReadAllBut().CountAll().AnnotateRemoved(12, AtIssue).Reconcile();

        ReadExplanation read = Assert.Single(result.Reads, read => read.Tag == World.TagOf("T12") && read.Kind == ReadExplanationKind.Unexpected);
        Assert.Equal(PeopleReasons.ReadRemoved, read.Reason.Kind);
        Assert.Contains(result.Findings, finding => finding.Code == PeopleReasons.FindingRemovedRead.Code && finding.LineNumbers.SequenceEqual([12]));
        Assert.Equal(KitState.Complete, result.Kit.State);
    }

    [Fact]
    public void S50_Seen_or_counted_inside_after_all_the_kit_is_discrepant()
    {
        // The safer reading: a tool that the record says is not here, and that a person saw here, is a difference between list and fact.
        Assert.Equal(KitState.Discrepant, new World().ReadAllBut().CountAll().AnnotateRemoved(12, AtIssue).Sight("T12", "K1-12", World.K1).Reconcile().Kit.State);
        Assert.Equal(KitState.Discrepant, new World().ReadAllBut().CountAll().AnnotateRemoved(15, AtIssue).Reconcile().Kit.State);
    }

    [Fact]
    public void S50_An_annotation_written_once_the_kit_was_presented_excuses_nothing()
    {
        // The safer reading: whoever finds a tool short at the end of the shift cannot take it off the list with the same breath.
        ReconciliationResult result = new World().ReadAllBut("T12").CountAll().AnnotateRemoved(12, World.Start.AddSeconds(1)).Reconcile();

        Assert.Equal(LineState.NotRead, result.Lines[11].State);
        Assert.Contains(result.Findings, finding => finding.Code == PeopleReasons.FindingAnnotation.Code);
    }

    [Fact]
    public void An_annotation_ends_by_itself_or_by_a_later_one()
    {
        World Short() => new World().ReadAllBut("T12").CountAll();

        Assert.Equal(15, Short().AnnotateRemoved(12, AtIssue, until: World.Start).Reconcile().Lines.Count);
        Assert.Equal(14, Short().AnnotateRemoved(12, AtIssue, until: World.End.AddHours(1)).Reconcile().Lines.Count);
        Assert.Equal(15, Short().AnnotateRemoved(12, AtIssue).Annotate(12, AnnotationKind.Restored, World.End).Reconcile().Lines.Count);
        Assert.Equal(14, Short().Annotate(12, AnnotationKind.Restored, AtIssue).AnnotateRemoved(12, AtIssue.AddMinutes(1)).Reconcile().Lines.Count);
    }

    [Fact]
    public void A_known_shortage_of_a_counted_line_reduces_what_is_expected()
    {
        World world = new World().ReadAllBut().CountAll().Annotate(15, AnnotationKind.Shortage, AtIssue, shortBy: new Quantity(2, Unit.Each));

        // Six counted where four are expected is a surplus; four are what the annotated list says.
        Assert.Equal(LineState.Conflict, world.Reconcile().Lines[14].State);
        LineConclusion four = world.Count(15, 4, "each", World.End.AddSeconds(20)).Reconcile().Lines[14];
        Assert.Equal((LineState.Accounted, AccountingBasis.Counted), (four.State, four.Basis));
        Assert.Contains(four.Reasons, reason => reason.Kind == PeopleReasons.KnownShort);
        Assert.Contains(four.Reasons, reason => reason.ToString().StartsWith("counted 4 of 4 each", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(15, 6, "each")]
    [InlineData(15, 1, "box")]
    [InlineData(7, 1, "each")]
    public void A_shortage_that_leaves_nothing_or_speaks_of_another_unit_or_of_one_tool_does_not_count(int line, int amount, string unit)
    {
        ReconciliationResult result = new World().ReadAllBut().CountAll()
            .Annotate(line, AnnotationKind.Shortage, AtIssue, shortBy: new Quantity(amount, new Unit(unit))).Reconcile();

        Assert.Equal(KitState.Complete, result.Kit.State);
        Assert.Contains(result.Findings, finding => finding.Code == PeopleReasons.FindingAnnotation.Code);
    }

    [Fact]
    public void A_kit_whose_every_line_is_annotated_away_expects_nothing_and_is_open()
    {
        var world = new World();
        foreach (int line in Enumerable.Range(1, 15))
        {
            world.AnnotateRemoved(line, AtIssue);
        }

        ReconciliationResult result = world.Reconcile();
        Assert.Empty(result.Lines);
        Assert.Equal(15, result.NotExpected.Count);
        Assert.Equal(KitState.Open, result.Kit.State);
        Assert.Contains(result.Kit.Reasons, reason => reason.Kind == ReconciliationReasons.KitNothingExpected);
    }

    [Fact]
    public void A_role_that_the_policy_does_not_name_removes_nothing()
    {
        World world = new World().ReadAllBut("T12").CountAll().AnnotateRemoved(12, AtIssue);
        world.Policy = new ReconciliationPolicy { Inventory = new InventoryPolicy { RolesThatMaySign = [new Role("supervisor")] } };

        Assert.Equal(15, world.Reconcile().Lines.Count);
    }

    [Theory]
    [InlineData("""{ "kit": "K1", "line": 12, "kind": "removed", "reason": "lent" }""", "inventory.entry-not-signed")]
    [InlineData("""{ "kit": "K1", "line": 12, "kind": "removed", "reason": "lent", "signedBy": { "person": "S" } }""", "record.missing-member")]
    [InlineData("""{ "kit": "K1", "line": 12, "kind": "removed", "reason": "lent", "signedBy": { "at": "2026-03-02T07:00:00Z" } }""", "record.missing-member")]
    [InlineData("""{ "kit": "K1", "line": 12, "kind": "gone", "reason": "lent", "signedBy": { "person": "S", "at": "2026-03-02T07:00:00Z" } }""", "record.unknown-word")]
    [InlineData("""{ "kit": "K1", "line": 12, "kind": "short", "reason": "lent", "signedBy": { "person": "S", "at": "2026-03-02T07:00:00Z" } }""", "inventory.shortage-without-quantity")]
    [InlineData("""{ "kit": "K1", "kind": "removed", "reason": "lent", "signedBy": { "person": "S", "at": "2026-03-02T07:00:00Z" } }""", "inventory.entry-without-line")]
    public void S50_An_annotation_that_nobody_signed_or_dated_is_refused(string annotation, string rule)
    {
        string json = $$"""{ "schema": "toolledger/inventory-sheet/1", "annotations": [ {{annotation}} ] }""";

        Assert.False(InventorySheet.TryParse(Encoding.UTF8.GetBytes(json), out _, out System.Collections.Generic.IReadOnlyList<RecordIssue> issues));
        Assert.Equal(rule, Assert.Single(issues).Rule);
    }
}
