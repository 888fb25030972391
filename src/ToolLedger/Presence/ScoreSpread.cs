using System;
using System.Collections.Generic;
using System.Runtime.InteropServices;
using ToolLedger.Statistics;

namespace ToolLedger.Presence;

/// <summary>How often a tag reaches which score, exactly: by recursion over the passes for every set of passes that may stay silent.</summary>
internal sealed class ScoreSpread
{
    private readonly int[] scores;
    private readonly double[] tails;

    private ScoreSpread(int[] scores, double[] tails)
    {
        this.scores = scores;
        this.tails = tails;
    }

    /// <summary>The chances of a tag that is not there at the worst corner, strays as many as the box allows; or of one that is there, at the model's own parameters.</summary>
    public static ScoreSpread Of(RiskBox box, PassKey key, bool isThere = false)
    {
        var found = new Dictionary<int, double>();
        new Walk(box, key, isThere, found).From(0, new ScoreList([0], [1]), 0);
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

    /// <summary>The chance of a score of at least this.</summary>
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

    private sealed class Walk(RiskBox box, PassKey key, bool isThere, Dictionary<int, double> found)
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
            From(index + 1, sums.Plus(OfReads(box.ScoresOf(key.LooksOf(index)))), silent);
        }

        private ScoreList OfReads(PassScores of) => ScoreList.OfReads(of, isThere ? of.LogPresent : of.LogStray);

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
            bool isRead = false, isAny = false;
            for (int i = 0; i < key.Count; i++)
            {
                if (key.GroupOf(i) != group)
                {
                    continue;
                }

                isAny = true;
                PassScores of = box.ScoresOf(key.LooksOf(i));
                if ((silent & (1 << i)) == 0)
                {
                    isRead = true;
                    asStray += new EvidenceScore(of.ReadLow, of.ReadHigh);
                    weight *= isThere ? 1 - box.Obscured : 1;
                    continue;
                }

                asStray += new EvidenceScore(of.SilentLow, of.SilentHigh);
                low += of.LogSilentLow;
                high += of.LogSilentHigh;
                stray += of.LogStray[0];
                weight *= isThere ? Elementary.Exp(DetectionModel.LogSilent(box.Obscured, of.LogPresent[0])) : 1;
            }

            if (isRead)
            {
                shift += asStray;
                weight *= isThere ? 1 : box.StrayHigh * Elementary.Exp(stray);
            }
            else if (isAny)
            {
                // Surroundings in which all was silent: as often as the fewest strays leave it silent, which is the most.
                shift += EvidenceScore.Min(box.Silence(low, high, stray), asStray);
                weight *= isThere ? 1 : Elementary.Exp(DetectionModel.LogAbsentSilent(box.StrayLow, stray));
            }
        }
    }
}
