using System;
using System.Collections.Generic;
using System.Linq;
using System.Text;
using System.Text.Json.Nodes;
using ToolLedger.Custody;
using ToolLedger.Holds;
using ToolLedger.Ledger;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Tests.Holds;
using ToolLedger.Tests.Reconciliation;
using Xunit;
using static ToolLedger.Tests.Custody.CustodyScene;
using static ToolLedger.Tests.Ledger.LedgerScene;

namespace ToolLedger.Tests.Ledger;

/// <summary>Entries made to end a hold or to shorten an exposure without anybody who may: ids used twice, names taken, facts written ahead of their time.</summary>
public sealed class LedgerForgeryTests
{
    // Given a hold released because the tool was found, and the find withdrawn; when another ledger brings a different fact under the id of the withdrawal; then the hold stands all the same.
    [Fact]
    public void A_withdrawal_whose_id_is_disputed_still_withdraws_the_find()
    {
        LedgerBook book = Book(
            HoldScene.Missing("M1", At(15)), HoldScene.Found("F1", At(16)), HoldScene.Release("R1", At(17)), Withdrawal("W1", "F1"));
        Assert.Single(book.Now.Holds.HeldAt(At(19)));

        LedgerState merged = book.Merge(Book(Withdrawal("W1", "F9"))).Now;

        Assert.Single(merged.Holds.HeldAt(At(19)));
        Assert.Contains(merged.Findings, static finding => finding.Reason.Code == "ledger.dispute");
    }

    // What a placement adds stays added, and an impoundment stays one, whoever uses its id again.
    [Fact]
    public void A_placement_whose_id_is_disputed_still_adds_what_it_added()
    {
        LedgerBook book = Book(HoldScene.Missing("M1", At(15)), Placement("A", isImpound: true));

        HoldStatus held = Assert.Single(book.Merge(Book(Placement("B", isImpound: false))).Now.Holds.HeldAt(At(19)));

        Assert.True(held.IsImpound);
        Assert.Superset(new HashSet<string> { "A", "B" }, held.Affected.Select(static thing => thing.Equipment.Value).ToHashSet());
    }

    // Nobody can tell where the tool went: it accounts for nothing, and both places are looked at.
    [Theory]
    [InlineData(11, true)]
    [InlineData(9, false)]
    public void A_loan_whose_id_is_disputed_still_exposes_all_that_it_names(int asOf, bool isLater)
    {
        static ToolLoan Loan(string equipment) => new()
        {
            Id = new EntryId("L1"),
            At = At(10),
            By = new PersonId("P"),
            Tool = new ToolLedger.Tools.ToolId("T1"),
            ReceivedBy = new Signature { By = new PersonId("B"), At = At(10) },
            Equipment = new EquipmentId(equipment),
            Job = new JobId("J1"),
        };
        LedgerState one = Book(Loan("A")).Merge(Book(Loan("B"))).Now, other = Book(Loan("B")).Merge(Book(Loan("A"))).Now;
        string[] expected = isLater ? ["A", "B"] : [];

        Assert.All([one, other], state => Assert.Equal(
            expected, state.Exposure.Of(new ToolLedger.Tools.ToolId("T1"), At(asOf)).Things.Select(static thing => thing.Equipment.Value).Where(static name => name is "A" or "B").Order(StringComparer.Ordinal)));
        Assert.All([one, other], state => Assert.Null(state.Custody.ReceiptOf(new ToolLedger.Tools.ToolId("T1"), At(asOf))));
    }

    // A use is what a bad calibration is traced back to: of two facts under one id both are looked at.
    [Fact]
    public void Uses_whose_id_is_disputed_are_both_traced()
    {
        static ToolUse Use(string equipment) => new()
        {
            Id = new EntryId("U1"),
            At = At(9),
            By = new PersonId("P"),
            Tool = new ToolLedger.Tools.ToolId("T1"),
            Equipment = new EquipmentId(equipment),
            Job = new JobId("J1"),
        };

        Assert.Equal(
            ["A", "B"],
            Book(Use("A")).Merge(Book(Use("B"))).Now.Custody.UsesOf(new ToolLedger.Tools.ToolId("T1"), At(10)).Select(use => use.Equipment.Value).Order(StringComparer.Ordinal));
    }

