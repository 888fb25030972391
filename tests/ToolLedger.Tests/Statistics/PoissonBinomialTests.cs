using System;
using System.Linq;
using System.Numerics;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.IntegralTransforms;
using ToolLedger.Statistics;
using Xunit;

namespace ToolLedger.Tests.Statistics;

/// <summary>How many of several lines are wrong: against every combination, and against MathNet.Numerics 5.0.0 (MIT), by its binomial distribution where chances are equal and by its Fourier transform where not.</summary>
public sealed class PoissonBinomialTests
{
    [Property(MaxTest = 60)]
    public Property Every_combination_of_up_to_twelve_lines_adds_up_to_it() => Prop.ForAll(Chances(12).ToArbitrary(), static chances =>
    {
        double[] own = new double[chances.Length + 1], all = new double[chances.Length + 1];
        PoissonBinomial.Exactly(chances, own);
        for (int which = 0; which < 1 << chances.Length; which++)
        {
            double chance = 1;
            for (int i = 0; i < chances.Length; i++)
            {
                chance *= (which >> i & 1) == 1 ? chances[i] : 1 - chances[i];
            }

            all[BitOperations.PopCount((uint)which)] += chance;
        }

        return own.Zip(all).All(static pair => Math.Abs(pair.First - pair.Second) <= 1e-14 && pair.First is >= 0 and <= 1)
            && Math.Abs(PoissonBinomial.Any(chances) - (1 - all[0])) <= 1e-14 && PoissonBinomial.Any(chances) is >= 0 and <= 1;
    });

    [Fact]
    public void Equal_chances_are_the_binomial_distribution()
    {
        foreach (int n in (int[])[1, 12, 60, 500])
        {
            foreach (double p in (double[])[1e-6, 0.01, 0.3, 0.9])
            {
                double[] own = new double[n + 1];
                PoissonBinomial.Exactly([.. Enumerable.Repeat(p, n)], own);
                Assert.All(Enumerable.Range(0, n + 1), k => Assert.Equal(Binomial.PMF(p, n, k), own[k], 1e-12));
            }
        }
    }

    // The probabilities are the inverse transform of the characteristic function (Hong, Computational Statistics and Data Analysis 59, 2013; from memory).
    [Fact]
    public void Unequal_chances_are_the_inverse_transform_of_the_characteristic_function()
    {
        double[] chances = [.. Enumerable.Range(1, 300).Select(static i => Math.Pow(10, -4 + (4.0 * (i * 37 % 300) / 300)))];
        double[] own = new double[chances.Length + 1];
        PoissonBinomial.Exactly(chances, own);
        Complex[] points = [.. Enumerable.Range(0, own.Length).Select(l => chances.Aggregate(Complex.One, (product, p) => product * (1 - p + (p * Complex.FromPolarCoordinates(1, 2 * Math.PI * l / own.Length)))))];
        Fourier.Forward(points, FourierOptions.NoScaling);

        Assert.All(Enumerable.Range(0, own.Length), k => Assert.Equal(points[k].Real / own.Length, own[k], 1e-12));
    }

    [Fact]
    public void Tiny_risks_keep_their_digits()
    {
        Assert.Equal(1, PoissonBinomial.Any([1e-18, 2e-18, 3e-18]) / 6e-18, 1e-15);
        Assert.Equal(0, PoissonBinomial.Any([]));
        Assert.Equal(1, PoissonBinomial.Any([1e-9, 1]));
    }

    private static Gen<double[]> Chances(int most) => Gen.Frequency(
            (1, Gen.Elements(0.0, 1.0, 1e-300, 1e-12)), (6, Gen.Choose(0, 1_000_000).Select(static parts => parts / 1e6))).ArrayOf()
        .Select(chances => chances.Take(most).ToArray());
}
