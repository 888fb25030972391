using System;
using System.Buffers;
using System.Collections.Generic;
using System.Linq;
using System.Text;
using System.Text.Json;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ToolLedger.Identifiers;
using ToolLedger.Interchange;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Interchange;

/// <summary>A log of reads that was written is read back as the same reads; what a form cannot hold is refused and not bent.</summary>
public sealed class ReadFileWriterTests
{
    private static readonly SiteCalendar Site = new(
        "Depot", TimeSpan.FromHours(1), [new OffsetChange(new DateTimeOffset(2026, 3, 29, 1, 0, 0, TimeSpan.Zero), TimeSpan.FromHours(2)), new OffsetChange(new DateTimeOffset(2026, 10, 25, 1, 0, 0, TimeSpan.Zero), TimeSpan.FromHours(1))]);

    public static Arbitrary<TagRead> AnyRead { get; } = (
        from tag in Gen.OneOf(
            Bytes(0, 64).Select(bytes => TagId.FromEpc(Epc.FromBytes(bytes, 8 * bytes.Length))),
            Bytes(12, 12).Select(bytes => TagId.FromEpc(Epc.FromBytes(bytes, 96))),
            Gen.Choose(int.MinValue, int.MaxValue).Select(code => TagId.FromIso11784((ulong)(uint)code << 20)),
            Gen.Choose(int.MinValue, int.MaxValue).Select(code => TagId.FromIso15693(0xE0_00_0000_0000_0000 | (uint)code)),
            Gen.Elements("T-1", "a,b", "\"", "x\"y,z", "ä ö", "epc:30", "{}", "日本", "\\", "T;1|2", "0").Select(TagId.FromText))
        from antenna in Gen.Choose(0, 255)
        from day in Gen.Choose(0, 376_000)
        from fraction in Gen.OneOf(Gen.Constant(0L), Gen.Choose(0, int.MaxValue).Select(value => value * 402L), Gen.Choose(0, 86_399).Select(second => second * TimeSpan.TicksPerSecond))
        from length in Gen.OneOf(Gen.Constant(0L), Gen.Choose(0, int.MaxValue).Select(value => (long)value))
        from strength in Gen.OneOf(Gen.Constant((int?)null), Gen.Choose(short.MinValue, short.MaxValue).Select(value => (int?)value))
        from count in Gen.OneOf(Gen.Constant((int?)null), Gen.Choose(1, int.MaxValue).Select(value => (int?)value))
        from tid in Gen.OneOf(Gen.Constant<byte[]>([]), Bytes(1, 32))
        from reportId in Gen.OneOf(Gen.Constant((long?)null), Gen.Elements<long?>(0, -1, long.MinValue, long.MaxValue, 123_456_789_012_345_678))
        let first = DateTimeOffset.UnixEpoch.AddDays(day).AddTicks(fraction)
        select new TagRead(tag, antenna == 0 ? default : new AntennaPort((byte)antenna), first)
        {
            LastSeen = first.AddTicks(length),
            Strength = strength is { } centiDbm ? new Rssi((short)centiDbm) : null,
            Count = count,
            Tid = Tid.FromBytes(tid, 8 * tid.Length),
            ReportId = reportId,
        }).ToArbitrary();

    private static Gen<byte[]> Bytes(int min, int max) =>
        from length in Gen.Choose(min, max)
        from bytes in Gen.Choose(0, 255).Select(value => (byte)value).ArrayOf(length)
        select bytes;

    // Every kind of tag, no bits at all among them, every value present and absent, the ends of every range.
    [Property(MaxTest = 300)]
    public Property What_is_written_for_keeping_is_read_back_as_the_same() => Prop.ForAll(AnyRead.Generator.ListOf().ToArbitrary(), reads =>
    {
        foreach (ReadTimeForm form in (ReadTimeForm[])[ReadTimeForm.Iso8601WithOffset, ReadTimeForm.EpochSeconds, ReadTimeForm.EpochMilliseconds, ReadTimeForm.EpochMicroseconds])
        {
            ReadFileOptions options = ReadFileOptions.Archive with { TimeForm = form };
            Assert.Equal(reads, ReadFile.JsonLines(Write(reads, options, isJson: true), options));
            Assert.Equal(reads, ReadFile.Csv(Write(reads, options, isJson: false), options));
        }
    });

