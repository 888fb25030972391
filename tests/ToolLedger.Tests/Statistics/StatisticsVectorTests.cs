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

    private static int Count(JsonElement vector, string name) => (int)VectorFile.Number(vector, name);
}
