using System;
using System.Buffers;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Reflection;
using System.Text;
using ToolLedger.Interchange;
using ToolLedger.Interchange.Llrp;
using ToolLedger.Reads;
using ToolLedger.Tests.Reads;
using Xunit;

namespace ToolLedger.Tests.Interchange.Llrp;

/// <summary>What users of other decoders complained of in public, each as a test that it does not happen here. The numbers are those of our own list of
/// ten. Numbers 9 and 10 were made about event documents; here they are asked of times and of deliveries of reads.</summary>
public sealed class LlrpComplaintTests
{
    private static readonly byte[] Good = Frames.Tag(Frames.Epc1, Frames.Antenna(1), Frames.FirstUtc(Frames.T0 + 10_000_000));

    [Fact]
    public void C1_an_unknown_vendor_parameter_is_skipped_with_its_bytes_kept()
    {
        byte[] custom = Frames.Sized(1023, Frames.Number(0xFFFFFFFF), Frames.Number(0xABCDEF), [1, 2, 3]);
        ReadOnlySpan<byte> rest = Frames.Message(61, 1, custom, Frames.Tag(custom, Frames.Epc1, custom, Frames.Antenna(1)), custom);
        Assert.True(new LlrpDecoder().TryRead(ref rest, out LlrpMessage message));
        LlrpReports reports = message.Reports;
        Assert.True(reports.TryRead(out LlrpTagReport report));
        Assert.Equal((null, 1), (report.Fault, report.AntennaId));
        int count = 0;
        foreach (LlrpParameter parameter in report.Parameters)
        {
            count += parameter.IsCustom && parameter.VendorId == uint.MaxValue && parameter.CustomData.SequenceEqual((byte[])[1, 2, 3]) ? 1 : 0;
        }

        Assert.Equal(2, count);
        Assert.False(reports.TryRead(out _));
    }

    [Fact]
    public void C2_an_event_with_unexpected_content_is_read_as_far_as_it_goes_and_the_stream_goes_on()
    {
        byte[] odd = Frames.Event(Frames.Sized(900, [9]), Frames.Sized(255, [0], Frames.Word(2)), Frames.Fixed(99, [1]));
        var decoder = new LlrpDecoder();
        ReadOnlySpan<byte> rest = Frames.Join(odd, Frames.Report(Good));
        Assert.True(decoder.TryRead(ref rest, out LlrpMessage message));
        Assert.False(message.TryReadEvents(out IReadOnlyList<LlrpReaderEvent> events, out LlrpFault fault));
        Assert.Equal(LlrpRule.UnknownParameter, fault.Rule);
        Assert.Equal([LlrpEventKind.Unknown, LlrpEventKind.Antenna], events.Select(what => what.Kind));
        Assert.True(decoder.TryRead(ref rest, out message));
        Assert.Equal(LlrpMessageType.RoAccessReport, message.Type);
    }

    // Which reader it was is no member of a frame: the feed cannot be made without a session, and a session not without a station.
    [Fact]
    public void C3_reads_reach_a_session_only_by_a_feed_that_names_the_station()
    {
        ConstructorInfo constructor = Assert.Single(typeof(LlrpSessionFeed).GetConstructors());
        Assert.Equal(typeof(ReadSessionBuilder), constructor.GetParameters()[0].ParameterType);
        Assert.False(constructor.GetParameters()[0].HasDefaultValue);
        Assert.Equal("R1", Play(Frames.Report(Good)).Presentation.Station.Id.Value);
    }

    [Fact]
    public void C4_a_time_is_in_microseconds_and_says_so()
    {
        Assert.All(
            typeof(LlrpTagReport).GetProperties().Where(property => property.PropertyType == typeof(ulong?)),
            property => Assert.EndsWith("Microseconds", property.Name, StringComparison.Ordinal));
        ReadSession session = Play(Frames.Report(Good));
        Assert.Equal(SessionScene.At(10), session.Find(SessionScene.Tool(1))!.FirstSeen);
    }

    // 946704378859233 is 2000-01-01T05:26:18Z: a clock that fell back, as a public log shows it.
    [Theory]
    [InlineData(946_704_378_859_233UL)]
    [InlineData(0UL)]
    public void C5_an_impossible_clock_makes_the_session_invalid(ulong microseconds)
    {
        ReadSession session = Play(Frames.Report(Good, Frames.Tag(Frames.Epc1, Frames.Antenna(1), Frames.FirstUtc(microseconds))));
        Assert.Contains(session.Health.Reasons, reason => reason.Kind == SessionReasons.StampsFarOutside);
        Assert.Equal(SessionState.Invalid, session.Health.State);
    }

    [Fact]
    public void C6_silence_without_a_sign_of_life_is_no_valid_session()
    {
        ReadSession session = Play(Frames.Report());
        Assert.Equal(SessionState.Invalid, session.Health.State);
    }

