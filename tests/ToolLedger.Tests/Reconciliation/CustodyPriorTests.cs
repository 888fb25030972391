using System;
using System.Collections.Generic;
using System.Linq;
using FsCheck.Xunit;
using ToolLedger.Custody;
using ToolLedger.Inventory;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>How likely it was before the session that a tool is not there: by custody as the session began, or as the caller says. The kit and all shares are invented.</summary>
public sealed class CustodyPriorTests
{
    private static readonly DateTimeOffset Eight = World.Start.AddHours(-8);
    private static readonly DetectionModel FewReads = new(0.05m, new BetaRate(4, 60), 0.02m, new BetaRate(0.2m, 60));
    private static readonly StatedRiskPolicy Policy = new() { Model = FewReads, KitRiskLimit = 0.01m, CustodyShares = new CustodyShares { Issued = 0.012m, Packed = 0.005m } };

    [Fact]
    public void Without_a_word_of_custody_the_share_is_the_policys_own_and_nothing_is_said_of_it()
    {
        PresenceRisk risk = Risk(Read(), 5);

        Assert.Equal(Policy.AbsentShare, risk.AbsentShare);
        Assert.Null(risk.AbsentShareWhy);
    }

    [Fact]
    public void A_kit_that_is_out_has_the_share_of_issued_kits_and_its_lines_say_why()
    {
        World world = Read(Issue());
        LineConclusion line = world.Reconcile().Lines[4];

        Assert.Equal(0.012m, line.Evidence.Risk!.AbsentShare);
        Reason why = Assert.Single(line.Reasons, static reason => reason.Kind == RiskReasons.PriorIssued);
        Assert.Equal("the chance before the session that it is not there is taken as 1.2 %: the kit was signed out (I1)", why.ToString());
        Assert.Equal(why, line.Evidence.Risk.AbsentShareWhy);
    }

    [Fact]
    public void Of_several_words_the_largest_share_is_used()
    {
        World world = Read(Issue(5), Loan());

        Assert.Equal(RiskReasons.PriorOpenAtIssue, Risk(world, 5).AbsentShareWhy!.Kind);
        Assert.Equal((0.5m, RiskReasons.PriorOnReceipt), (Risk(world, 8).AbsentShare, Risk(world, 8).AbsentShareWhy!.Kind));
        Assert.Equal(RiskReasons.PriorIssued, Risk(world, 6).AbsentShareWhy!.Kind);

        // Trade scenario S55: on a receipt, yet read well: both are said, and the reads have to prove more than those of other tools.
        Assert.True(Risk(world, 8).Decision.Cut < 1 && Risk(world, 8).Decision.Risk > Risk(world, 6).Decision.Risk);
        Assert.Contains(world.Reconcile().Findings, static finding => finding.Code == "finding.receipt-contradicted");
    }

    [Fact]
    public void A_tool_that_came_back_on_a_receipt_counts_as_returned_until_somebody_signs_for_the_kit()
    {
        World world = Read(Issue(), Loan(), Closure());
        Assert.Equal((0.02m, RiskReasons.PriorReturned), (Risk(world, 8).AbsentShare, Risk(world, 8).AbsentShareWhy!.Kind));

        // Issued after it came back: the user signed for the kit with the tool in it.
        World later = Read(Loan(), Closure(), Issue(at: Eight.AddHours(4)));
        Assert.Equal(RiskReasons.PriorIssued, Risk(later, 8).AbsentShareWhy!.Kind);
    }

    [Fact]
    public void A_kit_turned_in_on_a_signed_inventory_is_packed_until_somebody_touches_it()
    {
        World world = Read(Issue(), TurnIn(Digest.Of("signed inventory"u8)));
        Assert.Equal((0.005m, RiskReasons.PriorPacked), (Risk(world, 5).AbsentShare, Risk(world, 5).AbsentShareWhy!.Kind));

        Assert.Null(Risk(Read(Issue(), TurnIn(default)), 5).AbsentShareWhy);
        World opened = Read(Issue(), TurnIn(Digest.Of("signed inventory"u8)));
        opened.Openings.Add(new KitOpening { Kit = World.K1, By = World.P, At = Eight.AddHours(7) });
        Assert.Null(Risk(opened, 5).AbsentShareWhy);
    }

    // What was signed after the session began says nothing of what was likely before it.
    [Fact]
    public void Custody_is_asked_as_of_the_start_of_the_session()
    {
        KitTurnIn after = TurnIn(Digest.Of("signed inventory"u8), World.End.AddMinutes(1));

        Assert.Equal(RiskReasons.PriorIssued, Risk(Read(Issue(), after), 5).AbsentShareWhy!.Kind);
    }

