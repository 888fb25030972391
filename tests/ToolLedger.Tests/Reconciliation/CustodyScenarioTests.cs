using System;
using System.Linq;
using ToolLedger.Custody;
using ToolLedger.Kits;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>The custody scenarios of the trade's tables as a reconciliation sees them, by id. The expected answers are those of the tables; the kit is invented.</summary>
public sealed class CustodyScenarioTests
{
    private static readonly DateTimeOffset Eight = World.Start.AddHours(-8);
    private static readonly DateTimeOffset Eleven = World.Start.AddHours(-5);

    private static readonly ReconciliationPolicy MayClose = new() { Custody = CustodyPolicy.Default with { KitMayCloseWithOpenReceipt = true } };

    private static KitIssue Issued(int revision = 3) => new()
    {
        Id = new EntryId("I1"),
        At = Eight,
        By = new PersonId("C"),
        Kit = World.K1,
        Revision = revision,
        ReceivedBy = new Signature { By = World.P, At = Eight },
        ExpectedReturn = World.End.AddHours(1),
    };

    private static ToolLoan Lent(string tool = "T8", int? pieces = null) => new()
    {
        Id = new EntryId("L1"),
        At = Eleven,
        By = World.P,
        Tool = new ToolId(tool),
        Kit = World.K1,
        ToKit = new KitId("K2"),
        ReceivedBy = new Signature { By = new PersonId("B"), At = Eleven },
        Job = new JobId("J-B"),
        Equipment = new EquipmentId("aircraft B"),
        Due = World.End.AddHours(2),
        Pieces = pieces,
    };

    private static World Signed(World world)
    {
        world.Signatures.Add(new Signature { By = World.Q, At = World.End.AddMinutes(2) });
        return world;
    }

    // Given revision 4 (drops T5, adds T13) in force at 11:00 while K1 is out under revision 3; when reconciled at 16:00; then against revision 3, and the change is shown.
    [Fact]
    public void S52_A_kit_that_is_out_is_checked_against_the_revision_it_left_with()
    {
        World world = new World().ReadAllBut("T5");
        world.LaterRevisions.Add(new KitManifest(World.K1, 4, "invented scenario kit", Eleven, new Signature { By = new PersonId("S"), At = Eleven },
            world.K1Revision3().Lines.Where(line => line.Number != 5).Append(new ToolLine
            {
                Number = 16,
                Tool = new Tool { Id = new ToolId("T13"), Description = "tool 13", Mark = "K1-16" },
            })));
        world.Custody.Add(Issued());

        ReconciliationResult result = world.Reconcile();

        Assert.Equal(3, result.Manifest.Revision);
        Assert.Equal(LineState.NotRead, result.Lines.Single(line => line.Line.Tool?.Id.Value == "T5").State);
        Finding finding = Assert.Single(result.Findings, finding => finding.Code == "finding.issued-under-other-revision");
        Assert.Contains("removed line 5", finding.ToString(), StringComparison.Ordinal);
        Assert.Contains("added line 16", finding.ToString(), StringComparison.Ordinal);
        world.Custody.Clear();
        Assert.Equal(4, world.Reconcile().Manifest.Revision);
    }

    // Given T8 lent at 11:00 on a signed receipt; when K1 is turned in; then T8 is accounted for by the record, and the kit closes only where the policy says so.
    [Fact]
    public void S53_A_tool_on_a_signed_loan_receipt_is_accounted_for_by_that_record()
    {
        World world = Signed(new World().ReadAllBut("T8").CountAll());
        world.Custody.AddRange([Issued(), Lent()]);

        ReconciliationResult result = world.Reconcile();

        LineConclusion t8 = result.Lines[7];
        Assert.Equal((LineState.Accounted, AccountingBasis.Record), (t8.State, t8.Basis));
        string said = string.Join(' ', t8.Reasons);
        Assert.Contains("to B, who signed", said, StringComparison.Ordinal);
        Assert.Contains("aircraft B", said, StringComparison.Ordinal);
        Assert.Equal((KitState.Open, "kit.open-receipts"), (result.Kit.State, result.Kit.Reasons[0].Code));
        world.Policy = MayClose;
        Assert.Equal(KitState.Complete, world.Reconcile().Kit.State);
    }

