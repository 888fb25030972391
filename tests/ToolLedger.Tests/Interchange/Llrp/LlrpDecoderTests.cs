using System;
using System.Buffers;
using System.Collections.Generic;
using System.Linq;
using FsCheck.Xunit;
using ToolLedger.Interchange.Llrp;
using Xunit;

namespace ToolLedger.Tests.Interchange.Llrp;

/// <summary>Messages come out the same however the stream is cut, a length that cannot be right ends it, and memory follows what arrived.</summary>
public sealed class LlrpDecoderTests
{
    private static readonly byte[] AllPublished = Frames.Join([.. LlrpVector.Published.Select(vector => vector.Bytes)]);

    [Fact]
    public void The_stream_of_all_published_messages_is_the_same_in_pieces_of_any_length()
    {
        List<string> whole = Decoded.InPieces(AllPublished, AllPublished.Length);
        Assert.Equal(LlrpVector.Published.Count, whole.Count(line => char.IsAsciiDigit(line.FirstOrDefault('x'))));
        foreach (int length in (int[])[1, 2, 3, 5, 9, 10, 11, 64, 1_460, 10_007])
        {
            Assert.Equal(whole, Decoded.InPieces(AllPublished, length));
        }
    }

    [Fact]
    public void A_stream_cut_at_every_byte_is_the_same()
    {
        byte[] stream = Frames.Join([.. LlrpVector.Published.Concat(LlrpVector.Robustness.Where(vector => vector.Verdict.StartsWith("accept", StringComparison.Ordinal)))
            .Where(vector => vector.Bytes.Length < 150).Select(vector => vector.Bytes)]);
        List<string> whole = Decoded.InPieces(stream, stream.Length);
        for (int cut = 1; cut < stream.Length; cut++)
        {
            Assert.Equal(whole, Decoded.InPieces(stream, cut, stream.Length));
        }
    }

    [Fact]
    public void Every_bad_message_between_good_ones_is_the_same_cut_at_every_byte()
    {
        byte[] good = Frames.Report(Frames.Tag(Frames.Epc1, Frames.Antenna(1), Frames.FirstUtc(Frames.T0)));
        foreach (LlrpVector vector in LlrpVector.Robustness)
        {
            byte[] stream = Frames.Join(good, vector.Bytes, good);
            List<string> whole = Decoded.InPieces(stream, stream.Length);
            for (int cut = 1; cut < stream.Length; cut++)
            {
                Assert.Equal(whole, Decoded.InPieces(stream, cut, stream.Length));
            }
        }
    }

    [Property(MaxTest = 300)]
    public void Random_bytes_never_throw_and_are_the_same_in_any_pieces(byte[] bytes, byte[] lengths)
    {
        int[] pieces = [.. lengths.Select(length => 1 + length).DefaultIfEmpty(1)];
        Assert.Equal(Decoded.InPieces(bytes, Math.Max(1, bytes.Length)), Decoded.InPieces(bytes, pieces));
    }

    [Property(MaxTest = 300)]
    public void A_damaged_message_never_throws_and_is_the_same_in_any_pieces(uint which, uint place, byte value, byte length)
    {
        LlrpVector vector = LlrpVector.Published[(int)(which % LlrpVector.Published.Count)];
        byte[] bytes = [.. vector.Bytes];
        bytes[place % bytes.Length] = value;
        Assert.Equal(Decoded.InPieces(bytes, bytes.Length), Decoded.InPieces(bytes, 1 + length));
    }

    [Fact]
    public void A_sequence_of_segments_empty_ones_among_them_gives_the_same_messages()
    {
        var decoder = new LlrpDecoder();
        var sequence = Segments(AllPublished, 0, 7, 0, 0, 100, 1);
        int count = 0;
        while (decoder.TryRead(ref sequence, out LlrpMessage message))
        {
            Assert.Equal(LlrpVector.Published[count].Bytes.Length, 10 + message.Body.Length);
            count++;
        }

        Assert.Equal(LlrpVector.Published.Count, count);
        Assert.Equal(AllPublished.Length, decoder.Position);
        Assert.Null(decoder.End());
    }

    // Given a header that claims 4 GB; when it arrives; then it is a fault at once, and nothing of the claimed length is allocated.
    [Fact]
    public void A_header_that_claims_four_gigabytes_is_refused_without_memory()
    {
        byte[] header = Convert.FromHexString("043DFFFFFFFF00000007");
        var decoder = new LlrpDecoder();
        long before = GC.GetAllocatedBytesForCurrentThread();
        ReadOnlySpan<byte> rest = header;
        Assert.False(decoder.TryRead(ref rest, out _));
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 4_096);

