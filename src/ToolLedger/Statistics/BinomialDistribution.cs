using System;

namespace ToolLedger.Statistics;

/// <summary>Counts of successes in independent trials of one chance: probabilities, and exact limits of the chance.</summary>
internal static class BinomialDistribution
{
    /// <summary>The most trials.</summary>
    public const int MaxTrials = 1_000_000_000;

    /// <summary>The probability of exactly k successes.</summary>
    /// <param name="k">The successes; 0 to n.</param>
    /// <param name="n">The trials; 1 to 1,000,000,000.</param>
    /// <param name="p">The chance of one; 0 to 1.</param>
    /// <returns>0 to 1.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double Exactly(int k, int n, double p)
    {
        Check(k, n, p);
        if (p is 0 or 1)
        {
            return k == (p == 0 ? 0 : n) ? 1 : 0;
        }

        if (k == 0)
        {
            return Elementary.Exp(n * Elementary.LogOnePlus(-p));
        }

        return k == n ? Elementary.Exp(n * Elementary.Log(p)) : Deviance.BinomialTerm(k, n - k, p, 1 - p);
    }

    /// <summary>The probability of at most k successes.</summary>
    /// <param name="k">The successes; 0 to n.</param>
    /// <param name="n">The trials; 1 to 1,000,000,000.</param>
    /// <param name="p">The chance of one; 0 to 1.</param>
    /// <returns>0 to 1.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double AtMost(int k, int n, double p)
    {
        Check(k, n, p);
        return k == n ? 1 : BetaFunction.Upper(p, k + 1.0, n - k);
    }

    /// <summary>The probability of at least k successes.</summary>
    /// <param name="k">The successes; 0 to n.</param>
    /// <param name="n">The trials; 1 to 1,000,000,000.</param>
    /// <param name="p">The chance of one; 0 to 1.</param>
    /// <returns>0 to 1.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double AtLeast(int k, int n, double p)
    {
        Check(k, n, p);
        return k == 0 ? 1 : BetaFunction.Lower(p, k, n - k + 1.0);
    }

    /// <summary>The exact one-sided lower limit of the chance (Clopper and Pearson, 1934).</summary>
    /// <param name="k">The successes seen; 0 to n.</param>
    /// <param name="n">The trials; 1 to 1,000,000,000.</param>
    /// <param name="confidence">The one-sided confidence; above 0, below 1.</param>
    /// <returns>The limit; 0 if there was no success.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double LowerLimit(int k, int n, double confidence)
    {
        Check(k, n, confidence);
        return k == 0 ? 0 : BetaFunction.Quantile(1 - confidence, k, n - k + 1.0);
    }

    /// <summary>The exact one-sided upper limit of the chance (Clopper and Pearson, 1934).</summary>
    /// <param name="k">The successes seen; 0 to n.</param>
    /// <param name="n">The trials; 1 to 1,000,000,000.</param>
    /// <param name="confidence">The one-sided confidence; above 0, below 1.</param>
    /// <returns>The limit; 1 if every trial succeeded.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double UpperLimit(int k, int n, double confidence)
    {
        Check(k, n, confidence);
        return k == n ? 1 : 1 - BetaFunction.Quantile(1 - confidence, n - k, k + 1.0);
    }

    private static void Check(int k, int n, double chance)
    {
        if (n is < 1 or > MaxTrials)
        {
            throw new ArgumentOutOfRangeException(nameof(n), n, "The trials must be 1 to 1,000,000,000.");
        }

        if (k < 0 || k > n)
        {
            throw new ArgumentOutOfRangeException(nameof(k), k, "The successes must be 0 to the number of trials.");
        }

        if (!(chance is >= 0 and <= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(chance), chance, "A probability must be 0 to 1.");
        }
    }
}
