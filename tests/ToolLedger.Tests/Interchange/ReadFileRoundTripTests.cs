using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text;
using System.Threading.Tasks;
using FsCheck.Xunit;
using ToolLedger.Interchange;
using ToolLedger.Reads;
using ToolLedger.Testing.Generators;
using Xunit;

namespace ToolLedger.Tests.Interchange;

/// <summary>What was written by plain slow code is read back, however the bytes come in.</summary>
[Properties(Arbitrary = [typeof(AnyTagRead)], MaxTest = 100)]
public sealed class ReadFileRoundTripTests
{
    [Property]
    public void Json_lines_written_by_the_serializer_are_read_back(TagRead[] reads, bool escaped)
    {
        byte[] file = Encoding.UTF8.GetBytes(string.Join('\n', reads.Select(read => RowText.Json(read, escaped))));
        Assert.Equal(reads, ReadFile.JsonLines(file));
    }

    [Property]
    public void Csv_rows_are_read_back_with_and_without_quotes(TagRead[] reads, bool quoted)
    {
        byte[] file = Encoding.UTF8.GetBytes(RowText.CsvHeader + "\r\n" + string.Join("\r\n", reads.Select(read => RowText.Csv(read, quoted))));
        Assert.Equal(reads, ReadFile.Csv(file));
    }

    [Property]
    public void Members_in_any_order_mean_the_same(TagRead read, int seed)
    {
        string[] members = RowText.Json(read).Trim('{', '}').Split(',');
        new Random(seed).Shuffle(members);
        Assert.Equal([read], ReadFile.JsonLines(Encoding.UTF8.GetBytes($"{{ {string.Join(" , ", members)} }}")));
    }

    // Rows, bad rows, their line numbers and byte offsets are the same for every cutting of the stream into pieces.
    [Property]
    public async Task Any_chunking_gives_the_same_rows(TagRead[] reads, int seed, bool isJson)
    {
        byte[] file = Damaged(reads, seed, isJson);
        var options = new ReadFileOptions { LineLengthMax = 300 };
        List<string> whole = RowText.Collect(onBadRow => isJson ? ReadFile.JsonLines(file, options, onBadRow) : ReadFile.Csv(file, options, onBadRow));
        foreach (int pieceLengthMax in (int[])[1, 7, 100, 100_000])
        {
            using var stream = new PieceStream(file, seed, pieceLengthMax);
            List<string> pieces = await RowText.CollectAsync(
                onBadRow => isJson
                    ? ReadFile.JsonLinesAsync(stream, options, onBadRow, TestContext.Current.CancellationToken)
                    : ReadFile.CsvAsync(stream, options, onBadRow, TestContext.Current.CancellationToken),
                TestContext.Current.CancellationToken);
            Assert.Equal(whole, pieces);
        }
    }

    // Whatever the bytes, reading ends without an exception of its own, and every line is a read, a bad row or blank.
    [Property(MaxTest = 400)]
    public void Mutated_files_are_read_or_refused_row_by_row(TagRead[] reads, int seed, bool isJson)
    {
        byte[] file = Damaged(reads, seed, isJson);
        int lines = file.AsSpan().Count((byte)'\n') + (file.Length > 0 && file[^1] != '\n' ? 1 : 0) - (isJson ? 0 : 1);
        try
        {
            List<string> rows = RowText.Collect(onBadRow => isJson ? ReadFile.JsonLines(file, null, onBadRow) : ReadFile.Csv(file, null, onBadRow));
            int blank = Encoding.Latin1.GetString(file).Split('\n').Count(line => line.TrimEnd('\r').Trim(' ').Length == 0);
            Assert.InRange(rows.Count, lines - blank, lines);
        }
        catch (ReadFileException exception)
        {
            // A damaged header or a damaged byte order mark, nothing else.
            Assert.Equal(1, exception.Row!.LineNumber);
        }
    }

