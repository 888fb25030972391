using System;

namespace ToolLedger.Presence;

/// <summary>What decisions on passes of the same looks share: the tags of a kit are all seen in the same passes. Immutable and thread-safe.</summary>
internal sealed class KnownShape
{
    private readonly PassLooks[] shape;
    private readonly PassScores[] scores;
    private readonly int lineCount;
    private readonly decimal absentShare;
    private readonly bool isPlain;
    private readonly EvidenceScore silence;
    private readonly int strayScore;

    public KnownShape(RiskBox box, ReadOnlySpan<PassLooks> passes, int lineCount, decimal absentShare, int prior, int threshold)
    {
        shape = passes.ToArray();
        scores = new PassScores[shape.Length];
        isPlain = true;
        for (int i = 0; i < shape.Length; i++)
        {
            scores[i] = box.ScoresOf(shape[i]);
            isPlain &= shape[i].Surroundings == shape[0].Surroundings && shape[i].Model == shape[0].Model;
            shape[i] = shape[i] with { Reads = 0 };
        }

        (this.lineCount, this.absentShare, Prior, Threshold) = (lineCount, absentShare, prior, threshold);
        silence = box.ScoreOf(shape, out _);
        strayScore = shape.Length == 0 ? 0 : box.StrayOf(shape, shape[0].Surroundings).Score;
    }

    /// <summary>A number that is the same for the same shape.</summary>
    public static int HashOf(ReadOnlySpan<PassLooks> passes, int lines, decimal absent)
    {
        uint hash = ((uint)lines * 31) + (uint)absent.GetHashCode();
        foreach (PassLooks pass in passes)
        {
            hash = (hash * 16_777_619) ^ (uint)(pass.Looks + (pass.Model << 16) + (pass.Surroundings << 27));
        }

        // The upper bits of a product depend on all bits.
        return (int)((hash * 2_654_435_769) >> 16);
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
            if (passes[i].Looks != shape[i].Looks || passes[i].Surroundings != shape[i].Surroundings || passes[i].Model != shape[i].Model)
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
            low += pass.Looks == 0 ? 0 : pass.IsDegraded ? int.Min(lowest, 0) : lowest;
            high += pass.Looks == 0 ? 0 : pass.IsDegraded ? int.Min(highest, 0) : highest;
            isRead |= pass is { Reads: > 0, IsDegraded: false };
        }

        score = !isRead ? silence : low <= high ? new EvidenceScore(low, 0) : new EvidenceScore(high, 1);
        return isPlain;
    }
}
