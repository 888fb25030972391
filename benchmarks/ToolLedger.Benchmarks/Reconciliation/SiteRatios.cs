using System;
using System.Diagnostics;
using System.Globalization;
using System.Linq;
using ToolLedger.Benchmarks.Reads;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Tools;

namespace ToolLedger.Benchmarks.Reconciliation;

/// <summary>A whole site in one process: 1 to 10 million reads of 50,000 kits of twenty tools, and the conclusions of all kits.</summary>
internal static class SiteRatios
{
    private const int MostReads = 10_000_000;

    internal static int Run()
    {
        var sessions = new SessionPolicy { MaximumWindow = TimeSpan.FromHours(2), SessionAgeMax = TimeSpan.FromHours(2) };
        var policy = new ReconciliationPolicy { Sessions = sessions };
        KitRegister kits = SiteCorpus.Kits();
        TagRegister tags = SiteCorpus.Tags();
        KitId[] all = [.. Enumerable.Range(0, ReadCorpus.KitCount).Select(SiteCorpus.KitOf)];
        TagRead[] reads = ReadCorpus.Make(MostReads, isClustered: true);
        Console.WriteLine("reads        session ns/read   session B/tag   all kits ms   accounted   weak   not read");
        foreach (int count in new[] { MostReads / 10, MostReads / 10, MostReads / 5, MostReads / 2, MostReads })
        {
            // One read each 500 us: the presentation ends with the last of them.
            DateTimeOffset to = ReadCorpus.Start.AddMicroseconds(500L * count);
            Presentation presentation = SiteCorpus.Presentation(to);
            long before = GC.GetTotalMemory(forceFullCollection: true);
            var watch = Stopwatch.StartNew();
            var builder = new ReadSessionBuilder(presentation, sessions);
            builder.AddRange(SiteCorpus.ControlReads(to));
            builder.AddRange(reads.AsSpan(0, count));
            ReadSession session = builder.Close(to, presentation.ReaderClockOffsetAfter);
            double ingest = watch.Elapsed.TotalNanoseconds / count;
            double bytes = (double)(GC.GetTotalMemory(forceFullCollection: true) - before) / session.TagCount;
            watch.Restart();
            var input = new ReconciliationInput { Kits = kits, Subject = all[0], Sessions = [session], Tags = tags, AsOf = to };
            var states = new int[Enum.GetValues<LineState>().Length];
            foreach (ReconciliationResult result in new Reconciler(policy).ReconcileAll(input, all))
            {
                foreach (LineState state in Enum.GetValues<LineState>())
                {
                    states[(int)state] += result.Kit.CountOf(state);
                }
            }

            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{count,-12} {ingest,15:F1} {bytes,15:F1} {watch.Elapsed.TotalMilliseconds,13:F0} {states[(int)LineState.Accounted],11} {states[(int)LineState.Weak],6} {states[(int)LineState.NotRead],10}"));
        }

        return 0;
    }
}
