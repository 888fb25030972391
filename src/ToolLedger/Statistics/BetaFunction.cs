using System;

namespace ToolLedger.Statistics;

/// <summary>The logarithm of the beta function, the regularised incomplete beta function (DLMF 8.17) and its inverse, with the same bits everywhere.</summary>
internal static class BetaFunction
{
    /// <summary>The largest parameter the incomplete function takes; the work grows with its square root.</summary>
    public const double MaxParameter = 1e9;

    private const double HalfLogTwoPi = 0.9189385332046728;
    private const int MaxSteps = 2_000_000;
    private const double Tiny = 1e-300;
    private const double Precision = 1e-16;

    /// <summary>ln B(a, b) = ln gamma(a) + ln gamma(b) - ln gamma(a + b), without the loss of that difference when a parameter is large.</summary>
    /// <param name="a">A parameter; above 0.</param>
    /// <param name="b">A parameter; above 0.</param>
    /// <returns>The logarithm.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A parameter is not above 0.</exception>
    public static double LogBeta(double a, double b)
    {
        double small = Math.Min(a, b);
        double large = Math.Max(a, b);
        if (large < 10 || !(small > 0))
        {
            return GammaFunction.LogGamma(small) + GammaFunction.LogGamma(large) - GammaFunction.LogGamma(small + large);
        }

        // Stirling's formula for the large ones, with the logarithms that belong together taken together.
        double remainder = GammaFunction.StirlingRemainder(large) - GammaFunction.StirlingRemainder(small + large);
        double share = small / (small + large);
        double common = remainder + (large * Elementary.LogOnePlus(-share));
        return small >= 10
            ? common + GammaFunction.StirlingRemainder(small) + HalfLogTwoPi - (0.5 * Elementary.Log(large)) + ((small - 0.5) * Elementary.Log(share))
            : common + GammaFunction.LogGamma(small) + small - (small * Elementary.Log(small + large)) - (0.5 * Elementary.LogOnePlus(-share));
    }

    /// <summary>The regularised incomplete beta function I_x(a, b): the probability that a beta variable is at most x.</summary>
    /// <param name="x">The argument; 0 to 1.</param>
    /// <param name="a">A parameter; above 0, at most 1e9.</param>
    /// <param name="b">A parameter; above 0, at most 1e9.</param>
    /// <returns>0 to 1; relative error below 1e-11 where the result is above 1e-280.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double Lower(double x, double a, double b)
    {
        Check(x, a, b);
        return x is 0 or 1 ? x : IsLeft(x, a, b) ? Fraction(x, 1 - x, a, b) : 1 - Fraction(1 - x, x, b, a);
    }

    /// <summary>1 - I_x(a, b), without loss where that is small.</summary>
    /// <param name="x">The argument; 0 to 1.</param>
    /// <param name="a">A parameter; above 0, at most 1e9.</param>
    /// <param name="b">A parameter; above 0, at most 1e9.</param>
    /// <returns>0 to 1; relative error below 1e-11 where the result is above 1e-280.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double Upper(double x, double a, double b)
    {
        Check(x, a, b);
        return x is 0 or 1 ? 1 - x : IsLeft(x, a, b) ? 1 - Fraction(x, 1 - x, a, b) : Fraction(1 - x, x, b, a);
    }

    /// <summary>The argument at which I_x(a, b) has a value, by Newton's rule kept between bounds.</summary>
    /// <param name="p">The value; 0 to 1.</param>
    /// <param name="a">A parameter; above 0, at most 1e9.</param>
    /// <param name="b">A parameter; above 0, at most 1e9.</param>
    /// <returns>0 to 1.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double Quantile(double p, double a, double b)
    {
        Check(p, a, b);
        if (p is 0 or 1)
        {
            return p;
        }

        double low = 0;
        double high = 1;
        double x = a / (a + b);
        double logBeta = LogBeta(a, b);
        for (int step = 0; step < 400; step++)
        {
            double error = Lower(x, a, b) - p;
            if (error == 0)
            {
                break;
            }

            (low, high) = error > 0 ? (low, x) : (x, high);
            double slope = Elementary.Exp(((a - 1) * Elementary.Log(x)) + ((b - 1) * Elementary.LogOnePlus(-x)) - logBeta);
            double next = x - (error / slope);
            if (!(next > low && next < high))
            {
                // Halved in size where the bounds are of different sizes, so that a tiny answer is found as fast as any.
                next = high > 4 * low ? Math.Sqrt(Math.Max(low, Tiny)) * Math.Sqrt(high) : low + (0.5 * (high - low));
            }

            if (Math.Abs(next - x) <= 1e-16 * x || next <= low || next >= high)
            {
                x = next;
                break;
            }

            x = next;
        }

        return x;
    }

    private static bool IsLeft(double x, double a, double b) => x < (a + 1) / (a + b + 2);

    private static void Check(double x, double a, double b)
    {
        if (!(x is >= 0 and <= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(x), x, "The argument must be 0 to 1.");
        }

        if (!(a is > 0 and <= MaxParameter))
        {
            throw new ArgumentOutOfRangeException(nameof(a), a, "A parameter must be above 0 and at most 1e9.");
        }

        if (!(b is > 0 and <= MaxParameter))
        {
            throw new ArgumentOutOfRangeException(nameof(b), b, "A parameter must be above 0 and at most 1e9.");
        }
    }

    /// <summary>The continued fraction DLMF 8.17.22, by the rule of Lentz; x and y = 1 - x.</summary>
    private static double Fraction(double x, double y, double a, double b)
    {
        double c = 1;
        double d = 1 / NotZero(1 - ((a + b) * x / (a + 1)));
        double value = d;
        for (int m = 1; m < MaxSteps; m++)
        {
            double even = m * (b - m) * x / ((a + (2 * m) - 1) * (a + (2 * m)));
            d = 1 / NotZero(1 + (even * d));
            c = NotZero(1 + (even / c));
            value *= c * d;
            double odd = -(a + m) * (a + b + m) * x / ((a + (2 * m)) * (a + (2 * m) + 1));
            d = 1 / NotZero(1 + (odd * d));
            c = NotZero(1 + (odd / c));
            double change = c * d;
            value *= change;
            if (Math.Abs(change - 1) < Precision)
            {
                break;
            }
        }

        // x^a y^b / (a B(a, b)) is b/(a + b) times a binomial term.
        return Math.Min(1, value * b / (a + b) * Deviance.BinomialTerm(a, b, x, y));
    }

    private static double NotZero(double value) => Math.Abs(value) < Tiny ? Tiny : value;
}
