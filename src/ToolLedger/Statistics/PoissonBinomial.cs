using System;

namespace ToolLedger.Statistics;

/// <summary>How many of several independent events of different chances happen: exact, by convolution.</summary>
internal static class PoissonBinomial
{
    /// <summary>The probability that at least one happens, without loss where all chances are tiny.</summary>
    /// <param name="chances">The chances; each 0 to 1.</param>
    /// <returns>0 to 1.</returns>
    public static double Any(ReadOnlySpan<double> chances)
    {
        double sum = 0;
        foreach (double chance in chances)
        {
            sum += Elementary.LogOnePlus(-chance);
        }

        return -Elementary.ExpMinus1(sum);
    }

    /// <summary>The probabilities of exactly 0, 1, ... of them.</summary>
    /// <param name="chances">The chances; each 0 to 1.</param>
    /// <param name="exactly">Gets one probability more than there are chances.</param>
    /// <exception cref="ArgumentException">There is no room for the result.</exception>
    public static void Exactly(ReadOnlySpan<double> chances, Span<double> exactly)
    {
        if (exactly.Length != chances.Length + 1)
        {
            throw new ArgumentException("There is one probability more than there are chances.", nameof(exactly));
        }

        exactly.Clear();
        exactly[0] = 1;
        for (int i = 0; i < chances.Length; i++)
        {
            double chance = chances[i];
            for (int k = i + 1; k > 0; k--)
            {
                exactly[k] = (exactly[k] * (1 - chance)) + (exactly[k - 1] * chance);
            }

            exactly[0] *= 1 - chance;
        }
    }
}
