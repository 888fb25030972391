using System;
using System.Linq;
using System.Text.Json;
using FsCheck.Xunit;
using MathNet.Numerics;
using ToolLedger.Presence;
using ToolLedger.Statistics;
using ToolLedger.Tests.Statistics;
using Xunit;

namespace ToolLedger.Tests.Presence;

/// <summary>The detection model: its probabilities against worked examples and against MathNet.Numerics 5.0.0 (MIT), and what holds for any counts.</summary>
public sealed class DetectionModelTests
{
    private static readonly VectorFile Vectors = new("tests", "ToolLedger.Tests", "Statistics", "Data", "statistics.json");

    [Fact]
    public void Beta_binomial_probabilities() => Assert.All(Vectors.Of("beta_binomial_pmf"), static vector =>
    {
        int n = (int)VectorFile.Number(vector, "n");
        var model = new DetectionModel(0, Rate(vector), 0.05m, Rate(vector));
        double[] all = BetaBinomial.LogAll(n, VectorFile.Number(vector, "a"), VectorFile.Number(vector, "b"));
        for (int k = 0; k <= n; k++)
        {
            double expected = vector.GetProperty("expected")[k].GetDouble();
            Assert.Equal(expected, Math.Exp(model.LogPresent(n, k)), 1e-9 * expected);
            Assert.Equal(expected, Math.Exp(model.LogStray(n, k)), 1e-9 * expected);
            Assert.Equal(expected, Math.Exp(all[k]), 1e-9 * expected);
        }
    });

    [Fact]
    public void A_tag_that_is_there_is_missed_throughout_as_often_as_the_uncertain_rate_says() => Assert.All(Vectors.Of("beta_binomial_all_missed"), static vector =>
        VectorFile.Close(vector, Math.Exp(new DetectionModel(0, Rate(vector), 0.05m, Rate(vector)).LogPresent((int)VectorFile.Number(vector, "rounds"), 0)), "predictive"));

    [Fact]
    public void The_silence_of_a_kit_is_one_observation() => Assert.All(Vectors.Of("posterior_all_silent"), static vector =>
    {
        double missed = VectorFile.Number(vector, "tools") * VectorFile.Number(vector, "rounds") * Math.Log(1 - VectorFile.Number(vector, "p_read"));
        SilenceCauses causes = SilenceCauses.Of(VectorFile.Number(vector, "prior_kit_away"), VectorFile.Number(vector, "prior_reader_down"), missed, logIfAway: 0, isSilent: true);

        VectorFile.Close(vector, causes.KitAway, "kit_away_reader_up");
        VectorFile.Close(vector, causes.ReaderDown, "kit_present_reader_down");
        VectorFile.Close(vector, causes.Both, "both");
        VectorFile.Close(vector, causes.AllMissed, "kit_present_all_missed");
        VectorFile.Close(vector, causes.KitAway + causes.Both, "p_kit_away");
    });

    // A control tag heard in the window leaves the kit as the only common cause (read-statistics practice: a heard reference tag sends the reader's share to 0).
    [Fact]
    public void A_reader_that_was_heard_at_work_is_not_down()
    {
        SilenceCauses causes = SilenceCauses.Of(0.02, 0, 20 * Math.Log(0.1), logIfAway: 0, isSilent: true);

        Assert.Equal(0, causes.ReaderDown + causes.Both);
        Assert.InRange(causes.KitAway, 1 - 1e-15, 1);
    }

    [Fact]
    public void Something_read_rules_out_a_reader_that_is_down() =>
        Assert.Equal(0, SilenceCauses.Of(0.02, 0.5, -3, -900, isSilent: false).ReaderDown);

    [Property]
    public void The_causes_of_silence_are_probabilities_that_add_up(byte away, byte down, uint there, uint gone, bool silent)
    {
        SilenceCauses causes = SilenceCauses.Of(away / 255.0, down / 255.0, -(there % 5000.0), -(gone % 5000.0), silent);

        Assert.All((double[])[causes.AllMissed, causes.KitAway, causes.ReaderDown, causes.Both], static share => Assert.InRange(share, 0, 1));
        Assert.Equal(1, causes.AllMissed + causes.KitAway + causes.ReaderDown + causes.Both, 1e-12);
    }

    [Fact]
    public void Probabilities_agree_with_a_general_purpose_library()
    {
        foreach ((decimal a, decimal b) in ((decimal, decimal)[])[(2.5m, 2.5m), (8, 2), (0.6m, 8), (0.001m, 40), (900, 30)])
        {
            var model = new DetectionModel(0.1m, new BetaRate(a, b), 0.05m, new BetaRate(a, b));
            foreach (int n in (int[])[1, 7, 40, 333])
            {
                double sum = 0;
                for (int k = 0; k <= n; k++)
                {
                    double log = SpecialFunctions.BinomialLn(n, k) + SpecialFunctions.BetaLn((double)a + k, (double)b + n - k) - SpecialFunctions.BetaLn((double)a, (double)b);
                    Assert.Equal(log, model.LogStray(n, k), 1e-9 * Math.Max(1, Math.Abs(log)));
                    double there = (0.9 * Math.Exp(log)) + (k == 0 ? 0.1 : 0);
                    Assert.Equal(there, Math.Exp(model.LogPresent(n, k)), 1e-9 * there);
                    sum += Math.Exp(model.LogPresent(n, k));
                }

                Assert.Equal(1, sum, 1e-10);
            }
        }
    }