    [Fact]
    public void Of_two_sessions_the_one_before_which_it_was_least_likely_there_decides()
    {
        World world = Read(Issue(at: World.Start.AddMinutes(5)));
        world.AsOf = World.End.AddMinutes(20);
        ReadSession second = world.Session("S2", [World.K1], World.Later(world, 10), World.Start.AddMinutes(10));

        Assert.Equal(RiskReasons.PriorIssued, world.Reconcile(world.Session(), second).Lines[4].Evidence.Risk!.AbsentShareWhy!.Kind);
        Assert.Null(world.Reconcile(world.Session()).Lines[4].Evidence.Risk!.AbsentShareWhy);
    }

    [Fact]
    public void What_the_caller_says_of_a_tool_wins_and_is_among_the_inputs()
    {
        World world = Read(Issue());
        ReconciliationInput input = Input(world, new() { [new ToolId("T5")] = 0.3m });
        ReconciliationResult result = new Reconciler(world.Policy).Reconcile(input);

        Assert.Equal((0.3m, RiskReasons.PriorGiven), (result.Lines[4].Evidence.Risk!.AbsentShare, result.Lines[4].Evidence.Risk!.AbsentShareWhy!.Kind));
        Assert.Equal(RiskReasons.PriorIssued, result.Lines[5].Evidence.Risk!.AbsentShareWhy!.Kind);
        Digest said = Assert.Single(result.Inputs, static digest => digest.Name == "absent shares").Digest;
        Assert.NotEqual(said, new Reconciler(world.Policy).Reconcile(Input(world, new() { [new ToolId("T5")] = 0.31m })).Inputs.Single(static digest => digest.Name == "absent shares").Digest);
        Assert.DoesNotContain(world.Reconcile().Inputs, static digest => digest.Name == "absent shares");
    }

    // A share that somebody states may raise the bar, or fill a gap; it must not talk down what people signed.
    [Fact]
    public void What_the_caller_says_does_not_win_over_a_larger_word_of_custody()
    {
        World world = Read(Issue(5), Loan());
        ReconciliationResult result = Reconcile(world, new() { [new ToolId("T5")] = 0.000001m, [new ToolId("T6")] = 0.000001m, [new ToolId("T7")] = 0.2m, [new ToolId("T8")] = 0.6m });

        Assert.Equal((0.5m, RiskReasons.PriorOpenAtIssue), Share(result, 5));
        Assert.Equal((0.012m, RiskReasons.PriorIssued), Share(result, 6));
        Assert.Equal((0.2m, RiskReasons.PriorGiven), Share(result, 7));
        Assert.Equal((0.6m, RiskReasons.PriorGiven), Share(result, 8));

        // Where custody says nothing it stands as given, lower than the policy's own too.
        Assert.Equal((0.000001m, RiskReasons.PriorGiven), Share(Reconcile(Read(), new() { [new ToolId("T5")] = 0.000001m }), 5));

        // A kit that was packed has a word of its own, also where another session has none.
        World packed = Read(Issue(), TurnIn(Digest.Of("signed inventory"u8)));
        Assert.Equal((0.005m, RiskReasons.PriorPacked), Share(Reconcile(packed, new() { [new ToolId("T5")] = 0.000001m }), 5));
    }

    [Fact]
    public void A_share_for_a_tool_that_no_manifest_lists_is_told()
    {
        ReconciliationResult result = Reconcile(Read(), new() { [new ToolId("T5")] = 0.3m, [new ToolId("U1")] = 0.3m, [new ToolId("TS")] = 0.25m });

        Finding told = Assert.Single(result.Findings, static finding => finding.Reason.Kind == RiskReasons.ShareOfNoManifest);
        Assert.Equal("25 % was stated as the chance that tool TS is not there; no manifest lists that tool, so it is used for nothing", told.Reason.ToString());
    }

    [Theory]
    [InlineData("0")]
    [InlineData("0.91")]
    [InlineData("0.0123456789")]
    public void A_share_out_of_its_range_is_refused_with_the_tool(string share)
    {
        World world = Read();
        decimal wrong = decimal.Parse(share, System.Globalization.CultureInfo.InvariantCulture);

        ArgumentException refused = Assert.Throws<ArgumentException>(() => new Reconciler(world.Policy).Reconcile(Input(world, new() { [new ToolId("T5")] = wrong })));
        Assert.Contains("\"T5\"", refused.Message, StringComparison.Ordinal);
    }

