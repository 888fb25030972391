namespace ToolLedger.Statistics;

/// <summary>Counts of successes where the chance of one is itself drawn from a beta distribution: logarithms of probabilities, with the same bits everywhere.</summary>
internal static class BetaBinomial
{
    /// <summary>The logarithm of the probability of exactly k successes in n trials.</summary>
    /// <param name="k">The successes; 0 to n.</param>
    /// <param name="n">The trials; 0 or more.</param>
    /// <param name="a">A parameter; above 0.</param>
    /// <param name="b">A parameter; above 0.</param>
    /// <returns>0 or below.</returns>
    public static double LogExactly(int k, int n, double a, double b)
    {
        double whole = BetaFunction.LogBeta(a + k, b + (n - k)) - BetaFunction.LogBeta(a, b);
        return k == 0 || k == n ? whole : whole - Elementary.Log(n + 1.0) - BetaFunction.LogBeta(n - k + 1.0, k + 1.0);
    }

    /// <summary>The logarithms for k = 0 to n, by the ratio of neighbours.</summary>
    /// <param name="n">The trials; 0 or more.</param>
    /// <param name="a">A parameter; above 0.</param>
    /// <param name="b">A parameter; above 0.</param>
    /// <returns>n + 1 logarithms; the error grows by one rounding a step.</returns>
    public static double[] LogAll(int n, double a, double b)
    {
        double[] all = new double[n + 1];
        all[0] = LogExactly(0, n, a, b);
        for (int k = 0; k < n; k++)
        {
            all[k + 1] = all[k] + Elementary.Log((n - k) * (a + k) / ((k + 1.0) * (b + (n - k - 1))));
        }

        return all;
    }
}