    // Zero inflation breaks monotony between no read and one: from how many looks a pass on was worked out apart from this library (lgamma of Python 3).
    [Theory]
    [InlineData(2.5, 2.5, 115)]
    [InlineData(8, 2, 11)]
    public void By_the_exact_posterior_one_read_speaks_less_for_a_tag_than_none_from_so_many_looks_on(double a, double b, int looks)
    {
        var model = new DetectionModel(0.05m, new BetaRate((decimal)a, (decimal)b), 0.05m, new BetaRate(0.6m, 8));

        Assert.True(Odds(model, looks - 1, 0) <= Odds(model, looks - 1, 1));
        Assert.True(Odds(model, looks, 0) > Odds(model, looks, 1));
        PassLooks[] silentToo = [new(20, 9), new(looks, 0)];
        Assert.True(model.LogOdds(silentToo, 0.01, isBounded: true) < model.LogOdds(silentToo, 0.01, isBounded: false));
    }

    [Property(Arbitrary = [typeof(ModelDraws)])]
    public void From_the_first_read_on_another_read_never_lowers_the_bounded_odds(DetectionModel model, PassLooks[] passes, int draw)
    {
        if (ModelDraws.IsRead(passes) && ModelDraws.WithOneMoreRead(passes, draw) is { } more)
        {
            double before = model.LogOdds(passes, 0.01, isBounded: true), after = model.LogOdds(more, 0.01, isBounded: true);
            Assert.True(after >= before - (1e-11 * Math.Max(1, Math.Abs(before))), $"{before:R} to {after:R}");
        }
    }

    [Property(Arbitrary = [typeof(ModelDraws)])]
    public void The_bound_only_ever_adds_caution_and_no_figure_is_no_number(DetectionModel model, PassLooks[] passes)
    {
        double exact = model.LogOdds(passes, 0.01, isBounded: false), bounded = model.LogOdds(passes, 0.01, isBounded: true);

        Assert.True(double.IsFinite(exact) && bounded <= exact);
        Assert.InRange(model.Posterior(passes, 0.01, isBounded: true), 0, 1);
    }

    [Theory]
    [InlineData(65535, 0)]
    [InlineData(65535, 1)]
    [InlineData(65535, 32768)]
    [InlineData(65535, 65535)]
    [InlineData(1, 1)]
    [InlineData(0, 0)]
    public void Extreme_counts_give_probabilities(int looks, int reads)
    {
        foreach (DetectionModel model in (DetectionModel[])
            [
                DetectionModel.Example, new(0, new BetaRate(1_000_000, 0.001m), 0.000001m, new BetaRate(0.001m, 1_000_000)), new(0.9m, new BetaRate(0.001m, 0.001m), 1, new BetaRate(0.001m, 0.001m)),
            ])
        {
            PassLooks[] passes = [new(looks, reads), new(looks, 0), new(0, 0)];
            Assert.InRange(model.Posterior(passes, 0.01, isBounded: true), 0, 1);
            Assert.InRange(model.Posterior(passes, 0.999999, isBounded: false), 0, 1);
            PresenceDecision decision = new StatedRiskPolicy { Model = model }.Decide([new(looks, reads)], 20);
            Assert.InRange(decision.Risk, 0, 1);
            Assert.InRange(decision.Cut, 0, 1);
        }
    }

    [Fact]
    public void A_model_whose_strays_answer_better_is_refused()
    {
        Assert.Throws<ArgumentException>(() => new DetectionModel(0.05m, new BetaRate(1, 2), 0.05m, new BetaRate(1.1m, 2)));
        Assert.Throws<ArgumentException>(() => new DetectionModel(0.05m, new BetaRate(1, 2), 0.05m, new BetaRate(1, 1.9m)));
        Assert.Throws<ArgumentOutOfRangeException>(() => new DetectionModel(0.05m, new BetaRate(1, 2), 0, new BetaRate(1, 2)));
        Assert.Throws<ArgumentOutOfRangeException>(() => new DetectionModel(0.95m, new BetaRate(1, 2), 0.1m, new BetaRate(1, 2)));
        Assert.Throws<ArgumentOutOfRangeException>(() => new DetectionModel(0.05m, default, 0.1m, new BetaRate(1, 2)));
        Assert.Throws<ArgumentOutOfRangeException>(() => DetectionModel.Example.LogStray(4, 5));
    }

    [Fact]
    public void Any_and_every_number_of_wrong_lines()
    {
        Assert.All(Vectors.Of("poisson_binomial"), static vector =>
        {
            double[] chances = [.. vector.GetProperty("inputs").GetProperty("p").EnumerateArray().Select(static p => p.GetDouble())];
            double[] pmf = new double[chances.Length + 1];
            PoissonBinomial.Exactly(chances, pmf);
            JsonElement expected = vector.GetProperty("expected").GetProperty("pmf");
            Assert.All(Enumerable.Range(0, pmf.Length), k => Assert.Equal(expected[k].GetDouble(), pmf[k], 1e-9 * expected[k].GetDouble()));
        });
        Assert.All(Vectors.Of("poisson_binomial_any"), static vector => VectorFile.Close(
            vector, PoissonBinomial.Any([.. vector.GetProperty("inputs").GetProperty("p_miss").EnumerateArray().Select(static p => p.GetDouble())]), "p_any"));
    }

    private static double Odds(DetectionModel model, int looks, int reads) => model.LogOdds([new(looks, reads)], 0.01, isBounded: false);

    private static BetaRate Rate(JsonElement vector) => new((decimal)VectorFile.Number(vector, "a"), (decimal)VectorFile.Number(vector, "b"));
}
