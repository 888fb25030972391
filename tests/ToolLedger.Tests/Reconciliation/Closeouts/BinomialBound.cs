using System;

namespace ToolLedger.Tests.Reconciliation.Closeouts;

/// <summary>The exact one-sided upper bound of a share (Clopper and Pearson, Biometrika 26, 1934, page 404; from memory): the share at which so few events or fewer would still have the rest of the confidence.</summary>
internal static class BinomialBound
{
    /// <param name="events">How often it happened.</param>
    /// <param name="trials">Of how many, at least 1.</param>
    /// <param name="confidence">Between 0 and 1.</param>
    public static double Upper(int events, int trials, double confidence)
    {
        if (events >= trials)
        {
            return 1;
        }

        double low = events / (double)trials, high = 1;
        for (int i = 0; i < 200; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = AtMost(events, trials, middle) > 1 - confidence ? (middle, high) : (low, middle);
        }

        return high;
    }

    /// <summary>The chance of so many events or fewer, summed from the logarithm of each term.</summary>
    public static double AtMost(int events, int trials, double share)
    {
        double term = trials * Math.Log(1 - share);
        double sum = Math.Exp(term);
        for (int k = 1; k <= events; k++)
        {
            term += Math.Log((trials - k + 1) / (double)k) + Math.Log(share) - Math.Log(1 - share);
            sum += Math.Exp(term);
        }

        return sum;
    }
}
