using System;
using System.Collections.Generic;
using System.Diagnostics;
using System.Globalization;
using System.Linq;

namespace ToolLedger.Benchmarks;

/// <summary>
/// Ratios in one run: every candidate once a round, in turn, in one process; warm-up rounds dropped; medians of the others, and
/// the best round of each, which a busy machine disturbs least. Ratios survive a change of machine, nanoseconds do not.
/// </summary>
internal static class Ratios
{
    /// <summary>Measures short work: many rounds.</summary>
    internal static void Measure(string title, int count, params (string Name, Func<long> Work)[] candidates) =>
        Measure(title, count, 14, 41, candidates);

    /// <summary>Measures the candidates, the first of which is the baseline, and prints nanoseconds, ratios and bytes for one item.</summary>
    internal static void Measure(string title, int count, int warmRounds, int rounds, params (string Name, Func<long> Work)[] candidates) =>
        MeasurePrepared(title, count, warmRounds, rounds, [.. candidates.Select(static candidate => (candidate.Name, new Func<Func<long>>(() => candidate.Work)))]);

    /// <summary>The same for work that is made ready each time before the watch starts.</summary>
    internal static void MeasurePrepared(string title, int count, int warmRounds, int rounds, params (string Name, Func<Func<long>> Prepare)[] candidates)
    {
        var times = candidates.Select(_ => new List<double>()).ToArray();
        var bytes = new long[candidates.Length];
        for (int round = 0; round < warmRounds + rounds; round++)
        {
            for (int i = 0; i < candidates.Length; i++)
            {
                Func<long> work = candidates[i].Prepare();
                long before = GC.GetAllocatedBytesForCurrentThread();
                var watch = Stopwatch.StartNew();
                work();
                watch.Stop();
                bytes[i] = GC.GetAllocatedBytesForCurrentThread() - before;
                if (round >= warmRounds)
                {
                    times[i].Add(watch.Elapsed.TotalNanoseconds / count);
                }
            }
        }

        Console.WriteLine(title);
        for (int i = 0; i < candidates.Length; i++)
        {
            double ratio = Median(times[i].Zip(times[0], (a, b) => a / b));
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"  {candidates[i].Name,-32}median {Median(times[i]),9:F2} ns {ratio,7:F3} x   best {times[i].Min(),9:F2} ns {times[i].Min() / times[0].Min(),7:F3} x  {(double)Math.Max(0, bytes[i] - 64) / count,7:F1} B"));
        }
    }

    private static double Median(IEnumerable<double> values)
    {
        double[] sorted = values.Order().ToArray();
        return sorted[sorted.Length / 2];
    }
}
