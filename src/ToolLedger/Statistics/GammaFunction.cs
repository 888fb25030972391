using System;

namespace ToolLedger.Statistics;

/// <summary>The logarithm of the gamma function, and the regularised incomplete gamma functions (DLMF chapters 5 and 8), with the same bits everywhere.</summary>
internal static class GammaFunction
{
    /// <summary>The largest shape the incomplete functions take; the work grows with its square root.</summary>
    public const double MaxShape = 1e9;

    private const double HalfLogTwoPi = 0.9189385332046728;
    private const double OneMinusEuler = 0.42278433509846713;
    private const double TwoPi = 6.283185307179586;
    private const int MaxSteps = 2_000_000;
    private const double Tiny = 1e-300;
    private const double Precision = 1e-16;

    // zeta(k) - 1 for k = 2, 3, ...: the coefficients of DLMF 5.7.3.
    private static ReadOnlySpan<double> ZetaMinus1 =>
    [
        0.6449340668482264, 0.2020569031595943, 0.08232323371113819, 0.03692775514336993, 0.01734306198444914, 0.008349277381922827, 0.00407735619794434, 0.0020083928260822143,
        0.0009945751278180853, 0.0004941886041194645, 0.0002460865533080483, 0.00012271334757848915, 6.124813505870483e-05, 3.058823630702049e-05, 1.528225940865187e-05,
        7.637197637899763e-06, 3.81729326499984e-06, 1.908212716553939e-06, 9.539620338727962e-07, 4.769329867878064e-07, 2.38450502727733e-07, 1.1921992596531106e-07,
        5.960818905125948e-08, 2.980350351465228e-08, 1.4901554828365043e-08, 7.45071178983543e-09, 3.725334024788457e-09, 1.862659723513049e-09,
    ];

    /// <summary>The logarithm of the gamma function.</summary>
    /// <param name="x">The argument; above 0.</param>
    /// <returns>The logarithm; relative error below 1e-14, also near its zeros at 1 and 2.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The argument is not above 0.</exception>
    public static double LogGamma(double x)
    {
        if (!(x > 0))
        {
            throw new ArgumentOutOfRangeException(nameof(x), x, "The logarithm of the gamma function is taken of numbers above 0.");
        }

        if (x >= 10)
        {
            return double.IsPositiveInfinity(x) ? x : ((x - 0.5) * Elementary.Log(x)) - x + HalfLogTwoPi + StirlingSeries(x);
        }

        if (x < 0.5)
        {
            return NearOne(x) - Elementary.Log(x);
        }

        if (x < 1.5)
        {
            return NearOne(x - 1);
        }

        double product = 1;
        while (x > 2.5)
        {
            x -= 1;
            product *= x;
        }

        return Elementary.Log(product) + NearTwo(x - 2);
    }

    /// <summary>What Stirling's formula for ln x! leaves out: ln x! - (x + 1/2) ln x + x - ln(2 pi)/2.</summary>
    /// <param name="x">The argument; above 0.</param>
    /// <returns>The remainder; falls from infinity at 0 to 0 at infinity.</returns>
    internal static double StirlingRemainder(double x) =>
        x >= 10 ? StirlingSeries(x) : LogGamma(1 + x) - ((x + 0.5) * Elementary.Log(x)) + x - HalfLogTwoPi;

    /// <summary>The regularised lower incomplete gamma function P(a, x): the probability that a gamma variable of shape a is at most x.</summary>
    /// <param name="a">The shape; above 0, at most 1e9.</param>
    /// <param name="x">The argument; 0 or more.</param>
    /// <returns>0 to 1; relative error below 1e-12.</returns>
    public static double Lower(double a, double x)
    {
        CheckShape(a, x);
        return x == 0 ? 0 : double.IsPositiveInfinity(x) ? 1 : x < a + 1 ? LowerBySeries(a, x) : 1 - UpperByFraction(a, x);
    }

