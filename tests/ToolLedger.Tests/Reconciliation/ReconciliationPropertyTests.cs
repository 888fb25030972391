using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ToolLedger.Calibration;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>The properties of the trade's list that hold for any shift, numbered as there.</summary>
[Properties(Arbitrary = [typeof(ShiftCase)], MaxTest = 150)]
public sealed class ReconciliationPropertyTests
{
    [Property]
    public void P01_Every_line_gets_one_conclusion_every_read_one_explanation_and_the_counts_add_up(ShiftCase shift)
    {
        World world = shift.ToWorld();
        ReadSession session = world.Session();
        ReconciliationResult result = world.Reconcile(session);

        Assert.Equal(Enumerable.Range(1, 15), result.Lines.Select(line => line.Line.Number));
        Assert.Equal(15, Enum.GetValues<LineState>().Sum(result.Kit.CountOf));
        Assert.Equal(session.ReadCount, Enum.GetValues<ReadExplanationKind>().Sum(result.CountOf));
        Assert.Equal(world.Reads.Count + world.ControlReads().Count(), session.ReadCount);
    }

    [Property]
    public void P02_Without_a_usable_session_no_line_rests_on_reads_and_a_kit_is_complete_only_by_two_people(ShiftCase shift)
    {
        World world = (shift with { ControlOnA1 = false, ControlOnA2 = false }).ToWorld();
        ReconciliationResult result = world.Reconcile();

        Assert.DoesNotContain(result.Lines, line => line.Basis == AccountingBasis.Read || line.OtherBases.Contains(AccountingBasis.Read));
        if (result.Kit.State == KitState.Complete)
        {
            Assert.All(result.Lines, line => Assert.True(line.IsAccounted));
            Assert.True(result.NoReadUsed);
            Assert.True(result.Persons.Count >= 2);
            Assert.Contains(result.Kit.Reasons, reason => reason.Code == ReconciliationReasons.KitNoReadUsed.Code);
        }
    }

    [Property]
    public void P03_Order_and_repetition_of_reads_change_no_conclusion(ShiftCase shift, int seed)
    {
        World world = shift.ToWorld();
        TagRead[] reads = [.. world.ControlReads(), .. world.Reads];
        ReconciliationResult plain = world.Reconcile(world.Session(reads: reads));
        var random = new Random(seed);
        TagRead[] twice = [.. reads, .. reads.Where(_ => random.Next(2) == 0)];
        random.Shuffle(twice);
        ReconciliationResult shuffled = world.Reconcile(world.Session(reads: twice));

        Assert.Equal(Describe(plain), Describe(shuffled));
    }

    [Property]
    public void P04_Another_genuine_read_never_takes_a_line_from_accounted_and_touches_only_its_own_line(ShiftCase shift, ReadDraw draw)
    {
        int own = Math.Abs(draw.Tag % 13);
        var added = new ReadDraw(own, 1 + Math.Abs(draw.Antenna % 2), Math.Abs(draw.HalfSecond % 60));
        World before = shift.ToWorld();
        World after = shift.ToWorld();
        after.Reads.Add(ShiftCase.ToRead(added));
        LineConclusion[] old = [.. before.Reconcile().Lines], now = [.. after.Reconcile().Lines];

        for (int i = 0; i < old.Length; i++)
        {
            if (old[i].Line.Number == ShiftCase.LineOf(own))
            {
                Assert.False(old[i].IsAccounted && !now[i].IsAccounted);
            }
            else
            {
                Assert.Equal((old[i].State, old[i].Basis), (now[i].State, now[i].Basis));
            }
        }
    }

    [Property]
    public void P05_Less_supporting_evidence_a_dead_antenna_or_an_unknown_clock_never_raises_a_rank(ShiftCase shift, int line, bool dropReads)
    {
        int number = Math.Abs(line % 13);
        int[] ranks = [.. ShiftCase.Ranks(shift.ToWorld().Reconcile())];

        AssertNoHigher(ranks, shift.ToWorld(draw => draw.Tag != number));
        AssertNoHigher(ranks, (shift with { ClockKnown = false }).ToWorld());
        AssertNoHigher(ranks, (shift with { SightMask = shift.SightMask & ~(1 << (number % 12)) }).ToWorld());
        AssertNoHigher(ranks, (shift with { ControlOnA2 = false }).ToWorld(draw => !dropReads || draw.Antenna != 2));
        AssertNoHigher(ranks, (shift with { ControlOnA1 = false }).ToWorld(draw => !dropReads || draw.Antenna != 1));
        if (shift.Counts is [10, 1, 6])
        {
            AssertNoHigher(ranks, (shift with { Counts = [] }).ToWorld());
        }
    }

    [Property]
    public void P07_A_surplus_is_never_complete(ShiftCase shift)
    {
        ReconciliationResult result = (shift with { Counts = [11, 1, 6] }).ToWorld().Reconcile();

        Assert.Equal(KitState.Discrepant, result.Kit.State);
    }

