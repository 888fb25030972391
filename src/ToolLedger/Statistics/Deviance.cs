using System;

namespace ToolLedger.Statistics;

/// <summary>The deviance x ln(x/m) + m - x, and the binomial term made of it.</summary>
/// <remarks>
/// The logarithm of a factorial minus that of another loses its digits when both are large. The saddle-point form (C. Loader, Fast and Accurate Computation of Binomial
/// Probabilities, 2000, from memory) subtracts only small numbers.
/// </remarks>
internal static class Deviance
{
    private const double TwoPi = 6.283185307179586;

    /// <summary>x ln(x/m) + m - x.</summary>
    /// <param name="x">The count or shape; above 0.</param>
    /// <param name="mean">What was expected; above 0.</param>
    /// <returns>0 or more.</returns>
    public static double Of(double x, double mean)
    {
        double difference = x - mean;
        if (Math.Abs(difference) >= 0.1 * (x + mean))
        {
            return (x * Elementary.Log(x / mean)) - difference;
        }

        // With v = (x - m)/(x + m): (x - m) v + 2 x (v³/3 + v⁵/5 + ...), from ln(x/m) = 2 artanh v.
        double v = difference / (x + mean);
        double square = v * v;
        double term = 2 * x * v;
        double sum = difference * v;
        for (int k = 3; k < 1000; k += 2)
        {
            term *= square;
            double next = sum + (term / k);
            if (next == sum)
            {
                break;
            }

            sum = next;
        }

        return sum;
    }

    /// <summary>gamma(n + 1) / (gamma(k + 1) gamma(n - k + 1)) p^k q^(n - k), for counts that need not be whole.</summary>
    /// <param name="k">The count; above 0 and below n.</param>
    /// <param name="rest">n - k, above 0.</param>
    /// <param name="p">The chance; above 0 and below 1.</param>
    /// <param name="q">1 - p.</param>
    /// <returns>The term.</returns>
    public static double BinomialTerm(double k, double rest, double p, double q)
    {
        double n = k + rest;
        double exponent = GammaFunction.StirlingRemainder(n) - GammaFunction.StirlingRemainder(k) - GammaFunction.StirlingRemainder(rest)
            - Of(k, n * p) - Of(rest, n * q);
        return Elementary.Exp(exponent) * Math.Sqrt(n / k / rest / TwoPi);
    }
}