    [Property(MaxTest = 200)]
    public Property Local_times_are_read_back_or_refused() => Prop.ForAll(AnyRead, Gen.Choose(0, 2).ToArbitrary(), (read, which) =>
    {
        ReadFileOptions options = ReadFileOptions.Archive with { TimeForm = ReadTimeForm.Iso8601Local, Calendar = Site };
        TimeSpan into = read.FirstSeen.TimeOfDay / 12;
        DateTimeOffset first = (which == 0 ? new DateTimeOffset(2026, 3, 29, 0, 0, 0, TimeSpan.Zero) : new DateTimeOffset(2026, 10, 25, 0, 0, 0, TimeSpan.Zero)) + into;
        var near = new TagRead(read.Tag, read.Antenna, first);

        var output = new ArrayBufferWriter<byte>();
        bool isWritten = ReadFileWriter.Csv(output, options).TryWrite(near, out Reason? refusal);

        // Between 00:00 and 02:00 UTC on 25 October the clocks showed every time between 02:00 and 03:00 twice.
        Assert.Equal(which == 0 || into >= TimeSpan.FromHours(2), isWritten);
        Assert.Equal(isWritten ? null : ReadFileRules.UnwritableTime, refusal?.Kind);
        Assert.Equal(isWritten ? [near] : [], ReadFile.Csv(output.WrittenMemory, options));
    });

    [Fact]
    public void A_line_is_json_to_the_frameworks_reader_and_leaves_absent_values_away()
    {
        var read = new TagRead(TagId.FromEpc(Epc.Parse("3034257BF7194E4000001A85")), default, new DateTimeOffset(2026, 3, 1, 15, 55, 1, 250, TimeSpan.Zero));
        Assert.Equal("{\"epc\":\"3034257BF7194E4000001A85\",\"time\":\"2026-03-01T15:55:01.25Z\"}\n", Encoding.UTF8.GetString(Write([read], new ReadFileOptions(), isJson: true)));
        using JsonDocument full = JsonDocument.Parse(Write([read with { Strength = new Rssi(-6150), Count = 2, Tid = Tid.Parse("E280"), ReportId = -1 }], new ReadFileOptions(), isJson: true));
        Assert.Equal((-61.5, 2, "E280", -1), (Member("rssi").GetDouble(), Member("count").GetInt32(), Member("tid").GetString()!, Member("reportId").GetInt32()));

        JsonElement Member(string name) => full.RootElement.GetProperty(name);
    }

    [Fact]
    public void Names_that_need_it_are_quoted_or_escaped()
    {
        var columns = new ReadColumns { Tag = "tag \"id\"", FirstSeen = "seen, first", Antenna = " port", LastSeen = null, Rssi = null, Count = null, Tid = null, ReportId = "\uFEFFnumber" };
        var options = new ReadFileOptions { Columns = columns };
        TagRead[] reads = [new TagRead(TagId.FromEpc(Epc.Parse("3034")), new AntennaPort(3), DateTimeOffset.UnixEpoch) { ReportId = 5 }];
        Assert.Equal(reads, ReadFile.Csv(Write(reads, options, isJson: false), options));
        Assert.Equal(reads, ReadFile.JsonLines(Write(reads, options, isJson: true), options));
        Assert.Equal(reads, ReadFile.Csv(Write(reads, options with { Columns = columns with { Tag = "\uFEFFtag" } }, isJson: false), options with { Columns = columns with { Tag = "\uFEFFtag" } }));
        Assert.Throws<ArgumentException>(() => ReadFileWriter.Csv(new ArrayBufferWriter<byte>(), options with { Columns = columns with { Tag = "two\nlines" } }));
    }

