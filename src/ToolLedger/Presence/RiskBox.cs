using System;
using System.Collections.Concurrent;
using System.Collections.Generic;

namespace ToolLedger.Presence;

/// <summary>
/// The models of a policy with their robustness box: scores of evidence at the cautious corner, and how often strays reach a score. Thread-safe.
/// </summary>
/// <remarks>
/// The obscured share of each model may be wrong by itself, so that every combination of ends is a corner. Whether a tag is a stray is one question for all passes of the same surroundings, whatever models
/// they have: the largest stray share of their models counts where it was read, the smallest where all was silent, which are the cautious ones.
/// </remarks>
internal sealed class RiskBox
{
    private const int SpreadsKept = 512;

    private readonly ModelBox[] models;
    private readonly ConcurrentDictionary<PassKey, ScoreSpread> spreads = new();

    public RiskBox(DetectionModel model, IReadOnlyList<StationModel> others, decimal factor)
    {
        models = new ModelBox[others.Count + 1];
        models[0] = new ModelBox(model, factor);
        for (int i = 0; i < others.Count; i++)
        {
            models[i + 1] = new ModelBox(others[i].Model, factor);
        }
    }

    /// <summary>A model by its number: 0 for the policy's own.</summary>
    public ModelBox Of(int model) => models[model];

    public PassScores ScoresOf(PassLooks pass) => models[pass.Model].ScoresOf(pass.Looks);

    /// <summary>How often a tag that is not there reaches which score in such passes.</summary>
    public ScoreSpread SpreadOf(ReadOnlySpan<PassLooks> passes)
    {
        var key = PassKey.Of(passes);
        if (!spreads.TryGetValue(key, out ScoreSpread? found))
        {
            found = ScoreSpread.Of(this, key);
            if (spreads.Count >= SpreadsKept)
            {
                // Begun anew: were later ones not kept, each decision on them would make theirs again.
                spreads.Clear();
            }

            spreads.TryAdd(key, found);
        }

        return found;
    }

    /// <summary>The score of evidence; without a read in a session of good health it is that of silence.</summary>
    public EvidenceScore ScoreOf(ReadOnlySpan<PassLooks> passes, out bool isRead)
    {
        isRead = false;
        foreach (PassLooks pass in passes)
        {
            isRead |= pass is { Reads: > 0, IsDegraded: false };
        }

        Span<int> slots = stackalloc int[PassKey.MaxPasses];
        int count = PassSlots.Fill(passes, slots);
        EvidenceScore least = new(int.MaxValue, 0);
        for (int corner = 0; corner < 1 << count; corner++)
        {
            int sum = 0;
            for (int i = 0; i < passes.Length; i++)
            {
                if (DetectionModel.IsFirstOfItsSurroundings(passes, i))
                {
                    sum += ScoreOfSurroundings(passes, slots, corner, passes[i].Surroundings, isRead, out _);
                }
            }

            least = sum < least.Least ? new EvidenceScore(sum, corner) : least;
        }

        return least;
    }

    /// <summary>The score of one pass of a tag that was read; a degraded session never speaks for the tool.</summary>
    public int ScoreOf(PassLooks pass, bool isHigh)
    {
        PassScores of = ScoresOf(pass);
        int score = pass.Reads == 0
            ? (isHigh ? of.SilentHigh : of.SilentLow)
            : of.Read(pass.Reads) + (isHigh ? of.ReadHigh : of.ReadLow);
        return pass.IsDegraded ? int.Min(score, 0) : score;
    }

    /// <summary>The ends of the stray share of passes that share one question: the lowest and the highest of their models.</summary>
    public (double Low, double High, int Score) StrayOf(ReadOnlySpan<PassLooks> passes, int surroundings)
    {
        (double Low, double High, int Score) found = (double.MaxValue, 0, int.MaxValue);
        foreach (PassLooks pass in passes)
        {
            if (pass.Surroundings == surroundings && pass.Looks > 0)
            {
                ModelBox of = models[pass.Model];
                found = (double.Min(found.Low, of.StrayLow), double.Max(found.High, of.StrayHigh), int.Min(found.Score, of.StrayScore));
            }
        }

        // Passes without looks say nothing, by any model.
        return found.High > 0 ? found : (models[0].StrayLow, models[0].StrayHigh, models[0].StrayScore);
    }

    /// <summary>The score at a corner of the passes that share their surroundings.</summary>
    /// <param name="passes">All passes.</param>
    /// <param name="slots">The places of their models.</param>
    /// <param name="corner">The corner.</param>
    /// <param name="surroundings">Those that count.</param>
    /// <param name="isReadAnywhere">Whether the tag was read in any surroundings, in a session of good health.</param>
    /// <param name="asStray">True where the score is the sum of the passes' own, compared with a stray.</param>
    public int ScoreOfSurroundings(ReadOnlySpan<PassLooks> passes, ReadOnlySpan<int> slots, int corner, int surroundings, bool isReadAnywhere, out bool asStray)
    {
        (double strayLow, _, int sum) = StrayOf(passes, surroundings);
        double silent = 0, stray = 0;
        bool isRead = false;
        for (int i = 0; i < passes.Length; i++)
        {
            PassLooks pass = passes[i];
            if (pass.Surroundings != surroundings || pass.Looks == 0)
            {
                continue;
            }

            bool isHigh = EvidenceScore.IsHigh(corner, slots[i]);
            isRead |= pass is { Reads: > 0, IsDegraded: false };
            sum += ScoreOf(pass, isHigh);
            PassScores of = ScoresOf(pass);
            silent += isHigh ? of.LogSilentHigh : of.LogSilentLow;
            stray += of.LogStray[0];
        }

        asStray = isRead;
        if (isRead)
        {
            return sum;
        }

        int silence = Silence(silent, stray, strayLow);
        return isReadAnywhere ? int.Min(silence, sum) : silence;
    }

    /// <summary>The score of surroundings in which nothing was read. Silence far away is all the likelier the fewer strays there are, so the low end of their share is the cautious one.</summary>
    public static int Silence(double logPresent, double logStray, double strayLow) => PassScores.ToScore(logPresent - DetectionModel.LogAbsentSilent(strayLow, logStray));
}
