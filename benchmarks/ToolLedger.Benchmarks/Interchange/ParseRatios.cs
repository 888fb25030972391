using System;
using System.IO;
using System.Text.Json;
using nietras.SeparatedValues;
using ToolLedger.Benchmarks.Reads;
using ToolLedger.Identifiers;
using ToolLedger.Interchange;
using ToolLedger.Reads;

namespace ToolLedger.Benchmarks.Interchange;

/// <summary>JSON Lines and CSV into reads against what a plain program would do with a general library.</summary>
/// <remarks>The reads of <see cref="ReadCorpus"/>, clustered: EPC, antenna, time with microseconds, strength with two decimals.</remarks>
internal static class ParseRatios
{
    private const int ReadCount = 1_000_000;
    private const int BatchLength = 128;

    internal static int Run()
    {
        TagRead[] reads = ReadCorpus.Make(ReadCount, isClustered: true);
        byte[] json = ReadCorpus.ToJsonLines(reads);
        byte[] csv = ReadCorpus.ToCsv(reads);
        var batch = new TagRead[BatchLength];
        Console.WriteLine(FormattableString.Invariant($"JSON Lines {json.Length / (double)ReadCount:F1}, CSV {csv.Length / (double)ReadCount:F1} bytes a read"));
        Ratios.Measure(
            "JSON Lines -> reads",
            ReadCount,
            3,
            15,
            ("JsonSerializer, source generated", () => Serializer(json)),
            ("Utf8JsonReader by hand", () => ReaderByHand(json)),
            ("reads, many at once", () => Batches(ReadFile.OpenJsonLines(json), batch)),
            ("reads, many at once, stream", () => Batches(ReadFile.OpenJsonLinesStream(new MemoryStream(json)), batch)),
            ("reads, one by one", () => OneByOne(ReadFile.JsonLines(json))),
            ("limit: count line ends", () => json.AsSpan().Count((byte)'\n')));
        Ratios.Measure(
            "CSV -> reads",
            ReadCount,
            3,
            15,
            ("Sep, framework parsing", () => SepRows(csv)),
            ("reads, many at once", () => Batches(ReadFile.OpenCsv(csv), batch)),
            ("reads, many at once, stream", () => Batches(ReadFile.OpenCsvStream(new MemoryStream(csv)), batch)),
            ("reads, one by one", () => OneByOne(ReadFile.Csv(csv))),
            ("limit: count line ends", () => csv.AsSpan().Count((byte)'\n')));
        return 0;
    }

    private static long Batches(ReadFileReader reader, TagRead[] batch)
    {
        int count;
        long sum = 0;
        while ((count = reader.Read(batch)) > 0)
        {
            sum += batch[count - 1].FirstSeen.UtcTicks;
        }

        return reader.ReadCount == ReadCount ? sum : throw new InvalidOperationException("Reads are lost.");
    }

    private static long OneByOne(System.Collections.Generic.IEnumerable<TagRead> reads)
    {
        long sum = 0;
        foreach (TagRead read in reads)
        {
            sum += read.FirstSeen.UtcTicks;
        }

        return sum;
    }

    private static long Serializer(byte[] json)
    {
        long sum = 0;
        int start = 0;
        while (start < json.Length)
        {
            int length = json.AsSpan(start).IndexOf((byte)'\n');
            ReadRecord record = JsonSerializer.Deserialize(json.AsSpan(start, length), ReadRecordJson.Default.ReadRecord)!;
            sum += record.Time.UtcTicks + record.Epc.Length;
            start += length + 1;
        }

        return sum;
    }

    private static long ReaderByHand(byte[] json)
    {
        long sum = 0;
        int start = 0;
        while (start < json.Length)
        {
            int length = json.AsSpan(start).IndexOf((byte)'\n');
            var reader = new Utf8JsonReader(json.AsSpan(start, length));
            while (reader.Read())
            {
                if (reader.TokenType == JsonTokenType.PropertyName)
                {
                    sum += Member(ref reader);
                }
            }

            start += length + 1;
        }

        return sum;
    }

    private static long Member(ref Utf8JsonReader reader)
    {
        if (reader.ValueTextEquals("epc"u8))
        {
            reader.Read();
            return Epc.TryParse(reader.ValueSpan, out Epc epc) ? epc.BitCount : 0;
        }

        if (reader.ValueTextEquals("antenna"u8))
        {
            reader.Read();
            return reader.GetInt32();
        }

        if (reader.ValueTextEquals("time"u8))
        {
            reader.Read();
            return reader.GetDateTimeOffset().UtcTicks;
        }

        reader.Read();
        return (long)reader.GetDouble();
    }

    internal static long SepRows(byte[] csv)
    {
        using SepReader reader = Sep.New(',').Reader().From(csv);
        long sum = 0;
        foreach (SepReader.Row row in reader)
        {
            sum += Epc.TryParse(row[0].Span, out Epc epc) ? epc.BitCount : 0;
            sum += row[1].Parse<int>();
            sum += row[2].Parse<DateTimeOffset>().UtcTicks;
            sum += (long)row[3].Parse<double>();
        }

        return sum;
    }
}
