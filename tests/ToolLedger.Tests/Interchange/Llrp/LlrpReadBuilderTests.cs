using System;
using System.Collections.Generic;
using System.Linq;
using FsCheck.Xunit;
using ToolLedger.Identifiers;
using ToolLedger.Interchange.Llrp;
using ToolLedger.Reads;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Interchange.Llrp;

/// <summary>A report becomes a read that says no more than the report did.</summary>
public sealed class LlrpReadBuilderTests
{
    private static readonly DateTimeOffset Time0 = new(2026, 3, 1, 15, 55, 0, TimeSpan.Zero);

    private static readonly byte[] Words = Convert.FromHexString("E28011052000784D");

    [Fact]
    public void A_report_with_everything_becomes_a_read_with_everything()
    {
        byte[] tag = Frames.Tag(
            Frames.Epc1, Frames.Fixed(9, Frames.Number(1)), Frames.Fixed(14, Frames.Word(1)), Frames.Fixed(10, Frames.Word(1)), Frames.Antenna(2), Frames.Rssi(-61),
            Frames.Fixed(7, Frames.Word(3)), Frames.FirstUtc(Frames.T0 + 1), Frames.LastUtc(Frames.T0 + 1_500_000), Frames.Fixed(8, Frames.Word(12)),
            Frames.Sized(349, [0], Frames.Word(7), Frames.Word(4), Words));

        TagRead read = Assert.Single(Read(new LlrpReadOptions { TidOpSpecId = 7 }, Frames.Report(tag)));

        Assert.Equal(
            new TagRead(TagId.FromEpc(Epc.Parse("3034257BF7194E4000000001")), new AntennaPort(2), Time0.AddMicroseconds(1))
            {
                LastSeen = Time0.AddSeconds(1.5),
                Strength = Rssi.FromDbm(-61),
                Count = 12,
                Tid = Tid.FromBytes(Words, 64),
            },
            read);
    }

    // Given reports of one tag without an antenna, strength, count; then they stay without.
    [Fact]
    public void Absent_stays_absent()
    {
        TagRead read = Read(new LlrpReadOptions(), Frames.Report(
            Frames.Tag(Frames.Epc1, Frames.Antenna(1), Frames.Rssi(-50), Frames.FirstUtc(Frames.T0), Frames.Fixed(8, Frames.Word(3))),
            Frames.Tag(Frames.Epc1, Frames.FirstUtc(Frames.T0))))[1];
        Assert.Equal((false, null, null), (read.Antenna.IsKnown, read.Strength, read.Count));
    }

    [Fact]
    public void Absent_is_as_before_only_for_what_the_host_says()
    {
        byte[] stream = Frames.Join(
            Frames.Report(Frames.Tag(Frames.Epc1, Frames.Antenna(3), Frames.Rssi(-50), Frames.FirstUtc(Frames.T0))),
            Frames.Report(Frames.Tag(Frames.Epc1, Frames.FirstUtc(Frames.T0 + 5))));
        TagRead read = Read(new LlrpReadOptions { CarryOver = LlrpCarryOver.AntennaId }, stream)[1];
        Assert.Equal((3, null), ((int)read.Antenna.Number, read.Strength));

        TagRead all = Read(new LlrpReadOptions { CarryOver = LlrpCarryOver.AntennaId | LlrpCarryOver.PeakRssi }, stream)[1];
        Assert.Equal((3, Rssi.FromDbm(-50)), (all.Antenna.Number, all.Strength!.Value));
    }

    [Fact]
    public void The_last_sighting_alone_is_an_instant()
    {
        TagRead read = Assert.Single(Read(new LlrpReadOptions(), Frames.Report(Frames.Tag(Frames.Epc1, Frames.LastUtc(Frames.T0)))));
        Assert.Equal((Time0, Time0), (read.FirstSeen, read.LastSeen));
    }