    [Property]
    public void P11_Calibration_never_changes_accounting_nor_accounting_calibration(ShiftCase shift, bool overdue)
    {
        World without = shift.ToWorld(), with = shift.ToWorld();
        with.Calibrations.Add(new CalibrationRecord
        {
            Tool = new ToolId("T4"),
            CalibratedOn = new DateOnly(2025, 1, 10),
            DueOn = overdue ? new DateOnly(2026, 1, 10) : new DateOnly(2027, 1, 10),
            RecordedAt = World.Start.AddYears(-1),
            RecordedBy = World.Q,
        });
        ReconciliationResult a = without.Reconcile(), b = with.Reconcile();

        Assert.Equal(Describe(a), Describe(b));
        Assert.Equal(CalibrationState.Unknown, a.Lines[3].Calibration?.State);
        Assert.Equal(overdue ? CalibrationState.Overdue : CalibrationState.Current, b.Lines[3].Calibration?.State);
    }

    [Property]
    public void P12_The_culture_of_the_host_changes_nothing(ShiftCase shift)
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        string[] texts = [.. new[] { "", "tr-TR", "ar-SA", "de-DE" }.Select(name =>
        {
            try
            {
                CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(name);
                return Describe(shift.ToWorld().Reconcile());
            }
            finally
            {
                CultureInfo.CurrentCulture = before;
            }
        })];

        Assert.Single(texts.Distinct(StringComparer.Ordinal));
    }

    [Property]
    public void P13_Every_open_conclusion_has_a_reason_and_a_next_step_and_every_accounted_one_a_basis(ShiftCase shift)
    {
        ReconciliationResult result = shift.ToWorld().Reconcile();

        Assert.All(result.Lines, line =>
        {
            Assert.NotEmpty(line.Reasons);
            Assert.Equal(line.IsAccounted, line.Next is null);
            Assert.Equal(line.IsAccounted, line.Basis != AccountingBasis.None);
        });
        Assert.True(result.Kit.State == KitState.Complete || result.Kit.Reasons.Count > 0);
        Assert.False(result.PolicyDigest.IsEmpty);
        Assert.Equal(result.Lines.Count(line => !line.IsAccounted), result.ChaseList.Count);
        string all = Describe(result).ToUpperInvariant();
        Assert.DoesNotContain("MISSING", all, StringComparison.Ordinal);
    }

    [Property]
    public void Reconciling_many_kits_in_one_pass_equals_reconciling_each(ShiftCase shift)
    {
        World world = shift.ToWorld();
        world.Sight("T2", "K1-9", at: World.End).Quarantine("T4", World.End).StandsNearby(World.K9, -5, 9);
        World other = (shift with { Draws = [.. shift.Draws.Select(static draw => draw with { Antenna = 3 - draw.Antenna })] }).ToWorld();
        ReconciliationInput input = world.Input(
            world.Session(), other.Session("S2", World.K2), other.Session("S3", [World.K2, World.K1]), other.Session("S4", World.K2, world.Reads));
        var reconciler = new Reconciler(world.Policy);
        KitId[] kits = [World.K1, World.K2, World.K9];
        string[] together = [.. reconciler.ReconcileAll(input, kits).Select(DescribeAll)];
        string[] apart = [.. kits.Select(kit => DescribeAll(reconciler.Reconcile(new ReconciliationInput
        {
            Kits = input.Kits,
            Subject = kit,
            Sessions = input.Sessions,
            Tags = input.Tags,
            Inventory = input.Inventory,
            Calibration = input.Calibration,
            History = input.History,
            AsOf = input.AsOf,
        })))];

        Assert.Equal(apart, together);

        static string DescribeAll(ReconciliationResult result) => Describe(result) + string.Join('\n', result.Findings.Select(finding => finding.ToString()))
            + string.Join('\n', result.Inputs.Select(digest => digest.ToString())) + string.Join('\n', result.Sessions.Select(summary => summary.Session.Id));
    }

    /// <summary>The properties above prove little if the drawn shifts never get complete or never fail: every state must occur.</summary>
    [Fact]
    public void The_drawn_shifts_reach_every_kit_state_and_every_line_state()
    {
        var kits = new HashSet<KitState>();
        var lines = new HashSet<LineState>();
        foreach (ShiftCase shift in ShiftCase.Arbitrary().Generator.Sample(600))
        {
            ReconciliationResult result = shift.ToWorld().Reconcile();
            kits.Add(result.Kit.State);
            lines.UnionWith(result.Lines.Select(line => line.State));
        }

        Assert.Equal(Enum.GetValues<KitState>().Order(), kits.Order());
        Assert.Equal(Enum.GetValues<LineState>().Order(), lines.Order());
    }

    internal static string Describe(ReconciliationResult result) => string.Join('\n',
        result.Lines.Select(line => string.Create(CultureInfo.InvariantCulture, $"{line} other {string.Join(',', line.OtherBases)} looks {line.Evidence.LookCount} because {string.Join("; ", line.Reasons)} next {line.Next}"))
            .Append(result.Kit.ToString())
            .Concat(result.Kit.Reasons.Select(reason => reason.ToString())));

    private static void AssertNoHigher(IReadOnlyList<int> ranks, World less)
    {
        int i = 0;
        foreach (int rank in ShiftCase.Ranks(less.Reconcile()))
        {
            Assert.True(rank <= ranks[i++], $"rank {i} rose");
        }
    }
}
