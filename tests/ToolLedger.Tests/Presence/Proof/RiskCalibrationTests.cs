using System.Linq;
using ToolLedger.Presence;
using ToolLedger.Statistics;
using Xunit;

namespace ToolLedger.Tests.Presence.Proof;

/// <summary>What the verdicts claim, on kits whose truth is known: 1 % of tools absent (ours), drawn from the model or from another one inside the robustness box. Bounds are Clopper and Pearson's, 1 % divided by the number of strata.</summary>
public sealed class RiskCalibrationTests(RiskRun run) : IClassFixture<RiskRun>
{
    private const double Limit = 0.001;

    [Fact]
    public void At_the_models_own_parameters_the_risk_of_a_kit_is_within_the_limit()
    {
        for (int i = 0; i < run.Strata.Count; i++)
        {
            RiskTally tally = run.Tallies[i];
            if (run.Strata[i].IsOwnTruth)
            {
                // A short run can only fail to contradict the claim; from 60,000 kits on it proves it.
                double bound = run.IsLong ? Upper(tally.WrongKits, tally.Kits, run.Confidence) : Lower(tally.WrongKits, tally.Kits, run.Confidence);
                Assert.True(bound <= Limit, $"{run.Strata[i].Name}: {tally.WrongKits} of {tally.Kits} kits");
            }
        }
    }

    [Fact]
    public void At_the_corners_of_the_box_nothing_contradicts_the_claim()
    {
        for (int i = 0; i < run.Strata.Count; i++)
        {
            RiskTally tally = run.Tallies[i];
            Assert.True(Lower(tally.WrongKits, tally.Kits, run.Confidence) <= Limit, $"{run.Strata[i].Name}: {tally.WrongKits} of {tally.Kits} kits");
        }
    }

    [Fact]
    public void Tools_that_are_not_there_are_accounted_for_no_oftener_than_the_exact_chance_says()
    {
        for (int i = 0; i < run.Strata.Count; i++)
        {
            RiskTally tally = run.Tallies[i];
            Assert.True(Lower(tally.AbsentAccounted, tally.AbsentTools, run.Confidence) <= ExactAbsent(run.Strata[i]), $"{run.Strata[i].Name}: {tally.AbsentAccounted} of {tally.AbsentTools}");
        }
    }

    // Without errors and without open lines a run would prove nothing.
    [Fact]
    public void The_run_has_strays_that_pass_and_lines_that_stay_open()
    {
        Assert.True(run.Tallies.Sum(static tally => tally.AbsentAccounted) > 0);
        Assert.True(run.Tallies.Sum(static tally => tally.ThereOpen) > 0);
        Assert.True(run.Tallies.Sum(static tally => tally.CompleteKits) > run.Kits);
    }

    internal static double Upper(int events, int trials, double confidence) => BinomialDistribution.UpperLimit(events, trials, confidence);

    internal static double ExactAbsent(RiskStratum stratum)
    {
        PassLooks[] passes = [.. Enumerable.Repeat(new PassLooks(RiskStratum.Looks, 0), stratum.Passes)];
        return stratum.Policy.ChanceAccountedWhenAbsent(passes, stratum.Lines);
    }

    private static double Lower(int events, int trials, double confidence) => BinomialDistribution.LowerLimit(events, trials, confidence);
}