    [Fact]
    public void Uptime_is_placed_by_the_clock_check_and_by_nothing_else()
    {
        byte[] stream = Frames.Report(Frames.Tag(Frames.Epc1, Frames.FirstUptime(5_000_000), Frames.LastUptime(6_000_000)));
        Assert.Equal([LlrpRule.NoTime], Faults(new LlrpReadOptions(), stream));

        // The reader's uptime was 15 s when the host's clock showed T0 + 20 s.
        var options = new LlrpReadOptions { ClockCheck = new LlrpClockCheck(15_000_000, Time0.AddSeconds(20)) };
        TagRead read = Assert.Single(Read(options, stream));
        Assert.Equal((Time0.AddSeconds(10), Time0.AddSeconds(11)), (read.FirstSeen, read.LastSeen));
    }

    [Fact]
    public void Times_of_arrival_replace_the_readers_where_the_host_says_so()
    {
        var options = new LlrpReadOptions { TimeSource = ReadTimeSource.HostArrival };
        TagRead read = Assert.Single(Read(options, Frames.Report(Frames.Tag(Frames.Epc1, Frames.FirstUtc(ulong.MaxValue)))));
        Assert.Equal(Decoded.SceneTime, read.FirstSeen);
    }

    [Fact]
    public void Epc_96_and_epc_data_of_96_bits_are_one_tag()
    {
        List<TagRead> reads = Read(new LlrpReadOptions(), Frames.Report(
            Frames.Tag(Frames.Epc1, Frames.FirstUtc(Frames.T0)), Frames.Tag(Frames.EpcData(96, "3034257BF7194E4000000001"), Frames.FirstUtc(Frames.T0))));
        Assert.Equal(reads[0], reads[1]);
    }

    [Fact]
    public void A_tag_without_bits_is_read_and_does_not_vanish()
    {
        TagRead read = Assert.Single(Read(new LlrpReadOptions(), Frames.Report(Frames.Tag(Frames.EpcData(0, ""), Frames.Antenna(1), Frames.FirstUtc(Frames.T0)))));
        Assert.True(read.Tag.IsEmpty);
    }

    [Theory]
    [InlineData("another operation", 0, 8)]
    [InlineData("it failed", 2, 7)]
    public void Words_of_another_memory_or_of_a_failure_are_no_tid(string why, int result, int operation)
    {
        byte[] tag = Frames.Tag(Frames.Epc1, Frames.FirstUtc(Frames.T0), Frames.Sized(349, [(byte)result], Frames.Word(operation), Frames.Word(4), Words));
        byte[] right = Frames.Tag(Frames.Epc1, Frames.FirstUtc(Frames.T0), Frames.Sized(349, [0], Frames.Word(7), Frames.Word(4), Words));

        // Behind a report of the same layout that does have a TID.
        List<TagRead> reads = Read(new LlrpReadOptions { TidOpSpecId = 7 }, Frames.Report(right, tag));
        Assert.Equal((64, 0, why), (reads[0].Tid.BitCount, reads[1].Tid.BitCount, why));
    }

    public static TheoryData<string, LlrpRule, byte[]> Faulty => new()
    {
        { "antenna 256", LlrpRule.AntennaOutOfRange, Frames.Tag(Frames.Epc1, Frames.Antenna(256), Frames.FirstUtc(Frames.T0)) },
        { "year 3000", LlrpRule.TimeOutOfRange, Frames.Tag(Frames.Epc1, Frames.Antenna(1), Frames.FirstUtc(32_503_680_000_000_000)) },
        { "all bits of a time", LlrpRule.TimeOutOfRange, Frames.Tag(Frames.Epc1, Frames.Antenna(1), Frames.FirstUtc(ulong.MaxValue)) },
        { "ends before it begins", LlrpRule.TimesReversed, Frames.Tag(Frames.Epc1, Frames.FirstUtc(Frames.T0), Frames.LastUtc(Frames.T0 - 1)) },
        { "no time", LlrpRule.NoTime, Frames.Tag(Frames.Epc1, Frames.Antenna(1)) },
        { "no tag", LlrpRule.NoTag, Frames.Tag(Frames.Antenna(1), Frames.FirstUtc(Frames.T0)) },
        { "two tags", LlrpRule.TwoTags, Frames.Tag(Frames.Epc1, Frames.EpcData(96, "3034257BF7194E4000000002"), Frames.FirstUtc(Frames.T0)) },
        { "two antennas", LlrpRule.RepeatedParameter, Frames.Tag(Frames.Epc1, Frames.Antenna(1), Frames.Antenna(2), Frames.FirstUtc(Frames.T0)) },
        { "unknown value without a length", LlrpRule.UnknownParameter, Frames.Tag(Frames.Epc1, Frames.Fixed(99, [1, 2, 3]), Frames.FirstUtc(Frames.T0)) },
        { "more bits than bytes", LlrpRule.CountMismatch, Frames.Tag(Frames.EpcData(97, "3034257BF7194E4000000001"), Frames.FirstUtc(Frames.T0)) },
        { "more words than bytes", LlrpRule.CountMismatch, Frames.Tag(Frames.Epc1, Frames.FirstUtc(Frames.T0), Frames.Sized(349, [0], Frames.Word(7), Frames.Word(5), Words)) },
        { "custom without a vendor", LlrpRule.ParameterTooShort, Frames.Tag(Frames.Epc1, Frames.FirstUtc(Frames.T0), Frames.Sized(1023, [1, 2, 3])) },
        { "a tid of 2,064 bits", LlrpRule.TidTooLong, Frames.Tag(Frames.Epc1, Frames.FirstUtc(Frames.T0), Frames.Sized(349, [0], Frames.Word(7), Frames.Word(129), new byte[258])) },
    };

