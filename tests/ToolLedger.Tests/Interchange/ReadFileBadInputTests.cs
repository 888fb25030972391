using System;
using System.Collections.Generic;
using System.Linq;
using System.Text;
using System.Threading.Tasks;
using ToolLedger.Interchange;
using ToolLedger.Reads;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Interchange;

/// <summary>Every way a row can be bad is told with its line, its column and the rule, and the good rows around it are read.</summary>
public sealed class ReadFileBadInputTests
{
    private const string Good = """{"epc":"3034AABB","time":"2026-03-01T15:55:01Z"}""";

    [Theory]
    [InlineData("read-file.not-json", null, "{")]
    [InlineData("read-file.not-json", null, "[]")]
    [InlineData("read-file.not-json", null, "null")]
    [InlineData("read-file.not-json", null, """{"epc":"3034","time":"2026-03-01T15:55:01Z"} x""")]
    [InlineData("read-file.not-json", null, """{"epc":"3034","time":"2026-03-01T15:55:01Z"}{}""")]
    [InlineData("read-file.not-json", null, """{"epc":"3034","time":"2026-03-01T15:55:01Z",}""")]
    [InlineData("read-file.not-json", null, """{"epc":"3034","time":"2026-03-01T15:55:01Z","rssi":NaN}""")]
    [InlineData("read-file.not-json", null, """{"epc":"3034","time":"2026-03-01T15:55:01Z","rssi":-06}""")]
    [InlineData("read-file.not-json", null, """{"epc":"3034","time":"2026-03-01T15:55:01Z","rssi":+6}""")]
    [InlineData("read-file.not-json", null, """{"epc":"3034","time":"2026-03-01T15:55:01Z","rssi":-6.}""")]
    [InlineData("read-file.not-json", null, """{"epc":"3034","time":"2026-03-01T15:5""")]
    [InlineData("read-file.missing-tag", "epc", """{"time":"2026-03-01T15:55:01Z"}""")]
    [InlineData("read-file.missing-tag", "epc", """{"epc":null,"time":"2026-03-01T15:55:01Z"}""")]
    [InlineData("read-file.missing-tag", "epc", "{}")]
    [InlineData("read-file.missing-time", "time", """{"epc":"3034"}""")]
    [InlineData("read-file.bad-tag", "epc", """{"epc":"3034G","time":"2026-03-01T15:55:01Z"}""")]
    [InlineData("read-file.bad-tag", "epc", """{"epc":"","time":"2026-03-01T15:55:01Z"}""")]
    [InlineData("read-file.tag-not-whole-words", "epc", """{"epc":"3414257BF40000000000006","time":"2026-03-01T15:55:01Z"}""")]
    [InlineData("read-file.wrong-type", "epc", """{"epc":3034,"time":"2026-03-01T15:55:01Z"}""")]
    [InlineData("read-file.wrong-type", "rssi", """{"epc":"3034","time":"2026-03-01T15:55:01Z","rssi":true}""")]
    [InlineData("read-file.wrong-type", "antenna", """{"epc":"3034","time":"2026-03-01T15:55:01Z","antenna":[1]}""")]
    [InlineData("read-file.duplicate-column", "epc", """{"epc":"3034","epc":"3035","time":"2026-03-01T15:55:01Z"}""")]
    [InlineData("read-file.time-without-offset", "time", """{"epc":"3034","time":"2026-10-25T01:45:00"}""")]
    [InlineData("read-file.bad-time", "time", """{"epc":"3034","time":"2026-02-29T15:55:01Z"}""")]
    [InlineData("read-file.bad-time", "time", """{"epc":"3034","time":"2026-03-01T24:00:00Z"}""")]
    [InlineData("read-file.bad-time", "time", """{"epc":"3034","time":"2026-03-01T15:55:60Z"}""")]
    [InlineData("read-file.bad-time", "time", """{"epc":"3034","time":"2026-03-01T15:55:01+15:00"}""")]
    [InlineData("read-file.bad-time", "time", """{"epc":"3034","time":"2026-03-01T15:55:01.Z"}""")]
    [InlineData("read-file.bad-time", "time", """{"epc":"3034","time":"2026-03-01"}""")]
    [InlineData("read-file.bad-time", "time", """{"epc":"3034","time":1772380501}""")]
    [InlineData("read-file.bad-time", "time", """{"epc":"3034","time":"10000-01-01T00:00:00Z"}""")]
    [InlineData("read-file.time-out-of-range", "time", """{"epc":"3034","time":"3000-01-01T00:00:00Z"}""")]
    [InlineData("read-file.time-out-of-range", "time", """{"epc":"3034","time":"1969-12-31T23:59:59Z"}""")]
    [InlineData("read-file.times-reversed", "lastTime", """{"epc":"3034","time":"2026-03-01T15:55:01Z","lastTime":"2026-03-01T15:55:00Z"}""")]
    [InlineData("read-file.bad-antenna", "antenna", """{"epc":"3034","time":"2026-03-01T15:55:01Z","antenna":0}""")]
    [InlineData("read-file.bad-antenna", "antenna", """{"epc":"3034","time":"2026-03-01T15:55:01Z","antenna":256}""")]
    [InlineData("read-file.bad-antenna", "antenna", """{"epc":"3034","time":"2026-03-01T15:55:01Z","antenna":99999999999}""")]
    [InlineData("read-file.bad-antenna", "antenna", """{"epc":"3034","time":"2026-03-01T15:55:01Z","antenna":1.5}""")]
    [InlineData("read-file.bad-strength", "rssi", """{"epc":"3034","time":"2026-03-01T15:55:01Z","rssi":"NaN"}""")]
    [InlineData("read-file.bad-strength", "rssi", """{"epc":"3034","time":"2026-03-01T15:55:01Z","rssi":-1e99}""")]
    [InlineData("read-file.bad-strength", "rssi", """{"epc":"3034","time":"2026-03-01T15:55:01Z","rssi":327.68}""")]
    [InlineData("read-file.bad-count", "count", """{"epc":"3034","time":"2026-03-01T15:55:01Z","count":0}""")]
    [InlineData("read-file.bad-count", "count", """{"epc":"3034","time":"2026-03-01T15:55:01Z","count":2147483648}""")]
    [InlineData("read-file.bad-tid", "tid", """{"epc":"3034","time":"2026-03-01T15:55:01Z","tid":"E2 80"}""")]
    [InlineData("read-file.bad-report-id", "reportId", """{"epc":"3034","time":"2026-03-01T15:55:01Z","reportId":99999999999999999999}""")]
    public void A_bad_json_line_is_refused_by_rule_and_the_rest_is_read(string rule, string? column, string line)
    {
        List<BadRow> bad = [];
        byte[] file = Encoding.UTF8.GetBytes($"{Good}\n{line}\n{Good}\n");
        Assert.Equal(2, ReadFile.JsonLines(file, null, bad.Add).Count());
        BadRow row = Assert.Single(bad);
        Assert.Equal((2, Good.Length + 1, rule, column), (row.LineNumber, row.ByteOffset, row.Rule, row.Column));
        Assert.DoesNotContain("{found}", row.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("read-file.too-few-columns", null, "3034AABB,1")]
    [InlineData("read-file.too-few-columns", null, "3034AABB,1,2026-03-01T15:55:01Z")]
    [InlineData("read-file.too-many-columns", null, "3034AABB,1,2026-03-01T15:55:01Z,-61,5")]
    [InlineData("read-file.missing-tag", "epc", ",1,2026-03-01T15:55:01Z,-61")]
    [InlineData("read-file.missing-time", "time", "3034AABB,1,,-61")]
    [InlineData("read-file.bad-strength", "rssi", "3034AABB,1,2026-03-01T15:55:01Z,NaN")]
    [InlineData("read-file.bad-strength", "rssi", "3034AABB,1,2026-03-01T15:55:01Z,-61.")]
    [InlineData("read-file.bad-quotes", null, "\"3034AABB,1,2026-03-01T15:55:01Z,-61")]
    [InlineData("read-file.bad-quotes", null, "\"3034AABB\"x,1,2026-03-01T15:55:01Z,-61")]
    [InlineData("read-file.time-without-offset", "time", "3034AABB,1,2026-03-01 15:55:01.5,-61")]
    public void A_bad_csv_row_is_refused_by_rule_and_the_rest_is_read(string rule, string? column, string line)
    {
        const string Row = "3034AABB,1,2026-03-01T15:55:01Z,-61.5";
        List<BadRow> bad = [];
        Assert.Equal(2, ReadFile.Csv(Encoding.UTF8.GetBytes($"epc,antenna,time,rssi\n{Row}\n{line}\n{Row}"), null, bad.Add).Count());
        BadRow row = Assert.Single(bad);
        Assert.Equal((3, rule, column), (row.LineNumber, row.Rule, row.Column));
    }

    // A tag answers in whole words of 16 bits (EPC Gen2 air interface, from memory). Cut digits padded with zeros could be those of another tool's tag: 0067 cut to 006 would be 0060.
    [Theory]
    [InlineData(ReadTagForm.EpcHex, "")]
    [InlineData(ReadTagForm.TagIdText, "")]
    [InlineData(ReadTagForm.TagIdText, "epc:")]
    public void A_tag_with_digits_cut_off_is_never_read_as_another_tag(ReadTagForm form, string prefix)
    {
        const string Whole = "3414257BF400000000000067";
        TagId tag = TagId.Parse(Whole);
        for (int length = 1; length <= Whole.Length; length++)
        {
            List<BadRow> bad = [];
            byte[] file = Encoding.UTF8.GetBytes($"epc,time\n{prefix}{Whole[..length]},2026-03-01T15:55:01Z\n");
            TagRead[] reads = [.. ReadFile.Csv(file, new ReadFileOptions { TagForm = form }, bad.Add)];

            // What is cut at the end of a word is a shorter tag, and no tag of this length.
            Assert.Equal(length % 4 == 0, reads.Length == 1);
            Assert.All(reads, read => Assert.Equal(length == Whole.Length, read.Tag == tag));
            Assert.All(bad, row => Assert.Equal("read-file.tag-not-whole-words", row.Rule));
        }
    }

    [Theory]
    [InlineData(ReadTimeForm.EpochSeconds, "1791985201250", "The time \"1791985201250\", read as seconds since 1970, is outside the years 1970 to 2999.")]
    [InlineData(ReadTimeForm.Iso8601WithOffset, "1791985201250", "\"1791985201250\" is not a time of the form stated, date and time with an offset, such as 2026-03-01T15:55:01Z.")]
    [InlineData(ReadTimeForm.EpochMilliseconds, "noon", "\"noon\" is not a time of the form stated, milliseconds since 1970.")]
    public void A_time_of_another_form_is_refused_with_the_form_that_was_stated(ReadTimeForm form, string text, string sentence)
    {
        List<BadRow> bad = [];
        Assert.Empty(ReadFile.Csv(Encoding.UTF8.GetBytes($"epc,time\n3034AABB,{text}\n"), new ReadFileOptions { TimeForm = form }, bad.Add));
        BadRow row = Assert.Single(bad);
        Assert.Contains(row.Rule, (string[])["read-file.bad-time", "read-file.time-out-of-range"]);
        Assert.Equal(sentence, row.Reason.ToString());
    }

    [Theory]
    [InlineData("read-file.no-header", "")]
    [InlineData("read-file.no-header", "\r\n \n")]
    [InlineData("read-file.missing-column", "epc,antenna\n")]
    [InlineData("read-file.missing-column", "EPC,time\n")]
    [InlineData("read-file.duplicate-column", "epc,time,epc\n")]
    [InlineData("read-file.bad-quotes", "\"epc,time\n")]
    public void A_csv_file_whose_header_does_not_fit_cannot_be_read(string rule, string text)
    {
        ReadFileException exception = Assert.Throws<ReadFileException>(
            () => ReadFile.Csv(Encoding.UTF8.GetBytes(text), null, _ => { }).ToArray());
        Assert.Equal(rule, exception.Row!.Rule);
    }

    [Fact]
    public void An_empty_file_of_json_lines_has_no_reads() => Assert.Empty(ReadFile.JsonLines(ReadOnlyMemory<byte>.Empty));

    [Fact]
    public void Utf16_is_refused_as_a_whole()
    {
        byte[] file = [.. Encoding.Unicode.GetPreamble(), .. Encoding.Unicode.GetBytes(Good)];
        Assert.Equal("read-file.not-utf8", Assert.Throws<ReadFileException>(() => ReadFile.JsonLines(file).ToArray()).Row!.Rule);
    }

    [Fact]
    public void A_row_in_another_encoding_is_refused_as_not_utf8()
    {
        byte[] file = [.. "{\"epc\":\"30"u8, 0xE9, .. "\",\"time\":\"2026-03-01T15:55:01Z\"}"u8];
        List<BadRow> bad = [];
        Assert.Empty(ReadFile.JsonLines(file, null, bad.Add));
        Assert.Equal("read-file.not-utf8", Assert.Single(bad).Rule);
    }

    [Fact]
    public void Json_nested_a_thousand_deep_is_refused()
    {
        List<BadRow> bad = [];
        string line = "{\"x\":" + new string('[', 1_000) + new string(']', 1_000) + ",\"epc\":\"3034\",\"time\":\"2026-03-01T15:55:01Z\"}";
        Assert.Empty(ReadFile.JsonLines(Encoding.UTF8.GetBytes(line), null, bad.Add));
        Assert.Equal("read-file.not-json", Assert.Single(bad).Rule);
    }

    [Fact]
    public void Control_characters_never_reach_an_excerpt()
    {
        List<BadRow> bad = [];
        Assert.Empty(ReadFile.JsonLines("\u001b[31m\u202e\u0007 no json"u8.ToArray(), null, bad.Add));
        string shown = Assert.Single(bad).ToString();
        Assert.DoesNotContain(shown, character => char.IsControl(character) || character == '\u202e');
        Assert.InRange(bad[0].Excerpt.Length, 1, 80);
    }

    [Fact]
    public void With_nobody_to_tell_or_told_to_stop_the_first_bad_row_throws()
    {
        byte[] file = Encoding.UTF8.GetBytes($"{Good}\n{{}}\n{Good}");
        Assert.Equal(2, Assert.Throws<ReadFileException>(() => ReadFile.JsonLines(file).ToArray()).Row!.LineNumber);
        var stop = new ReadFileOptions { StopAtBadRow = true };
        Assert.Throws<ReadFileException>(() => ReadFile.JsonLines(file, stop, _ => { }).ToArray());
        var few = new ReadFileOptions { BadRowMax = 1 };
        Assert.Equal(2, ReadFile.JsonLines(file, few, _ => { }).Count());
        byte[] worse = Encoding.UTF8.GetBytes($"{Good}\n{{}}\n{{}}");
        List<BadRow> told = [];
        Assert.Equal(3, Assert.Throws<ReadFileException>(() => ReadFile.JsonLines(worse, few, told.Add).ToArray()).Row!.LineNumber);
        Assert.Single(told);
    }

    [Theory]
    [InlineData(64, true)]
    [InlineData(65, false)]
    public async Task The_limit_of_a_line_is_exact_whatever_its_end(int length, bool isRead)
    {
        string line = """{"epc":"3034","time":"2026-03-01T15:55:01Z"}""".PadRight(length);
        foreach (string end in (string[])["\n", "\r\n", ""])
        {
            byte[] file = Encoding.UTF8.GetBytes(line + end);
            var options = new ReadFileOptions { LineLengthMax = 64 };
            Assert.Equal(isRead ? 1 : 0, ReadFile.JsonLines(file, options, _ => { }).Count());
            using var stream = new PieceStream(file, 1, 3);
            List<string> rows = await RowText.CollectAsync(
                onBadRow => ReadFile.JsonLinesAsync(stream, options, onBadRow, TestContext.Current.CancellationToken),
                TestContext.Current.CancellationToken);
            Assert.Equal(isRead, !Assert.Single(rows).Contains("read-file", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Byte_order_mark_crlf_blank_lines_and_foreign_names_are_fine()
    {
        byte[] file = [0xEF, 0xBB, 0xBF, .. "site;EPC hex;Ant;When;dBm\r\n\r\n  \r\nÄ \"x;3034aabb; 2 ;1772380501.25;-61.555\r\n"u8];
        var options = new ReadFileOptions
        {
            Delimiter = ';',
            TimeForm = ReadTimeForm.EpochSeconds,
            Columns = new ReadColumns { Tag = "EPC hex", Antenna = "Ant", FirstSeen = "When", Rssi = "dBm" },
        };
        TagRead read = Assert.Single(ReadFile.Csv(file, options));
        Assert.Equal(new TagRead(TagId.Parse("3034AABB"), new AntennaPort(2), new DateTimeOffset(2026, 3, 1, 15, 55, 1, 250, TimeSpan.Zero)) { Strength = new Rssi(-6156) }, read);
    }

    [Theory]
    [InlineData(ReadTimeForm.EpochSeconds, "1772380501", 0)]
    [InlineData(ReadTimeForm.EpochMilliseconds, "1772380501250", 2_500_000)]
    [InlineData(ReadTimeForm.EpochMicroseconds, "1772380501250001", 2_500_010)]
    [InlineData(ReadTimeForm.EpochSeconds, "\"1772380501.1234567\"", 1_234_567)]
    [InlineData(ReadTimeForm.Iso8601WithOffset, "\"2026-03-01T16:55:01.123456789+01:00\"", 1_234_567)]
    [InlineData(ReadTimeForm.Iso8601WithOffset, "\"2026-03-01t07:55:01,5-0800\"", 5_000_000)]
    [InlineData(ReadTimeForm.Iso8601WithOffset, "\"2026-03-01 15:55:01z\"", 0)]
    public void Times_are_read_in_the_form_stated(ReadTimeForm form, string text, long ticks)
    {
        TagRead read = Assert.Single(ReadFile.JsonLines(
            Encoding.UTF8.GetBytes($$"""{"epc":"3034","time":{{text}}}"""), new ReadFileOptions { TimeForm = form }));
        Assert.Equal(new DateTimeOffset(2026, 3, 1, 15, 55, 1, TimeSpan.Zero).AddTicks(ticks), read.FirstSeen);
    }

    [Fact]
    public void Tags_are_read_in_the_form_stated()
    {
        byte[] file = """
            {"epc":"3D6.15341B0F34","time":"2026-03-01T15:55:01Z"}
            {"epc":"\u00e9tau","time":"2026-03-01T15:55:01Z"}
            {"epc":5972,"time":"2026-03-01T15:55:01Z"}
            """u8.ToArray();
        Assert.Equal(
            [TagId.FromText("3D6.15341B0F34"), TagId.FromText("étau"), TagId.FromText("5972")],
            ReadFile.JsonLines(file, new ReadFileOptions { TagForm = ReadTagForm.PlainText }).Select(read => read.Tag));
        Assert.Equal(
            [TagId.FromIso15693(0xE004010012345678)],
            ReadFile.Csv("epc,time\niso15693:E004010012345678,2026-03-01T15:55:01Z"u8.ToArray(), new ReadFileOptions { TagForm = ReadTagForm.TagIdText })
                .Select(read => read.Tag));
    }

    // A file whose lines end with CR alone is one line to RFC 4180; its rows must not be taken for columns that nobody declared, and be gone.
    [Theory]
    [InlineData("epc,time,note\r3034,2026-03-01T15:55:01Z,a\r3035,2026-03-01T15:55:02Z,b\r")]
    [InlineData("epc,time,note\r3034,2026-03-01T15:55:01Z,a\n")]
    public void A_header_that_goes_on_behind_a_lone_carriage_return_is_refused(string text)
    {
        ReadFileException refused = Assert.Throws<ReadFileException>(() => ReadFile.Csv(Encoding.ASCII.GetBytes(text), null, static _ => { }).ToArray());

        Assert.Contains("read-file.line-ends", refused.Message, StringComparison.Ordinal);
    }

    // What was read before is read still: a second carriage return at the end of the line.
    [Fact]
    public void A_header_with_two_carriage_returns_at_its_end_is_read() =>
        Assert.Single(ReadFile.Csv("epc,time,note\r\r\n3034,2026-03-01T15:55:01Z,a\r\r\n"u8.ToArray(), null));
}
