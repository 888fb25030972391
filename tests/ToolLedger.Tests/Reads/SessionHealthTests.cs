using System;
using System.Collections.Generic;
using System.Linq;
using FsCheck.Xunit;
using ToolLedger.Reads;
using Xunit;

namespace ToolLedger.Tests.Reads;

/// <summary>The health of a session by the stated rules (conventions of the trade, policy P0).</summary>
public sealed class SessionHealthTests
{
    private static readonly ReadStation NoControls = new() { Id = new StationId("R2"), Antennas = [new AntennaPort(1), new AntennaPort(2)] };

    private static readonly ReadStation HalfControlled = new()
    {
        Id = new StationId("R3"),
        Antennas = [new AntennaPort(1), new AntennaPort(2)],
        ControlTags = [new ControlTag(SessionScene.C1, new AntennaPort(1))],
    };

    private static readonly ReadStation TwoControls = new()
    {
        Id = new StationId("R4"),
        Antennas = [new AntennaPort(1), new AntennaPort(2)],
        ControlTags = [new ControlTag(SessionScene.C1), new ControlTag(SessionScene.Tool(90), new AntennaPort(2))],
    };

    public static TheoryData<string, SessionState, string> Cases { get; } =
        new(Scenes.Select(scene => (scene.Key, scene.Value.State, scene.Value.Codes)));

    private static IEnumerable<KeyValuePair<string, (Func<SessionScene> Scene, SessionState State, string Codes)>> Scenes => [.. AntennaScenes, .. OtherScenes];

    private static Dictionary<string, (Func<SessionScene> Scene, SessionState State, string Codes)> AntennaScenes => new(StringComparer.Ordinal)
    {
        ["all well"] = (() => new SessionScene().WithControls(), SessionState.Valid, ""),
        ["control tag seen at exactly 5 s from both ends"] =
            (() => new SessionScene().WithControl(1, 5, 55).WithControl(2, 5, 55), SessionState.Valid, ""),
        ["control tag first seen too late on one antenna"] =
            (() => new SessionScene().WithControl(1).WithControl(2, 5.5, 59), SessionState.Degraded, "session.control-tag-missing"),
        ["control tag last seen too early on one antenna"] =
            (() => new SessionScene().WithControl(1).WithControl(2, 1, 54), SessionState.Degraded, "session.control-tag-missing"),
        ["control tag never seen on one antenna"] =
            (() => new SessionScene().WithControl(1), SessionState.Degraded, "session.control-tag-missing"),
        ["control tag never seen near the end"] =
            (() => new SessionScene().WithControl(1, 1, 40).WithControl(2, 1, 40), SessionState.Invalid, "session.control-tag-missing session.control-tag-missing"),
        ["nothing read"] = (() => new SessionScene(), SessionState.Invalid, "session.control-tag-missing session.control-tag-missing"),
        ["other tags are no control tags"] =
            (() => new SessionScene().WithControl(1, tag: SessionScene.Tool(1)).WithControl(2, tag: SessionScene.Tool(1)),
            SessionState.Invalid,
            "session.control-tag-missing session.control-tag-missing"),
        ["the second control tag of an antenna is missing"] =
            (() => new SessionScene { Station = TwoControls }.WithControls(), SessionState.Degraded, "session.control-tag-missing"),
        ["both control tags of an antenna are there"] =
            (() => new SessionScene { Station = TwoControls }.WithControls().WithControl(2, tag: SessionScene.Tool(90)), SessionState.Valid, ""),
        ["no control tags, something read"] =
            (() => new SessionScene { Station = NoControls }.WithControl(1, tag: SessionScene.Tool(1)), SessionState.Degraded, "session.no-control-tags"),
        ["no control tags, nothing read"] =
            (() => new SessionScene { Station = NoControls }, SessionState.Invalid, "session.nothing-read session.no-control-tags session.silence-gap"),
        ["one antenna without control tag"] =
            (() => new SessionScene { Station = HalfControlled }.WithControl(1), SessionState.Degraded, "session.antenna-without-control-tag"),
    };

