using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;
using ToolLedger.Interchange;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Testing.Simulation;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Samples.Tests.Scale;

/// <summary>File in, conclusions of many kits out, in one pass: what is allocated depends on the tags and their looks, not on the number of reads.</summary>
public sealed class OnePassTests
{
    private const int KitCount = 100;
    private const int ReadCount = 70_000; // above the 65,536 reports in which repeats are told apart, so that this memory is full in both runs

    private static readonly DateTimeOffset Start = new(2026, 3, 2, 15, 40, 0, TimeSpan.Zero);
    private static readonly SimulatedSite Site = SimulatedSite.Create(KitCount, 20, Start.AddDays(-1));

    [Fact]
    public void Four_times_the_reads_with_the_same_looks_allocate_no_more_and_conclude_the_same()
    {
        byte[] once = JsonLines(readsPerSlot: 1);
        byte[] fourTimes = JsonLines(readsPerSlot: 4);
        Run(once); // whatever is made on first use is made here

        (long allocated, long readCount, IReadOnlyList<ReconciliationResult> results) = Run(once);
        (long allocatedMore, long moreReads, IReadOnlyList<ReconciliationResult> moreResults) = Run(fourTimes);

        Assert.True(moreReads >= 4 * readCount - 1000, $"{readCount} and {moreReads} reads");
        Assert.InRange(allocatedMore - allocated, -65_536, 65_536);
        Assert.Equal(
            results.SelectMany(result => result.Lines).Select(line => (line.State, line.Evidence.LookCount)),
            moreResults.SelectMany(result => result.Lines).Select(line => (line.State, line.Evidence.LookCount)));
        Assert.Equal(KitCount, results.Count(result => result.Kit.State == KitState.Complete));
    }

    private static (long Allocated, long ReadCount, IReadOnlyList<ReconciliationResult> Results) Run(byte[] file)
    {
        KitId[] kits = [.. Site.Kits.Select(kit => kit.Id)];
        var presentation = new Presentation
        {
            Id = new SessionId("S-1"),
            Station = Site.Station,
            Kits = kits,
            From = Start,
            Until = Start.AddSeconds(60),
            ReaderClockOffset = TimeSpan.Zero,
        };
        long before = GC.GetAllocatedBytesForCurrentThread();
        var builder = new ReadSessionBuilder(presentation, new SessionPolicy());
        foreach (TagRead read in ReadFile.JsonLines(file))
        {
            builder.Add(read);
        }

        ReadSession session = builder.Close(Start.AddSeconds(60), TimeSpan.Zero);
        long allocated = GC.GetAllocatedBytesForCurrentThread() - before;
        var input = new ReconciliationInput
        {
            Kits = new KitRegister(Site.Kits),
            Subject = kits[0],
            Sessions = [session],
            Tags = Site.Tags,
            AsOf = Start.AddSeconds(60),
        };
        return (allocated, session.ReadCount, [.. new Reconciler(new ReconciliationPolicy()).ReconcileAll(input, kits)]);
    }

    /// <summary>Every tag in turn, on both antennas in turn, over the whole window; with more reads a slot they differ in microseconds and strength only.</summary>
    private static byte[] JsonLines(int readsPerSlot)
    {
        TagId[] tags = [.. Site.Tags.Bindings.Select(binding => binding.Tag)];
        var text = new StringBuilder(ReadCount * readsPerSlot * 100);
        TimeSpan step = TimeSpan.FromSeconds(59.5) / ReadCount;
        for (int i = 0; i < ReadCount; i++)
        {
            TagId tag = i % 499 < 2 ? Site.Station.ControlTags[0].Tag : tags[i % tags.Length];
            DateTimeOffset slot = new(Start.UtcTicks + ((step * i).Ticks / 5_000_000 * 5_000_000), TimeSpan.Zero);
            for (int k = 0; k < readsPerSlot; k++)
            {
                DateTimeOffset at = slot.AddMicroseconds((i % 1000) + (k * 1000));
                text.Append(CultureInfo.InvariantCulture,
                    $$"""{"epc":"{{tag.Epc}}","antenna":{{1 + (i / tags.Length % 2)}},"time":"{{at.UtcDateTime:yyyy-MM-dd'T'HH:mm:ss.ffffff'Z'}}","rssi":{{-50 - k}}}""").Append('\n');
            }
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }
}