    // Properties 4 and 5 of the trade's list, with custody: a read more never leaves the line, and the share does not depend on what was read.
    [Property(MaxTest = 60)]
    public void Whatever_custody_says_a_read_more_never_leaves_a_line_and_moves_no_other(int seed)
    {
        var random = new Random(seed);
        CustodyEntry[] all = [Issue(random.Next(3) == 0 ? 5 : 0, Eight.AddHours(random.Next(2) * 5)), Loan(), Closure(), TurnIn(Digest.Of("signed inventory"u8))];
        CustodyEntry[] custody = [.. all.Where(_ => random.Next(3) > 0)];
        var world = new World { Policy = new ReconciliationPolicy { Presence = Policy } };
        world.Custody.AddRange(custody);
        foreach (string tool in World.AllTools().Where(static tool => tool[0] is 'T' or 'H'))
        {
            world.Read(tool, random.Next(2) == 0 ? World.A1 : World.A2, [.. Enumerable.Range(0, random.Next(14)).Select(static i => 4 + (1.5 * i))]);
        }

        ReconciliationResult before = world.Reconcile();
        int line = random.Next(12);
        ReconciliationResult after = world.Read($"T{line + 1}", World.A1, random.Next(1, 29) + 0.3).Reconcile();

        Assert.True(after.Lines[line].State >= before.Lines[line].State, $"{before.Lines[line]} to {after.Lines[line]}");
        Assert.Equal(before.Lines[line].Evidence.Risk!.AbsentShareWhy, after.Lines[line].Evidence.Risk!.AbsentShareWhy);
        Assert.All(before.Lines.Zip(after.Lines).Where((_, index) => index != line), static pair => Assert.Equal((pair.First.State, pair.First.Basis), (pair.Second.State, pair.Second.Basis)));
    }

    [Fact]
    public void A_counting_policy_asks_no_custody()
    {
        World world = Read(Issue());
        world.Policy = new ReconciliationPolicy();

        Assert.DoesNotContain(world.Reconcile().AllLines.SelectMany(static line => line.Reasons), static reason => reason.Code.StartsWith("prior.", StringComparison.Ordinal));
    }

    private static ReconciliationResult Reconcile(World world, Dictionary<ToolId, decimal> shares) => new Reconciler(world.Policy).Reconcile(Input(world, shares));

    private static (decimal Share, ReasonKind Why) Share(ReconciliationResult result, int line)
        => (result.Lines[line - 1].Evidence.Risk!.AbsentShare, result.Lines[line - 1].Evidence.Risk!.AbsentShareWhy!.Kind);

    private static ReconciliationInput Input(World world, Dictionary<ToolId, decimal> shares)
    {
        ReconciliationInput input = world.Input(world.Session());
        return new ReconciliationInput
        {
            Kits = input.Kits,
            Subject = input.Subject,
            Sessions = input.Sessions,
            Tags = input.Tags,
            Inventory = input.Inventory,
            Custody = input.Custody,
            AsOf = input.AsOf,
            AbsentShares = shares,
        };
    }

    private static PresenceRisk Risk(World world, int line) => world.Reconcile().Lines[line - 1].Evidence.Risk!;

    private static World Read(params CustodyEntry[] custody)
    {
        var world = new World { Policy = new ReconciliationPolicy { Presence = Policy } };
        world.Custody.AddRange(custody);
        foreach (string tool in World.AllTools().Where(static tool => tool[0] is 'T' or 'H'))
        {
            world.Read(tool, World.A1, 6, 8, 10, 12, 14, 16);
            world.Read(tool, World.A2, 7, 9, 11, 13);
        }

        return world.CountAll();
    }

    private static KitIssue Issue(int openLine = 0, DateTimeOffset? at = null) => new()
    {
        Id = new EntryId("I1"),
        At = at ?? Eight,
        By = new PersonId("C"),
        Kit = World.K1,
        Revision = 3,
        ReceivedBy = new Signature { By = World.P, At = at ?? Eight },
        ExpectedReturn = World.End.AddHours(1),
        OpenLines = openLine == 0 ? [] : [openLine],
    };

    private static ToolLoan Loan() => new()
    {
        Id = new EntryId("L1"),
        At = Eight.AddHours(1),
        By = World.P,
        Tool = new ToolId("T8"),
        Kit = World.K1,
        ReceivedBy = new Signature { By = new PersonId("B"), At = Eight.AddHours(1) },
        Due = World.End.AddHours(2),
    };

    private static ReceiptClosure Closure() => new()
    {
        Id = new EntryId("R1"),
        At = Eight.AddHours(2),
        By = new PersonId("B"),
        Receipt = new EntryId("L1"),
        AcceptedBy = new Signature { By = World.P, At = Eight.AddHours(2) },
        ToKit = World.K1,
    };

    private static KitTurnIn TurnIn(Digest inventory, DateTimeOffset? at = null) => new()
    {
        Id = new EntryId("B1"),
        At = at ?? Eight.AddHours(6),
        By = World.P,
        Kit = World.K1,
        AcceptedBy = new Signature { By = World.Q, At = at ?? Eight.AddHours(6) },
        Inventory = inventory,
    };
}
