using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using PitReaderLog;
using ToolLedger.Reads;
using Xunit;

namespace ToolLedger.Samples.Tests.PitReaderLog;

public sealed class LogReaderTests
{
    [Theory]
    [InlineData("reader_1.txt", 460)]
    [InlineData("reader_3.txt", 1027)]
    public void Every_row_is_a_read_or_a_refused_row(string name, int rowCount)
    {
        (IReadOnlyList<TagRead> reads, IReadOnlyList<RefusedRow> refused) = Logs.Read(name);

        Assert.Equal(rowCount, reads.Count + refused.Count);
    }

    [Fact]
    public void Rows_the_reader_calls_phantoms_and_rows_without_a_clock_are_refused_with_their_line()
    {
        Assert.Equal(8, Logs.Read("reader_1.txt").Refused.Count(row => row.Why.Contains("phantom", StringComparison.Ordinal)));
        RefusedRow unreferenced = Assert.Single(Logs.Read("reader_3.txt").Refused);
        Assert.Contains("TRF = U", unreferenced.Why, StringComparison.Ordinal);
        Assert.True(unreferenced.LineNumber > 1);
    }

    [Fact]
    public void A_row_gives_tag_first_and_last_time_and_count()
    {
        TagRead read = Logs.Read("reader_1.txt").Reads[0];

        Assert.Equal("0000_000000005972", read.Tag.Text);
        Assert.Equal(new DateTimeOffset(2019, 5, 17, 4, 50, 52, 800, TimeSpan.Zero), read.FirstSeen);
        Assert.Equal(TimeSpan.FromSeconds(0.2), read.LastSeen - read.FirstSeen);
        Assert.Equal(4, read.Count);
    }

    [Fact]
    public void The_callers_offset_from_UTC_is_applied()
    {
        const string Log = "DTY\tARR\tTRF\tDUR\tTTY\tTAG\tSCD\tNCD\tEFA\r\nS\t2019-05-17 04:50:52.800\tG\t00:00:00.200\tW\tA_1\tX\t4\t0.7\r\n";
        TagRead read = Assert.Single(LogReader.Reads(new StringReader(Log), TimeSpan.FromHours(1), new List<RefusedRow>()));

        Assert.Equal(new DateTimeOffset(2019, 5, 17, 3, 50, 52, 800, TimeSpan.Zero), read.FirstSeen);
    }

    [Theory]
    [InlineData("too few columns", "S\t2019-05-17 04:50:52.800\tG")]
    [InlineData("ARR", "S\tyesterday\tG\t00:00:00.200\tW\tA_1\tX\t4\t0.7")]
    [InlineData("DUR", "S\t2019-05-17 04:50:52.800\tG\t-00:00:01\tW\tA_1\tX\t4\t0.7")]
    [InlineData("NCD", "S\t2019-05-17 04:50:52.800\tG\t00:00:00.200\tW\tA_1\tX\t0\t0.7")]
    [InlineData("TAG", "S\t2019-05-17 04:50:52.800\tG\t00:00:00.200\tW\t\tX\t4\t0.7")]
    [InlineData("TAG", "S\t2019-05-17 04:50:52.800\tG\t00:00:00.200\tW\tA\u001B[31m\tX\t4\t0.7")]
    [InlineData("ARR", "S\t9999-12-31 23:59:59.999\tG\t00:00:00.200\tW\tA_1\tX\t4\t0.7")]
    public void A_row_that_cannot_be_read_is_refused_and_the_next_one_is_still_read(string why, string row)
    {
        string log = $"DTY\tARR\tTRF\tDUR\tTTY\tTAG\tSCD\tNCD\tEFA\n{row}\nS\t2019-05-17 04:50:53.000\tG\t00:00:00.200\tW\tA_2\tX\t4\t0.7";
        var refused = new List<RefusedRow>();

        Assert.Equal("A_2", Assert.Single(LogReader.Reads(new StringReader(log), TimeSpan.Zero, refused)).Tag.Text);
        Assert.Contains(why, Assert.Single(refused).Why, StringComparison.Ordinal);
        Assert.Equal(2, refused[0].LineNumber);
    }

    [Fact]
    public void A_file_that_is_no_such_log_is_refused_by_its_header() =>
        Assert.Throws<FormatException>(() => LogReader.Reads(new StringReader("epc,antenna,time\n"), TimeSpan.Zero, new List<RefusedRow>()).Count());
}
