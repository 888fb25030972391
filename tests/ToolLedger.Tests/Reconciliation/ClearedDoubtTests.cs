using System;
using System.Linq;
using FsCheck.Xunit;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using Xunit;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>Clearing a doubt about a tag says that it was on its tool all along: what was heard before has no force, and the silence before has all of it.</summary>
public sealed class ClearedDoubtTests
{
    private static readonly DetectionModel FewReads = new(0.05m, new BetaRate(4, 60), 0.02m, new BetaRate(0.2m, 60));

    // Given a tag that was silent in a first session and answers in a second, when a doubt about it was cleared between the two, then the line is no nearer to accounted for than with a tag that nobody ever doubted.
    [Fact]
    public void S26_The_silence_before_a_doubt_was_cleared_weighs_as_if_nobody_had_doubted()
    {
        LineConclusion never = SilentThenRead(_ => { }), cleared = SilentThenRead(static world => world.Quarantine("T5", World.Start.AddDays(-1), World.Start.AddMinutes(3)));

        Assert.Equal([0, 1], cleared.Evidence.Best!.Passes.Select(static pass => Math.Sign(pass.LookCount)).Order());
        Assert.Equal(never.Evidence.Risk!.Decision, cleared.Evidence.Risk!.Decision);
        Assert.Equal(never.State, cleared.State);
    }

    // What was heard before the clearing stays without force, however much it is.
    [Fact]
    public void S26_Reads_before_the_clearing_add_nothing_to_those_behind_it()
    {
        World world = Well();
        ReadSession before = Session(world, 0, static _ => true), after = Session(world, 1, static read => read.Tag != World.TagOf("T5") || read.FirstSeen.Second < 8);
        world.Quarantine("T5", World.Start.AddDays(-1), World.Start.AddMinutes(3));
        world.AsOf = after.To.AddMinutes(1);

        LineConclusion line = world.Reconcile(before, after).Lines[4], alone = world.Reconcile(after).Lines[4];

        Assert.Equal(alone.Evidence.LookCount, line.Evidence.LookCount);
        Assert.Equal(alone.State, line.State);
    }

    // Whatever was heard in two sessions, a doubt cleared between them never helps.
    [Property(MaxTest = 200)]
    public void P05_A_doubt_cleared_between_two_sessions_never_raises_a_line(bool[] first, bool[] second, bool isRisk)
    {
        LineConclusion never = Two(first, second, isRisk, _ => { }), cleared = Two(first, second, isRisk, static world => world.Quarantine("T5", World.Start.AddDays(-1), World.Start.AddMinutes(3)));

        Assert.True(cleared.State <= never.State, $"{never}, and with the doubt {cleared}");
    }

    private static LineConclusion SilentThenRead(Action<World> doubt)
    {
        World world = Well();
        doubt(world);
        ReadSession silent = Session(world, 0, static read => read.Tag != World.TagOf("T5")), read = Session(world, 1, static _ => true);
        world.AsOf = read.To.AddMinutes(1);
        return world.Reconcile(silent, read).Lines[4];
    }

    private static LineConclusion Two(bool[]? first, bool[]? second, bool isRisk, Action<World> doubt)
    {
        World world = Well(isRisk);
        doubt(world);
        ReadSession[] sessions = [Session(world, 0, Some(first)), Session(world, 1, Some(second))];
        world.AsOf = sessions[1].To.AddMinutes(1);
        return world.Reconcile(sessions).Lines[4];
    }

    private static Func<TagRead, bool> Some(bool[]? heard)
    {
        int number = 0;
        return read => read.Tag != World.TagOf("T5") || (heard is { Length: > 0 } && heard[number++ % heard.Length]);
    }

    private static World Well(bool isRisk = true)
    {
        var world = new World { Policy = isRisk ? new ReconciliationPolicy { Presence = new StatedRiskPolicy { Model = FewReads, KitRiskLimit = 0.01m } } : new ReconciliationPolicy() };
        foreach (string tool in Enumerable.Range(1, 12).Select(static i => FormattableString.Invariant($"T{i}")).Append("H13"))
        {
            world.Read(tool, World.A1, 6, 8, 10, 12, 14, 16);
            world.Read(tool, World.A2, 7, 9, 11, 13);
        }

        return world.CountAll();
    }

    private static ReadSession Session(World world, int number, Func<TagRead, bool> isRead)
        => world.Session(FormattableString.Invariant($"S{number + 1}"), [World.K1], World.Later(world, 5 * number, isRead), World.Start.AddMinutes(5 * number));
}