    public static TheoryData<string, ReadFileOptions, TagRead> Refused
    {
        get
        {
            var epc = new TagRead(TagId.FromEpc(Epc.Parse("3034")), new AntennaPort(1), DateTimeOffset.UnixEpoch);
            return new()
            {
                { "read-file.unwritable-tag", new ReadFileOptions(), new TagRead(TagId.FromText("T-1"), default, DateTimeOffset.UnixEpoch) },
                { "read-file.unwritable-tag", new ReadFileOptions(), new TagRead(default, default, DateTimeOffset.UnixEpoch) },
                { "read-file.unwritable-tag", new ReadFileOptions { TagForm = ReadTagForm.PlainText }, epc },
                { "read-file.unwritable-tag", ReadFileOptions.Archive, new TagRead(TagId.FromEpc(Epc.FromBytes(new byte[8_192], 65_535)), default, DateTimeOffset.UnixEpoch) },
                { "read-file.unwritable-time", new ReadFileOptions(), new TagRead(epc.Tag, default, DateTimeOffset.UnixEpoch.AddTicks(-1)) },
                { "read-file.unwritable-time", new ReadFileOptions(), epc with { LastSeen = new DateTimeOffset(3000, 1, 1, 0, 0, 0, TimeSpan.Zero) } },
                { "read-file.unwritable-tid", new ReadFileOptions(), epc with { Tid = Tid.FromBytes([0xFF], 7) } },
                { "read-file.no-column", new ReadFileOptions { Columns = new ReadColumns { Antenna = null } }, epc },
                { "read-file.no-column", new ReadFileOptions { Columns = new ReadColumns { Tid = null } }, epc with { Tid = Tid.Parse("E2") } },
                { "read-file.line-too-long", new ReadFileOptions { LineLengthMax = 64 }, epc with { Tid = Tid.Parse(new string('E', 64)) } },
            };
        }
    }

    // Given a read that the form cannot hold between two that it can; then it is refused by its rule, and nothing of it is in the file.
    [Theory]
    [MemberData(nameof(Refused))]
    public void A_read_that_the_form_cannot_hold_is_refused_and_leaves_nothing(string rule, ReadFileOptions options, TagRead read)
    {
        TagRead good = options.TagForm == ReadTagForm.PlainText
            ? new TagRead(TagId.FromText("T-2"), default, DateTimeOffset.UnixEpoch)
            : new TagRead(TagId.FromEpc(Epc.Parse("3035")), default, DateTimeOffset.UnixEpoch);
        foreach (bool isJson in (bool[])[false, true])
        {
            var output = new ArrayBufferWriter<byte>();
            ReadFileWriter writer = Open(output, options, isJson);
            writer.Write(good);
            Assert.False(writer.TryWrite(read, out Reason? refusal));
            Assert.Equal(rule, refusal.Code);
            Assert.Equal(rule, Assert.Single(Assert.Throws<RecordException>(() => writer.Write(read)).Issues).Reason.Code);
            writer.Write(good);
            Assert.Equal(2, writer.WrittenCount);
            Assert.Equal([good, good], isJson ? ReadFile.JsonLines(output.WrittenMemory, options) : ReadFile.Csv(output.WrittenMemory, options));
        }
    }

    private static byte[] Write(IEnumerable<TagRead> reads, ReadFileOptions options, bool isJson)
    {
        var output = new ArrayBufferWriter<byte>();
        ReadFileWriter writer = Open(output, options, isJson);
        foreach (TagRead read in reads)
        {
            writer.Write(read);
        }

        return output.WrittenSpan.ToArray();
    }

    private static ReadFileWriter Open(ArrayBufferWriter<byte> output, ReadFileOptions options, bool isJson) =>
        isJson ? ReadFileWriter.JsonLines(output, options) : ReadFileWriter.Csv(output, options);
}
