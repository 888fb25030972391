using System;
using System.Linq;
using ToolLedger.Presence;
using ToolLedger.Reconciliation;
using Xunit;

namespace ToolLedger.Tests.Reconciliation.Closeouts;

/// <summary>Thousands of simulated closeouts whose truth is known. The tables are left in artifacts/closeouts.md; docs/reconciliation.md shows those of a long run.</summary>
public sealed class SimulatedCloseoutTests(CloseoutRun run) : IClassFixture<CloseoutRun>
{
    private static readonly TruePlace[] NotInTheBag = [.. Enum.GetValues<TruePlace>().Where(place => !CloseoutTruth.IsInTheBag(place))];

    [Fact]
    public void Without_strays_and_neighbours_no_tool_that_is_not_in_the_bag_is_accounted_for()
    {
        Assert.All(NotInTheBag, place => Assert.InRange(run.Quiet.CountOf(place), 300, int.MaxValue));
        Assert.Equal(0, run.Quiet.Accounted(NotInTheBag));
        Assert.Equal(0, run.Quiet.Accounted(TruePlace.InTheBagDeadTag));
        Assert.Equal(0, run.Quiet.WronglyComplete);
    }

    [Fact]
    public void With_a_neighbours_open_bag_beside_some_are_wrongly_accounted_for_but_never_one_that_is_out_of_reach()
    {
        Assert.Equal(0, run.Busy.Accounted(TruePlace.Absent, TruePlace.InTheBagDeadTag));

        // The danger is real under the default policy: this is what the second session is for.
        Assert.InRange(run.Busy.Accounted(TruePlace.InTheNeighboursBag), 1, int.MaxValue);
    }

    [Fact]
    public void S94_A_second_session_with_everything_else_moved_away_removes_every_wrong_one()
    {
        Assert.Equal(0, run.Then.Accounted(NotInTheBag));
        Assert.Equal(0, run.Then.WronglyComplete);
        Assert.Contains(ReconciliationReasons.LaterSilent.Code, run.Then.Codes);
    }

    [Fact]
    public void Every_conclusion_that_reads_alone_can_give_occurs()
    {
        foreach (CloseoutTable table in new[] { run.Quiet, run.Busy, run.Then })
        {
            Assert.All([LineState.Accounted, LineState.Weak, LineState.NotRead], state => Assert.InRange(table.CountOf(TruePlace.InTheBagShielded, state), 1, int.MaxValue));
            Assert.All(Enum.GetValues<KitState>(), state => Assert.InRange(table.CountOf(state), 1, int.MaxValue));
        }

        Assert.Contains(PresenceReasons.DegradedStation.Code, run.Quiet.Codes);
    }

    [Theory]
    [InlineData(0, 20)]
    [InlineData(0, 5000)]
    [InlineData(3, 400)]
    [InlineData(900, 1000)]
    public void The_upper_bound_is_the_share_at_which_so_few_would_still_be_seen_once_in_twenty(int events, int trials)
    {
        double bound = BinomialBound.Upper(events, trials, 0.95);

        Assert.Equal(0.05, BinomialBound.AtMost(events, trials, bound), 1e-9);
        Assert.InRange(bound, events / (double)trials, 1);
        if (events == 0)
        {
            Assert.Equal(1 - Math.Pow(0.05, 1.0 / trials), bound, 1e-12);
        }
    }

    [Fact]
    public void The_upper_bound_of_what_always_happened_is_one() => Assert.Equal(1, BinomialBound.Upper(7, 7, 0.95));
}
