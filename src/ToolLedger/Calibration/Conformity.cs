using System;
using ToolLedger.Statistics;

namespace ToolLedger.Calibration;

/// <summary>Measured values against limits, with their uncertainty: probabilities and ratios (JCGM 106:2012; examples from memory, recomputed).</summary>
/// <remarks>Normal model: the true value is the estimate plus a normal error with the standard uncertainty. The same bits on every machine. Thread-safe.</remarks>
public static class Conformity
{
    private const decimal MaxValue = 1_000_000_000_000_000m;

    /// <summary>The probability that the true value lies within limits: Phi((TU - y)/u) - Phi((TL - y)/u).</summary>
    /// <param name="measured">The measured value.</param>
    /// <param name="limits">The limits.</param>
    /// <returns>0 to 1. Without uncertainty, 1 within the limits and 0 outside.</returns>
    public static double Probability(MeasuredValue measured, ToleranceLimits limits)
    {
        if (measured.StandardUncertainty == 0)
        {
            return limits.Contains(measured.Value) ? 1 : 0;
        }

        double u = (double)measured.StandardUncertainty;
        double low = limits.Lower is { } lower ? (double)(lower - measured.Value) / u : double.NegativeInfinity;
        double high = limits.Upper is { } upper ? (double)(upper - measured.Value) / u : double.PositiveInfinity;
        return Math.Clamp(NormalDistribution.Between(low, high), 0, 1);
    }

    /// <summary>The specific risk of false acceptance of a value exactly on an acceptance limit, for a guard band of r U and one limit (ILAC-G8:09/2019, table 1).</summary>
    /// <param name="guardBandOverU">r: the guard band as a share of U; 0 or more.</param>
    /// <param name="coverageFactor">k of U; above 0.</param>
    /// <returns>0 to 0.5.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double RiskAtAcceptanceLimit(double guardBandOverU, double coverageFactor = 2)
    {
        Require(guardBandOverU >= 0 && double.IsFinite(guardBandOverU), nameof(guardBandOverU), guardBandOverU, "The guard band must be 0 or wider.");
        Require(coverageFactor > 0 && double.IsFinite(coverageFactor), nameof(coverageFactor), coverageFactor, "A coverage factor must be above 0.");
        return NormalDistribution.Above(guardBandOverU * coverageFactor);
    }

    /// <summary>The reading from which on a limit is exceeded with a stated confidence, where the uncertainty is a share of the reading (JCGM 106:2012, clause 8, speed enforcement).</summary>
    /// <param name="limit">The limit; above 0.</param>
    /// <param name="relativeUncertainty">The standard uncertainty as a share of the reading; 0 or more, below 1 over the quantile of the confidence.</param>
    /// <param name="confidence">The confidence; 0.5 to below 1.</param>
    /// <returns>The reading, not below the limit.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double GuardedRejectionLimit(double limit, double relativeUncertainty, double confidence)
    {
        Require(limit > 0 && double.IsFinite(limit), nameof(limit), limit, "The limit must be above 0.");
        Require(confidence is >= 0.5 and < 1, nameof(confidence), confidence, "The confidence must be 0.5 to below 1.");
        double share = NormalDistribution.Quantile(confidence) * relativeUncertainty;
        Require(relativeUncertainty >= 0 && share < 1, nameof(relativeUncertainty), relativeUncertainty, "With so large an uncertainty no reading exceeds the limit with this confidence.");
        return limit / (1 - share);
    }

    /// <summary>The test uncertainty ratio: half the tolerance over the 95 % expanded uncertainty (ANSI/NCSL Z540.3-2006).</summary>
    /// <param name="limits">Both limits.</param>
    /// <param name="expandedUncertainty">The expanded uncertainty for about 95 %; above 0.</param>
    /// <returns>The ratio.</returns>
    /// <exception cref="ArgumentException">A limit is open.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The uncertainty is not above 0.</exception>
    public static double TestUncertaintyRatio(ToleranceLimits limits, decimal expandedUncertainty)
    {
        if (limits.Half is not { } half)
        {
            throw new ArgumentException("A test uncertainty ratio needs a lower and an upper limit.", nameof(limits));
        }

        return expandedUncertainty > 0
            ? (double)half / (double)expandedUncertainty
            : throw new ArgumentOutOfRangeException(nameof(expandedUncertainty), expandedUncertainty, "The uncertainty must be above 0.");
    }

    /// <summary>So that no sum or quotient of values leaves the range of decimals.</summary>
    internal static void RequireWithin(decimal value, string name)
    {
        if (decimal.Abs(value) > MaxValue)
        {
            throw new ArgumentOutOfRangeException(name, value, "A value must lie within 1e15 of 0.");
        }
    }

    internal static void Require(bool isGiven, string name, double value, string message)
    {
        if (!isGiven)
        {
            throw new ArgumentOutOfRangeException(name, value, message);
        }
    }
}
