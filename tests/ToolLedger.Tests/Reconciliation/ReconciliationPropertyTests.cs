using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Threading.Tasks;
using FsCheck.Xunit;
using ToolLedger.Custody;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Policies;
using ToolLedger.Presence;
using ToolLedger.Reconciliation;
using ToolLedger.Testing.Cases;
using ToolLedger.Testing.Generators;
using ToolLedger.Testing.Laws;
using Xunit;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>The properties of the trade's list, numbered as there, over generated shifts.</summary>
public sealed class ReconciliationPropertyTests(LawRun run) : IClassFixture<LawRun>
{
    [Fact]
    public void P01_Every_line_gets_one_conclusion_every_read_one_explanation_and_the_counts_add_up() => Holds(ReconciliationLaw.Partition, 100);

    [Fact]
    public void P02_Without_a_usable_session_nothing_rests_on_reads_and_an_open_line_keeps_the_kit_open() => Holds(ReconciliationLaw.SafeDefault, 100);

    [Fact]
    public void P03_Order_and_repetition_change_no_conclusion() => Holds(ReconciliationLaw.OrderAndRepetition, 100);

    [Fact]
    public void P04_Another_genuine_read_never_takes_a_line_from_accounted_and_touches_only_its_own_line() => Holds(ReconciliationLaw.EvidenceHelps, 40);

    [Fact]
    public void P05_Less_supporting_evidence_a_dead_antenna_or_an_unknown_clock_never_raises_a_rank() => Holds(ReconciliationLaw.DoubtIsMonotone, 80);

    [Fact]
    public void P06_Missing_lost_found_and_released_are_never_derived() => Holds(ReconciliationLaw.NoInvention, 100);

    [Fact]
    public void P07_A_surplus_is_never_complete() => Holds(ReconciliationLaw.SurplusMatters, 95);

    [Fact]
    public void P08_What_comes_later_changes_no_answer_about_an_earlier_instant() => Holds(ReconciliationLaw.AsOf, 100);

    [Fact]
    public void P11_Calibration_never_changes_accounting_nor_accounting_calibration() => Holds(ReconciliationLaw.TwoAnswers, 100);

    [Fact]
    public void P12_The_same_facts_give_the_same_answer_whatever_the_culture_and_the_question_before() => Holds(ReconciliationLaw.Determinism, 100);

    [Fact]
    public void P12_A_tag_that_says_a_live_tools_identity_in_other_bits_is_a_conflict() => Holds(ReconciliationLaw.OtherWords, 40);

    [Fact]
    public void P13_Every_conclusion_says_why_and_every_open_one_what_would_settle_it() => Holds(ReconciliationLaw.Reasons, 100);

    /// <summary>The laws hold for any policy: here for policies drawn over the whole range of every setting.</summary>
    [Property(MaxTest = 40, Arbitrary = [typeof(PolicyGenerators)])]
    public void The_laws_hold_under_any_site_policy(SitePolicy site, ulong seed)
    {
        ReconciliationPolicy policy = site.Reconciliation;
        LawReport report = ReconciliationLaws.Check(new Reconciler(policy).Reconcile, new LawSettings { Policy = policy, CaseCount = 25, Seed = seed });

        Assert.True(report.Holds, report.ToString());
    }

    /// <summary>Policies drawn over their ranges account for little. These account for as much as the default one, and on what it does not accept.</summary>
    [Theory]
    [InlineData("seals, and sightings that name no kit")]
    [InlineData("witnesses")]
    [InlineData("a stated risk")]
    public void P05_Less_evidence_settles_nothing_at_a_site_that_goes_by(string what)
    {
        ReconciliationPolicy policy = what switch
        {
            "witnesses" => new ReconciliationPolicy { Inventory = new InventoryPolicy { SightingWitnessNeeded = true, CountWitnessNeeded = true, FurtherIdentificationAccepted = true } },
            "a stated risk" => new ReconciliationPolicy { Presence = new StatedRiskPolicy { Model = new DetectionModel(0.05m, new BetaRate(1, 30), 0.01m, new BetaRate(0.02m, 60)), KitRiskLimit = 0.05m, LineRiskMax = 0.2m } },
            _ => new ReconciliationPolicy { Inventory = new InventoryPolicy { SealsAccepted = true, SealAgeMax = TimeSpan.FromDays(30), SightingsWithoutKitAccepted = true } },
        };
        LawReport report = ReconciliationLaws.Check(new Reconciler(policy).Reconcile, LawRun.Settings(policy) with { Laws = [ReconciliationLaw.DoubtIsMonotone] });

        Assert.True(report.Holds, report.ToString());
    }

