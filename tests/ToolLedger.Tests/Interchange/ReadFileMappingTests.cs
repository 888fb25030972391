using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text;
using System.Threading.Tasks;
using ToolLedger.Interchange;
using ToolLedger.Reads;
using Xunit;

namespace ToolLedger.Tests.Interchange;

/// <summary>Names, times and tags are read as declared, and never guessed.</summary>
public sealed class ReadFileMappingTests
{
    // Offsets of a site that goes from +01:00 to +02:00 on 2026-03-29 at 01:00 UTC and back on 2026-10-25 at 01:00 UTC, as in much of Europe
    // (Directive 2000/84/EC: the last Sundays of March and October at 01:00 UTC).
    private static readonly SiteCalendar Site = new(
        "Depot", TimeSpan.FromHours(1), [new OffsetChange(new DateTimeOffset(2026, 3, 29, 1, 0, 0, TimeSpan.Zero), TimeSpan.FromHours(2)), new OffsetChange(new DateTimeOffset(2026, 10, 25, 1, 0, 0, TimeSpan.Zero), TimeSpan.FromHours(1))]);

    private static readonly ReadFileOptions Local = new() { TimeForm = ReadTimeForm.Iso8601Local, Calendar = Site };

    [Theory]
    [InlineData("2026-03-01T15:55:01.25", "2026-03-01T14:55:01.25Z")]
    [InlineData("2026-07-01T15:55:01", "2026-07-01T13:55:01Z")]
    [InlineData("2026-07-01 00:30:00", "2026-06-30T22:30:00Z")]
    [InlineData("2026-03-29T01:59:59.9999999", "2026-03-29T00:59:59.9999999Z")]
    [InlineData("2026-03-29T03:00:00", "2026-03-29T01:00:00Z")]
    [InlineData("2026-10-25T03:00:00", "2026-10-25T02:00:00Z")]
    public void A_local_time_is_the_instant_that_the_calendar_says(string local, string instant)
    {
        TagRead read = Assert.Single(ReadFile.Csv(Encoding.UTF8.GetBytes($"epc,time\n3034,{local}\n"), Local));
        Assert.Equal(DateTimeOffset.Parse(instant, System.Globalization.CultureInfo.InvariantCulture), read.FirstSeen);
    }

    [Theory]
    [InlineData("read-file.ambiguous-local-time", "2026-10-25T02:00:00")]
    [InlineData("read-file.ambiguous-local-time", "2026-10-25T02:59:59.9")]
    [InlineData("read-file.skipped-local-time", "2026-03-29T02:30:00")]
    [InlineData("read-file.time-with-offset", "2026-07-01T15:55:01Z")]
    [InlineData("read-file.time-with-offset", "2026-07-01T15:55:01+02:00")]
    [InlineData("read-file.bad-time", "2026-07-01T15:55:01 o'clock")]
    [InlineData("read-file.time-out-of-range", "1969-07-01T15:55:01")]
    public void A_local_time_that_names_no_instant_is_a_bad_row(string rule, string local)
    {
        List<BadRow> bad = [];
        string good = "3034,2026-07-01T15:55:01\n";
        byte[] file = Encoding.UTF8.GetBytes($"epc,time\n{good}3034,{local}\n{string.Concat(Enumerable.Repeat(good, 50))}");
        Assert.Equal(51, ReadFile.Csv(file, Local, bad.Add).Count());
        Assert.Equal((3, rule, "time"), (Assert.Single(bad).LineNumber, bad[0].Rule, bad[0].Column!));
    }

    [Fact]
    public void Local_times_and_a_calendar_need_each_other()
    {
        Assert.Throws<ArgumentException>(() => ReadFile.Csv(default, Local with { Calendar = null }));
        Assert.Throws<ArgumentException>(() => ReadFile.JsonLines(default, new ReadFileOptions { Calendar = Site }));
        Assert.Throws<ArgumentException>(() => ReadFile.OpenCsv(default(ReadOnlyMemory<byte>), Local with { Calendar = null }));
        Assert.Throws<ArgumentException>(() => ReadFileWriter.JsonLines(new System.Buffers.ArrayBufferWriter<byte>(), Local with { Calendar = null }));
    }

