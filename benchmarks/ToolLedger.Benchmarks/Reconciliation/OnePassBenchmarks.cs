using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Threading.Tasks;
using BenchmarkDotNet.Attributes;
using ToolLedger.Benchmarks.Reads;
using ToolLedger.Interchange;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Tools;

namespace ToolLedger.Benchmarks.Reconciliation;

/// <summary>The main job in one pass: a file of 1,000,000 reads in, the conclusions of 1,000 of 50,000 presented kits out.</summary>
[MemoryDiagnoser]
public class OnePassBenchmarks
{
    private const int KitsAsked = 1_000;

    private byte[] _file = [];
    private Presentation _presentation = null!;
    private ReconciliationInput _input = null!;
    private KitId[] _kits = [];
    private TagRead[] _reads = [];

    [Params(1_000_000)]
    public int ReadCount { get; set; }

    [GlobalSetup]
    public void Setup()
    {
        _reads = SiteCorpus.Reads(ReadCount);
        _file = ReadCorpus.ToJsonLines(_reads);
        _presentation = SiteCorpus.Presentation();
        _kits = [.. Enumerable.Range(0, KitsAsked).Select(SiteCorpus.KitOf)];
        _input = new ReconciliationInput
        {
            Kits = SiteCorpus.Kits(),
            Subject = _kits[0],
            Tags = SiteCorpus.Tags(),
            AsOf = ReadCorpus.Start + SiteCorpus.Window,
        };
    }

    /// <summary>What a first attempt writes: group the parsed reads by tag, look up each tool of each kit.</summary>
    [Benchmark(Baseline = true)]
    public int Group_by_then_look_up()
    {
        Dictionary<TagId, int> counts = _reads.GroupBy(read => read.Tag).ToDictionary(
            group => group.Key, group => group.Select(read => (read.Antenna, read.FirstSeen.UtcTicks / 5_000_000)).Distinct().Count());
        int accounted = 0;
        foreach (KitId kit in _kits)
        {
            foreach (ManifestLine line in _input.Kits.Find(kit, _input.AsOf)!.Lines)
            {
                accounted += _input.Tags.LiveTagsOf(line.Tool!.Id, _input.AsOf).Any(tag => counts.GetValueOrDefault(tag.Tag) >= 3) ? 1 : 0;
            }
        }

        return accounted;
    }

    /// <summary>Parsed reads into a session, and the session into conclusions.</summary>
    [Benchmark]
    public int Reads_to_conclusions()
    {
        var builder = new ReadSessionBuilder(_presentation, new SessionPolicy());
        foreach (TagRead read in _reads)
        {
            builder.Add(read);
        }

        return Conclude(builder);
    }

    /// <summary>The same from JSON Lines in memory.</summary>
    [Benchmark]
    public int File_to_conclusions()
    {
        var builder = new ReadSessionBuilder(_presentation, new SessionPolicy());
        foreach (TagRead read in ReadFile.JsonLines(_file))
        {
            builder.Add(read);
        }

        return Conclude(builder);
    }

    /// <summary>The same from a stream, as a host reads a file.</summary>
    [Benchmark]
    public async Task<int> Stream_to_conclusions()
    {
        var builder = new ReadSessionBuilder(_presentation, new SessionPolicy());
        await foreach (TagRead read in ReadFile.JsonLinesAsync(new MemoryStream(_file)))
        {
            builder.Add(read);
        }

        return Conclude(builder);
    }

    private int Conclude(ReadSessionBuilder builder)
    {
        ReadSession session = builder.Close(_presentation.Until!.Value, _presentation.ReaderClockOffsetAfter);
        var input = new ReconciliationInput { Kits = _input.Kits, Subject = _input.Subject, Sessions = [session], Tags = _input.Tags, AsOf = _input.AsOf };
        return new Reconciler(new ReconciliationPolicy()).ReconcileAll(input, _kits).Sum(result => result.Kit.CountOf(LineState.Accounted) + result.Kit.CountOf(LineState.Weak));
    }
}