    private static Dictionary<string, (Func<SessionScene> Scene, SessionState State, string Codes)> OtherScenes => new(StringComparer.Ordinal)
    {
        ["silence of 10 s"] =
            (() => new SessionScene().WithControl(1).WithControl(2, 1, 20).WithControl(2, 31, 59), SessionState.Degraded, "session.silence-gap"),
        ["silence of 10 s that its slots could make 10.5 s"] =
            (() => new SessionScene().WithControl(1).WithControl(2, 1, 20).WithControl(2, 30, 59), SessionState.Degraded, "session.silence-gap"),
        ["silence of 10 s at the most, slots and all"] =
            (() => new SessionScene().WithControl(1).WithControl(2, 1, 20).WithControl(2, 29.5, 59), SessionState.Valid, ""),
        ["silence of the control tag while others answer"] =
            (() => new SessionScene().WithControl(1).WithControl(2, 1, 20).WithControl(2, 31, 59).With(SessionScene.Tool(1), 2, 25), SessionState.Valid, ""),
        ["window of 19.9 s"] =
            (() => new SessionScene { Seconds = 19.9 }.WithControl(1, 1, 19).WithControl(2, 1, 19), SessionState.Invalid, "session.window-too-short"),
        ["window of 20 s"] = (() => new SessionScene { Seconds = 20 }.WithControl(1, 1, 19).WithControl(2, 1, 19), SessionState.Valid, ""),
        ["clock unknown before"] = (() => new SessionScene { OffsetBefore = null }.WithControls(), SessionState.Invalid, "session.clock-offset-unknown"),
        ["clock unknown after"] = (() => new SessionScene { OffsetAfter = null }.WithControls(), SessionState.Invalid, "session.clock-offset-unknown"),
        ["small offsets that differ by 2 s"] =
            (() => new SessionScene { OffsetAfter = TimeSpan.FromSeconds(2) }.WithControls(), SessionState.Valid, ""),
        ["offsets that differ by over 2 s"] =
            (() => new SessionScene { OffsetAfter = TimeSpan.FromSeconds(2.1) }.WithControls(), SessionState.Invalid, "session.clock-offset-changed"),
        ["small offsets of which the correction leaves over 2 s"] =
            (() => new SessionScene { OffsetBefore = TimeSpan.FromSeconds(-1.5), OffsetAfter = TimeSpan.FromSeconds(1.5) }.WithControl(1, 1, 58).WithControl(2, 1, 58),
            SessionState.Invalid,
            "session.clock-offset-changed"),
        ["a read stamped 31 days before"] =
            (() => new SessionScene().WithControls().With(SessionScene.Tool(1), 1, -31 * 86_400.0), SessionState.Invalid, "session.stamps-far-outside"),
        ["a read stamped 31 days after"] =
            (() => new SessionScene().WithControls().With(SessionScene.Tool(1), 1, 31 * 86_400.0), SessionState.Invalid, "session.stamps-far-outside"),
        ["reads stamped 29 days away on both sides"] =
            (() => new SessionScene().WithControls().With(SessionScene.Tool(1), 1, -29 * 86_400.0, 29 * 86_400.0), SessionState.Valid, ""),
        ["reads later than the end"] =
            (() => new SessionScene { Seconds = 58 }.WithControls(), SessionState.Invalid, "session.read-after-close"),
        ["buffer overflow"] =
            (() => new SessionScene().WithControls().WithLoss(SessionLoss.BufferOverflow), SessionState.Degraded, "session.loss"),
        ["rows refused"] = (() => new SessionScene().WithControls().WithLoss(SessionLoss.RowsRefused), SessionState.Degraded, "session.loss"),
        ["decode error"] = (() => new SessionScene().WithControls().WithLoss(SessionLoss.DecodeError), SessionState.Degraded, "session.loss"),
        ["one antenna disconnected"] =
            (() => new SessionScene().WithControls().WithLoss(SessionLoss.AntennaDisconnected, 2), SessionState.Degraded, "session.loss"),
        ["both antennas disconnected"] =
            (() => new SessionScene().WithControls().WithLoss(SessionLoss.AntennaDisconnected, 2).WithLoss(SessionLoss.AntennaDisconnected, 1),
            SessionState.Invalid,
            "session.loss session.loss"),
        ["an antenna disconnected, not known which"] =
            (() => new SessionScene().WithControls().WithLoss(SessionLoss.AntennaDisconnected), SessionState.Invalid, "session.loss"),
        ["reader fault"] = (() => new SessionScene().WithControls().WithLoss(SessionLoss.ReaderFault), SessionState.Invalid, "session.loss"),
        ["connection closed"] =
            (() => new SessionScene().WithControls().WithLoss(SessionLoss.ConnectionClosed), SessionState.Invalid, "session.loss"),
        ["an antenna the station does not have"] =
            (() => new SessionScene().WithControls().With(SessionScene.Tool(1), 7, 3, 4), SessionState.Valid, "session.unlisted-antenna"),
    };

