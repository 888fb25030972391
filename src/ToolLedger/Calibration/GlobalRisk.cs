using System;
using System.Collections.Generic;
using System.Runtime.InteropServices;
using ToolLedger.Statistics;

namespace ToolLedger.Calibration;

/// <summary>The risks of a decision rule over all tools of a kind, before one is measured (JCGM 106:2012, clause 9; ANSI/NCSL Z540.3-2006, 5.3 b).</summary>
/// <remarks>
/// Model: the deviation of a tool is normal around 0 with standard deviation s, the measurement error normal around 0 with standard uncertainty u; tolerance and acceptance are symmetric around 0.
/// By integration (Gauss and Legendre, 20 nodes, halved until settled to 1e-14). Immutable and thread-safe.
/// </remarks>
/// <param name="FalseAccept">The probability that a tool is out of tolerance and accepted, 0 to 1.</param>
/// <param name="FalseReject">The probability that a tool is in tolerance and not accepted, 0 to 1.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct GlobalRisk(double FalseAccept, double FalseReject)
{
    private const double Tolerance = 1e-14;

    // Beyond it quotients and sums of them are no longer finite.
    private const double MaxShare = 1e100;

    /// <summary>The risks for a spread of tools, an uncertainty and limits.</summary>
    /// <param name="deviation">s: the standard deviation of the tools; 1e-100 to 1e100 times the tolerance.</param>
    /// <param name="uncertainty">u: the standard uncertainty of the measurement; 0, or 1e-100 to 1e100 times the tolerance.</param>
    /// <param name="tolerance">L: half the tolerance; above 0.</param>
    /// <param name="acceptance">A: half the acceptance interval; 0 to 1e100 times the tolerance.</param>
    /// <returns>The risks.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static GlobalRisk Of(double deviation, double uncertainty, double tolerance, double acceptance)
    {
        Conformity.Require(deviation > 0 && double.IsFinite(deviation), nameof(deviation), deviation, "The standard deviation must be above 0.");
        Conformity.Require(uncertainty >= 0 && double.IsFinite(uncertainty), nameof(uncertainty), uncertainty, "The uncertainty must be 0 or more.");
        Conformity.Require(tolerance > 0 && double.IsFinite(tolerance), nameof(tolerance), tolerance, "The tolerance must be above 0.");
        Conformity.Require(acceptance >= 0 && double.IsFinite(acceptance), nameof(acceptance), acceptance, "The acceptance interval must be 0 or wider.");

        // In units of the tolerance.
        double s = deviation / tolerance;
        double u = uncertainty / tolerance;
        double a = acceptance / tolerance;
        Conformity.Require(s is >= 1 / MaxShare and <= MaxShare, nameof(deviation), deviation, "The standard deviation must be 1e-100 to 1e100 times the tolerance.");
        Conformity.Require(u is 0 or (>= 1 / MaxShare and <= MaxShare) && (u > 0 || uncertainty == 0), nameof(uncertainty), uncertainty, "The uncertainty must be 0, or 1e-100 to 1e100 times the tolerance.");
        Conformity.Require(a <= MaxShare, nameof(acceptance), acceptance, "The acceptance interval must be at most 1e100 times the tolerance.");
        if (u == 0)
        {
            double between = 2 * Math.Abs(NormalDistribution.Above(a / s) - NormalDistribution.Above(1 / s));
            return a > 1 ? new GlobalRisk(between, 0) : new GlobalRisk(0, between);
        }

        double accepted = Integral(x => NormalDistribution.Density(x / s) / s * NormalDistribution.Between((-a - x) / u, (a - x) / u), 1, Math.Max(1, a) + (12 * u), s, u, a);
        double rejected = Integral(x => NormalDistribution.Density(x / s) / s * (NormalDistribution.Above((a - x) / u) + NormalDistribution.AtMost((-a - x) / u)), 0, 1, s, u, a);
        return new GlobalRisk(Math.Clamp(2 * accepted, 0, 1), Math.Clamp(2 * rejected, 0, 1));
    }

    /// <summary>The risks for a test uncertainty ratio and a share of tools in tolerance.</summary>
    /// <param name="ratio">TUR = L/U95, with U95 = 2u; above 0.</param>
    /// <param name="inTolerance">The true share of tools in tolerance; above 0, below 1.</param>
    /// <param name="acceptanceOverTolerance">A/L; 0 or more. The default is 1: no guard band.</param>
    /// <returns>The risks.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static GlobalRisk OfRatio(double ratio, double inTolerance, double acceptanceOverTolerance = 1)
    {
        Conformity.Require(ratio > 0 && double.IsFinite(ratio), nameof(ratio), ratio, "The ratio must be above 0.");
        return Of(DeviationFor(inTolerance), 1 / (2 * ratio), 1, acceptanceOverTolerance);
    }

    /// <summary>The standard deviation of tools, as a share of half the tolerance, at which a share of them is in tolerance.</summary>
    /// <param name="inTolerance">The share; above 0, below 1.</param>
    /// <returns>s/L.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The share is outside its range.</exception>
    public static double DeviationFor(double inTolerance)
    {
        Conformity.Require(inTolerance is > 0 and < 1, nameof(inTolerance), inTolerance, "The share must be above 0 and below 1.");
        return 1 / NormalDistribution.UpperQuantile((1 - inTolerance) / 2);
    }

    /// <summary>The share of tools in tolerance: P(|x| at most L).</summary>
    /// <param name="deviation">s: the standard deviation of the tools; above 0.</param>
    /// <param name="tolerance">L: half the tolerance; 0 or more.</param>
    /// <returns>0 to 1.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double InTolerance(double deviation, double tolerance)
    {
        Conformity.Require(deviation > 0 && double.IsFinite(deviation), nameof(deviation), deviation, "The standard deviation must be above 0.");
        Conformity.Require(tolerance >= 0, nameof(tolerance), tolerance, "The tolerance must be 0 or more.");
        return NormalDistribution.Between(-tolerance / deviation, tolerance / deviation);
    }

    /// <summary>The largest probability of false acceptance over all spreads of tools: what holds whatever they are like.</summary>
    /// <param name="ratio">TUR = L/U95, with U95 = 2u; 0.1 to 1,000.</param>
    /// <param name="acceptanceOverTolerance">A/L; 0 to 2. The default is 1: no guard band.</param>
    /// <returns>The probability.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double WorstFalseAccept(double ratio, double acceptanceOverTolerance = 1)
    {
        Conformity.Require(ratio is >= 0.1 and <= 1000, nameof(ratio), ratio, "The ratio must be 0.1 to 1,000.");
        Conformity.Require(acceptanceOverTolerance is >= 0 and <= 2, nameof(acceptanceOverTolerance), acceptanceOverTolerance, "The share must be 0 to 2.");

        // The risk rises and falls once with the logarithm of s: golden-section search.
        const double Golden = 0.6180339887498949;
        double low = -4;
        double high = 4;
        double left = high - (Golden * (high - low));
        double right = low + (Golden * (high - low));
        double atLeft = At(left);
        double atRight = At(right);
        while (high - low > 1e-5)
        {
            if (atLeft > atRight)
            {
                (high, right, atRight) = (right, left, atLeft);
                left = high - (Golden * (high - low));
                atLeft = At(left);
            }
            else
            {
                (low, left, atLeft) = (left, right, atRight);
                right = low + (Golden * (high - low));
                atRight = At(right);
            }
        }

        return Math.Max(atLeft, atRight);

        double At(double logarithm) => Of(Elementary.Exp(logarithm), 1 / (2 * ratio), 1, acceptanceOverTolerance).FalseAccept;
    }

    /// <summary>Between limits, in pieces of the scales on which the integrand changes, so that no peak lies between the nodes.</summary>
    private static double Integral(Func<double, double> integrand, double from, double to, double s, double u, double a)
    {
        List<double> edges = [from, to];
        foreach (double edge in (ReadOnlySpan<double>)[s, 3 * s, 8 * s, 40 * s, a - (8 * u), a - (3 * u), a - u, a, a + u, a + (3 * u), a + (8 * u)])
        {
            if (edge > from && edge < to)
            {
                edges.Add(edge);
            }
        }

        edges.Sort();
        double sum = 0;
        for (int index = 1; index < edges.Count; index++)
        {
            sum += Quadrature.Integrate(integrand, edges[index - 1], edges[index], Tolerance);
        }

        return sum;
    }
}
