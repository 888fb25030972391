using System;
using MathNet.Numerics;
using MathNet.Numerics.Distributions;
using ToolLedger.Statistics;
using Xunit;

namespace ToolLedger.Tests.Statistics;

/// <summary>The functions over a grid against a general-purpose library, MathNet.Numerics 5.0.0 (MIT), which shares no code with them. It promises 10 digits and more.</summary>
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

    /// <summary>Relative where the value is large, absolute below 1: the peer's own tails are no better.</summary>
    private static void Near(double peer, double own, double error) =>
        Assert.True(Math.Abs(peer - own) <= error * Math.Max(1, Math.Abs(peer)), $"{own:R}, the peer says {peer:R}");
}
