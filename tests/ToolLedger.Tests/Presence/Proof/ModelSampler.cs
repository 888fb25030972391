using System;
using System.Linq;
using ToolLedger.Presence;
using ToolLedger.Statistics;

namespace ToolLedger.Tests.Presence.Proof;

/// <summary>Draws the passes of tags from a model, by tables of its probabilities and a SplitMix64 generator.</summary>
internal sealed class ModelSampler
{
    private readonly int[] looks;
    private readonly double obscured;
    private readonly double strays;
    private readonly double[][] present;
    private readonly double[][] stray;
    private readonly bool isChanged;
    private ulong state;

    /// <param name="truth">The model that tags really answer by.</param>
    /// <param name="looks">The looks of each pass.</param>
    /// <param name="seed">The seed.</param>
    /// <param name="isChanged">True where the surroundings change between passes, so that being a stray is a new draw in each.</param>
    public ModelSampler(DetectionModel truth, int[] looks, ulong seed, bool isChanged = false)
    {
        this.looks = looks;
        this.isChanged = isChanged;
        state = seed;
        (obscured, strays) = ((double)truth.ObscuredShare, (double)truth.StrayShare);
        var clear = new DetectionModel(0, truth.Present, truth.StrayShare, truth.Stray);
        present = [.. looks.Select(count => Sums(count, k => clear.LogPresent(count, k)))];
        stray = [.. looks.Select(count => Sums(count, k => truth.LogStray(count, k)))];
    }

    /// <summary>A tag that is there.</summary>
    public void There(Span<PassLooks> passes)
    {
        for (int i = 0; i < passes.Length; i++)
        {
            passes[i] = Pass(i, Unit() < obscured ? 0 : Draw(present[i]));
        }
    }

    /// <summary>A tag that is not there: a stray in all passes of the same surroundings, or in none.</summary>
    public void Absent(Span<PassLooks> passes)
    {
        bool isStray = false;
        for (int i = 0; i < passes.Length; i++)
        {
            isStray = i == 0 || isChanged ? Unit() < strays : isStray;
            passes[i] = Pass(i, isStray ? Draw(stray[i]) : 0);
        }
    }

    public double Unit()
    {
        ulong z = state += 0x9E3779B97F4A7C15UL;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        return ((z ^ (z >> 31)) >> 11) * (1.0 / (1UL << 53));
    }

    private PassLooks Pass(int index, int reads) => new(looks[index], reads) { Surroundings = isChanged ? index : 0 };

    private int Draw(double[] sums)
    {
        double at = Unit() * sums[^1];
        int k = 0;
        while (sums[k] <= at)
        {
            k++;
        }

        return k;
    }

    private static double[] Sums(int looks, Func<int, double> log)
    {
        double[] sums = new double[looks + 1];
        double sum = 0;
        for (int k = 0; k <= looks; k++)
        {
            // The library's own function has the same bits everywhere, so that a seed gives the same kits on any machine.
            sum += Elementary.Exp(log(k));
            sums[k] = sum;
        }

        return sums;
    }
}