    // Given a bad report between good ones; then it alone makes no read, and its rule is told with its message and place.
    [Theory]
    [MemberData(nameof(Faulty))]
    public void A_report_that_breaks_a_rule_makes_no_read_and_its_neighbours_do(string why, LlrpRule rule, byte[] bad)
    {
        byte[] good = Frames.Tag(Frames.Epc1, Frames.Antenna(1), Frames.FirstUtc(Frames.T0));
        byte[] stream = Frames.Report(good, good, bad, good);
        var faults = new List<LlrpFault>();

        List<TagRead> reads = Read(new LlrpReadOptions { TidOpSpecId = 7 }, stream, faults);

        Assert.Equal((3, why), (reads.Count, why));
        LlrpFault fault = Assert.Single(faults);
        Assert.Equal((rule, LlrpMessageType.RoAccessReport, 1u), (fault.Rule, fault.MessageType, fault.MessageId));
        Assert.InRange(fault.Offset, 10 + (2 * good.Length), 10 + (2 * good.Length) + bad.Length);
        Assert.False(fault.EndsStream);
    }

    [Fact]
    public void A_report_that_ends_behind_its_message_ends_the_message_and_not_the_stream()
    {
        byte[] good = Frames.Tag(Frames.Epc1, Frames.FirstUtc(Frames.T0));
        byte[] torn = Frames.Message(61, 9, good, good[..^3]);
        var faults = new List<LlrpFault>();
        List<TagRead> reads = Read(new LlrpReadOptions(), Frames.Join(torn, Frames.Report(good)), faults);
        Assert.Equal(2, reads.Count);
        Assert.Equal((LlrpRule.ParameterOverrun, 9u), (faults.Single().Rule, faults.Single().MessageId));
    }

    // The quick way by layout and the slow way by parameters are two readers of one stream. Every report of a layout of its own, or a few layouts in any turn.
    [Property(MaxTest = 300)]
    public void Any_mix_of_layouts_gives_the_reads_that_its_reports_give_alone(int seed, byte layouts, byte choice)
    {
        var random = new Random(seed);
        byte[][] tags = [.. Enumerable.Range(0, 60).Select(_ => AnyTag(new Random(seed + random.Next(1 + layouts)), random))];
        var options = new LlrpReadOptions { TidOpSpecId = 7 };
        Assert.Equal(tags.SelectMany(tag => Read(options, Frames.Report(tag))), Read(options, Frames.Report(tags)));
        Assert.Equal(tags.SelectMany(tag => Faults(options, Frames.Report(tag))), Faults(options, Frames.Report(tags)));
        AnyStream.Check([choice, .. Frames.Join(Frames.Report(tags[..20]), Frames.Report(tags[20..]))]);
    }