    // Twice the rows, the same bytes; in both ways of reading, the quick and the careful one.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_good_row_costs_no_memory(bool isOdd)
    {
        (byte[] json, byte[] csv) = ManyRows(10_000, isOdd);
        (byte[] moreJson, byte[] moreCsv) = ManyRows(20_000, isOdd);
        Assert.Equal(AllocatedBy(() => ReadFile.JsonLines(json).Count()), AllocatedBy(() => ReadFile.JsonLines(moreJson).Count()));
        Assert.Equal(AllocatedBy(() => ReadFile.Csv(csv).Count()), AllocatedBy(() => ReadFile.Csv(moreCsv).Count()));
        Assert.Equal(AllocatedBy(() => Count(ReadFile.OpenJsonLines(json))), AllocatedBy(() => Count(ReadFile.OpenJsonLines(moreJson))));
        Assert.Equal(AllocatedBy(() => Count(ReadFile.OpenCsv(csv))), AllocatedBy(() => Count(ReadFile.OpenCsv(moreCsv))));

        static long AllocatedBy(Func<int> read)
        {
            // The least of some, because the runtime allocates for itself now and then.
            long least = long.MaxValue;
            for (int round = 0; round < 4; round++)
            {
                long before = GC.GetAllocatedBytesForCurrentThread();
                Assert.True(read() >= 10_000);
                least = Math.Min(least, GC.GetAllocatedBytesForCurrentThread() - before);
            }

            return least;
        }
    }

    private static int Count(ReadFileReader reader)
    {
        var batch = new TagRead[64];
        int count;
        int all = 0;
        while ((count = reader.Read(batch)) > 0)
        {
            all += count;
        }

        return all;
    }

    private static (byte[] Json, byte[] Csv) ManyRows(int count, bool isOdd)
    {
        var json = new StringBuilder();
        var csv = new StringBuilder("epc,antenna,time,rssi\n");
        string zone = isOdd ? "+0100" : "+01:00";
        for (int i = 0; i < count; i++)
        {
            string epc = $"3034257BF7194E400000{i:X4}";
            string time = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"2026-03-01T15:{i / 60 % 60:D2}:{i % 60:D2}.{i:D6}{zone}");
            json.Append(System.Globalization.CultureInfo.InvariantCulture, $"{{\"epc\":\"{epc}\",\"antenna\":{1 + (i % 4)},\"time\":\"{time}\",\"rssi\":-{i % 90}.25}}\n");
            csv.Append(System.Globalization.CultureInfo.InvariantCulture, $"{epc},{1 + (i % 4)},{time},-{i % 90}.5\n");
        }

        return (Encoding.UTF8.GetBytes(json.ToString()), Encoding.UTF8.GetBytes(csv.ToString()));
    }

    [Fact]
    public async Task A_stream_of_any_length_is_read_in_bounded_memory()
    {
        // 15 MB in lines of a few bytes and one of 10 MB.
        byte[] good = Encoding.UTF8.GetBytes("{\"epc\":\"3034\",\"time\":\"2026-03-01T15:55:01Z\"}\n");
        byte[] file = [.. Enumerable.Repeat(good, 100_000).SelectMany(line => line), .. Enumerable.Repeat((byte)'x', 10_000_000), (byte)'\n', .. good];
        using var stream = new MemoryStream(file);
        long before = GC.GetAllocatedBytesForCurrentThread();
        int count = 0;
        List<BadRow> bad = [];
        await foreach (TagRead _ in ReadFile.JsonLinesAsync(stream, null, bad.Add, TestContext.Current.CancellationToken))
        {
            count++;
        }

        // A memory stream answers at once, so everything ran on this thread.
        long allocated = GC.GetAllocatedBytesForCurrentThread() - before;
        Assert.Equal(100_001, count);
        Assert.Equal((100_001, "read-file.line-too-long"), (Assert.Single(bad).LineNumber, bad[0].Rule));
        Assert.InRange(allocated, 0, 500_000);
    }

    private static byte[] Damaged(TagRead[] reads, int seed, bool isJson)
    {
        var random = new Random(seed);
        List<string> lines = isJson ? [] : [RowText.CsvHeader];
        foreach (TagRead read in reads)
        {
            lines.Add(isJson ? RowText.Json(read) : RowText.Csv(read));
            lines.AddRange(random.Next(8) == 0 ? [new string('y', random.Next(250, 400))] : []);
        }

        byte[] file = Encoding.UTF8.GetBytes(string.Join(random.Next(2) == 0 ? "\n" : "\r\n", lines));
        for (int i = 0; i < 3 && file.Length > 0; i++)
        {
            int from = isJson ? 0 : Math.Min(file.Length - 1, RowText.CsvHeader.Length + 2);
            file[random.Next(from, file.Length)] = "\n\r\",:{}09\\ \u00ff\0Z"u8[random.Next(15)];
        }

        return file;
    }
}
