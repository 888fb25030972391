using System;

namespace ToolLedger.Statistics;

/// <summary>The standard normal distribution: density, probabilities and quantile, with the same bits everywhere.</summary>
internal static class NormalDistribution
{
    private const double RootOfHalf = 0.7071067811865476;
    private const double RootOfTwoPi = 2.5066282746310007;

    /// <summary>The density at z.</summary>
    /// <param name="z">The argument, in standard deviations from the mean.</param>
    /// <returns>The density.</returns>
    public static double Density(double z) => Elementary.Gaussian(z, 0.5) / RootOfTwoPi;

    /// <summary>The probability of at most z.</summary>
    /// <param name="z">The argument.</param>
    /// <returns>0 to 1, with full relative accuracy in the lower tail.</returns>
    public static double AtMost(double z) => Above(-z);

    /// <summary>The probability of more than z.</summary>
    /// <param name="z">The argument.</param>
    /// <returns>0 to 1, with full relative accuracy in the upper tail.</returns>
    public static double Above(double z) => z is > 1 and < 38.5
        ? 0.5 * Elementary.Gaussian(z, 0.5) * ErrorFunction.Scaled(z * RootOfHalf) // z² is not rounded on its way into the exponent
        : 0.5 * ErrorFunction.Complement(z * RootOfHalf);

    /// <summary>The probability between two arguments, taken in the tail where it loses least.</summary>
    /// <param name="low">The lower argument; may be minus infinity.</param>
    /// <param name="high">The upper argument, not below the lower; may be infinity.</param>
    /// <returns>0 to 1.</returns>
    public static double Between(double low, double high)
    {
        if (low > 0)
        {
            return Math.Max(0, Above(low) - Above(high));
        }

        return high < 0 ? Math.Max(0, AtMost(high) - AtMost(low)) : 0.5 * (ErrorFunction.Erf(high * RootOfHalf) - ErrorFunction.Erf(low * RootOfHalf));
    }

    /// <summary>The argument below which a share of the distribution lies.</summary>
    /// <param name="p">The share; 0 gives minus infinity, 1 infinity.</param>
    /// <returns>The argument, with a relative error below 1e-14.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The share is not 0 to 1.</exception>
    public static double Quantile(double p)
    {
        if (!(p is >= 0 and <= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(p), p, "A probability must be 0 to 1.");
        }

        if (p is 0 or 1)
        {
            return p == 0 ? double.NegativeInfinity : double.PositiveInfinity;
        }

        return Math.Abs(p - 0.5) <= 0.25 ? Central(p - 0.5) : p < 0.5 ? -UpperQuantile(p) : UpperQuantile(1 - p);
    }

    /// <summary>The argument above which a share of at most one half lies; exact in the far tail, where 1 - p would round.</summary>
    /// <param name="q">The share; above 0, at most 0.5.</param>
    /// <returns>The argument, 0 or more.</returns>
    internal static double UpperQuantile(double q)
    {
        // First guess: Abramowitz and Stegun, Handbook of Mathematical Functions (1964), 26.2.23 (from memory), error below 4.5e-4; then Halley's rule.
        double t = Math.Sqrt(-2 * Elementary.Log(q));
        double z = Math.Max(0, t - ((2.515517 + (t * (0.802853 + (t * 0.010328)))) / (1 + (t * (1.432788 + (t * (0.189269 + (t * 0.001308))))))));
        for (int step = 0; step < 3; step++)
        {
            double density = Density(z);
            if (density == 0)
            {
                break;
            }

            double newton = (Above(z) - q) / density;
            z += newton / (1 - (0.5 * z * newton));
        }

        return z;
    }

    private static double Central(double share)
    {
        double z = share * RootOfTwoPi;
        for (int step = 0; step < 5; step++)
        {
            double newton = ((0.5 * ErrorFunction.Erf(z * RootOfHalf)) - share) / Density(z);
            z -= newton / (1 + (0.5 * z * newton));
        }

        return z;
    }
}
