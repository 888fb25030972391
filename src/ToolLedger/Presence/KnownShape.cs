using System;

namespace ToolLedger.Presence;

/// <summary>What decisions on passes of the same looks share: the tags of a kit are all seen in the same passes. Immutable and thread-safe.</summary>
internal sealed class KnownShape
{
    private readonly PassLooks[] shape;
    private readonly PassScores[] scores;
    private readonly int lineCount;
    private readonly decimal absentShare;
    private readonly bool isOneSurroundings;
    private readonly EvidenceScore silence;
    private readonly int strayScore;

    public KnownShape(RiskBox box, ReadOnlySpan<PassLooks> passes, int lineCount, decimal absentShare, int prior, int threshold)
    {
        shape = passes.ToArray();
        scores = new PassScores[shape.Length];
        isOneSurroundings = true;
        for (int i = 0; i < shape.Length; i++)
        {
            scores[i] = box.ScoresOf(shape[i].Looks);
            isOneSurroundings &= shape[i].Surroundings == shape[0].Surroundings;
            shape[i] = shape[i] with { Reads = 0 };
        }

        (this.lineCount, this.absentShare, Prior, Threshold) = (lineCount, absentShare, prior, threshold);
        silence = box.ScoreOf(shape, out _);
        strayScore = box.StrayScore;
    }

    public int Prior { get; }

    public int Threshold { get; }

    public bool Fits(ReadOnlySpan<PassLooks> passes, int lines, decimal absent)
    {
        if (passes.Length != shape.Length || lines != lineCount || absent != absentShare)
        {
            return false;
        }

        for (int i = 0; i < shape.Length; i++)
        {
            if (passes[i].Looks != shape[i].Looks || passes[i].Surroundings != shape[i].Surroundings)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The same score as <see cref="RiskBox.ScoreOf(ReadOnlySpan{PassLooks}, out bool)"/>, where that is a plain sum; false where it is not.</summary>
    public bool TryScore(ReadOnlySpan<PassLooks> passes, out EvidenceScore score, out bool isRead)
    {
        int low = strayScore, high = strayScore;
        isRead = false;
        for (int i = 0; i < passes.Length; i++)
        {
            PassLooks pass = passes[i];
            PassScores of = scores[i];
            int read = pass.Reads == 0 ? 0 : of.Read(pass.Reads);
            int lowest = pass.Reads == 0 ? of.SilentLow : read + of.ReadLow, highest = pass.Reads == 0 ? of.SilentHigh : read + of.ReadHigh;
            low += pass.IsDegraded ? int.Min(lowest, 0) : pass.Looks == 0 ? 0 : lowest;
            high += pass.IsDegraded ? int.Min(highest, 0) : pass.Looks == 0 ? 0 : highest;
            isRead |= pass is { Reads: > 0, IsDegraded: false };
        }

        score = isRead ? new EvidenceScore(low, high) : silence;
        return isOneSurroundings;
    }
}
