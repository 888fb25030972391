using System;
using System.Runtime.InteropServices;

namespace ToolLedger.Presence;

/// <summary>What a spread of scores costs, told before it is made: the same on every machine.</summary>
/// <param name="Steps">Steps of the recursion, at most.</param>
/// <param name="CellBits">Scores are put into cells of 2 to this power; 0 for none.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct SpreadWork(double Steps, int CellBits)
{
    // All scores of a pass in one cell.
    private const int MostBits = 16;

    // Adding a sum to those found, compared with one step of the recursion.
    private const double FoundSteps = 8;

    /// <summary>The smallest cells with which a spread takes at most so many steps.</summary>
    public static SpreadWork Of(RiskBox box, PassKey key, double mostSteps)
    {
        Span<PassLooks> passes = stackalloc PassLooks[PassKey.MaxPasses];
        passes = passes[..key.Count];
        key.CopyTo(passes);
        Span<(int Count, int Width)> scores = stackalloc (int, int)[PassKey.MaxPasses];
        for (int i = 0; i < passes.Length; i++)
        {
            PassScores of = box.ScoresOf(passes[i]);
            scores[i] = (of.Looks, of.Read(of.Looks) - of.Read(1));
        }

        scores = scores[..passes.Length];
        for (int bits = 0; ; bits++)
        {
            double steps = From(scores, 1, 0, bits);
            if (steps <= mostSteps || bits == MostBits)
            {
                return new SpreadWork(steps, bits);
            }
        }
    }

    /// <summary>The steps for the passes that are left, given how many sums there are at most and how far apart their ends are.</summary>
    private static double From(ReadOnlySpan<(int Count, int Width)> scores, double sums, double width, int bits)
    {
        if (scores.IsEmpty)
        {
            return FoundSteps * sums;
        }

        double cells = double.Min(scores[0].Count, CellsOf(scores[0].Width, bits));
        double wider = width + (scores[0].Width >> bits) + 1;
        double next = double.Min(sums * cells, wider + 1);
        return (sums * cells) + wider + From(scores[1..], sums, width, bits) + From(scores[1..], next, wider, bits);
    }

    private static double CellsOf(int width, int bits) => (width >> bits) + 2;
}
