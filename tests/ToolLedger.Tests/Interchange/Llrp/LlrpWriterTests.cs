using System;
using System.Buffers;
using System.Collections.Generic;
using System.Linq;
using FsCheck.Xunit;
using ToolLedger.Identifiers;
using ToolLedger.Interchange.Llrp;
using ToolLedger.Reads;
using ToolLedger.Testing.Generators;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Interchange.Llrp;

/// <summary>What is written is read back as the same, and what could not be is refused before a byte is written.</summary>
[Properties(Arbitrary = [typeof(AnyTagRead)], MaxTest = 100)]
public sealed class LlrpWriterTests
{
    private static readonly TagRead Plain = new(SessionTag("3034257BF7194E4000000001"), new AntennaPort(1), AnyTagRead.Start);

    [Property]
    public void Reads_written_are_read_back(TagRead[] reads, int operation, byte pieceLength)
    {
        TagRead[] writable = [.. reads.Select(read => read with { ReportId = null })];
        var output = new ArrayBufferWriter<byte>();
        new LlrpWriter(output) { TidOpSpecId = operation & 0xFFFF }.WriteReports(writable);
        Assert.Equal(writable, ReadBack(output.WrittenSpan.ToArray(), operation & 0xFFFF, 1 + pieceLength));
    }

    [Theory]
    [InlineData("")]
    [InlineData("3034")]
    [InlineData("3034257BF7194E40000000013034257BF7194E40")]
    public void A_tag_of_any_length_is_read_back(string hex)
    {
        TagRead read = new(SessionTag(hex), default, AnyTagRead.Start);
        TagRead longest = new(TagId.FromEpc(Epc.FromBytes(new byte[8_190], 65_520)), default, AnyTagRead.Start);
        var output = new ArrayBufferWriter<byte>();
        new LlrpWriter(output).WriteReports([read, longest]);
        Assert.Equal([read, longest], ReadBack(output.WrittenSpan.ToArray(), 1, 1_000));
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(1_000, 1)]
    [InlineData(1_001, 2)]
    public void More_reads_than_one_message_takes_go_into_further_ones(int count, int messages)
    {
        var output = new ArrayBufferWriter<byte>();
        var writer = new LlrpWriter(output) { NextMessageId = 40 };
        writer.WriteReports([.. Enumerable.Repeat(Plain, count)]);
        Assert.Equal(40u + (uint)messages, writer.NextMessageId);
        Assert.Equal(count, ReadBack(output.WrittenSpan.ToArray(), 1, 4_096).Count);
    }

    public static TheoryData<LlrpWriteRule, TagRead> Unwritable => new()
    {
        { LlrpWriteRule.NoEpc, new TagRead(TagId.FromText("7"), default, AnyTagRead.Start) },
        { LlrpWriteRule.Time, new TagRead(Plain.Tag, default, AnyTagRead.Start.AddTicks(1)) },
        { LlrpWriteRule.Time, new TagRead(Plain.Tag, default, DateTimeOffset.UnixEpoch.AddTicks(-10)) },
        { LlrpWriteRule.Time, Plain with { LastSeen = AnyTagRead.Start.AddTicks(15) } },
        { LlrpWriteRule.Strength, Plain with { Strength = new Rssi(-6_150) } },
        { LlrpWriteRule.Strength, Plain with { Strength = new Rssi(-12_900) } },
        { LlrpWriteRule.Count, Plain with { Count = 65_536 } },
        { LlrpWriteRule.Tid, Plain with { Tid = Tid.Parse("E28") } },
        { LlrpWriteRule.ReportId, Plain with { ReportId = 0 } },
    };

    [Theory]
    [MemberData(nameof(Unwritable))]
    public void What_would_change_is_refused_with_its_place_and_nothing_is_written(LlrpWriteRule rule, TagRead read)
    {
        Assert.Equal((LlrpWriteRule.None, rule), (LlrpWriter.Check(Plain), LlrpWriter.Check(read)));
        var output = new ArrayBufferWriter<byte>();
        ArgumentException refusal = Assert.Throws<ArgumentException>(() => new LlrpWriter(output).WriteReports([Plain, read]));
        Assert.StartsWith($"Read 1 cannot be written as a tag report: {rule}.", refusal.Message, StringComparison.Ordinal);
        Assert.Equal(0, output.WrittenCount);
    }

