using System;

namespace ToolLedger.Statistics;

/// <summary>Exact mean run lengths of a sum that goes up by whole steps on a miss and down by one on a read, never below 0: by solving the Markov chain, not by an approximation.</summary>
internal static class RunLength
{
    /// <summary>The mean number of looks until the sum reaches the limit.</summary>
    /// <param name="miss">The chance of a miss; above 0, below 1.</param>
    /// <param name="up">Steps up on a miss; 1 or more.</param>
    /// <param name="limit">The limit; 1 to 1,000.</param>
    /// <returns>1 or more.</returns>
    public static double Mean(double miss, int up, int limit)
    {
        // L(s) = 1 + miss L(s + up) + (1 - miss) L(max(0, s - 1)), and 0 from the limit on. No pivoting: the matrix is diagonally dominant.
        double[,] rows = new double[limit, limit + 1];
        for (int s = 0; s < limit; s++)
        {
            rows[s, s] += 1;
            rows[s, Math.Max(0, s - 1)] -= 1 - miss;
            rows[s, limit] = 1;
            if (s + up < limit)
            {
                rows[s, s + up] -= miss;
            }
        }

        // From the limit down, so that L(0) is what is left.
        for (int s = limit - 1; s > 0; s--)
        {
            for (int other = 0; other < s; other++)
            {
                double factor = rows[other, s] / rows[s, s];
                if (factor == 0)
                {
                    continue;
                }

                for (int column = 0; column < s; column++)
                {
                    rows[other, column] -= factor * rows[s, column];
                }

                rows[other, limit] -= factor * rows[s, limit];
            }
        }

        return rows[0, limit] / rows[0, 0];
    }
}
