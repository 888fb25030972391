using System;
using System.Buffers;
using System.Linq;
using ToolLedger.Interchange;
using ToolLedger.Interchange.Llrp;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Tests.Reads;
using Xunit;

namespace ToolLedger.Tests.Interchange.Llrp;

/// <summary>Whatever makes a window incomplete is said by the health of the session, so that nothing is concluded from silence.</summary>
public sealed class LlrpSessionFeedTests
{
    public static TheoryData<string, byte[], string, string, SessionState> Losses => new()
    {
        { "buffer overflow", Frames.Event(Frames.Sized(251)), "buffer-overflow", "not known", SessionState.Degraded },
        { "antenna 2 off", Frames.Event(Frames.Sized(255, [0], Frames.Word(2))), "antenna-disconnected", "2", SessionState.Degraded },
        { "antenna 300 off", Frames.Event(Frames.Sized(255, [0], Frames.Word(300))), "antenna-disconnected", "not known", SessionState.Invalid },
        { "reader exception", Frames.Event(Frames.Sized(252, Frames.Word(0))), "reader-fault", "not known", SessionState.Invalid },
        { "connection close", Frames.Event(Frames.Sized(257)), "connection-closed", "not known", SessionState.Invalid },
        { "connection refused", Frames.Event(Frames.Sized(256, Frames.Word(1))), "connection-closed", "not known", SessionState.Invalid },
        { "close response", Frames.Message(4, 3, Frames.Sized(287, Frames.Word(0), Frames.Word(0))), "connection-closed", "not known", SessionState.Invalid },
        { "error message", Frames.Message(100, 3, Frames.Sized(287, Frames.Word(100), Frames.Word(0))), "reader-fault", "not known", SessionState.Invalid },
        { "bad report", Frames.Report(Frames.Tag(Frames.Antenna(1))), "decode-error", "not known", SessionState.Degraded },
        { "bad event", Frames.Event(Frames.Sized(255, [0])), "decode-error", "not known", SessionState.Degraded },
        { "notification without data", Frames.Message(63, 3), "decode-error", "not known", SessionState.Degraded },
        { "header of length 0", [0x04, 0x3D, 0, 0, 0, 0, 0, 0, 0, 7], "stream-lost", "not known", SessionState.Invalid },
    };

    // Given a session that is valid on what it read; when the stream also tells of a loss; then the session says which, and no more than it may.
    [Theory]
    [MemberData(nameof(Losses))]
    public void A_loss_told_by_the_stream_is_a_reason_of_the_session(string why, byte[] frame, string kind, string antenna, SessionState state)
    {
        ReadSession session = Play(Frames.Join(GoodStream(), frame), (feed, decoder) => feed.Finish(decoder, SessionScene.At(59)));

        Assert.Equal((state, why), (session.Health.State, why));
        Reason loss = session.Health.Reasons.Single(reason => reason.Kind == SessionReasons.Loss);
        Assert.Equal((kind, antenna), (loss.Values[0].Value, loss.Values[1].Value));
    }

    // Given a session of a stream that also tells of a loss, kept as reads and losses; when it is replayed; then it concludes the same, and without the losses it
    // would not.
    [Theory]
    [MemberData(nameof(Losses))]
    public void Reads_kept_with_what_was_lost_replay_to_the_same_health(string why, byte[] frame, string kind, string antenna, SessionState state)
    {
        var kept = new ArrayBufferWriter<byte>();
        ReadFileWriter writer = ReadFileWriter.JsonLines(kept, ReadFileOptions.Archive);
        ReadSession session = Play(Frames.Join(GoodStream(), frame), (feed, decoder) => feed.Finish(decoder, SessionScene.At(59)), reads =>
        {
            foreach (TagRead read in reads)
            {
                writer.Write(read);
            }
        });
        var scene = new SessionScene();
        scene.Losses.AddRange(session.Losses);
        scene.Reads.AddRange(ReadFile.JsonLines(kept.WrittenMemory, ReadFileOptions.Archive));

        ReadSession replay = scene.Close();

        Assert.Equal((kind, antenna, why), (SessionLossWord(replay.Losses.Single()), replay.Losses.Single().Antenna.ToString(), why));
        Assert.Equal(session.Losses, replay.Losses);
        Assert.Equal((state, session.Health.ToString()), (replay.Health.State, replay.Health.ToString()));
        Assert.Equal(session.Tags.Select(tag => (tag.Tag, tag.LookCount, tag.FirstSeen, tag.LastSeen)), replay.Tags.Select(tag => (tag.Tag, tag.LookCount, tag.FirstSeen, tag.LastSeen)));
        scene.Losses.Clear();
        Assert.NotEqual(state, scene.Close().Health.State);
    }