    /// <summary>The regularised upper incomplete gamma function Q(a, x) = 1 - P(a, x), without loss in the upper tail.</summary>
    /// <param name="a">The shape; above 0, at most 1e9.</param>
    /// <param name="x">The argument; 0 or more.</param>
    /// <returns>0 to 1; relative error below 1e-12.</returns>
    public static double Upper(double a, double x)
    {
        CheckShape(a, x);
        return x == 0 ? 1 : double.IsPositiveInfinity(x) ? 0 : x < a + 1 ? 1 - LowerBySeries(a, x) : UpperByFraction(a, x);
    }

    private static void CheckShape(double a, double x)
    {
        if (!(a is > 0 and <= MaxShape))
        {
            throw new ArgumentOutOfRangeException(nameof(a), a, "The shape must be above 0 and at most 1e9.");
        }

        if (!(x >= 0))
        {
            throw new ArgumentOutOfRangeException(nameof(x), x, "The argument must be 0 or more.");
        }
    }

    /// <summary>x^a e^-x / gamma(a + 1), by the deviance form, which keeps its digits for large a.</summary>
    private static double Kernel(double a, double x) => Elementary.Exp(-StirlingRemainder(a) - Deviance.Of(a, x)) / Math.Sqrt(TwoPi * a);

    /// <summary>DLMF 8.11.4.</summary>
    private static double LowerBySeries(double a, double x)
    {
        double term = 1;
        double sum = 1;
        for (int n = 1; n < MaxSteps && term > sum * Precision; n++)
        {
            term *= x / (a + n);
            sum += term;
        }

        return Math.Min(1, sum * Kernel(a, x));
    }

    /// <summary>DLMF 8.9.2, by the rule of Lentz.</summary>
    private static double UpperByFraction(double a, double x)
    {
        double b = x + 1 - a;
        double c = 1 / Tiny;
        double d = 1 / b;
        double value = d;
        for (int n = 1; n < MaxSteps; n++)
        {
            double factor = -n * (n - a);
            b += 2;
            d = 1 / NotZero((factor * d) + b);
            c = NotZero(b + (factor / c));
            double change = c * d;
            value *= change;
            if (Math.Abs(change - 1) < Precision)
            {
                break;
            }
        }

        return Math.Min(1, value * a * Kernel(a, x));
    }

    private static double NotZero(double value) => Math.Abs(value) < Tiny ? Tiny : value;

    /// <summary>ln gamma(1 + z) for |z| of at most 0.5.</summary>
    private static double NearOne(double z) => NearTwo(z) - Elementary.LogOnePlus(z);

    /// <summary>ln gamma(2 + z) for |z| of at most 0.5: z (1 - gamma) + sum of (-1)^k (zeta(k) - 1) z^k / k, DLMF 5.7.3.</summary>
    private static double NearTwo(double z)
    {
        double sum = 0;
        for (int k = ZetaMinus1.Length + 1; k >= 2; k--)
        {
            sum = -z * ((ZetaMinus1[k - 2] / k) + sum);
        }

        // The nested sum is -z (a2 - z (a3 - ...)); one more factor -z belongs to each of its terms.
        return z * (OneMinusEuler - sum);
    }

    /// <summary>The sum of B(2k) / (2k (2k - 1) x^(2k - 1)), DLMF 5.11.1; at 10 the first term left out is below 1e-17.</summary>
    private static double StirlingSeries(double x)
    {
        double r = 1 / (x * x);
        double sum = 43867.0 / 244188;
        sum = (-3617.0 / 122400) + (r * sum);
        sum = (1.0 / 156) + (r * sum);
        sum = (-691.0 / 360360) + (r * sum);
        sum = (1.0 / 1188) + (r * sum);
        sum = (-1.0 / 1680) + (r * sum);
        sum = (1.0 / 1260) + (r * sum);
        sum = (-1.0 / 360) + (r * sum);
        sum = (1.0 / 12) + (r * sum);
        return sum / x;
    }
}