    // A receipt that the receiver signed supports its line; one that nobody signed supports nothing. Neither settles a line by being gone.
    [Property(MaxTest = 1000, Arbitrary = [typeof(AnyReconciliationCase)])]
    public void P05_Without_its_receipt_a_line_that_was_open_stays_open(ReconciliationCase facts)
    {
        var policy = new ReconciliationPolicy();
        var reconciler = new Reconciler(policy);
        ReconciliationResult with = reconciler.Reconcile(facts.ToInput(policy));
        foreach (ToolReceipt receipt in facts.Custody.OfType<ToolReceipt>())
        {
            CustodyEntry[] less = [.. facts.Custody.Where(entry => entry != receipt && !(entry is ReceiptClosure closure && closure.Receipt == receipt.Id))];
            ReconciliationResult without = reconciler.Reconcile((facts with { Custody = less }).ToInput(policy));

            Assert.DoesNotContain(with.AllLines.Zip(without.AllLines), pair => pair.Second.IsAccounted && !pair.First.IsAccounted && pair.First.State != LineState.Conflict);
            Assert.False(with.Kit.State != KitState.Complete && without.Kit.State == KitState.Complete && with.AllLines.All(line => line.Basis != AccountingBasis.Record));
        }
    }

    [Property(MaxTest = 200, Arbitrary = [typeof(AnyReconciliationCase)])]
    public void P12_Neither_the_cultures_of_real_hosts_nor_threads_change_anything(ReconciliationCase facts)
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        var reconciler = new Reconciler(new ReconciliationPolicy());
        ReconciliationInput input = facts.ToInput(new ReconciliationPolicy());
        List<string> texts = [.. new[] { "", "tr-TR", "ar-SA", "de-DE" }.Select(name =>
        {
            try
            {
                CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(name);
                return DescribeWhole(reconciler.Reconcile(input));
            }
            finally
            {
                CultureInfo.CurrentCulture = before;
            }
        })];
        string[] together = new string[4];
        Parallel.For(0, together.Length, i => together[i] = DescribeWhole(reconciler.Reconcile(input)));

        Assert.Single(texts.Concat(together).Distinct(StringComparer.Ordinal));
    }

    [Property(MaxTest = 200, Arbitrary = [typeof(AnyReconciliationCase)])]
    public void Reconciling_many_kits_in_one_pass_equals_reconciling_each(ReconciliationCase facts)
    {
        var reconciler = new Reconciler(new ReconciliationPolicy());
        KitId[] kits = [.. facts.Manifests.Where(manifest => manifest.EffectiveFrom <= facts.AsOf).Select(manifest => manifest.Id).Distinct()];
        ReconciliationInput input = facts.ToInput(new ReconciliationPolicy());
        string[] together = [.. reconciler.ReconcileAll(input, kits).Select(DescribeWhole)];
        string[] apart = [.. kits.Select(kit => DescribeWhole(reconciler.Reconcile((facts with { Subject = kit }).ToInput(new ReconciliationPolicy()))))];

        Assert.Equal(apart, together);
    }

    internal static string Describe(ReconciliationResult result) => string.Join('\n',
        result.Lines.Select(line => string.Create(CultureInfo.InvariantCulture, $"{line} other {string.Join(',', line.OtherBases)} looks {line.Evidence.LookCount} because {string.Join("; ", line.Reasons)} next {line.Next}"))
            .Append(result.Kit.ToString())
            .Concat(result.Kit.Reasons.Select(reason => reason.ToString())));

    private static string DescribeWhole(ReconciliationResult result) => string.Join('\n',
        new[] { Describe(result) }
            .Concat(result.Findings.Select(finding => finding.Reason.ToString()))
            .Concat(result.Reads.Select(read => string.Create(CultureInfo.InvariantCulture, $"{read.Tag} {read.Kind} {read.ReadCount} {read}")))
            .Concat(result.Inputs.Select(input => input.ToString())));

    /// <summary>The law holds, and enough of the cases had something that it is about.</summary>
    private void Holds(ReconciliationLaw law, int percentAtLeast)
    {
        LawOutcome outcome = run.Report.Of(law);

        Assert.True(outcome.Holds, run.Report.Seed + "\n" + outcome);
        Assert.True(outcome.AppliedCount * 100L >= outcome.CaseCount * (long)percentAtLeast, outcome.ToString());
    }
}
