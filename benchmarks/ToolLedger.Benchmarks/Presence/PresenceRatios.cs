using System;
using System.Diagnostics;
using System.Globalization;
using System.Linq;
using ToolLedger.Presence;

namespace ToolLedger.Benchmarks.Presence;

/// <summary>A kit of 20 tags at a stated risk against the plain formula worked out anew for each tag, and learning from a million tag-sessions.</summary>
internal static class PresenceRatios
{
    private const int Tags = 20;
    private const int Kits = 2_000;
    private const int Sessions = 1_000_000;

    internal static int Run()
    {
        PassLooks[] passes = Draw(Tags * Kits);
        var policy = new StatedRiskPolicy();
        Ratios.Measure(
            "posterior and decision, ns for a kit of 20 tags",
            Kits,
            ("formula anew, no decision", () => Plain(passes)),
            ("StatedRiskPolicy.Decide", () => Decide(policy, passes)));
        Learn();
        return 0;
    }

    private static PassLooks[] Draw(int tags)
    {
        var chance = new SplitMix64(8);
        return [.. Enumerable.Range(0, tags * 2).Select(_ => new PassLooks(40, (int)(chance.Next() % 41)))];
    }

    private static long Decide(StatedRiskPolicy policy, PassLooks[] passes)
    {
        long accounted = 0;
        for (int i = 0; i < passes.Length; i += 2)
        {
            accounted += policy.Decide(passes.AsSpan(i, 2), Tags).State == PresenceState.Accounted ? 1 : 0;
        }

        return accounted;
    }

    /// <summary>The posterior alone, of the same model, with the platform's logarithm and a series for ln gamma.</summary>
    private static long Plain(PassLooks[] passes)
    {
        double sum = 0;
        for (int i = 0; i < passes.Length; i += 2)
        {
            double odds = Math.Log(99) - Math.Log(0.05);
            for (int pass = i; pass < i + 2; pass++)
            {
                (int n, int k) = (passes[pass].Looks, passes[pass].Reads);
                double there = 0.95 * Math.Exp(LogBeta(2.5 + k, 2.5 + n - k) - LogBeta(2.5, 2.5));
                odds += Math.Log(k == 0 ? there + 0.05 : there) - (LogBeta(0.6 + k, 8 + n - k) - LogBeta(0.6, 8));
            }

            sum += 1 / (1 + Math.Exp(odds));
        }

        return (long)sum;
    }

    private static double LogBeta(double a, double b) => LogGamma(a) + LogGamma(b) - LogGamma(a + b);

    private static double LogGamma(double x)
    {
        double shift = 0;
        for (; x < 7; x++)
        {
            shift -= Math.Log(x);
        }

        return shift + ((x - 0.5) * Math.Log(x)) - x + 0.9189385332046728 + (1 / (12 * x)) - (1 / (360 * x * x * x)) + (1 / (1260 * x * x * x * x * x));
    }

    private static void Learn()
    {
        PassLooks[] passes = Draw(Sessions);
        var watch = Stopwatch.StartNew();
        var learner = new DetectionLearner();
        for (int i = 0; i < Sessions; i++)
        {
            if (i % 20 == 0)
            {
                learner.AddAbsent([passes[2 * i] with { Reads = 0 }, passes[(2 * i) + 1] with { Reads = i % 400 == 0 ? 2 : 0 }]);
            }
            else
            {
                learner.AddThere(passes.AsSpan(2 * i, 2));
            }
        }

        TimeSpan added = watch.Elapsed;
        LearnedDetection learned = learner.Learn();
        TimeSpan all = watch.Elapsed;
        watch.Restart();
        double likelihood = 0;
        DetectionModel model = DetectionModel.Example;
        for (int i = 0; i < passes.Length; i++)
        {
            likelihood += model.LogPresent(passes[i].Looks, passes[i].Reads);
        }

        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"learning from {Sessions:N0} tag-sessions: {added.TotalSeconds:F2} s to add, {(all - added).TotalSeconds:F2} s to learn ({learned.PassesThere:N0} passes); one likelihood, pass by pass, {watch.Elapsed.TotalSeconds:F2} s ({likelihood:F0})"));
    }
}
