using System;
using System.Linq;
using ToolLedger.Statistics;
using ToolLedger.Tests.Records;
using Xunit;

namespace ToolLedger.Tests.Presence.Proof;

/// <summary>
/// What the verdicts claim, on kits whose truth is known: 1 % of tools absent (ours), drawn from the model or from another one at a corner of the robustness box. Bounds are Clopper and Pearson's, 1 % divided by
/// the number of strata. The exact values beside them are plain sums over everything that may be read, which share nothing with the policy's recursion.
/// </summary>
public sealed class RiskCalibrationTests(RiskRun run) : IClassFixture<RiskRun>
{
    private const double Rounding = 1 + 1e-9;

    [Fact]
    public void At_the_models_own_parameters_the_risk_of_a_kit_is_within_the_limit() => Assert.All(run.All.Where(static pair => pair.Stratum.Truth.IsOwn), pair =>
    {
        (RiskStratum stratum, RiskTally tally) = pair;

        // A short run can only fail to contradict the claim; from 60,000 kits on it proves it.
        double bound = run.IsLong ? Upper(tally.WrongKits, tally.Kits) : Lower(tally.WrongKits, tally.Kits);
        Assert.True(bound <= stratum.Limit, $"{stratum.Name}: {tally.WrongKits} of {tally.Kits} kits");
    });

    [Fact]
    public void At_the_four_corners_of_the_box_nothing_contradicts_the_claim()
    {
        Assert.Equal(4, run.Strata.Where(static stratum => !stratum.Truth.IsOwn).Select(static stratum => (stratum.Truth.Obscured, stratum.Truth.Strays)).Distinct().Count());
        Assert.All(run.All, pair =>
        {
            (RiskStratum stratum, RiskTally tally) = pair;
            Assert.True(Lower(tally.WrongKits, tally.Kits) <= stratum.Limit, $"{stratum.Name}: {tally.WrongKits} of {tally.Kits} kits");
        });
    }

    [Fact]
    public void The_exact_risk_of_a_kit_is_within_the_limit_everywhere_in_the_box() => Assert.All(run.Strata, static stratum =>
    {
        Assert.True(stratum.KitRisk <= stratum.Limit * Rounding, $"{stratum.Name}: {stratum.KitRisk}");
        Assert.True(stratum.ChanceAccounted(isThere: false) <= stratum.WorstChance * Rounding, stratum.Name);
    });

    [Fact]
    public void Tools_that_are_not_there_are_accounted_for_no_oftener_than_the_recursion_says_at_the_worst_corner() => Assert.All(run.All, pair =>
    {
        (RiskStratum stratum, RiskTally tally) = pair;
        Assert.True(Lower(tally.AbsentAccounted, tally.AbsentTools) <= stratum.WorstChance, $"{stratum.Name}: {tally.AbsentAccounted} of {tally.AbsentTools}");
    });

    // The simulator, the policy's decisions and the sums meet: each share lies between the bounds of both sides.
    [Fact]
    public void Simulated_shares_agree_with_the_exact_ones() => Assert.All(run.All.Concat(run.Beyond.Zip(run.BeyondTallies)), pair =>
    {
        (RiskStratum stratum, RiskTally tally) = pair;
        Agree(stratum, "not there and accounted", tally.AbsentAccounted, tally.AbsentTools, stratum.ChanceAccounted(isThere: false));
        Agree(stratum, "there and open", tally.ThereOpen, tally.There, 1 - stratum.ChanceAccounted(isThere: true));
        Agree(stratum, "kits wrong", tally.WrongKits, tally.Kits, stratum.KitRisk);
    });

    // A box that could not be left would claim nothing.
    [Fact]
    public void Beyond_the_box_the_limit_may_be_broken() => Assert.Contains(run.Beyond, static stratum => stratum.KitRisk > 2 * stratum.Limit);

    // Without errors and without open lines a run would prove nothing.
    [Fact]
    public void The_run_has_strays_that_pass_and_lines_that_stay_open()
    {
        Assert.True(run.Tallies.Sum(static tally => tally.AbsentAccounted) > 0);
        Assert.True(run.Tallies.Sum(static tally => tally.ThereOpen) > 0);
        Assert.True(run.Tallies.Sum(static tally => tally.CompleteKits) > run.Kits);
        Assert.True(run.Tallies.Sum(static tally => tally.Lines) > 1_000_000);
    }

    [Fact]
    public void The_tables_of_the_documents_are_those_of_the_run()
    {
        string document = RepositoryFiles.ReadText("docs", "presence-calibration.md").ReplaceLineEndings("\n");

        Assert.Contains(RiskTables.Exact(run.Strata), document, StringComparison.Ordinal);
        if (run.Kits == RiskRun.DocumentedKits)
        {
            Assert.All(RiskTables.All(run), table => Assert.Contains(table, document, StringComparison.Ordinal));
            Assert.Contains(RiskTables.Summary(run), RepositoryFiles.ReadText("docs", "presence.md").ReplaceLineEndings("\n"), StringComparison.Ordinal);
        }
    }

    private void Agree(RiskStratum stratum, string what, int events, int trials, double exact) =>
        Assert.True(Lower(events, trials) <= exact && exact <= Upper(events, trials), $"{stratum.Name}, {what}: {events} of {trials}, not {exact}");

    private double Upper(int events, int trials) => BinomialDistribution.UpperLimit(events, trials, run.Confidence);

    private double Lower(int events, int trials) => BinomialDistribution.LowerLimit(events, trials, run.Confidence);
}