    // Given two declarations in dispute, standing each under a name of its own; when an earlier entry is recorded under such a name; then both holds stand, and the entry that took the name is told.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_name_of_a_disputed_declaration_cannot_be_taken(bool thiefIsDeclaration)
    {
        LedgerBook disputed = Book(HoldScene.Missing("M1", At(15))).Merge(Book(HoldScene.Missing("M1", At(15), tool: "T6", by: "Q")));
        string name = disputed.Now.Holds.HeldAt(At(16))[0].Declaration.Id.Value;
        RecordEntry thief = thiefIsDeclaration
            ? HoldScene.Missing(name, At(9), tool: "T5")
            : new SearchStep { Id = new EntryId(name), At = At(9), By = new PersonId("Q"), Hold = new EntryId("M1"), Step = "cockpit", Result = SearchResult.NotFound };

        LedgerState one = disputed.Merge(Book(thief)).Now, other = Book(thief).Merge(disputed).Now;

        Assert.Equal(thiefIsDeclaration ? ["T5", "T6", "T7"] : ["T6", "T7"], one.Holds.HeldAt(At(16)).Select(status => status.Declaration.Tool.Value).Order(StringComparer.Ordinal));
        Assert.Contains(one.Findings, finding => finding.Entry.Value == name && finding.Reason.Code == "ledger.no-effect");
        Assert.Equal(one.Findings.Select(finding => finding.ToString()), other.Findings.Select(finding => finding.ToString()), StringComparer.Ordinal);
    }

    // No lapse of time ends a hold: a release that was written down before the time it bears is refused at the door, and has no effect where it comes in by a file.
    [Fact]
    public void A_release_recorded_ahead_of_its_time_ends_no_hold()
    {
        LedgerEntry[] before = [Entry(HoldScene.Missing("M1", At(15))), Entry(HoldScene.Found("F1", At(16)))];
        HoldRelease release = HoldScene.Release("R1", At(20));
        Assert.Equal(["ledger.recorded-before"], Append(new LedgerBook(Settings, before), release, At(17)).Codes);

        LedgerState state = new LedgerBook(Settings, [.. before, Entry(release, At(17))]).Now;

        Assert.Single(state.Holds.HeldAt(At(21)));
        LedgerFinding finding = Assert.Single(state.Findings);
        Assert.Equal((new EntryId("R1"), "ledger.no-effect"), (finding.Entry, finding.Reason.Code));

        // A forged copy of a release in order does not undo it, in either order of merging.
        LedgerBook inOrder = new(Settings, [.. before, Entry(release)]), forged = new(Settings, [Entry(release, At(17))]);
        Assert.Empty(inOrder.Merge(forged).Now.Holds.HeldAt(At(21)));
        Assert.Empty(forged.Merge(inOrder).Now.Holds.HeldAt(At(21)));
    }

    // What widens is kept, whenever it was recorded.
    [Fact]
    public void A_declaration_recorded_ahead_of_its_time_holds() =>
        Assert.Single(new LedgerBook(Settings, [Entry(HoldScene.Missing("M1", At(15)), At(14))]).Now.Holds.HeldAt(At(16)));

    // A signed result from a file accounts for nothing that was still to come: neither a look later than the answer, nor an answer later than its signature.
    [Fact]
    public void A_sign_off_that_accounts_ahead_of_time_is_refused()
    {
        World world = new World().ReadAllBut().CountAll();
        SignedReconciliation signed = SignedReconciliation.Of(new EntryId("S1"), world.Reconcile(), Signed("Q", world.AsOf));
        string late = RecordTime.ToText(world.AsOf.AddHours(3));

        Assert.Empty(Issues(Changed(signed, static _ => { })));
        Assert.Equal(["record.out-of-range"], Issues(Changed(signed, content => Line(content)["oldestAt"] = late)));
        Assert.Equal(["record.out-of-range"], Issues(Changed(signed, content => content["result"]!["asOf"] = late)));
    }

    private static JsonNode Line(JsonNode content) => content["result"]!["lines"]!.AsArray().First(static line => line!["oldestAt"] is not null)!;

    private static byte[] Changed(SignedReconciliation signed, Action<JsonNode> change)
    {
        JsonNode entry = JsonNode.Parse(Entry(signed, signed.At.AddDays(1)).ToJson())!;
        change(entry["content"]!);
        return Encoding.UTF8.GetBytes(entry.ToJsonString());
    }

    private static string[] Issues(byte[] json)
    {
        bool isRead = LedgerEntry.TryParse(json, out _, out IReadOnlyList<RecordIssue> issues);
        Assert.Equal(issues.Count == 0, isRead);
        return Codes(issues);
    }

    private static FoundWithdrawal Withdrawal(string id, string found) =>
        new() { Id = new EntryId(id), At = At(18), By = new PersonId("Q"), Found = new EntryId(found), Reason = "another mark" };

    private static HoldPlacement Placement(string equipment, bool isImpound) => new()
    {
        Id = new EntryId("P1"),
        At = At(15, 10),
        By = new PersonId("Q"),
        Hold = new EntryId("M1"),
        Affected = [new AffectedThing(new EquipmentId(equipment))],
        IsImpound = isImpound,
    };
}