    private static string SessionLossWord(ReportedLoss loss) => string.Concat(loss.Loss.ToString().Select((letter, index) =>
        char.IsUpper(letter) && index > 0 ? "-" + char.ToLowerInvariant(letter) : char.ToLowerInvariant(letter).ToString()));

    [Theory]
    [InlineData("empty report", "043D0000000A00000007")]
    [InlineData("keep-alive", "043E0000000A00000007")]
    [InlineData("custom message", "07FF0000000F000000070000651A15")]
    [InlineData("capabilities", "04010000000B0000000100")]
    public void What_loses_nothing_is_no_loss(string why, string frame)
    {
        ReadSession session = Play(Frames.Join(GoodStream(), Convert.FromHexString(frame)), (feed, decoder) => feed.Finish(decoder, SessionScene.At(59)));
        Assert.Equal((SessionState.Valid, why), (session.Health.State, why));
    }

    [Fact]
    public void Events_that_lose_nothing_are_no_loss()
    {
        byte[] events = Frames.Event(
            Frames.Sized(247, Frames.Word(1), Frames.Word(2)), Frames.Sized(250, [90]), Frames.Sized(255, [1], Frames.Word(2)), Frames.Sized(256, Frames.Word(0)),
            Frames.Sized(256, Frames.Word(4)), Frames.Sized(1023, new byte[9]), Frames.Sized(900, [1]));
        Assert.Equal(SessionState.Valid, Play(Frames.Join(GoodStream(), events), (feed, decoder) => feed.Finish(decoder, SessionScene.At(59))).Health.State);
    }

    [Fact]
    public void A_recording_that_ends_inside_a_message_makes_the_session_invalid()
    {
        ReadSession session = Play(GoodStream()[..^3], (feed, decoder) =>
        {
            Assert.Equal(LlrpRule.StreamCut, decoder.End()!.Value.Rule);
            feed.Finish(decoder, SessionScene.At(59));
            Assert.Equal(1, feed.FaultCount);
        });
        Assert.Equal(SessionState.Invalid, session.Health.State);
    }

    [Fact]
    public void A_message_half_arrived_when_the_session_closes_degrades_it() => Assert.Equal(
        SessionState.Degraded,
        Play(Frames.Join(GoodStream(), GoodStream()[..40]), (feed, decoder) => feed.Finish(decoder, SessionScene.At(59))).Health.State);

    [Theory]
    [InlineData(0, 1)]
    [InlineData(5, 2)]
    public void A_connection_that_ends_makes_the_session_invalid_and_says_whether_a_message_was_cut(int cut, int losses)
    {
        ReadSession session = Play(GoodStream()[..^cut], (feed, decoder) => feed.ConnectionEnded(decoder, SessionScene.At(30)));
        Assert.Equal(SessionState.Invalid, session.Health.State);
        Assert.Equal(losses, session.Health.Reasons.Count(reason => reason.Kind == SessionReasons.Loss));
    }

    [Fact]
    public void The_feed_counts_what_the_session_took()
    {
        Play(GoodStream(), (feed, decoder) => Assert.Equal((118L, 118L, 0L), (feed.ReadCount, feed.AcceptedCount, feed.FaultCount)));
    }

    [Fact]
    public void A_read_of_a_stream_is_the_read_that_was_written()
    {
        var scene = new SessionScene().WithControls();
        Assert.Equal(scene.Close().Digest, Play(GoodStream(), (_, _) => { }).Digest);
    }

    private static byte[] GoodStream()
    {
        var output = new ArrayBufferWriter<byte>();
        new LlrpWriter(output).WriteReports([.. new SessionScene().WithControls().Reads]);
        return output.WrittenSpan.ToArray();
    }

    private static ReadSession Play(byte[] stream, Action<LlrpSessionFeed, LlrpDecoder> end, Action<ReadOnlySpan<TagRead>>? onReads = null)
    {
        var scene = new SessionScene();
        var builder = new ReadSessionBuilder(scene.Presentation, scene.Policy);
        var decoder = new LlrpDecoder();
        var feed = new LlrpSessionFeed(builder, onReads: onReads);
        ReadOnlySpan<byte> rest = stream;
        while (decoder.TryRead(ref rest, out LlrpMessage message))
        {
            feed.Add(message, SessionScene.At(30));
        }

        end(feed, decoder);
        return builder.Close(SessionScene.At(60), TimeSpan.Zero);
    }
}