        Assert.Equal(new { Rule = LlrpRule.MessageTooLong, Offset = 0L, Found = (ulong)uint.MaxValue }, new { decoder.Fault!.Value.Rule, decoder.Fault.Value.Offset, decoder.Fault.Value.Found });
        Assert.True(decoder.Fault.Value.EndsStream);
    }

    [Fact]
    public void A_header_within_the_limit_allocates_only_for_what_arrives()
    {
        var decoder = new LlrpDecoder();
        byte[] part = [.. Convert.FromHexString("043D00FFFFFF00000007"), .. new byte[90]];
        long before = GC.GetAllocatedBytesForCurrentThread();
        ReadOnlySpan<byte> rest = part;
        Assert.False(decoder.TryRead(ref rest, out _));
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 4_096);
        Assert.Null(decoder.Fault);
        Assert.True(decoder.IsInsideMessage);
    }

    [Theory]
    [InlineData("version 0", "003D0000000A00000007", LlrpRule.UnsupportedVersion, 0UL)]
    [InlineData("version 4", "103D0000000A00000007", LlrpRule.UnsupportedVersion, 4UL)]
    [InlineData("length 9", "043D0000000900000007", LlrpRule.MessageTooShort, 9UL)]
    [InlineData("length 0", "043D0000000000000007", LlrpRule.MessageTooShort, 0UL)]
    [InlineData("over the limit", "043D0100000100000007", LlrpRule.MessageTooLong, 16_777_217UL)]
    public void After_a_header_that_cannot_be_right_nothing_is_read_until_the_stream_is_another(string why, string header, LlrpRule rule, ulong found)
    {
        byte[] good = Frames.Message(62, 5);
        var decoder = new LlrpDecoder();
        ReadOnlySpan<byte> rest = Frames.Join(good, Convert.FromHexString(header), good);

        Assert.True(decoder.TryRead(ref rest, out _), why);
        Assert.False(decoder.TryRead(ref rest, out _), why);
        Assert.True(rest.IsEmpty);
        rest = good;
        Assert.False(decoder.TryRead(ref rest, out _), why);

        LlrpFault fault = decoder.End()!.Value;
        Assert.Equal((rule, 10L, found, 7u), (fault.Rule, fault.Offset, fault.Found, fault.MessageId));
        decoder.Reset();
        rest = good;
        Assert.True(decoder.TryRead(ref rest, out LlrpMessage message));
        Assert.Equal(0, message.Offset);
    }

    [Fact]
    public void A_stream_that_ends_inside_a_message_says_where_it_began()
    {
        byte[] frame = Frames.Message(62, 5);
        var decoder = new LlrpDecoder();
        ReadOnlySpan<byte> rest = Frames.Join(frame, frame[..7]);
        Assert.True(decoder.TryRead(ref rest, out _));
        Assert.False(decoder.TryRead(ref rest, out _));
        Assert.Equal((LlrpRule.StreamCut, 10L, 7UL), (decoder.End()!.Value.Rule, decoder.Fault!.Value.Offset, decoder.Fault.Value.Found));
        Assert.StartsWith("The stream ended inside a message (StreamCut)", decoder.Fault.Value.ToString(), StringComparison.Ordinal);
    }

    private static ReadOnlySequence<byte> Segments(byte[] bytes, params int[] lengths)
    {
        Segment first = new(ReadOnlyMemory<byte>.Empty, 0);
        Segment last = first;
        for (int at = 0, piece = 0; at < bytes.Length; piece++)
        {
            int length = Math.Min(lengths[piece % lengths.Length], bytes.Length - at);
            last = last.Append(bytes.AsMemory(at, length));
            at += length;
        }

        return new ReadOnlySequence<byte>(first, 0, last, last.Memory.Length);
    }

    private sealed class Segment : ReadOnlySequenceSegment<byte>
    {
        internal Segment(ReadOnlyMemory<byte> memory, long index)
        {
            Memory = memory;
            RunningIndex = index;
        }

        internal Segment Append(ReadOnlyMemory<byte> memory)
        {
            var next = new Segment(memory, RunningIndex + Memory.Length);
            Next = next;
            return next;
        }
    }
}
