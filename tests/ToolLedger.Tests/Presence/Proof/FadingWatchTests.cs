using System;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using MathNet.Numerics.LinearAlgebra;
using ToolLedger.Presence;
using Xunit;

namespace ToolLedger.Tests.Presence.Proof;

/// <summary>Mean run lengths of a fading watch, held against three ways that share nothing with the library's: a linear solver of MathNet.Numerics 5.0.0 (MIT), a closed sum, and simulation.</summary>
public sealed class FadingWatchTests
{
    [Fact]
    public void Mean_run_lengths_solve_the_chain_that_a_general_purpose_library_solves()
    {
        foreach (double miss in (double[])[0.02, 0.05, 0.15, 0.5, 0.9])
        {
            foreach ((int up, int limit) in ((int, int)[])[(1, 1), (1, 6), (2, 9), (5, 21), (10, 33), (10, 44), (40, 30), (7, 120)])
            {
                double peer = Solved(miss, up, limit), own = new TagFadingWatch(up, limit).MeanPassesToSignal(miss);

                // The solver subtracts and loses as many digits as the mean has.
                Assert.True(peer > 1e9 || Math.Abs(own - peer) <= 1e-6 * peer, $"miss {miss}, +{up}, limit {limit}: {own}, the peer says {peer}");
            }
        }
    }

    // With one step up the mean is a closed sum of positive terms (mean time of a birth-death chain from a state to the next one; textbook, from memory): t(0) = 1/p, t(s) = 1/p + q/p t(s - 1).
    [Theory]
    [InlineData(0.05, 40)]
    [InlineData(0.001, 90)]
    [InlineData(0.4, 700)]
    [InlineData(0.9, 1000)]
    public void Mean_run_lengths_keep_their_digits_however_long_they_are(double miss, int limit)
    {
        double step = 1 / miss, sum = step;
        for (int s = 1; s < limit; s++)
        {
            step = (1 / miss) + ((1 - miss) / miss * step);
            sum += step;
        }

        Assert.Equal(1, new TagFadingWatch(1, limit).MeanPassesToSignal(miss) / sum, 1e-10);
    }

    [Property(MaxTest = 60)]
    public Property A_higher_limit_is_never_reached_sooner_and_no_mean_is_no_number() =>
        Prop.ForAll(Gen.Choose(1, 999_999).ToArbitrary(), Gen.Choose(1, 40).ToArbitrary(), Gen.Choose(1, 150).ToArbitrary(), static (parts, up, limit) =>
        {
            double lower = new TagFadingWatch(up, limit).MeanPassesToSignal(parts / 1e6), higher = new TagFadingWatch(up, limit + 1).MeanPassesToSignal(parts / 1e6);
            return lower >= 1 && higher >= lower * (1 - 1e-12);
        });

    [Theory]
    [InlineData(0.05, 0.15, 900)]
    [InlineData(0.01, 0.05, 5000)]
    [InlineData(0.2, 0.3, 200)]
    [InlineData(0.001, 0.4, 1e6)]
    [InlineData(0.1, 0.9, 1)]
    public void A_watch_has_the_lowest_limit_that_keeps_the_stated_rate_of_false_alarms(double usual, double faded, double mean)
    {
        TagFadingWatch watch = TagFadingWatch.For(usual, faded, mean);

        int lowest = Enumerable.Range(1, TagFadingWatch.MaxLimit).First(limit => new TagFadingWatch(watch.Up, limit).MeanPassesToSignal(usual) >= mean);
        Assert.Equal(lowest, watch.Limit);
        Assert.True(watch.MeanPassesToSignal(faded) < watch.MeanPassesToSignal(usual) || lowest == 1);
    }

    // The run lengths of simulated tags: their mean has a standard error of its spread over the root of their number; four of them are allowed.
    [Theory]
    [InlineData(0.05)]
    [InlineData(0.15)]
    [InlineData(0.4)]
    public void Simulated_tags_are_called_fading_after_as_many_passes_on_average(double miss)
    {
        var watch = new TagFadingWatch(10, 33);
        var chance = new ModelSampler(DetectionModel.Example, [1], seed: 17);
        double[] lengths = new double[4000];
        for (int run = 0; run < lengths.Length; run++)
        {
            for (int sum = 0; !watch.IsFading(sum); lengths[run]++)
            {
                sum = watch.Next(sum, isRead: chance.Unit() >= miss);
            }
        }

        double mean = lengths.Average(), error = Math.Sqrt(lengths.Sum(length => (length - mean) * (length - mean))) / lengths.Length;
        Assert.InRange(watch.MeanPassesToSignal(miss), mean - (4 * error), mean + (4 * error));
    }

    private static double Solved(double miss, int up, int limit)
    {
        Matrix<double> chain = Matrix<double>.Build.DenseIdentity(limit);
        for (int s = 0; s < limit; s++)
        {
            chain[s, Math.Max(0, s - 1)] -= 1 - miss;
            if (s + up < limit)
            {
                chain[s, s + up] -= miss;
            }
        }

        return chain.Solve(Vector<double>.Build.Dense(limit, 1))[0];
    }
}
