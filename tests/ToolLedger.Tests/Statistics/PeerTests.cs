using System;
using System.IO;
using System.Linq;
using System.Reflection;
using MathNet.Numerics;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;
using ToolLedger.Statistics;
using ToolLedger.Tests.Architecture;
using Xunit;

namespace ToolLedger.Tests.Statistics;

/// <summary>
/// The functions over a grid against a general-purpose library, MathNet.Numerics 5.0.0 (MIT), which shares no code with them. It promises 10 digits and more. Exponential and logarithm are held against those of
/// the platform. Mean run lengths and sums of unequal chances have classes of their own.
/// </summary>
public sealed class PeerTests
{
    [Fact]
    public void Error_functions_and_normal_distribution()
    {
        for (int step = -600; step <= 600; step++)
        {
            double x = step / 100.0;
            Near(SpecialFunctions.Erf(x), ErrorFunction.Erf(x), 1e-12);
            Near(SpecialFunctions.Erfc(x), ErrorFunction.Complement(x), 1e-12);
            Near(Normal.CDF(0, 1, x), NormalDistribution.AtMost(x), 1e-11);
            Near(Normal.PDF(0, 1, x), NormalDistribution.Density(x), 1e-12);
        }

        for (int step = 1; step < 1000; step++)
        {
            Near(Normal.InvCDF(0, 1, step / 1000.0), NormalDistribution.Quantile(step / 1000.0), 1e-9);
        }
    }

    [Fact]
    public void Gamma_and_beta_functions()
    {
        foreach (double a in (double[])[0.1, 0.5, 1, 2.5, 7, 30, 120, 900])
        {
            Near(SpecialFunctions.GammaLn(a), GammaFunction.LogGamma(a), 1e-11);
            foreach (double b in (double[])[0.2, 1, 3.5, 25, 400])
            {
                Near(SpecialFunctions.BetaLn(a, b), BetaFunction.LogBeta(a, b), 1e-10);
                for (int step = 1; step < 40; step++)
                {
                    Near(SpecialFunctions.BetaRegularized(a, b, step / 40.0), BetaFunction.Lower(step / 40.0, a, b), 1e-9);
                }
            }

            for (int step = 1; step < 40; step++)
            {
                Near(SpecialFunctions.GammaLowerRegularized(a, a * step / 20), GammaFunction.Lower(a, a * step / 20), 1e-9);
                Near(SpecialFunctions.GammaUpperRegularized(a, a * step / 20), GammaFunction.Upper(a, a * step / 20), 1e-9);
            }
        }
    }

    [Fact]
    public void Binomial_and_beta_distributions()
    {
        foreach (int n in (int[])[1, 5, 29, 63, 400])
        {
            for (int k = 0; k <= n; k += Math.Max(1, n / 13))
            {
                foreach (double p in (double[])[0.001, 0.05, 0.4, 0.9, 0.999])
                {
                    Near(Binomial.PMF(p, n, k), BinomialDistribution.Exactly(k, n, p), 1e-9);
                    Near(k == n ? 1 : Binomial.CDF(p, n, k), BinomialDistribution.AtMost(k, n, p), 1e-9); // the peer says not-a-number where k = n
                }
            }
        }

        foreach ((double a, double b) in (ReadOnlySpan<(double, double)>)[(0.5, 0.5), (2, 5), (60, 4), (45, 2), (300, 12)])
        {
            for (int step = 1; step < 20; step++)
            {
                Near(Beta.InvCDF(a, b, step / 20.0), BetaFunction.Quantile(step / 20.0, a, b), 1e-6);
            }
        }
    }

    [Fact]
    public void Exponentials_and_logarithms()
    {
        for (int step = -2000; step <= 2000; step++)
        {
            double x = step * 0.35;
            Relative(Math.Exp(x), Elementary.Exp(x), 5e-16);
            Near(Math.Exp(x / 700) - 1, Elementary.ExpMinus1(x / 700), 1e-15);
            Relative(Math.Exp(-0.3 * x / 100 * (x / 100)), Elementary.Gaussian(x / 100, 0.3), 4e-15);
            double positive = Math.Exp(x);
            Near(x, Elementary.Log(positive), 5e-16);
            Near(Math.Log(1 + (positive / 3)), Elementary.LogOnePlus(positive / 3), 1e-15);
            Relative(Math.Pow(positive, 0.37), Elementary.Pow(positive, 0.37), 1e-13);
        }
    }

    [Fact]
    public void Tails_and_parts_of_the_normal_distribution()
    {
        for (int step = -300; step <= 300; step++)
        {
            double z = step / 50.0;
            Near(Normal.CDF(0, 1, -z), NormalDistribution.Above(z), 1e-11);
            Near(Normal.CDF(0, 1, z + 0.7) - Normal.CDF(0, 1, z), NormalDistribution.Between(z, z + 0.7), 1e-11);
            double q = 0.5 * Math.Exp(-Math.Abs(z) * 4);
            Near(-Normal.InvCDF(0, 1, q), NormalDistribution.UpperQuantile(q), 1e-9);
            double x = Math.Abs(z) * 0.8;
            Relative(Math.Exp(x * x) * SpecialFunctions.Erfc(x), ErrorFunction.Scaled(x), 1e-10);
        }
    }

