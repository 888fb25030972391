using System.Collections.Concurrent;
using ToolLedger.Statistics;

namespace ToolLedger.Presence;

/// <summary>One detection model with the ends of its shares, and what reads are worth by it. Thread-safe.</summary>
internal sealed class ModelBox
{
    private const int ScoresKept = 512;
    private const long LooksKept = 2_000_000;

    private readonly ConcurrentDictionary<int, PassScores> scores = new();
    private long looksKept;

    public ModelBox(DetectionModel model, decimal factor)
    {
        Model = model;
        ObscuredLow = (double)(model.ObscuredShare / factor);
        ObscuredHigh = (double)decimal.Min(1, model.ObscuredShare * factor);
        StrayLow = (double)(model.StrayShare / factor);
        StrayHigh = (double)decimal.Min(1, model.StrayShare * factor);
        StrayScore = PassScores.ToScore(-Elementary.Log(StrayHigh));
    }

    public DetectionModel Model { get; }

    /// <summary>The model's own obscured share.</summary>
    public double Obscured => (double)Model.ObscuredShare;

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
            found = new PassScores(Model, ObscuredLow, ObscuredHigh, looks);
            if (scores.Count >= ScoresKept || looksKept + looks > LooksKept)
            {
                // Begun anew: were later ones not kept, each decision on them would make theirs again.
                scores.Clear();
                looksKept = 0;
            }

            if (scores.TryAdd(looks, found))
            {
                // Two threads may both count: the limit is on memory, not exact.
                looksKept += looks;
            }
        }

        return found;
    }
}