    [Fact]
    public void A_read_costs_no_memory()
    {
        byte[] tag = Frames.Tag(Frames.Epc1, Frames.Antenna(1), Frames.Rssi(-60), Frames.FirstUtc(Frames.T0));
        byte[] other = Frames.Tag(Frames.EpcData(128, "3034257BF7194E400000000130342570"), Frames.Antenna(1), Frames.Sized(1023, new byte[20]), Frames.FirstUtc(Frames.T0));
        byte[] stream = Frames.Join([.. Enumerable.Repeat(Frames.Report([.. Enumerable.Repeat(tag, 32), other]), 100)]);
        var decoder = new LlrpDecoder();
        var builder = new LlrpReadBuilder();
        var batch = new TagRead[64];
        long least = long.MaxValue;
        long count = 0;
        for (int round = 0; round < 4; round++)
        {
            long before = GC.GetAllocatedBytesForCurrentThread();
            count = Drain(decoder, builder, stream, batch);
            least = Math.Min(least, GC.GetAllocatedBytesForCurrentThread() - before);
        }

        Assert.Equal((3_300L, 0L), (count, least));
    }

    private static long Drain(LlrpDecoder decoder, LlrpReadBuilder builder, byte[] stream, TagRead[] batch)
    {
        long before = builder.ReadCount;
        for (int at = 0; at < stream.Length; at += 1_000)
        {
            ReadOnlySpan<byte> rest = stream.AsSpan(at, Math.Min(1_000, stream.Length - at));
            while (decoder.TryRead(ref rest, out LlrpMessage message))
            {
                LlrpReports reports = message.Reports;
                while (builder.Read(ref reports, Decoded.SceneTime, batch) == batch.Length)
                {
                }
            }
        }

        return builder.ReadCount - before;
    }

    private static byte[] AnyTag(Random shape, Random values)
    {
        byte[] epc = new byte[2 * shape.Next(1, 10)];
        values.NextBytes(epc);
        int bitCount = shape.Next(0, (8 * epc.Length) + 1);
        byte[][] parts =
        [
            shape.Next(4) > 0 ? Frames.Fixed(13, [.. epc.Concat(new byte[12]).Take(12)]) : Frames.EpcData(bitCount, Convert.ToHexString(epc[..((bitCount + 7) / 8)])),
            shape.Next(4) > 0 ? Frames.Antenna(values.Next(16) > 0 ? values.Next(0, 5) : values.Next(65_536)) : [],
            shape.Next(4) > 0 ? Frames.Rssi(values.Next(-128, 128)) : [],
            shape.Next(8) > 0 ? Frames.FirstUtc(Frames.T0 + (ulong)values.Next(100)) : Frames.FirstUptime(7),
            shape.Next(2) > 0 ? Frames.LastUtc(Frames.T0 + 50 + (ulong)values.Next(100)) : [],
            shape.Next(2) > 0 ? Frames.Fixed(8, Frames.Word(values.Next(3))) : [],
            shape.Next(3) > 0 ? [] : Frames.Sized(349, [(byte)values.Next(2)], Frames.Word(values.Next(6, 9)), Frames.Word(4), Words),
            shape.Next(3) > 0 ? [] : Frames.Sized(1023, [.. epc.Concat(new byte[12]).Take(12)]),
        ];
        if (shape.Next(2) == 0)
        {
            shape.Shuffle(parts);
        }

        return Frames.Tag(parts);
    }

    private static List<LlrpRule> Faults(LlrpReadOptions options, byte[] stream)
    {
        var faults = new List<LlrpFault>();
        Read(options, stream, faults);
        return [.. faults.Select(fault => fault.Rule)];
    }

    private static List<TagRead> Read(LlrpReadOptions options, byte[] stream, List<LlrpFault>? faults = null)
    {
        var reads = new List<TagRead>();
        var decoder = new LlrpDecoder();
        var builder = new LlrpReadBuilder(options, fault => faults?.Add(fault));
        var batch = new TagRead[5];
        ReadOnlySpan<byte> rest = stream;
        while (decoder.TryRead(ref rest, out LlrpMessage message))
        {
            LlrpReports reports = message.Reports;
            int count;
            do
            {
                count = builder.Read(ref reports, Decoded.SceneTime, batch);
                reads.AddRange(batch[..count]);
            }
            while (count == batch.Length);
        }

        Assert.Null(decoder.End());
        return reads;
    }
}