    // A tool of three pieces is lent whole only if the receipt says so.
    [Theory]
    [InlineData(null, LineState.Partial)]
    [InlineData(2, LineState.Partial)]
    [InlineData(3, LineState.Accounted)]
    public void S53_A_receipt_covers_the_pieces_its_receiver_signed_for(int? pieces, LineState expected)
    {
        World world = new World { T10Pieces = 3 }.ReadAllBut("T10").CountAll();
        world.Custody.AddRange([Issued(), Lent("T10", pieces)]);

        Assert.Equal(expected, world.Reconcile().Lines[9].State);
    }

    // Given T8 lent by word of mouth; then there is no record and no basis.
    [Fact]
    public void S54_Word_of_mouth_accounts_for_nothing()
    {
        World world = new World().ReadAllBut("T8").CountAll();
        world.Custody.Add(Issued());

        Assert.Equal(LineState.NotRead, world.Reconcile().Lines[7].State);
    }

    // An unsigned receipt is word of mouth with a number: it takes no effect.
    [Fact]
    public void S54_A_receipt_that_the_borrower_did_not_sign_accounts_for_nothing()
    {
        World world = new World().ReadAllBut("T8").CountAll();
        ToolLoan signed = Lent();
        world.Custody.AddRange([Issued(), new ToolLoan { Id = signed.Id, At = signed.At, By = signed.By, Tool = signed.Tool, Kit = signed.Kit, Due = signed.Due }]);

        ReconciliationResult result = world.Reconcile();
        Assert.Equal(LineState.NotRead, result.Lines[7].State);

        // And yet somebody wrote it: whoever looks for the tool is told, and why it took no effect.
        Finding told = Assert.Single(result.Findings, finding => finding.Code == CustodyReasons.FindingEntryRefused.Code);
        Assert.Equal(FindingLevel.Line, told.Level);
        Assert.Equal([8], told.LineNumbers);
        Assert.Contains(signed.Id.Value, told.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Refused_entries_of_an_earlier_issue_of_another_kit_and_of_later_are_not_told()
    {
        World world = new World().ReadAllBut("T8").CountAll();
        ToolLoan Unsigned(string id, string tool, KitId kit, DateTimeOffset at) => new() { Id = new EntryId(id), At = at, By = World.P, Tool = new ToolId(tool), Kit = kit, Due = at.AddHours(1) };
        world.Custody.AddRange(
        [
            Issued(),
            Unsigned("long ago", "T8", World.K1, Issued().At.AddDays(-2)),
            Unsigned("of K9", "V1", World.K9, Eleven),
            Unsigned("later", "T8", World.K1, world.AsOf.AddMinutes(1)),
            Unsigned("told", "T7", World.K1, Eleven),
            new ReceiptClosure { Id = new EntryId("of nobody's"), At = Eleven, By = World.Q, Receipt = new EntryId("R-unknown") },
        ]);

        Finding[] told = [.. world.Reconcile().Findings.Where(finding => finding.Code == CustodyReasons.FindingEntryRefused.Code)];
        Assert.Equal([FindingLevel.Line, FindingLevel.Kit], told.Select(finding => finding.Level).Order());
        Assert.Contains(told, finding => finding.ToString().Contains("of nobody's", StringComparison.Ordinal));
        Assert.Contains(told, finding => finding.LineNumbers is [7]);
    }

    // Given T8 on a receipt and yet read well in K1; then accounted for by read, the contradiction is raised, and the loan is not closed.
    [Fact]
    public void S55_A_lent_tool_that_is_read_here_is_a_contradiction_for_a_person()
    {
        World world = Signed(new World().ReadAllBut().CountAll());
        world.Custody.AddRange([Issued(), Lent()]);

        ReconciliationResult result = world.Reconcile();

        Assert.Equal((LineState.Accounted, AccountingBasis.Read), (result.Lines[7].State, result.Lines[7].Basis));
        Assert.Contains(AccountingBasis.Record, result.Lines[7].OtherBases);
        Assert.Equal([8], Assert.Single(result.Findings, finding => finding.Code == "finding.receipt-contradicted").LineNumbers);
        Assert.NotNull(world.Input().Custody.ReceiptOf(new ToolId("T8"), world.AsOf));
    }

    // Reads from before the receipt are no reads of now: the tool went out after them.
    [Fact]
    public void S55_Reads_from_before_the_receipt_contradict_nothing()
    {
        World world = new World().ReadAllBut().CountAll();
        ToolLoan early = Lent();
        world.Custody.AddRange([Issued(), new ToolLoan
        {
            Id = early.Id, At = World.End.AddMinutes(1), By = early.By, Tool = early.Tool, Kit = early.Kit, Due = early.Due, ReceivedBy = new Signature { By = new PersonId("B"), At = World.End.AddMinutes(1) },
        }]);

        ReconciliationResult result = world.Reconcile();

        Assert.Equal(AccountingBasis.Record, result.Lines[7].Basis);
        Assert.DoesNotContain(result.Findings, finding => finding.Code == "finding.receipt-contradicted");
    }

    // What the borrower's people see in their own kit agrees with the receipt.
    [Fact]
    public void A_lent_tool_seen_with_its_borrower_is_no_conflict()
    {
        World world = new World().ReadAllBut("T8").CountAll().Sight("T8", "K1-8", World.K2);

        Assert.Equal(LineState.Conflict, world.Reconcile().Lines[7].State);
        world.Custody.AddRange([Issued(), Lent()]);
        Assert.Equal((LineState.Accounted, AccountingBasis.Record), (world.Reconcile().Lines[7].State, world.Reconcile().Lines[7].Basis));
    }

    // Given T4 at the laboratory with its receipt; then accounted for by that record. And after the receipt is closed it is expected here again.
    [Fact]
    public void S56_A_laboratory_receipt_accounts_for_the_tool_until_it_is_closed()
    {
        World world = new World().ReadAllBut("T4").CountAll();
        world.Custody.AddRange([Issued(), new LaboratoryReceipt
        {
            Id = new EntryId("LR1"), At = Eleven, By = World.P, Tool = new ToolId("T4"), Kit = World.K1, Where = new Place("laboratory 2"), ReceivedBy = new Signature { By = new PersonId("LAB-3"), At = Eleven },
        }]);

        Assert.Equal((LineState.Accounted, AccountingBasis.Record), (world.Reconcile().Lines[3].State, world.Reconcile().Lines[3].Basis));
        Assert.Contains("laboratory 2", string.Join(' ', world.Reconcile().Lines[3].Reasons), StringComparison.Ordinal);
        world.Custody.Add(new ReceiptClosure
        {
            Id = new EntryId("LC1"),
            At = World.Start.AddHours(-1),
            By = new PersonId("LAB-3"),
            Receipt = new EntryId("LR1"),
            AcceptedBy = new Signature { By = World.P, At = World.Start.AddHours(-1) },
        });
        Assert.Equal(LineState.NotRead, world.Reconcile().Lines[3].State);
    }

    // Given a note that T4 was sent, and no receipt; then not read, with the note shown.
    [Fact]
    public void S57_A_note_that_a_tool_was_sent_is_shown_and_accounts_for_nothing()
    {
        World world = new World().ReadAllBut("T4").CountAll();
        world.Custody.AddRange([Issued(), new DispatchNote { Id = new EntryId("N1"), At = Eleven, By = World.P, Tool = new ToolId("T4"), Kit = World.K1, To = new Place("laboratory 2") }]);

        LineConclusion t4 = world.Reconcile().Lines[3];

        Assert.Equal(LineState.NotRead, t4.State);
        Assert.Contains(t4.Reasons, reason => reason.Code == "line.sent-without-receipt");
    }

    // Given the whole bag absent at shift end and no session; then one kit-level event, custody with P, and no event a tool.
    [Fact]
    public void S69_An_absent_bag_is_one_kit_level_finding_and_custody_with_its_user()
    {
        var world = new World { AsOf = World.End.AddHours(2) };
        world.Custody.Add(Issued());

        ReconciliationResult result = world.Reconcile([]);

        Finding finding = Assert.Single(result.Findings, finding => finding.Level == FindingLevel.Kit);
        Assert.Equal("finding.kit-overdue", finding.Code);
        Assert.DoesNotContain(result.Findings, finding => finding.Level == FindingLevel.Line && !finding.Code.StartsWith("finding.calibration", StringComparison.Ordinal));
        Assert.Equal(World.P, result.Holder.Person);
        Assert.All(result.Lines, line => Assert.Equal(LineState.NotAssessed, line.State));
    }

    // The digest of the custody entries is among the inputs, so that a result can be recomputed; without entries nothing is added.
    [Fact]
    public void The_custody_entries_are_an_input_like_the_others()
    {
        World world = new World().ReadAllBut();

        Assert.DoesNotContain(world.Reconcile().Inputs, input => input.Name == "custody register");
        world.Custody.Add(Issued());
        Assert.Contains(world.Reconcile().Inputs, input => input.Name == "custody register");
    }

    [Fact]
    public void The_gate_before_issue_asks_for_a_fresh_inventory_with_every_open_line_acknowledged()
    {
        static KitIssue Proposed(int[] open, DateTimeOffset at, int[]? notForMeasurement = null) => new()
        {
            Id = new EntryId("I9"),
            At = at,
            By = new PersonId("C"),
            Kit = World.K1,
            Revision = 3,
            ReceivedBy = new Signature { By = World.P, At = at },
            OpenLines = open,
            NotForMeasurement = notForMeasurement ?? [4],
            ExpectedReturn = at.AddHours(8),
        };
        World world = Signed(new World().ReadAllBut("T7").CountAll());
        ReconciliationResult inventory = world.Reconcile();
        DateTimeOffset at = world.AsOf.AddMinutes(10);

        Assert.Equal(["issue.open-line"], IssueGate.Judge(Proposed([], at), inventory).Reasons.Select(reason => reason.Code), StringComparer.Ordinal);
        Assert.True(IssueGate.Judge(Proposed([7], at), inventory).IsSatisfied);
        Assert.Equal(["issue.not-fit"], IssueGate.Judge(Proposed([7], at, []), inventory).Reasons.Select(reason => reason.Code), StringComparer.Ordinal);
        Assert.Equal(["issue.too-old"], IssueGate.Judge(Proposed([7], at.AddHours(13)), inventory).Reasons.Select(reason => reason.Code), StringComparer.Ordinal);
        Assert.Equal(["issue.other-inventory"], IssueGate.Judge(Proposed([7], World.Start), inventory).Reasons.Select(reason => reason.Code), StringComparer.Ordinal);
    }

    // S41's shortage is shown by a count: both may know of it, and the kit still does not go out as if nothing were.
    [Fact]
    public void The_gate_before_issue_is_not_satisfied_by_a_difference_however_well_acknowledged()
    {
        World world = new World().ReadAllBut().Count(13, 9, "each").Count(14, 1, "spool").Count(15, 6, "each");
        KitIssue issue = new()
        {
            Id = new EntryId("I9"),
            At = world.AsOf,
            By = new PersonId("C"),
            Kit = World.K1,
            Revision = 3,
            ReceivedBy = new Signature { By = World.P, At = world.AsOf },
            OpenLines = [13],
            NotForMeasurement = [4],
        };

        Assert.Equal(["issue.discrepant"], IssueGate.Judge(issue, world.Reconcile()).Reasons.Select(reason => reason.Code), StringComparer.Ordinal);
    }
}
