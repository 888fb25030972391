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
    private const int ReadCount = 10_000_000;
    private const int ReadsPerSession = 1_200_000;

    private static readonly SessionPolicy Usual = new() { MaximumWindow = TimeSpan.FromHours(3) };
    private static readonly SessionPolicy WithoutRepeats = Usual with { RepeatReportCount = 0 };

    internal static int Run()
    {
        MeasureWarm("reads -> evidence, clustered, the second 10,000,000 of a session", isClustered: true);
        MeasureWarm("reads -> evidence, scattered, the second 10,000,000 of a session", isClustered: false);
        TagRead[] clustered = ReadCorpus.Make(ReadCount, isClustered: true);
        Measure("reads -> evidence, clustered, one session of 5,000 s", clustered, ReadCount);
        Measure("reads -> evidence, clustered, sessions of 600 s", clustered, ReadsPerSession);
        Measure("reads -> evidence, scattered, one session of 5,000 s", ReadCorpus.Make(ReadCount, isClustered: false), ReadCount);
        Memory();
        return 0;
    }

    // The tags are known from as many reads before.
    private static void MeasureWarm(string title, bool isClustered)
    {
        TagRead[] all = ReadCorpus.Make(2 * ReadCount, isClustered);
        Ratios.MeasurePrepared(
            title,
            ReadCount,
            2,
            5,
            ("Dictionary by ref",
            () =>
            {
                var summaries = new Dictionary<TagId, TagSummary>();
                AddTo(summaries, all.AsSpan(0, ReadCount));
                return () => AddTo(summaries, all.AsSpan(ReadCount));
            }
        ),
            ("session, batches",
            () =>
            {
                var builder = new ReadSessionBuilder(NewPresentation(), Usual);
                builder.AddRange(all.AsSpan(0, ReadCount));
                return () => builder.AddRange(all.AsSpan(ReadCount));
            }
        ));
    }

    // Each session, and each dictionary, is made anew.
    private static void Measure(string title, TagRead[] all, int readsPerSession)
    {
        Memory<TagRead>[] sessions = [.. Enumerable.Range(0, (all.Length + readsPerSession - 1) / readsPerSession)
            .Select(i => all.AsMemory(i * readsPerSession, Math.Min(readsPerSession, all.Length - (i * readsPerSession))))];
        Ratios.Measure(
            title,
            all.Length,
            2,
            5,
            ("Dictionary by ref", () => sessions.Sum(reads => WithDictionary(reads.Span))),
            ("session, batches", () => sessions.Sum(reads => InBatches(reads.Span, Usual))),
            ("session, batches, no repeat check", () => sessions.Sum(reads => InBatches(reads.Span, WithoutRepeats))),
            ("session, one by one", () => sessions.Sum(reads => OneByOne(reads.Span))));
    }

    internal static Presentation NewPresentation() => NewPresentation(ReadCorpus.Start);

    private static Presentation NewPresentation(DateTimeOffset from) => new()
    {
        Id = new SessionId("S1"),
        Station = new ReadStation { Id = new StationId("R1"), Antennas = [.. Enumerable.Range(1, 4).Select(port => new AntennaPort((byte)port))] },
        Kits = [],
        From = from,
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
        var builder = new ReadSessionBuilder(NewPresentation(), WithoutRepeats);
        builder.AddRange(reads);
        long bytes = GC.GetTotalMemory(forceFullCollection: true) - before;
        ReadSession session = builder.Close(ReadCorpus.Start.AddSeconds(3_000), TimeSpan.Zero);
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture, $"memory of a session: {(double)bytes / session.TagCount:F1} B for each of {session.TagCount} tags"));
        GC.KeepAlive(reads);
    }

    private static long InBatches(ReadOnlySpan<TagRead> reads, SessionPolicy policy)
    {
        var builder = new ReadSessionBuilder(NewPresentation(reads[0].FirstSeen), policy);
        builder.AddRange(reads);
        return builder.Close(reads[^1].LastSeen.AddMicroseconds(1), TimeSpan.Zero).TagCount;
    }

    private static long OneByOne(ReadOnlySpan<TagRead> reads)
    {
        var builder = new ReadSessionBuilder(NewPresentation(reads[0].FirstSeen), Usual);
        foreach (ref readonly TagRead read in reads)
        {
            builder.Add(read);
        }

        return builder.Close(reads[^1].LastSeen.AddMicroseconds(1), TimeSpan.Zero).TagCount;
    }

    /// <summary>The baseline: count, first, last and strongest of each tag.</summary>
    internal static int WithDictionary(ReadOnlySpan<TagRead> reads) => AddTo([], reads);

    private static int AddTo(Dictionary<TagId, TagSummary> summaries, ReadOnlySpan<TagRead> reads)
    {
        foreach (ref readonly TagRead read in reads)
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
