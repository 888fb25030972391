using System;

namespace ToolLedger.Statistics;

/// <summary>Exact mean run lengths of a sum that goes up by whole steps on a miss and down by one on a read, never below 0: by solving the Markov chain, not by an approximation.</summary>
internal static class RunLength
{
    /// <summary>The mean number of looks until the sum reaches the limit.</summary>
    /// <param name="miss">The chance of a miss; above 0, below 1.</param>
    /// <param name="up">Steps up on a miss; 1 or more.</param>
    /// <param name="limit">The limit; 1 to 1,000.</param>
    /// <returns>1 or more; infinity where it is more than a number can say.</returns>
    public static double Mean(double miss, int up, int limit)
    {
        // L(s) = 1 + miss L(s + up) + (1 - miss) L(max(0, s - 1)), and 0 from the limit on. States are taken out from the limit down and their moves given to those that remain (the way of
        // Grassmann, Taksar and Heyman, Operations Research 33, 1985; from memory): every number is a sum and product of positive ones, so that a mean of 1e200 has its digits too.
        double[,] moves = new double[limit, limit];
        double[] ends = new double[limit];
        double[] looks = new double[limit];
        for (int s = 0; s < limit; s++)
        {
            looks[s] = 1;
            moves[s, Math.Max(0, s - 1)] = 1 - miss;
            if (s + up < limit)
            {
                moves[s, s + up] = miss;
            }
            else
            {
                ends[s] = miss;
            }
        }

        for (int s = limit - 1; s > 0; s--)
        {
            double leaves = ends[s];
            for (int to = 0; to < s; to++)
            {
                leaves += moves[s, to];
            }

            for (int from = 0; from < s; from++)
            {
                double part = moves[from, s] / leaves;
                if (part == 0)
                {
                    continue;
                }

                for (int to = 0; to < s; to++)
                {
                    moves[from, to] += part * moves[s, to];
                }

                ends[from] += part * ends[s];
                looks[from] += part * looks[s];
            }
        }

        return looks[0] / ends[0];
    }
}
