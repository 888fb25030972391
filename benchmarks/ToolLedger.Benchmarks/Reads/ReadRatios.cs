using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Runtime.InteropServices;
using ToolLedger.Reads;
using ToolLedger.Tools;

namespace ToolLedger.Benchmarks.Reads;

/// <summary>Taking reads into a session against a plain dictionary with the same key, and the memory of a tag.</summary>
internal static class ReadRatios
{
    private const int ReadCount = 4_000_000;

    internal static int Run()
    {
        foreach (bool isClustered in new[] { true, false })
        {
            TagRead[] reads = ReadCorpus.Make(ReadCount, isClustered);
            Ratios.Measure(
                isClustered ? "reads -> evidence, clustered" : "reads -> evidence, scattered",
                ReadCount,
                2,
                7,
                ("Dictionary by ref", () => WithDictionary(reads)),
                ("session, batches", () => InBatches(reads, new SessionPolicy())),
                ("session, batches, no repeat check", () => InBatches(reads, new SessionPolicy { RepeatReportCount = 0 })),
                ("session, one by one", () => OneByOne(reads)));
        }

        Memory();
        return 0;
    }

    internal static Presentation NewPresentation() => new()
    {
        Id = new SessionId("S1"),
        Station = new ReadStation { Id = new StationId("R1"), Antennas = [.. Enumerable.Range(1, 4).Select(port => new AntennaPort((byte)port))] },
        Kits = [],
        From = ReadCorpus.Start,
        ReaderClockOffset = TimeSpan.Zero,
    };

    private static void Memory()
    {
        var reads = new TagRead[ReadCorpus.TagCount];
        for (int i = 0; i < reads.Length; i++)
        {
            reads[i] = new TagRead(ReadCorpus.Tag(i), new AntennaPort(1), ReadCorpus.Start.AddMicroseconds(i * 500L));
        }

        long before = GC.GetTotalMemory(forceFullCollection: true);
        var builder = new ReadSessionBuilder(NewPresentation(), new SessionPolicy { RepeatReportCount = 0 });
        builder.AddRange(reads);
        long bytes = GC.GetTotalMemory(forceFullCollection: true) - before;
        ReadSession session = builder.Close(ReadCorpus.Start.AddSeconds(3_000), TimeSpan.Zero);
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture, $"memory of a session: {(double)bytes / session.TagCount:F1} B for each of {session.TagCount} tags"));
        GC.KeepAlive(reads);
    }

    private static long InBatches(TagRead[] reads, SessionPolicy policy)
    {
        var builder = new ReadSessionBuilder(NewPresentation(), policy);
        builder.AddRange(reads);
        return builder.Close(ReadCorpus.Start.AddSeconds(3_000), TimeSpan.Zero).TagCount;
    }

    private static long OneByOne(TagRead[] reads)
    {
        var builder = new ReadSessionBuilder(NewPresentation(), new SessionPolicy());
        foreach (ref readonly TagRead read in reads.AsSpan())
        {
            builder.Add(read);
        }

        return builder.Close(ReadCorpus.Start.AddSeconds(3_000), TimeSpan.Zero).TagCount;
    }

    /// <summary>The baseline: count, first, last and strongest of each tag.</summary>
    internal static int WithDictionary(TagRead[] reads)
    {
        var summaries = new Dictionary<TagId, TagSummary>();
        foreach (ref readonly TagRead read in reads.AsSpan())
        {
            ref TagSummary summary = ref CollectionsMarshal.GetValueRefOrAddDefault(summaries, read.Tag, out bool exists);
            long ticks = read.FirstSeen.UtcTicks;
            short strength = read.Strength.GetValueOrDefault().CentiDbm;
            summary.Count++;
            summary.FirstTicks = exists ? Math.Min(summary.FirstTicks, ticks) : ticks;
            summary.LastTicks = exists ? Math.Max(summary.LastTicks, ticks) : ticks;
            summary.Strongest = exists ? Math.Max(summary.Strongest, strength) : strength;
        }

        return summaries.Count;
    }
}