    // A tag that is reported once, and a reader that then pauses: the silence is told as one, whatever its cause.
    [Fact]
    public void C7_a_tag_reported_once_and_then_not_again_leaves_a_silence_that_is_told()
    {
        ReadSession session = Play(Frames.Report(Good));
        Assert.NotEqual(SessionState.Valid, session.Health.State);
        Assert.Equal(1, session.Find(SessionScene.Tool(1))!.LookCount);
    }

    [Theory]
    [InlineData(0, "")]
    [InlineData(7, "FE")]
    [InlineData(128, "3034257BF7194E400000000130342570")]
    [InlineData(496, "000102030405060708090A0B0C0D0E0F101112131415161718191A1B1C1D1E1F202122232425262728292A2B2C2D2E2F303132333435363738393A3B3C3D")]
    public void C8_a_tag_of_any_length_is_kept_bit_by_bit(int bitCount, string hex)
    {
        ReadOnlySpan<byte> rest = Frames.Report(Frames.Tag(Frames.EpcData(bitCount, hex), Frames.FirstUtc(Frames.T0 + 10_000_000)));
        Assert.True(new LlrpDecoder().TryRead(ref rest, out LlrpMessage message));
        LlrpReports reports = message.Reports;
        Assert.True(reports.TryRead(out LlrpTagReport report));
        Assert.Equal((null, bitCount, hex), (report.Fault, report.Epc.BitCount, report.Epc.ToString()));
    }

    // The sign, the hours and the minutes of an offset; a time without one; and what is written says where it was.
    [Theory]
    [InlineData("2026-03-01T15:55:10+02:00", "2026-03-01T13:55:10Z")]
    [InlineData("2026-03-01T15:55:10-02:00", "2026-03-01T17:55:10Z")]
    [InlineData("2026-03-01T15:55:10+05:45", "2026-03-01T10:10:10Z")]
    [InlineData("2026-03-01T15:55:10-03:30", "2026-03-01T19:25:10Z")]
    [InlineData("2026-03-01T15:55:10", null)]
    public void C9_an_offset_is_neither_lost_nor_flipped_nor_taken_from_the_machine(string time, string? instant)
    {
        List<BadRow> bad = [];
        byte[] file = Encoding.UTF8.GetBytes("epc,time\n" + string.Concat(Enumerable.Repeat($"3034257BF7194E4000000001,{time}\n", 30)));
        TagRead[] reads = [.. ReadFile.Csv(file, null, bad.Add)];
        Assert.Equal(instant is null ? 30 : 0, bad.Count(row => row.Rule == "read-file.time-without-offset"));
        Assert.All(reads, read => Assert.Equal(DateTimeOffset.Parse(instant!, CultureInfo.InvariantCulture), read.FirstSeen));

        var output = new ArrayBufferWriter<byte>();
        ReadFileWriter writer = ReadFileWriter.Csv(output);
        Array.ForEach(reads, read => writer.Write(read));
        Assert.Equal(reads, ReadFile.Csv(output.WrittenMemory));
    }

    // Delivered twice, late, in another order and in other pieces: the same session. Corrected in any value: another read, and no repeat.
    [Fact]
    public void C10_what_is_the_same_has_the_same_digest_and_a_correction_is_no_repeat()
    {
        byte[] other = Frames.Tag(Frames.Epc1, Frames.Antenna(1), Frames.FirstUtc(Frames.T0 + 20_000_000));
        ReadSession once = Play(Frames.Report(Good, other));
        Assert.Equal(once.Digest, Play(Frames.Join(Frames.Report(other), Frames.Report(Good))).Digest);
        ReadSession twice = Play(Frames.Join(Frames.Report(Good, other), Frames.Report(other, Good)));
        Assert.Equal((once.AcceptedCount, 2L), (twice.AcceptedCount, twice.RepeatCount));

        byte[][] corrected =
        [
            Frames.Tag(Frames.Epc1, Frames.Antenna(2), Frames.FirstUtc(Frames.T0 + 10_000_000)),
            Frames.Tag(Frames.Epc1, Frames.Antenna(1), Frames.FirstUtc(Frames.T0 + 10_000_001)),
            Frames.Tag(Frames.Epc1, Frames.Antenna(1), Frames.FirstUtc(Frames.T0 + 10_000_000), Frames.LastUtc(Frames.T0 + 12_000_000)),
        ];
        Assert.All(corrected, report => Assert.Equal(0, Play(Frames.Report(Good, report)).RepeatCount));
    }

    private static ReadSession Play(byte[] stream)
    {
        var scene = new SessionScene();
        var builder = new ReadSessionBuilder(scene.Presentation, scene.Policy);
        var feed = new LlrpSessionFeed(builder);
        var decoder = new LlrpDecoder();
        ReadOnlySpan<byte> rest = stream;
        while (decoder.TryRead(ref rest, out LlrpMessage message))
        {
            feed.Add(message, SessionScene.At(30));
        }

        feed.Finish(decoder, SessionScene.At(59));
        return builder.Close(SessionScene.At(60), TimeSpan.Zero);
    }
}
