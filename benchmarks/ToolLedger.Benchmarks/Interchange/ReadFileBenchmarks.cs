using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text.Json;
using System.Threading.Tasks;
using BenchmarkDotNet.Attributes;
using ToolLedger.Benchmarks.Reads;
using ToolLedger.Identifiers;
using ToolLedger.Interchange;
using ToolLedger.Reads;

namespace ToolLedger.Benchmarks.Interchange;

/// <summary>1,000,000 clustered reads as JSON Lines and CSV into reads, beside the framework's serializer and reader, and Sep.
/// Figures are for one read.</summary>
[MemoryDiagnoser]
public class ReadFileBenchmarks
{
    private const int ReadCount = 1_000_000;

    private readonly TagRead[] _batch = new TagRead[128];
    private byte[] _json = [];
    private byte[] _csv = [];
    private Presentation? _presentation;

    [GlobalSetup]
    public void Setup()
    {
        TagRead[] reads = ReadCorpus.Make(ReadCount, isClustered: true);
        _json = ReadCorpus.ToJsonLines(reads);
        _csv = ReadCorpus.ToCsv(reads);
        _presentation = new Presentation
        {
            Id = new SessionId("S1"),
            Station = new ReadStation { Id = new StationId("R1"), Antennas = [.. Enumerable.Range(1, 4).Select(port => new AntennaPort((byte)port))] },
            Kits = [],
            From = ReadCorpus.Start,
            ReaderClockOffset = TimeSpan.Zero,
        };
    }

    [Benchmark(OperationsPerInvoke = ReadCount)]
    public long JsonLines() => Sum(ReadFile.JsonLines(_json));

    [Benchmark(OperationsPerInvoke = ReadCount)]
    public long Csv() => Sum(ReadFile.Csv(_csv));

    [Benchmark(OperationsPerInvoke = ReadCount)]
    public long JsonLinesManyAtOnce() => Sum(ReadFile.OpenJsonLines(_json));

    [Benchmark(OperationsPerInvoke = ReadCount)]
    public long CsvManyAtOnce() => Sum(ReadFile.OpenCsv(_csv));

    [Benchmark(OperationsPerInvoke = ReadCount)]
    public long CsvSepFrameworkParsing() => ParseRatios.SepRows(_csv);

    [Benchmark(OperationsPerInvoke = ReadCount)]
    public async Task<long> JsonLinesFromStream()
    {
        using var stream = new MemoryStream(_json);
        long sum = 0;
        await foreach (TagRead read in ReadFile.JsonLinesAsync(stream))
        {
            sum += read.FirstSeen.UtcTicks;
        }

        return sum;
    }

    [Benchmark(OperationsPerInvoke = ReadCount)]
    public ReadSession JsonLinesIntoSession()
    {
        var builder = new ReadSessionBuilder(_presentation!, new SessionPolicy());
        foreach (TagRead read in ReadFile.JsonLines(_json))
        {
            builder.Add(read);
        }

        return builder.Close(ReadCorpus.Start.AddSeconds(600), TimeSpan.Zero);
    }

    [Benchmark(Baseline = true, OperationsPerInvoke = ReadCount)]
    public long Serializer()
    {
        long sum = 0;
        foreach (Range line in Lines())
        {
            ReadRecord record = JsonSerializer.Deserialize(_json.AsSpan(line), ReadRecordJson.Default.ReadRecord)!;
            sum += record.Time.UtcTicks + record.Epc.Length;
        }

        return sum;
    }

    [Benchmark(OperationsPerInvoke = ReadCount)]
    public long ReaderByHand()
    {
        long sum = 0;
        foreach (Range line in Lines())
        {
            var reader = new Utf8JsonReader(_json.AsSpan(line));
            while (reader.Read())
            {
                if (reader.TokenType != JsonTokenType.PropertyName)
                {
                    continue;
                }

                if (reader.ValueTextEquals("epc"u8))
                {
                    reader.Read();
                    sum += Epc.TryParse(reader.ValueSpan, out Epc epc) ? epc.BitCount : 0;
                }
                else if (reader.ValueTextEquals("antenna"u8))
                {
                    reader.Read();
                    sum += reader.GetInt32();
                }
                else if (reader.ValueTextEquals("time"u8))
                {
                    reader.Read();
                    sum += reader.GetDateTimeOffset().UtcTicks;
                }
                else
                {
                    reader.Read();
                    sum += (long)reader.GetDouble();
                }
            }
        }

        return sum;
    }

    private long Sum(ReadFileReader reader)
    {
        long sum = 0;
        int count;
        while ((count = reader.Read(_batch)) > 0)
        {
            sum += _batch[count - 1].FirstSeen.UtcTicks;
        }

        return sum;
    }

    private static long Sum(IEnumerable<TagRead> reads)
    {
        long sum = 0;
        foreach (TagRead read in reads)
        {
            sum += read.FirstSeen.UtcTicks;
        }

        return sum;
    }

    private IEnumerable<Range> Lines()
    {
        int start = 0;
        while (start < _json.Length)
        {
            int end = start + _json.AsSpan(start).IndexOf((byte)'\n');
            yield return start..end;
            start = end + 1;
        }
    }
}
