using System;
using System.Linq;
using System.Text.Json;
using ToolLedger.Statistics;
using Xunit;

namespace ToolLedger.Tests.Statistics;

/// <summary>Worked examples of published statistics, each at its tolerance; the source of each stands beside it in the files.</summary>
public sealed class StatisticsVectorTests
{
    private static readonly VectorFile Reads = new("tests", "ToolLedger.Tests", "Statistics", "Data", "statistics.json");
    private static readonly VectorFile Calibration = new("tests", "ToolLedger.Tests", "Calibration", "Data", "calibration.json");

    [Fact]
    public void Lower_limit_of_a_detection_rate() => Assert.All(Reads.Of("pod_lower_bound"), static vector =>
        VectorFile.Close(vector, BinomialDistribution.LowerLimit(Count(vector, "hits"), Count(vector, "n"), VectorFile.Number(vector, "confidence"))));

    [Fact]
    public void Lower_limit_of_an_observed_reliability() => Assert.All(Calibration.Of("observed_reliability_lower"), static vector =>
        VectorFile.Close(vector, BinomialDistribution.LowerLimit(Count(vector, "in_tolerance"), Count(vector, "tested"), VectorFile.Number(vector, "confidence"))));

    [Fact]
    public void Interval_test_by_binomial_tails() => Assert.All(Calibration.Of("interval_test_binomial"), static vector =>
    {
        int k = Count(vector, "in_tolerance");
        int n = Count(vector, "tested");
        VectorFile.Close(vector, BinomialDistribution.AtMost(k, n, VectorFile.Number(vector, "target")), "p_at_most");
        VectorFile.Close(vector, BinomialDistribution.AtLeast(k, n, VectorFile.Number(vector, "target")), "p_at_least");
    });

    [Fact]
    public void Chance_to_pass_a_demonstration() => Assert.All(Reads.Of("demo_pass_probability"), static vector =>
        VectorFile.Close(vector, BinomialDistribution.AtMost(Count(vector, "misses_allowed"), Count(vector, "n"), 1 - VectorFile.Number(vector, "true_pod"))));

    [Fact]
    public void Smallest_demonstration() => Assert.All(Reads.Of("demo_sample_size"), static vector =>
    {
        int allowed = Count(vector, "misses_allowed");
        double chance = 1 - VectorFile.Number(vector, "pod");
        int n = Enumerable.Range(allowed + 1, 5000).First(n => BinomialDistribution.AtMost(allowed, n, chance) <= 1 - VectorFile.Number(vector, "confidence"));
        VectorFile.Close(vector, n);
    });

    [Fact]
    public void Waiting_for_several_reads() => Assert.All(Reads.Of("neg_binomial_cdf_trials"), static vector =>
        VectorFile.Close(vector, BinomialDistribution.AtLeast(Count(vector, "reads_needed"), Count(vector, "rounds"), VectorFile.Number(vector, "p_read"))));

    [Fact]
    public void All_rounds_missed_when_the_rate_is_uncertain() => Assert.All(Reads.Of("beta_binomial_all_missed"), static vector =>
    {
        double a = VectorFile.Number(vector, "a");
        double b = VectorFile.Number(vector, "b");
        double rounds = VectorFile.Number(vector, "rounds");
        VectorFile.Close(vector, Elementary.Exp(BetaFunction.LogBeta(a, b + rounds) - BetaFunction.LogBeta(a, b)), "predictive");
        VectorFile.Close(vector, Elementary.Pow(b / (a + b), rounds), "plug_in");
    });

    [Fact]
    public void Exact_two_sided_limits_of_a_rate() => Assert.All(Reads.Of("clopper_pearson"), static vector =>
    {
        (int x, int n, double each) = (Count(vector, "x"), Count(vector, "n"), 1 - ((1 - VectorFile.Number(vector, "confidence")) / 2));
        VectorFile.Close(vector, BinomialDistribution.LowerLimit(x, n, each), 0);
        VectorFile.Close(vector, BinomialDistribution.UpperLimit(x, n, each), 1);
    });

    // The prior of the learning step: half a read and half a miss. The rule for the ends is that of the vectors.
    [Fact]
    public void Limits_by_the_prior_of_half_a_read_and_half_a_miss() => Assert.All(Reads.Of("jeffreys"), static vector =>
    {
        (int x, int n, double tail) = (Count(vector, "x"), Count(vector, "n"), (1 - VectorFile.Number(vector, "confidence")) / 2);
        VectorFile.Close(vector, x == 0 ? 0 : BetaFunction.Quantile(tail, x + 0.5, n - x + 0.5), 0);
        VectorFile.Close(vector, x == n ? 1 : BetaFunction.Quantile(1 - tail, x + 0.5, n - x + 0.5), 1);
    });

    [Fact]
    public void Upper_limit_where_nothing_was_seen() => Assert.All(Reads.Of("zero_event_upper95"), static vector =>
        VectorFile.Close(vector, BinomialDistribution.UpperLimit(0, Count(vector, "n"), VectorFile.Number(vector, "confidence")), "exact"));

    // At p 0.9 and 1e-6 six rounds are exact equality, which no rounding may break.
    [Fact]
    public void Rounds_until_a_tag_is_hardly_missed() => Assert.All(Reads.Of("rounds_for_detection"), static vector =>
    {
        (double read, double allowed) = (VectorFile.Number(vector, "p_read"), VectorFile.Number(vector, "delta"));
        VectorFile.Close(vector, Enumerable.Range(1, 100).First(n => BinomialDistribution.Exactly(0, n, read) <= allowed * (1 + 1e-12)), "rounds_needed");
    });

    [Fact]
    public void Level_of_each_tool_for_that_of_a_kit() => Assert.All(Reads.Of("family_level"), static vector =>
    {
        int tools = Count(vector, "n_tools");
        (double level, double read) = (VectorFile.Number(vector, "family_alpha"), VectorFile.Number(vector, "p_read"));
        int rounds = Enumerable.Range(1, 100).First(n => BinomialDistribution.Exactly(0, n, read) <= level / tools);
        VectorFile.Close(vector, rounds, "rounds_bonferroni");
        VectorFile.Close(vector, PoissonBinomial.Any([.. Enumerable.Repeat(BinomialDistribution.Exactly(0, rounds, read), tools)]), "p_any_false_missing");
    });

    [Fact]
    public void Discordant_pairs_by_tails_of_the_binomial_and_normal_distributions() => Assert.All(Reads.Of("mcnemar"), static vector =>
    {
        (int b, int c) = (Count(vector, "b"), Count(vector, "c"));
        VectorFile.Close(vector, 2 * BinomialDistribution.AtMost(Math.Min(b, c), b + c, 0.5), "exact_two_sided");
        VectorFile.Close(vector, 2 * NormalDistribution.Above(Math.Abs(b - c) / Math.Sqrt(b + c)), "p");
        VectorFile.Close(vector, 2 * NormalDistribution.Above((Math.Abs(b - c) - 1) / Math.Sqrt(b + c)), "p_corrected");
    });

    private static int Count(JsonElement vector, string name) => (int)VectorFile.Number(vector, name);
}
