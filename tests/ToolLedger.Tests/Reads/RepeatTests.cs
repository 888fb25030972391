using System;
using System.Collections.Generic;
using System.Linq;
using FsCheck.Xunit;
using ToolLedger.Reads;
using ToolLedger.Testing.Generators;
using Xunit;

namespace ToolLedger.Tests.Reads;

/// <summary>Repeats are told exactly inside the horizon, against a plain list of everything delivered.</summary>
[Properties(Arbitrary = [typeof(AnyTagRead)], MaxTest = 300)]
public sealed class RepeatTests
{
    [Property]
    public void A_repeat_is_a_report_equal_to_one_inside_the_horizon(TagRead[] reads, byte limit, byte horizon, int seed)
    {
        var policy = new SessionPolicy
        {
            RepeatReportCount = limit % 12,
            RepeatHorizon = TimeSpan.FromSeconds(horizon % 50),
        };

        // Every read again somewhere later, so that repeats at all distances occur.
        TagRead[] delivered = [.. reads, .. reads, .. reads.Take(5)];
        new Random(seed).Shuffle(delivered);
        var builder = new ReadSessionBuilder(new SessionScene().Presentation, policy);
        List<TagRead> before = [];
        foreach (TagRead read in delivered)
        {
            bool expected = IsRepeat(before, read, policy);
            Assert.Equal(expected, builder.Add(read) == ReadPlacement.Repeat);
            before.Add(read);
        }
    }

    [Fact]
    public void The_default_horizon_of_65536_reports_is_exact_across_the_wrap_of_the_ring()
    {
        var builder = new ReadSessionBuilder(new SessionScene().Presentation, new SessionPolicy());
        TagRead first = SessionScene.Read(SessionScene.Tool(1), 1, 10);
        builder.Add(first);
        AddOthers(builder, 65_535);
        Assert.Equal(ReadPlacement.Repeat, builder.Add(first));
        AddOthers(builder, 65_536);
        Assert.Equal(ReadPlacement.Accepted, builder.Add(first));

        static void AddOthers(ReadSessionBuilder builder, int count)
        {
            for (int i = 0; i < count; i++)
            {
                builder.Add(SessionScene.Read(SessionScene.Tool(2), 2, 10 + (i * 0.000_1)));
            }
        }
    }

    [Theory]
    [InlineData("tag")]
    [InlineData("antenna")]
    [InlineData("first")]
    [InlineData("last")]
    [InlineData("strength")]
    [InlineData("count")]
    public void Reports_that_differ_in_one_member_are_different(string member)
    {
        TagRead read = SessionScene.Read(SessionScene.Tool(1), 1, 10) with { LastSeen = SessionScene.At(11), Strength = new Rssi(0) };
        TagRead other = member switch
        {
            "tag" => SessionScene.Read(SessionScene.Tool(2), 1, 10) with { LastSeen = SessionScene.At(11), Strength = new Rssi(0) },
            "antenna" => SessionScene.Read(SessionScene.Tool(1), 2, 10) with { LastSeen = SessionScene.At(11), Strength = new Rssi(0) },
            "first" => SessionScene.Read(SessionScene.Tool(1), 1, 10.1) with { LastSeen = SessionScene.At(11), Strength = new Rssi(0) },
            "last" => read with { LastSeen = SessionScene.At(12) },
            "strength" => read with { Strength = null },
            _ => read with { Count = 1 },
        };
        var builder = new ReadSessionBuilder(new SessionScene().Presentation, new SessionPolicy());
        builder.Add(read);
        Assert.Equal(ReadPlacement.Accepted, builder.Add(other));
        Assert.Equal(ReadPlacement.Repeat, builder.Add(read));
    }

    // A read that comes late must not take the place of the latest one, also where reads with a number stand between and no repeats are asked for.
    [Theory]
    [InlineData(0)]
    [InlineData(65_536)]
    public void Reads_handed_over_together_keep_the_latest_instant_whatever_their_order(int limit)
    {
        var builder = new ReadSessionBuilder(new SessionScene().Presentation, new SessionPolicy { RepeatReportCount = limit });
        builder.AddRange([SessionScene.Read(SessionScene.Tool(1), 1, 10.05), SessionScene.Read(SessionScene.Tool(1), 1, 10.1)]);
        builder.AddRange(
        [
            SessionScene.Read(SessionScene.Tool(1), 1, 10.4) with { ReportId = 7 },
            SessionScene.Read(SessionScene.Tool(1), 1, 10.2),
        ]);
        ReadSession session = builder.Close(SessionScene.At(60), TimeSpan.Zero);

        Assert.Equal(SessionScene.At(10.4), session.Find(SessionScene.Tool(1))!.LastSeen);
    }

    // A reader whose counter begins anew, or one that counts for each antenna, gives a number twice.
    [Fact]
    public void A_number_used_again_for_another_tag_makes_no_repeat()
    {
        var builder = new ReadSessionBuilder(new SessionScene().Presentation, new SessionPolicy());
        builder.Add(SessionScene.Read(SessionScene.Tool(1), 1, 10) with { ReportId = 7 });

        Assert.Equal(ReadPlacement.Accepted, builder.Add(SessionScene.Read(SessionScene.Tool(2), 1, 11) with { ReportId = 7 }));
        Assert.Equal(ReadPlacement.Repeat, builder.Add(SessionScene.Read(SessionScene.Tool(2), 2, 12) with { ReportId = 7 }));
    }

    // A report that is taken for a repeat leaves its look all the same, so which of two came first must not decide whether the tag was heard.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_tag_is_heard_whichever_of_two_reports_of_one_number_comes_first(bool isOutsideFirst)
    {
        TagRead outside = SessionScene.Read(SessionScene.Tool(1), 1, -5) with { ReportId = 7 };
        TagRead inside = SessionScene.Read(SessionScene.Tool(1), 1, 10) with { ReportId = 7 };
        var builder = new ReadSessionBuilder(new SessionScene().Presentation, new SessionPolicy());
        builder.AddRange(isOutsideFirst ? [outside, inside] : [inside, outside]);
        ReadSession session = builder.Close(SessionScene.At(60), TimeSpan.Zero);

        Assert.True(session.Heard(SessionScene.Tool(1)));
        Assert.True(session.Find(SessionScene.Tool(1))!.IsHeard);
        Assert.Equal(1, session.Find(SessionScene.Tool(1))!.LookCount);
    }

    private static bool IsRepeat(List<TagRead> before, TagRead read, SessionPolicy policy)
    {
        DateTimeOffset latest = before.Append(read).Max(other => other.LastSeen);
        return before.TakeLast(policy.RepeatReportCount).Any(other =>
            latest - other.LastSeen <= policy.RepeatHorizon && (IsSameContent(other, read) || (read.ReportId is { } id && other.ReportId == id && other.Tag == read.Tag)));
    }

    private static bool IsSameContent(TagRead left, TagRead right) =>
        left.Tag == right.Tag && left.Antenna == right.Antenna && left.FirstSeen == right.FirstSeen && left.LastSeen == right.LastSeen
        && left.Strength == right.Strength && left.Count == right.Count;
}
