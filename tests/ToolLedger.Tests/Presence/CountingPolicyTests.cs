using System;
using System.Collections.Generic;
using System.Linq;
using FsCheck.Xunit;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Presence;

/// <summary>The counting policy: looks, antennas and passes, in valid and degraded sessions. The default numbers are those of policy P0 (ours).</summary>
public sealed class CountingPolicyTests
{
    private static readonly StationId R1 = new("R1");

    [Theory]
    [InlineData("no look at all", new int[0], false, PresenceState.NotRead)]
    [InlineData("one look", new[] { 11 }, false, PresenceState.Weak)]
    [InlineData("two looks on two antennas", new[] { 11, 12 }, false, PresenceState.Weak)]
    [InlineData("three looks on one antenna in one pass", new[] { 11, 11, 11 }, false, PresenceState.Weak)]
    [InlineData("three looks on two antennas", new[] { 11, 11, 12 }, false, PresenceState.Accounted)]
    [InlineData("three looks on one antenna in two passes", new[] { 11, 11, 21 }, false, PresenceState.Accounted)]
    [InlineData("degraded: two antennas do not make a second view", new[] { 11, 11, 12, 12 }, true, PresenceState.Weak)]
    [InlineData("degraded: two passes do", new[] { 11, 11, 21 }, true, PresenceState.Accounted)]
    public void Looks_make_a_view(string why, int[] looks, bool degraded, PresenceState expected)
    {
        PresenceJudgement judgement = new CountingPolicy().Judge(Evidence(looks, degraded));

        Assert.True(judgement.State == expected, why);
        Assert.NotEmpty(judgement.Reasons);
    }

    [Property]
    public void Another_look_never_lowers_the_answer_and_no_look_is_never_more_than_not_read(byte[] draws, byte extra, bool degraded, byte needed)
    {
        var policy = new CountingPolicy { LooksNeeded = 1 + (needed % 6), AntennasNeeded = 1 + (needed % 3), PassesNeeded = 1 + (needed % 4) };
        int[] looks = [.. draws.Select(LookOf)];

        PresenceState before = policy.Judge(Evidence(looks, degraded)).State;
        PresenceState after = policy.Judge(Evidence([.. looks, LookOf(extra)], degraded)).State;

        Assert.True(after >= before);
        Assert.Equal(looks.Length == 0, before == PresenceState.NotRead);
    }

    [Property]
    public void A_degraded_session_never_gives_a_higher_answer_than_a_valid_one(byte[] draws)
    {
        int[] looks = [.. draws.Select(LookOf)];
        var policy = new CountingPolicy();

        Assert.True(policy.Judge(Evidence(looks, degraded: true)).State <= policy.Judge(Evidence(looks, degraded: false)).State);
    }

    [Fact]
    public void Reports_that_name_no_antenna_make_one_view_at_the_most()
    {
        Assert.Equal(PresenceState.Weak, new CountingPolicy().Judge(Evidence([10, 10, 10, 11], degraded: false)).State);
        Assert.Equal(PresenceState.Accounted, new CountingPolicy { AntennasNeeded = 1 }.Judge(Evidence([10, 10, 10], degraded: false)).State);
    }

    [Fact]
    public void A_site_may_refuse_identification_by_EPC_alone()
    {
        PresenceJudgement judgement = new CountingPolicy { EpcOnlyAccepted = false }.Judge(Evidence([11, 11, 12], degraded: false));

        Assert.Equal(PresenceState.Weak, judgement.State);
        Assert.Contains(judgement.Reasons, reason => reason.Code == PresenceReasons.EpcOnlyNotAccepted.Code);
    }

    [Fact]
    public void Where_the_chip_number_is_asked_for_only_looks_of_sessions_that_reported_it_count()
    {
        var strict = new CountingPolicy { EpcOnlyAccepted = false };
        Assert.Equal(PresenceState.Weak, strict.Judge(Chipped(2, 10)).State);
        Assert.Equal(PresenceState.Accounted, strict.Judge(Chipped(3, 10)).State);
        Assert.Equal(PresenceState.Accounted, new CountingPolicy().Judge(Chipped(0, 3)).State);

        // The second session adds looks of a tag that may be a copy; they help neither way.
        static PresenceEvidence Chipped(int withChip, int without) => new()
        {
            Tag = TagId.FromText("tag"),
            Passes =
            [
                new PassEvidence(new SessionId("S1"), 1, false, withChip, 60) { TidLookCount = withChip },
                new PassEvidence(new SessionId("S2"), 1, false, without, 60),
            ],
            Antennas =
            [
                new AntennaEvidence(new StationId("R1"), new AntennaPort(1), false, withChip + without) { TidLookCount = withChip },
                new AntennaEvidence(new StationId("R1"), new AntennaPort(2), false, withChip + without) { TidLookCount = withChip },
            ],
            HasTid = withChip > 0,
        };
    }

    [Theory]
    [InlineData("looks", 0)]
    [InlineData("looks", 101)]
    [InlineData("antennas", 65)]
    [InlineData("passes", 0)]
    [InlineData("degraded passes", 101)]
    public void A_setting_outside_its_range_is_refused(string setting, int value) => Assert.Throws<ArgumentOutOfRangeException>(() => setting switch
    {
        "looks" => new CountingPolicy { LooksNeeded = value },
        "antennas" => new CountingPolicy { AntennasNeeded = value },
        "passes" => new CountingPolicy { PassesNeeded = value },
        _ => new CountingPolicy { DegradedPassesNeeded = value },
    });

    [Theory]
    [InlineData(-1, 0)]
    [InlineData(1, 2)]
    [InlineData(1, -1)]
    public void A_history_that_cannot_be_is_refused(int presented, int read)
        => Assert.Throws<ArgumentOutOfRangeException>(() => new TagHistory(presented, read));

    private static int LookOf(byte draw) => (10 * (1 + (draw % 3))) + (draw / 3 % 4);

    /// <summary>Evidence from looks written as two digits: pass, then antenna (0 = not named).</summary>
    private static PresenceEvidence Evidence(int[] looks, bool degraded)
    {
        var session = new SessionId("S1");
        IEnumerable<PassEvidence> passes = Enumerable.Range(1, 3)
            .Select(pass => new PassEvidence(session, pass, degraded, looks.Count(look => look / 10 == pass), 120));
        IEnumerable<AntennaEvidence> antennas = looks.GroupBy(static look => look % 10)
            .Select(group => new AntennaEvidence(R1, group.Key == 0 ? default : new AntennaPort((byte)group.Key), degraded, group.Count()));
        return new PresenceEvidence { Tag = TagId.FromText("T"), Passes = [.. passes], Antennas = [.. antennas] };
    }
}
