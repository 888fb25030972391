using System;
using System.Linq;
using BenchmarkDotNet.Attributes;
using ToolLedger.Reads;

namespace ToolLedger.Benchmarks.Reads;

/// <summary>1,000,000 reads of one presentation: a session with looks, repeat check and health, beside plain programs that
/// keep count, first, last and strongest of each tag. Figures are for one read.</summary>
[MemoryDiagnoser]
public class ReadSessionBuilderBenchmarks
{
    private const int ReadCount = 1_000_000;

    private TagRead[] _reads = [];
    private Presentation? _presentation;

    [Params(true, false)]
    public bool IsClustered { get; set; }

    [GlobalSetup]
    public void Setup()
    {
        _reads = ReadCorpus.Make(ReadCount, IsClustered);
        _presentation = ReadRatios.NewPresentation();
    }

    [Benchmark(OperationsPerInvoke = ReadCount)]
    public ReadSession Session()
    {
        var builder = new ReadSessionBuilder(_presentation!, new SessionPolicy());
        builder.AddRange(_reads);
        return builder.Close(ReadCorpus.Start.AddSeconds(600), TimeSpan.Zero);
    }

    [Benchmark(OperationsPerInvoke = ReadCount)]
    public ReadSession SessionWithoutRepeatCheck()
    {
        var builder = new ReadSessionBuilder(_presentation!, new SessionPolicy { RepeatReportCount = 0 });
        builder.AddRange(_reads);
        return builder.Close(ReadCorpus.Start.AddSeconds(600), TimeSpan.Zero);
    }

    [Benchmark(Baseline = true, OperationsPerInvoke = ReadCount)]
    public int DictionaryByRef() => ReadRatios.WithDictionary(_reads);

    [Benchmark(OperationsPerInvoke = ReadCount)]
    public int LinqGroupBy() => _reads
        .GroupBy(read => read.Tag)
        .Select(group => new TagSummary
        {
            Count = group.Count(),
            FirstTicks = group.Min(read => read.FirstSeen.UtcTicks),
            LastTicks = group.Max(read => read.LastSeen.UtcTicks),
            Strongest = group.Max(read => read.Strength.GetValueOrDefault().CentiDbm),
        })
        .Count(summary => summary.Count > 0);
}
