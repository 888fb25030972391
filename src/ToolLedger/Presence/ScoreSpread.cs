using System;
using System.Collections.Generic;
using System.Runtime.InteropServices;
using ToolLedger.Statistics;

namespace ToolLedger.Presence;

/// <summary>How often a tag that is not there reaches which score, exactly: by recursion over the passes for every set of passes that may stay silent.</summary>
internal sealed class ScoreSpread
{
    private readonly int[] scores;
    private readonly double[] tails;

    private ScoreSpread(int[] scores, double[] tails)
    {
        this.scores = scores;
        this.tails = tails;
    }

    /// <summary>The chances at the worst corner: strays as many as the box allows.</summary>
    public static ScoreSpread Of(RiskBox box, PassKey key)
    {
        var found = new Dictionary<int, double>();
        new Walk(box, key, found).From(0, new ScoreList([0], [1]), 0);
        int[] falling = [.. found.Keys];
        Array.Sort(falling, static (left, right) => right.CompareTo(left));
        double[] sums = new double[falling.Length];
        double sum = 0;
        for (int i = 0; i < falling.Length; i++)
        {
            sum += found[falling[i]];
            sums[i] = sum;
        }

        return new ScoreSpread(falling, sums);
    }

    /// <summary>The lowest score that is reached or passed with at most this chance; the largest number there is where none is.</summary>
    public int Threshold(double chance)
    {
        int low = 0, high = scores.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = tails[middle] <= chance ? (middle + 1, high) : (low, middle);
        }

        return low == 0 ? int.MaxValue : scores[low - 1];
    }

    /// <summary>The chance that a tag that is not there has a score of at least this.</summary>
    public double AtLeast(int score)
    {
        int low = 0, high = scores.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = scores[middle] >= score ? (middle + 1, high) : (low, middle);
        }

        return low == 0 ? 0 : tails[low - 1];
    }

    private sealed class Walk(RiskBox box, PassKey key, Dictionary<int, double> found)
    {
        /// <summary>The passes from an index on, given the sums of the passes before that were read and the set of those that were silent.</summary>
        public void From(int index, ScoreList sums, int silent)
        {
            if (index == key.Count)
            {
                if (silent != (1 << key.Count) - 1)
                {
                    Add(sums, silent);
                }

                return;
            }

            From(index + 1, sums, silent | (1 << index));
            From(index + 1, sums.Plus(ScoreList.OfReads(box.ScoresOf(key.LooksOf(index)))), silent);
        }

        private void Add(ScoreList sums, int silent)
        {
            EvidenceScore shift = default;
            double weight = 1;
            for (int group = 0; group < PassKey.MaxPasses; group++)
            {
                AddGroup(group, silent, ref shift, ref weight);
            }

            for (int i = 0; i < sums.Scores.Length; i++)
            {
                CollectionsMarshal.GetValueRefOrAddDefault(found, sums.Scores[i] + shift.Least, out _) += weight * sums.Chances[i];
            }
        }

        private void AddGroup(int group, int silent, ref EvidenceScore shift, ref double weight)
        {
            EvidenceScore asStray = new(box.StrayScore, box.StrayScore);
            double low = 0, high = 0, stray = 0;
            bool isRead = false, isThere = false;
            for (int i = 0; i < key.Count; i++)
            {
                if (key.GroupOf(i) != group)
                {
                    continue;
                }

                isThere = true;
                PassScores of = box.ScoresOf(key.LooksOf(i));
                if ((silent & (1 << i)) == 0)
                {
                    isRead = true;
                    asStray += new EvidenceScore(of.ReadLow, of.ReadHigh);
                    continue;
                }

                asStray += new EvidenceScore(of.SilentLow, of.SilentHigh);
                low += of.LogSilentLow;
                high += of.LogSilentHigh;
                stray += of.LogStray[0];
            }

            if (isRead)
            {
                shift += asStray;
                weight *= box.StrayHigh * Elementary.Exp(stray);
            }
            else if (isThere)
            {
                // Surroundings in which all was silent: as often as the fewest strays leave it silent, which is the most.
                shift += EvidenceScore.Min(box.Silence(low, high, stray), asStray);
                weight *= Elementary.Exp(DetectionModel.LogAbsentSilent(box.StrayLow, stray));
            }
        }
    }
}