    [Fact]
    public void Other_tails_and_terms_of_counts()
    {
        foreach (int n in (int[])[1, 6, 40, 333])
        {
            for (int k = 0; k <= n; k += Math.Max(1, n / 11))
            {
                foreach (double p in (double[])[0.002, 0.2, 0.71, 0.98])
                {
                    Near(k == 0 ? 1 : 1 - Binomial.CDF(p, n, k - 1), BinomialDistribution.AtLeast(k, n, p), 1e-9);
                    Near(SpecialFunctions.BetaRegularized(n - k + 1.0, k + 1.0, 1 - p), BetaFunction.Upper(p, k + 1.0, n - k + 1.0), 1e-9);
                    if (k > 0 && k < n)
                    {
                        Relative(Math.Exp(SpecialFunctions.BinomialLn(n, k) + (k * Math.Log(p)) + ((n - k) * Math.Log(1 - p))), Deviance.BinomialTerm(k, n - k, p, 1 - p), 1e-10);
                    }
                }

                Near(k == 0 ? 0 : Beta.InvCDF(k, n - k + 1.0, 0.05), BinomialDistribution.LowerLimit(k, n, 0.95), 1e-6);
                Near(k == n ? 1 : Beta.InvCDF(k + 1.0, n - k, 0.95), BinomialDistribution.UpperLimit(k, n, 0.95), 1e-6);
                foreach ((double a, double b) in (ReadOnlySpan<(double, double)>)[(2.5, 2.5), (0.6, 8), (8, 2), (60, 400)])
                {
                    double log = ToolLedger.Statistics.BetaBinomial.LogExactly(k, n, a, b);
                    Near(MathNet.Numerics.Distributions.BetaBinomial.PMFLn(n, a, b, k), log, 1e-9);
                    Near(log, ToolLedger.Statistics.BetaBinomial.LogAll(n, a, b)[k], 1e-11);
                }
            }
        }

        foreach (double x in (double[])[0.3, 2, 17, 450])
        {
            foreach (double mean in (double[])[0.1, 1, 23, 700])
            {
                Near((x * Math.Log(x / mean)) + mean - x, Deviance.Of(x, mean), 1e-13);
            }

            Near(SpecialFunctions.GammaLn(x + 1) - ((x + 0.5) * Math.Log(x)) + x - (0.5 * Math.Log(2 * Math.PI)), GammaFunction.StirlingRemainder(x), 1e-10);
        }
    }

    [Fact]
    public void Integrals()
    {
        foreach (double scale in (double[])[0.01, 0.5, 3, 40])
        {
            Near(
                GaussLegendreRule.Integrate(x => Math.Sin(scale * x) * Math.Exp(-x), 0, 6, 1024), Quadrature.Integrate(x => Math.Sin(scale * x) * Math.Exp(-x), 0, 6, 1e-12), 1e-10);
            Near(DoubleExponentialTransformation.Integrate(x => 1 / (1 + (scale * x * x)), -2, 5, 1e-12), Quadrature.Integrate(x => 1 / (1 + (scale * x * x)), -2, 5, 1e-12), 1e-9);
        }
    }

    // Whoever adds a function adds its peer: each name has to be called in one of the classes that hold them.
    [Fact]
    public void Every_function_of_the_room_is_held_against_something_else()
    {
        string tests = Path.Combine(House.RootFolder(), "tests", "ToolLedger.Tests");
        string sources = string.Concat(((string[])["Statistics/PeerTests.cs", "Statistics/PoissonBinomialTests.cs", "Presence/Proof/FadingWatchTests.cs"]).Select(file => File.ReadAllText(Path.Combine(tests, file))));
        string[] functions =
        [
            .. from type in typeof(Elementary).Assembly.GetTypes()
               where type.Namespace == typeof(Elementary).Namespace && !type.IsNested
               from method in type.GetMethods(BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly)
               where (method.IsPublic || method.IsAssembly) && !method.IsSpecialName
               select $"{type.Name}.{method.Name}(",
        ];

        Assert.True(functions.Length > 30, $"{functions.Length} functions");
        Assert.All(functions.Except(["RunLength.Mean("]), function => Assert.Contains(function, sources, StringComparison.Ordinal));
        Assert.Contains("MeanPassesToSignal(", sources, StringComparison.Ordinal); // the one caller of RunLength.Mean
    }

    private static void Relative(double peer, double own, double error) => Assert.True(Math.Abs(peer - own) <= error * Math.Abs(peer), $"{own:R}, the peer says {peer:R}");

    /// <summary>Relative where the value is large, absolute below 1: the peer's own tails are no better.</summary>
    private static void Near(double peer, double own, double error) =>
        Assert.True(Math.Abs(peer - own) <= error * Math.Max(1, Math.Abs(peer)), $"{own:R}, the peer says {peer:R}");
}