    [Theory]
    [InlineData(ReadTimeForm.EpochSeconds, "1772380501.25")]
    [InlineData(ReadTimeForm.EpochMilliseconds, "1772380501250")]
    [InlineData(ReadTimeForm.EpochMilliseconds, "1772380501250.0")]
    [InlineData(ReadTimeForm.EpochMicroseconds, "1772380501250000")]
    public void An_epoch_is_read_in_the_unit_declared_as_number_and_as_text(ReadTimeForm form, string time)
    {
        var options = new ReadFileOptions { TimeForm = form };
        string lines = string.Concat(Enumerable.Repeat($"{{\"epc\":\"3034\",\"time\":{time}}}\n{{\"epc\":\"3034\",\"time\":\"{time}\"}}\n", 30));
        Assert.All(
            ReadFile.JsonLines(Encoding.UTF8.GetBytes(lines), options),
            read => Assert.Equal(new DateTimeOffset(2026, 3, 1, 15, 55, 1, 250, TimeSpan.Zero), read.FirstSeen));
    }

    // Milliseconds declared as seconds would be the year 58,000: refused, and never mended.
    [Fact]
    public void An_epoch_in_another_unit_than_declared_is_refused()
    {
        List<BadRow> bad = [];
        Assert.Empty(ReadFile.Csv("epc,time\n3034,1772380501250\n"u8.ToArray(), new ReadFileOptions { TimeForm = ReadTimeForm.EpochSeconds }, bad.Add));
        Assert.Equal("read-file.time-out-of-range", Assert.Single(bad).Rule);
    }

    [Fact]
    public void A_tag_without_bits_is_kept_where_the_file_says_so_in_words_and_refused_where_the_field_is_empty()
    {
        List<BadRow> bad = [];
        TagRead read = Assert.Single(ReadFile.Csv("epc,time\nepc:,2026-03-01T15:55:01Z\n,2026-03-01T15:55:01Z\n"u8.ToArray(), ReadFileOptions.Archive, bad.Add));
        Assert.True(read.Tag.IsEmpty);
        Assert.Equal("read-file.missing-tag", Assert.Single(bad).Rule);
    }

    // Given a bad row behind good ones and nobody to tell; then the good ones are given first, and then it throws, and what follows can still be read.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task What_was_read_before_the_reading_ends_is_given_first(bool isStream)
    {
        string good = "3034,2026-07-01T15:55:01Z\n";
        byte[] file = Encoding.UTF8.GetBytes("epc,time\n" + string.Concat(Enumerable.Repeat(good, 40)) + "bad\n" + string.Concat(Enumerable.Repeat(good, 40)));
        using var stream = new MemoryStream(file);
        ReadFileReader reader = isStream ? ReadFile.OpenCsvStream(stream) : ReadFile.OpenCsv(file);
        var batch = new TagRead[100];
        Assert.Equal(0, reader.Read([]));
        Assert.Equal(40, isStream ? await reader.ReadAsync(batch, TestContext.Current.CancellationToken) : reader.Read(batch));
        Assert.Equal(42, Assert.Throws<ReadFileException>(() => reader.Read(batch)).Row!.LineNumber);
        Assert.Equal(40, reader.Read(batch));
        Assert.Equal(0, await reader.ReadAsync(batch, TestContext.Current.CancellationToken));
        Assert.Equal((80L, 1L), (reader.ReadCount, reader.BadRowCount));
    }

    [Fact]
    public void A_csv_file_without_a_header_is_told_by_every_way_of_reading()
    {
        Assert.Equal("read-file.no-header", Assert.Throws<ReadFileException>(() => ReadFile.OpenCsv("\n\n"u8.ToArray()).Read(new TagRead[1])).Row!.Rule);
        Assert.Equal("read-file.no-header", Assert.Throws<ReadFileException>(() => ReadFile.Csv("\n\n"u8.ToArray()).Count()).Row!.Rule);
    }
}