    public static TheoryData<LlrpReaderEvent> Events => new(
        new LlrpReaderEvent { Kind = LlrpEventKind.Hopping, HopTableId = 1, NextChannelIndex = 36, UtcMicroseconds = Frames.T0 },
        new LlrpReaderEvent { Kind = LlrpEventKind.Gpi, GpiPort = 2, GpiState = true, UptimeMicroseconds = 77 },
        new LlrpReaderEvent { Kind = LlrpEventKind.Gpi, GpiPort = 2, GpiState = false, UptimeMicroseconds = 77 },
        new LlrpReaderEvent { Kind = LlrpEventKind.RoSpec, EventType = 2, RoSpecId = 9, PreemptingRoSpecId = 10, UtcMicroseconds = 0 },
        new LlrpReaderEvent { Kind = LlrpEventKind.BufferLevelWarning, BufferPercent = 80, UtcMicroseconds = Frames.T0 },
        new LlrpReaderEvent { Kind = LlrpEventKind.BufferOverflow, UtcMicroseconds = Frames.T0 },
        new LlrpReaderEvent
        {
            Kind = LlrpEventKind.ReaderException,
            Message = "Temperatur über 70 °C",
            RoSpecId = 1,
            SpecIndex = 2,
            InventoryParameterSpecId = 3,
            AntennaId = 4,
            AccessSpecId = 5,
            OpSpecId = 6,
            UtcMicroseconds = ulong.MaxValue,
        },
        new LlrpReaderEvent { Kind = LlrpEventKind.RfSurvey, EventType = 1, RoSpecId = 1, SpecIndex = 1, UtcMicroseconds = Frames.T0 },
        new LlrpReaderEvent { Kind = LlrpEventKind.AiSpec, EventType = 0, RoSpecId = 1, SpecIndex = 1, UtcMicroseconds = Frames.T0 },
        new LlrpReaderEvent { Kind = LlrpEventKind.AiSpec, EventType = 0, RoSpecId = 1, SpecIndex = 1, CollisionSlotCount = 4, EmptySlotCount = 9, UtcMicroseconds = Frames.T0 },
        new LlrpReaderEvent { Kind = LlrpEventKind.Antenna, EventType = 0, AntennaId = 3, UtcMicroseconds = Frames.T0 },
        new LlrpReaderEvent { Kind = LlrpEventKind.ConnectionAttempt, ConnectionStatus = 4, UtcMicroseconds = Frames.T0 },
        new LlrpReaderEvent { Kind = LlrpEventKind.ConnectionClose, UtcMicroseconds = Frames.T0 },
        new LlrpReaderEvent { Kind = LlrpEventKind.SpecLoop, RoSpecId = 8, LoopCount = 70_000, UtcMicroseconds = Frames.T0 });

    [Theory]
    [MemberData(nameof(Events))]
    public void An_event_written_is_read_back(LlrpReaderEvent what)
    {
        var output = new ArrayBufferWriter<byte>();
        new LlrpWriter(output).WriteEvent(what);
        ReadOnlySpan<byte> rest = output.WrittenSpan;
        Assert.True(new LlrpDecoder().TryRead(ref rest, out LlrpMessage message));
        Assert.True(message.TryReadEvents(out IReadOnlyList<LlrpReaderEvent> events, out _));
        Assert.Equal([what], events);
    }

    [Theory]
    [InlineData(LlrpEventKind.Unknown, 1UL, null)]
    [InlineData(LlrpEventKind.Custom, 1UL, null)]
    [InlineData(LlrpEventKind.Antenna, 1UL, 1UL)]
    [InlineData(LlrpEventKind.Antenna, null, null)]
    public void An_event_without_one_time_or_without_a_form_is_refused(LlrpEventKind kind, ulong? utc, ulong? uptime) => Assert.Throws<ArgumentException>(
        () => new LlrpWriter(new ArrayBufferWriter<byte>()).WriteEvent(new LlrpReaderEvent { Kind = kind, UtcMicroseconds = utc, UptimeMicroseconds = uptime }));

    // LLRP 1.1, 13.1.4: the client answers each KEEPALIVE with a KEEPALIVE_ACK of the same id.
    [Fact]
    public void Keep_alives_and_their_answers_are_headers_alone()
    {
        var output = new ArrayBufferWriter<byte>();
        var writer = new LlrpWriter(output) { NextMessageId = 0x01020304 };
        writer.WriteKeepalive();
        writer.WriteKeepaliveAck(0x01020304);
        Assert.Equal("043E0000000A0102030404480000000A01020304", Convert.ToHexString(output.WrittenSpan));
    }

    private static TagId SessionTag(string hex) => TagId.FromEpc(Epc.Parse(hex));

    private static List<TagRead> ReadBack(byte[] stream, int operation, int pieceLength)
    {
        var reads = new List<TagRead>();
        var decoder = new LlrpDecoder();
        var builder = new LlrpReadBuilder(new LlrpReadOptions { TidOpSpecId = operation }, fault => Assert.Fail(fault.ToString()));
        var batch = new TagRead[100];
        for (int at = 0; at < stream.Length; at += pieceLength)
        {
            ReadOnlySpan<byte> rest = stream.AsSpan(at, Math.Min(pieceLength, stream.Length - at));
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
        }

        Assert.Null(decoder.End());
        return reads;
    }
}
