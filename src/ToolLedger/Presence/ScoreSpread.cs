using System;
using System.Collections.Generic;
using System.Runtime.InteropServices;
using ToolLedger.Statistics;

namespace ToolLedger.Presence;

/// <summary>How often a tag reaches which score: by recursion over the passes for every set of passes that may stay silent.</summary>
/// <remarks>
/// Exactly, where that takes at most <see cref="MostWork"/> steps. Of passes with more looks what the reads of a pass are worth is put into cells of a power of 2 of steps, as small as the work allows: rounded up for
/// a tag that is not there, so that it reaches every score at least as often as in truth and a cut made by it is never too low; rounded down for one that is there, so that no more is promised. Scores of
/// evidence are not rounded. Immutable and thread-safe.
/// </remarks>
internal sealed class ScoreSpread
{
    /// <summary>Steps of the recursion that one spread may take (ours): some tenths of a second.</summary>
    public const long MostWork = 1L << 27;


    private readonly int[] scores;
    private readonly double[] tails;

    private ScoreSpread(int[] scores, double[] tails)
    {
        this.scores = scores;
        this.tails = tails;
    }

    /// <summary>The chances of a tag that is not there at the worst corner, strays as many as the box allows; or of one that is there, at the model's own parameters.</summary>
    public static ScoreSpread Of(RiskBox box, PassKey key, bool isThere = false, long mostWork = MostWork)
    {
        var found = new Dictionary<int, double>();
        new Walk(box, key, isThere, found, SpreadWork.Of(box, key, mostWork).CellBits).From(0, new ScoreList([0], [1]), 0);
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

    private sealed class Walk
    {
        private readonly RiskBox box;
        private readonly bool isThere;
        private readonly Dictionary<int, double> found;
        private readonly PassLooks[] passes;
        private readonly int[] slots;
        private readonly int modelCount;
        private readonly int cellBits;
        private readonly ScoreList[] reads;

        public Walk(RiskBox box, PassKey key, bool isThere, Dictionary<int, double> found, int cellBits)
        {
            (this.box, this.isThere, this.found, this.cellBits) = (box, isThere, found, cellBits);
            passes = new PassLooks[key.Count];
            key.CopyTo(passes);
            slots = new int[key.Count];
            modelCount = PassSlots.Fill(passes, slots);
            reads = Array.ConvertAll(passes, OfReads);
        }

        /// <summary>The passes from an index on, given the sums of the passes before that were read and the set of those that were silent.</summary>
        public void From(int index, ScoreList sums, int silent)
        {
            if (index == passes.Length)
            {
                if (silent != (1 << passes.Length) - 1)
                {
                    Add(sums, silent);
                }

                return;
            }

            From(index + 1, sums, silent | (1 << index));
            From(index + 1, sums.Plus(reads[index]), silent);
        }

        private ScoreList OfReads(PassLooks pass)
        {
            PassScores of = box.ScoresOf(pass);
            return ScoreList.OfReads(of, isThere ? of.LogPresent : of.LogStray, cellBits, isUp: !isThere);
        }

        private void Add(ScoreList sums, int silent)
        {
            double weight = 1;
            for (int group = 0; group < PassKey.MaxPasses; group++)
            {
                weight *= WeightOf(group, silent);
            }

            int shift = int.MaxValue;
            for (int corner = 0; corner < 1 << modelCount; corner++)
            {
                int at = 0;
                for (int group = 0; group < PassKey.MaxPasses; group++)
                {
                    at += ShiftOf(group, silent, corner);
                }

                shift = int.Min(shift, at);
            }

            for (int i = 0; i < sums.Scores.Length; i++)
            {
                CollectionsMarshal.GetValueRefOrAddDefault(found, (sums.Scores[i] << cellBits) + shift, out _) += weight * sums.Chances[i];
            }
        }

        /// <summary>What the passes of one surroundings add at a corner, apart from the reads themselves; 0 where there are none.</summary>
        private int ShiftOf(int group, int silent, int corner)
        {
            double present = 0, stray = 0;
            (double strayLow, _, int asStray) = box.StrayOf(passes, group);
            bool isRead = false, isAny = false;
            for (int i = 0; i < passes.Length; i++)
            {
                if (passes[i].Surroundings != group)
                {
                    continue;
                }

                isAny = true;
                PassScores of = box.ScoresOf(passes[i]);
                bool isHigh = EvidenceScore.IsHigh(corner, slots[i]);
                if ((silent & (1 << i)) == 0)
                {
                    isRead = true;
                    asStray += isHigh ? of.ReadHigh : of.ReadLow;
                    continue;
                }

                asStray += isHigh ? of.SilentHigh : of.SilentLow;
                present += isHigh ? of.LogSilentHigh : of.LogSilentLow;
                stray += of.LogStray[0];
            }

            return !isAny ? 0 : isRead ? asStray : int.Min(RiskBox.Silence(present, stray, strayLow), asStray);
        }

        /// <summary>How often those passes of one surroundings are silent and the others are not; of strays as often as the box allows.</summary>
        private double WeightOf(int group, int silent)
        {
            double weight = 1, stray = 0;
            bool isRead = false, isAny = false;
            for (int i = 0; i < passes.Length; i++)
            {
                if (passes[i].Surroundings != group)
                {
                    continue;
                }

                isAny = true;
                PassScores of = box.ScoresOf(passes[i]);
                double obscured = box.Of(passes[i].Model).Obscured;
                if ((silent & (1 << i)) == 0)
                {
                    isRead = true;
                    weight *= isThere ? 1 - obscured : 1;
                    continue;
                }

                stray += of.LogStray[0];
                weight *= isThere ? Elementary.Exp(DetectionModel.LogSilent(obscured, of.LogPresent[0])) : 1;
            }

            if (isThere || !isAny)
            {
                return weight;
            }

            // Surroundings in which all was silent: as often as the fewest strays leave it silent, which is the most.
            (double strayLow, double strayHigh, _) = box.StrayOf(passes, group);
            return isRead ? strayHigh * Elementary.Exp(stray) : Elementary.Exp(DetectionModel.LogAbsentSilent(strayLow, stray));
        }
    }
}
