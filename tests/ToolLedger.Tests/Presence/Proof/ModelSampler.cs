using System;
using ToolLedger.Presence;

namespace ToolLedger.Tests.Presence.Proof;

/// <summary>Draws the passes of tags from a model, by tables of its probabilities and a SplitMix64 generator.</summary>
internal sealed class ModelSampler
{
    private readonly int looks;
    private readonly double obscured;
    private readonly double strays;
    private readonly double[] present;
    private readonly double[] stray;
    private ulong state;

    public ModelSampler(DetectionModel truth, int looks, ulong seed)
    {
        this.looks = looks;
        state = seed;
        (obscured, strays) = ((double)truth.ObscuredShare, (double)truth.StrayShare);
        var clear = new DetectionModel(0, truth.Present, truth.StrayShare, truth.Stray);
        present = Sums(k => clear.LogPresent(looks, k));
        stray = Sums(k => truth.LogStray(looks, k));
    }

    /// <summary>A tag that is there.</summary>
    public void There(Span<PassLooks> passes)
    {
        foreach (ref PassLooks pass in passes)
        {
            pass = new PassLooks(looks, Unit() < obscured ? 0 : Draw(present));
        }
    }

    /// <summary>A tag that is not there: a stray in all passes, or in none.</summary>
    public void Absent(Span<PassLooks> passes)
    {
        bool isStray = Unit() < strays;
        foreach (ref PassLooks pass in passes)
        {
            pass = new PassLooks(looks, isStray ? Draw(stray) : 0);
        }
    }

    public double Unit()
    {
        ulong z = state += 0x9E3779B97F4A7C15UL;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        return ((z ^ (z >> 31)) >> 11) * (1.0 / (1UL << 53));
    }

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

    private double[] Sums(Func<int, double> log)
    {
        double[] sums = new double[looks + 1];
        double sum = 0;
        for (int k = 0; k <= looks; k++)
        {
            sum += Math.Exp(log(k));
            sums[k] = sum;
        }

        return sums;
    }
}
