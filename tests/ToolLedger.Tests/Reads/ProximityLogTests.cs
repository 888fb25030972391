using System;
using System.Linq;
using ToolLedger.Reads;
using Xunit;

namespace ToolLedger.Tests.Reads;

/// <summary>Hints from outside presentations.</summary>
public sealed class ProximityLogTests
{
    private static readonly TagRead AtEpoch = new(SessionScene.Tool(1), new AntennaPort(1), DateTimeOffset.UnixEpoch);

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(3)]
    public void A_read_by_a_clock_that_was_not_set_yet_does_not_shut_out_the_others(int place)
    {
        var log = new ProximityLog(new StationId("R1"), new SessionPolicy());
        TagRead[] reads = [.. Enumerable.Range(1, 3).Select(second => SessionScene.Read(SessionScene.Tool(2), 1, second))];
        foreach (TagRead read in reads.Take(place).Append(AtEpoch).Concat(reads.Skip(place)))
        {
            log.Add(read, SessionScene.At(5));
        }

        ProximityNote note = Assert.Single(log.Notes);
        Assert.Equal((SessionScene.Tool(2), 3), (note.Tag, note.LookCount));
        Assert.Equal(1, log.NotKeptCount);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(3)]
    public void A_read_from_the_future_is_not_kept_and_does_not_shut_out_the_others(int place)
    {
        // One reader's clock is ten years ahead: without a bound its read would start a log of its own, and everything true would lie too far behind it.
        TagRead ahead = new(SessionScene.Tool(1), new AntennaPort(1), SessionScene.Start.AddYears(10));
        var log = new ProximityLog(new StationId("R1"), new SessionPolicy());
        TagRead[] reads = [.. Enumerable.Range(1, 3).Select(second => SessionScene.Read(SessionScene.Tool(2), 1, second))];
        foreach (TagRead read in reads.Take(place).Append(ahead).Concat(reads.Skip(place)))
        {
            log.Add(read, SessionScene.At(5));
        }

        ProximityNote note = Assert.Single(log.Notes);
        Assert.Equal((SessionScene.Tool(2), 3), (note.Tag, note.LookCount));
        Assert.Equal(1, log.NotKeptCount);
    }

    [Fact]
    public void A_read_ahead_of_the_host_is_kept_up_to_the_stated_bound()
    {
        var log = new ProximityLog(new StationId("R1"), new SessionPolicy());
        DateTimeOffset host = SessionScene.Start - ProximityLog.MaxAhead;
        log.Add(SessionScene.Read(SessionScene.Tool(1), 1, 0), host);
        Assert.Equal(0, log.NotKeptCount);
        log.Add(SessionScene.Read(SessionScene.Tool(1), 1, 0.001), host);
        Assert.Equal(1, log.NotKeptCount);
        Assert.Equal(1, Assert.Single(log.Notes).LookCount);
    }

    [Fact]
    public void A_read_that_names_no_tag_is_not_noted()
    {
        var log = new ProximityLog(new StationId("R1"), new SessionPolicy());
        log.Add(default, SessionScene.Start);
        Assert.Empty(log.Notes);
        Assert.Equal(1, log.NotKeptCount);
    }
}