    [Theory, MemberData(nameof(Cases))]
    public void Health_follows_the_stated_rules(string name, SessionState state, string codes)
    {
        ReadSession session = Scenes.Single(scene => string.Equals(scene.Key, name, StringComparison.Ordinal)).Value.Scene().Close();
        Assert.Equal(state, session.Health.State);
        Assert.Equal(state != SessionState.Invalid, session.IsUsable);
        Assert.Equal(codes, string.Join(' ', session.Health.Reasons.Select(reason => reason.Code)));
        Assert.DoesNotContain('{', session.Health.ToString());
    }

    // A constant offset of any size is corrected, and the correction is said (S68 of the trade: 7 minutes fast).
    [Fact]
    public void A_constant_clock_offset_is_corrected_and_said()
    {
        TimeSpan fast = TimeSpan.FromMinutes(7);
        SessionScene scene = new() { OffsetBefore = fast, OffsetAfter = fast + TimeSpan.FromSeconds(0.4) };
        scene.Reads.AddRange(new SessionScene().WithControls().With(SessionScene.Tool(1), 1, 30).Reads
            .Select(read => new TagRead(read.Tag, read.Antenna, read.FirstSeen + fast)));
        ReadSession session = scene.Close();
        Assert.Equal(SessionState.Valid, session.Health.State);
        Assert.Equal("session.clock-corrected", Assert.Single(session.Health.Reasons).Code);
        Assert.Equal(fast, session.ClockCorrection);
        Assert.Equal(SessionScene.At(30), session.Find(SessionScene.Tool(1))!.FirstSeen);
        Assert.Equal(0, session.OutsideCount);
    }

    // Property 5 of the trade: the wider the clock is unsure, the lower the state.
    [Property]
    public void Widening_the_clock_uncertainty_never_raises_health(short before, short after, short wider)
    {
        TimeSpan offset = TimeSpan.FromMilliseconds(before);
        TimeSpan drift = TimeSpan.FromMilliseconds(Math.Abs((int)after) % 5_000);
        TimeSpan more = drift + TimeSpan.FromMilliseconds(Math.Abs((int)wider) % 5_000);
        SessionState narrow = State(offset, offset + drift);
        Assert.True(State(offset, offset + more) <= narrow);
        Assert.Equal(SessionState.Invalid, State(offset, null));
        Assert.Equal(SessionState.Invalid, State(null, offset));

        SessionState State(TimeSpan? first, TimeSpan? last)
        {
            SessionScene scene = new() { OffsetBefore = first, OffsetAfter = last };
            scene.Reads.AddRange(new SessionScene().WithControls().Reads
                .Select(read => new TagRead(read.Tag, read.Antenna, read.FirstSeen + offset)));
            return scene.Close().Health.State;
        }
    }

    [Fact]
    public void The_longest_silence_is_reported_with_its_start()
    {
        ReadSession session = new SessionScene().WithControl(1).WithControl(2, 1, 6).WithControl(2, 18, 20).WithControl(2, 45, 59).Close();
        Assert.Equal(
            "Antenna 2 heard nothing for up to 25.5 s from 2026-03-01T15:55:20Z on; such silences: 2.",
            Assert.Single(session.Health.Reasons).ToString());
    }
}
