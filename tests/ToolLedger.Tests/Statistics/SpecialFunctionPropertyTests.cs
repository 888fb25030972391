using System;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ToolLedger.Statistics;

namespace ToolLedger.Tests.Statistics;

/// <summary>What the functions owe each other, whatever the arguments.</summary>
public sealed class SpecialFunctionPropertyTests
{
    [Property]
    public Property Log_undoes_exp() => Prop.ForAll(Between(-700, 700), static x => Near(Elementary.Log(Elementary.Exp(x)), x, 1e-13));

    [Property]
    public Property Exp_never_falls() =>
        Prop.ForAll(Between(-746, 710), Between(0, 1), static (x, step) => Elementary.Exp(x) <= Elementary.Exp(x + step));

    [Property]
    public Property The_tails_of_the_normal_distribution_add_up_to_one() =>
        Prop.ForAll(Between(-38, 38), static z => Near(NormalDistribution.AtMost(z) + NormalDistribution.Above(z), 1, 1e-15));

    [Property]
    public Property The_quantile_undoes_the_probability() =>
        Prop.ForAll(Between(-37, 5), static z => Near(NormalDistribution.Quantile(NormalDistribution.AtMost(z)), z, 1e-9));

    [Property]
    public Property Beta_is_mirrored() => Prop.ForAll(Between(0, 1), Between(1e-3, 200), Between(1e-3, 200), static (x, a, b) =>
        Near(BetaFunction.Lower(x, a, b), BetaFunction.Upper(1 - x, b, a), 1e-10)
        && Near(BetaFunction.Lower(x, a, b) + BetaFunction.Upper(x, a, b), 1, 1e-14)
        && BetaFunction.Lower(x, a, b) is >= 0 and <= 1);

    [Property]
    public Property The_beta_quantile_undoes_the_probability() => Prop.ForAll(Between(1e-6, 0.999999), Between(0.01, 500), Between(0.01, 500), static (p, a, b) =>
    {
        double x = BetaFunction.Quantile(p, a, b);

        // Near 1 the argument itself is coarse: a step of 1e-16 in x may be worth much of the probability.
        return x is >= 0 and <= 1 && (Near(BetaFunction.Lower(x, a, b), p, 1e-9) || x > 1 - 1e-12 || x < 1e-290);
    });

    [Property]
    public Property Gamma_parts_add_up_to_one() => Prop.ForAll(Between(1e-3, 1000), Between(0, 2000), static (a, x) =>
        Near(GammaFunction.Lower(a, x) + GammaFunction.Upper(a, x), 1, 1e-14) && GammaFunction.Lower(a, x) is >= 0 and <= 1);

    [Property]
    public Property Gamma_keeps_its_recurrence() => Prop.ForAll(Between(1e-6, 1e6), static x =>
        Near(GammaFunction.LogGamma(x + 1), GammaFunction.LogGamma(x) + Elementary.Log(x), 2e-14));

    [Property]
    public Property Limits_of_a_chance_hold_the_share_seen() => Prop.ForAll(Gen.Choose(1, 5000).ToArbitrary(), Between(0, 1), static (n, share) =>
    {
        int k = (int)(share * n);
        double low = BinomialDistribution.LowerLimit(k, n, 0.95);
        double high = BinomialDistribution.UpperLimit(k, n, 0.95);
        return low <= (double)k / n && (double)k / n <= high && low >= 0 && high <= 1
            && (k == 0 || Near(BinomialDistribution.AtLeast(k, n, low), 0.05, 1e-8))
            && (k == n || Near(BinomialDistribution.AtMost(k, n, high), 0.05, 1e-8));
    });

    [Property]
    public Property Probabilities_of_counts_add_up() => Prop.ForAll(Gen.Choose(1, 60).ToArbitrary(), Between(0, 1), static (n, p) =>
    {
        double sum = 0;
        for (int k = 0; k <= n; k++)
        {
            sum += BinomialDistribution.Exactly(k, n, p);
            if (!Near(BinomialDistribution.AtMost(k, n, p), sum, 1e-12))
            {
                return false;
            }
        }

        return true;
    });

    private static Arbitrary<double> Between(double low, double high) =>
        Gen.Choose(0, int.MaxValue).Select(n => low + ((high - low) * ((double)n / int.MaxValue))).ToArbitrary();

    private static bool Near(double actual, double expected, double error) => Math.Abs(actual - expected) <= error * Math.Max(1, Math.Abs(expected));
}
