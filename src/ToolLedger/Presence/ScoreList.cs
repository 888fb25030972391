using ToolLedger.Statistics;

namespace ToolLedger.Presence;

/// <summary>Different scores in rising order, in whole cells of a power of 2 of steps, each with its chance.</summary>
internal readonly struct ScoreList(int[] scores, double[] chances)
{
    public int[] Scores { get; } = scores;

    public double[] Chances { get; } = chances;

    /// <summary>The scores of one read and more in a pass, where the logarithms of the chances of so many reads are given.</summary>
    /// <param name="of">The scores.</param>
    /// <param name="logChances">By number of reads.</param>
    /// <param name="cellBits">Cells of 2 to this power of steps.</param>
    /// <param name="isUp">Whether a score between two cells counts as the higher one.</param>
    public static ScoreList OfReads(PassScores of, double[] logChances, int cellBits, bool isUp)
    {
        int rest = isUp ? (1 << cellBits) - 1 : 0;
        int[] found = new int[of.Looks];
        double[] each = new double[of.Looks];
        int count = 0;
        for (int k = 1; k <= of.Looks; k++)
        {
            double chance = Elementary.Exp(logChances[k]);
            int cell = (of.Read(k) + rest) >> cellBits;
            if (count > 0 && found[count - 1] == cell)
            {
                each[count - 1] += chance;
            }
            else
            {
                (found[count], each[count]) = (cell, chance);
                count++;
            }
        }

        return new ScoreList(found[..count], each[..count]);
    }

    /// <summary>The sums with an independent other list.</summary>
    public ScoreList Plus(ScoreList other)
    {
        if (Scores.Length == 0 || other.Scores.Length == 0)
        {
            return new ScoreList([], []);
        }

        int lowest = Scores[0] + other.Scores[0];
        double[] dense = new double[Scores[^1] + other.Scores[^1] - lowest + 1];
        for (int i = 0; i < Scores.Length; i++)
        {
            int from = Scores[i] - lowest;
            double chance = Chances[i];
            for (int j = 0; j < other.Scores.Length; j++)
            {
                dense[from + other.Scores[j]] += chance * other.Chances[j];
            }
        }

        int count = 0;
        foreach (double chance in dense)
        {
            count += chance > 0 ? 1 : 0;
        }

        int[] sums = new int[count];
        double[] together = new double[count];
        for (int i = 0, at = 0; i < dense.Length; i++)
        {
            if (dense[i] > 0)
            {
                (sums[at], together[at]) = (i + lowest, dense[i]);
                at++;
            }
        }

        return new ScoreList(sums, together);
    }
}
