using System;
using System.Collections.Concurrent;
using ToolLedger.Statistics;

namespace ToolLedger.Presence;

/// <summary>A detection model with its robustness box: scores of evidence at the cautious corners, and how often strays reach a score. Thread-safe.</summary>
internal sealed class RiskBox
{
    private const int ScoresKept = 512;
    private const long LooksKept = 2_000_000;
    private const int SpreadsKept = 512;

    private readonly DetectionModel model;
    private readonly ConcurrentDictionary<int, PassScores> scores = new();
    private readonly ConcurrentDictionary<PassKey, ScoreSpread> spreads = new();
    private long looksKept;

    public RiskBox(DetectionModel model, decimal factor)
    {
        this.model = model;
        ObscuredLow = (double)(model.ObscuredShare / factor);
        ObscuredHigh = (double)decimal.Min(1, model.ObscuredShare * factor);
        StrayLow = (double)(model.StrayShare / factor);
        StrayHigh = (double)decimal.Min(1, model.StrayShare * factor);
        StrayScore = PassScores.ToScore(-Elementary.Log(StrayHigh));
    }

    /// <summary>The model's own obscured share.</summary>
    public double Obscured => (double)model.ObscuredShare;

    public double ObscuredLow { get; }

    public double ObscuredHigh { get; }

    public double StrayLow { get; }

    public double StrayHigh { get; }

    /// <summary>What the first read adds: few tags that are not there are near enough to be read.</summary>
    public int StrayScore { get; }

    public PassScores ScoresOf(int looks)
    {
        if (!scores.TryGetValue(looks, out PassScores? found))
        {
            found = new PassScores(model, ObscuredLow, ObscuredHigh, looks);
            if (scores.Count < ScoresKept && looksKept + looks <= LooksKept && scores.TryAdd(looks, found))
            {
                // Two threads may both count: the limit is on memory, not exact.
                looksKept += looks;
            }
        }

        return found;
    }

    /// <summary>How often a tag that is not there reaches which score in such passes.</summary>
    public ScoreSpread SpreadOf(ReadOnlySpan<PassLooks> passes)
    {
        var key = PassKey.Of(passes);
        if (!spreads.TryGetValue(key, out ScoreSpread? found))
        {
            found = ScoreSpread.Of(this, key);
            if (spreads.Count < SpreadsKept)
            {
                spreads.TryAdd(key, found);
            }
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

        EvidenceScore sum = default;
        for (int i = 0; i < passes.Length; i++)
        {
            if (DetectionModel.IsFirstOfItsSurroundings(passes, i))
            {
                sum += ScoreOfSurroundings(passes, passes[i].Surroundings, isRead, out _);
            }
        }

        return sum;
    }

    /// <summary>The score of one pass of a tag that was read; a degraded session never speaks for the tool.</summary>
    public EvidenceScore ScoreOf(PassLooks pass)
    {
        PassScores of = ScoresOf(pass.Looks);
        EvidenceScore score = pass.Reads == 0
            ? new EvidenceScore(of.SilentLow, of.SilentHigh)
            : new EvidenceScore(of.Read(pass.Reads) + of.ReadLow, of.Read(pass.Reads) + of.ReadHigh);
        return pass.IsDegraded ? EvidenceScore.Min(score, default) : score;
    }

    /// <summary>The score of surroundings in which nothing was read. Silence far away is all the likelier the fewer strays there are, so the low end of their share is the cautious one.</summary>
    public EvidenceScore Silence(double logPresentLow, double logPresentHigh, double logStray)
    {
        double absent = DetectionModel.LogAbsentSilent(StrayLow, logStray);
        return new EvidenceScore(PassScores.ToScore(logPresentLow - absent), PassScores.ToScore(logPresentHigh - absent));
    }

    /// <param name="passes">All passes.</param>
    /// <param name="surroundings">Those that count.</param>
    /// <param name="isReadAnywhere">Whether the tag was read in any surroundings, in a session of good health.</param>
    /// <param name="asStray">True where the score is the sum of the passes' own, compared with a stray.</param>
    public EvidenceScore ScoreOfSurroundings(ReadOnlySpan<PassLooks> passes, int surroundings, bool isReadAnywhere, out bool asStray)
    {
        EvidenceScore sum = new(StrayScore, StrayScore);
        double low = 0, high = 0, stray = 0;
        bool isRead = false;
        foreach (PassLooks pass in passes)
        {
            if (pass.Surroundings != surroundings || pass.Looks == 0)
            {
                continue;
            }

            isRead |= pass is { Reads: > 0, IsDegraded: false };
            sum += ScoreOf(pass);
            PassScores of = ScoresOf(pass.Looks);
            low += of.LogSilentLow;
            high += of.LogSilentHigh;
            stray += of.LogStray[0];
        }

        asStray = isRead;
        if (isRead)
        {
            return sum;
        }

        EvidenceScore silence = Silence(low, high, stray);
        return isReadAnywhere ? EvidenceScore.Min(silence, sum) : silence;
    }
}
