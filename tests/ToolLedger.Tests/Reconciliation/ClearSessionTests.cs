using System;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using Xunit;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>A session without the neighbour shows what the bag alone sounds like, whatever else is doubted about it.</summary>
public sealed class ClearSessionTests
{
    // A doubt about the session whose silence speaks against a tool must not help the tool.
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void S94_A_clear_session_that_settles_nothing_is_silent_all_the_same(bool isClockKnown)
    {
        World world = new World { AsOf = World.End.AddMinutes(10) }.ReadAllBut("T3").ReadWell("T3").StandsNearby(World.K2, -60, 14);
        ReadSession first = world.Session();
        world.Nearby.Clear();
        world.ClockBefore = world.ClockAfter = isClockKnown ? TimeSpan.Zero : null;
        ReadSession second = world.Session("S2", [World.K1], World.Later(world, 5, static read => read.Tag != World.TagOf("T3")), World.Start.AddMinutes(5));

        Assert.Equal(isClockKnown, second.IsUsable);
        LineConclusion line = world.Reconcile(first, second).Lines[2];
        Assert.Equal(LineState.NotRead, line.State);
        Assert.Contains(line.Reasons, static reason => reason.Kind == ReconciliationReasons.OnlyWhileNearby);
    }
}
