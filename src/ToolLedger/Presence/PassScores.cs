using System;
using ToolLedger.Statistics;

namespace ToolLedger.Presence;

/// <summary>
/// What every number of reads in a pass of so many looks is worth, in whole steps of log-odds, at the corners of the robustness box. Every score is rounded down,
/// so that a decision adds whole numbers, errs to the side of caution by less than a step a pass, and its exact error rates are sums over whole numbers.
/// </summary>
internal sealed class PassScores
{
    /// <summary>Steps of one unit of natural log-odds (ours): a step is 0.4 % of the odds.</summary>
    public const int StepsPerUnit = 256;

    /// <summary>No pass counts for more than e^64, or less than its inverse.</summary>
    public const int Limit = 64 * StepsPerUnit;

    private readonly int[] reads;

    public PassScores(DetectionModel model, double obscuredLow, double obscuredHigh, int looks)
    {
        (double a, double b) = ((double)model.Present.A, (double)model.Present.B);
        (double strayA, double strayB) = ((double)model.Stray.A, (double)model.Stray.B);
        LogStray = BetaBinomial.LogAll(looks, strayA, strayB);
        LogPresent = BetaBinomial.LogAll(looks, a, b);
        reads = new int[looks + 1];

        // Neither factor of a step is below 1 where strays read no better, in floating point too: so the scores never fall.
        double ratio = LogPresent[0] - LogStray[0];
        for (int k = 1; k <= looks; k++)
        {
            int rest = looks - k;
            ratio += Elementary.Log((a + (k - 1)) / (strayA + (k - 1)) * ((strayB + rest) / (b + rest)));
            reads[k] = ToScore(ratio);
        }

        ReadLow = ToScore(Elementary.LogOnePlus(-obscuredLow));
        ReadHigh = ToScore(Elementary.LogOnePlus(-obscuredHigh));
        LogSilentLow = DetectionModel.LogSilent(obscuredLow, LogPresent[0]);
        LogSilentHigh = DetectionModel.LogSilent(obscuredHigh, LogPresent[0]);
        (SilentLow, IsBoundedLow) = Bounded(LogSilentLow, ReadLow);
        (SilentHigh, IsBoundedHigh) = Bounded(LogSilentHigh, ReadHigh);
    }

    /// <summary>ln P(k | stray) for every k.</summary>
    public double[] LogStray { get; }

    /// <summary>ln P(k | there and not obscured) for every k.</summary>
    public double[] LogPresent { get; }

    /// <summary>What not being obscured adds to a pass with a read, at the low end of the obscured share.</summary>
    public int ReadLow { get; }

    /// <summary>The same at the high end.</summary>
    public int ReadHigh { get; }

    /// <summary>ln P(silent | there) at the low end.</summary>
    public double LogSilentLow { get; }

    /// <summary>ln P(silent | there) at the high end.</summary>
    public double LogSilentHigh { get; }

    /// <summary>A silent pass of a tag that was read elsewhere, at the low end: less than a pass with one read.</summary>
    public int SilentLow { get; }

    /// <summary>The same at the high end.</summary>
    public int SilentHigh { get; }

    /// <summary>True where the bound changed <see cref="SilentLow"/>.</summary>
    public bool IsBoundedLow { get; }

    /// <summary>True where the bound changed <see cref="SilentHigh"/>.</summary>
    public bool IsBoundedHigh { get; }

    public int Looks => reads.Length - 1;

    /// <summary>k reads, without what not being obscured adds; k is 1 or more.</summary>
    public int Read(int k) => reads[k];

    public static int ToScore(double log) => log >= 64 ? Limit : log > -64 ? (int)Math.Floor(log * StepsPerUnit) : -Limit;

    private (int Score, bool IsBounded) Bounded(double logSilent, int read)
    {
        int exact = ToScore(logSilent - LogStray[0]);

        // A step below one read: else "silent" and "one read" tie, and a cut between the two, which may leave fewer lines open at the same risk, could not be made.
        int below = Looks > 0 ? reads[1] + read - 1 : exact;
        return below < exact ? (below, true) : (exact, false);
    }
}
