using System;
using System.Collections.Generic;
using System.Linq;
using FsCheck.Xunit;
using ToolLedger.Calibration;
using ToolLedger.Reconciliation;
using Xunit;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>Doubt about tags and neighbours is monotone, for any shift.</summary>
[Properties(Arbitrary = [typeof(ShiftCase)], MaxTest = 1_000)]
public sealed class TrustPropertyTests
{
    [Property]
    public void P05_A_quarantine_never_raises_a_rank_and_clearing_it_never_lowers_one(ShiftCase shift, int line, int minutes)
    {
        string tool = $"T{1 + Math.Abs(line % 12)}";
        DateTimeOffset from = World.Start.AddMinutes(-Math.Abs(minutes % 5));
        IReadOnlyList<int> without = Ranks(shift, _ => { });
        IReadOnlyList<int> doubted = Ranks(shift, world => world.Quarantine(tool, from));
        IReadOnlyList<int> cleared = Ranks(shift, world => world.Quarantine(tool, from, World.End.AddMinutes(1)));

        AssertNotHigher(doubted, cleared);
        AssertNotHigher(cleared, without);
    }

    [Property]
    public void P05_A_sighting_whose_mark_is_another_tools_never_raises_a_rank(ShiftCase shift, int line, int other)
    {
        int claimed = 1 + Math.Abs(line % 12), marked = 1 + Math.Abs(other % 12);
        if (claimed != marked)
        {
            AssertNotHigher(Ranks(shift, world => world.Sight($"T{claimed}", $"K1-{marked}", at: World.End.AddSeconds(90))), Ranks(shift, _ => { }));
        }
    }

    [Property]
    public void P05_A_kit_noted_nearby_never_raises_a_rank(ShiftCase shift, int from, int stay)
    {
        double second = from % 40;
        AssertNotHigher(Ranks(shift, world => world.StandsNearby(World.K2, second, stay % 3 == 0 ? null : second + 1 + Math.Abs(stay % 30))), Ranks(shift, _ => { }));
    }

    [Property]
    public void P04_With_kits_nearby_another_read_still_never_takes_a_line_from_accounted(ShiftCase shift, ReadDraw draw, int from)
    {
        int own = Math.Abs(draw.Tag % 13);
        var added = new ReadDraw(own, 1 + Math.Abs(draw.Antenna % 2), Math.Abs(draw.HalfSecond % 60));
        double second = from % 40;
        ReconciliationResult before = Result(shift, world => world.StandsNearby(World.K2, second, second + 15));
        ReconciliationResult after = Result(shift, world =>
        {
            world.StandsNearby(World.K2, second, second + 15);
            world.Reads.Add(ShiftCase.ToRead(added));
        });

        Assert.False(before.Lines[own].IsAccounted && !after.Lines[own].IsAccounted);
    }

    [Property]
    public void P08_What_people_doubt_later_changes_no_earlier_answer(ShiftCase shift, int line, int seconds)
    {
        string tool = $"T{1 + Math.Abs(line % 12)}";
        DateTimeOffset later = World.End.AddMinutes(2).AddTicks(1 + Math.Abs((long)seconds));

        Assert.Equal(
            ReconciliationPropertyTests.Describe(Result(shift, _ => { })),
            ReconciliationPropertyTests.Describe(Result(shift, world => world.Quarantine(tool, later).Sight(tool, "K1-0", at: later))));
    }

    [Property]
    public void P11_An_unsettled_identity_makes_both_answers_unknown_and_no_other_line_is_touched(ShiftCase shift, int line)
    {
        int number = 1 + Math.Abs(line % 12);
        ReconciliationResult plain = Result(shift, _ => { });
        ReconciliationResult doubted = Result(shift, world => world.Quarantine($"T{number}", World.End.AddSeconds(100)));

        Assert.Equal(LineState.Conflict, doubted.Lines[number - 1].State);
        Assert.Equal(CalibrationState.Unknown, doubted.Lines[number - 1].Calibration!.State);
        for (int i = 0; i < 15; i++)
        {
            if (i != number - 1)
            {
                Assert.Equal((plain.Lines[i].State, plain.Lines[i].Basis), (doubted.Lines[i].State, doubted.Lines[i].Basis));
            }
        }
    }

    [Property]
    public void P03_The_order_of_sightings_quarantines_and_nearby_kits_changes_nothing(ShiftCase shift, int seed)
    {
        ReconciliationResult plain = Result(shift, world => Doubt(world));
        ReconciliationResult shuffled = Result(shift, world =>
        {
            Doubt(world);
            var random = new Random(seed);
            Shuffle(world.Sightings, random);
            Shuffle(world.Quarantines, random);
            Shuffle(world.Nearby, random);
            Shuffle(world.Bindings, random);
        });

        Assert.Equal(ReconciliationPropertyTests.Describe(plain), ReconciliationPropertyTests.Describe(shuffled));
        Assert.Equal(plain.Findings.Select(finding => finding.ToString()), shuffled.Findings.Select(finding => finding.ToString()));

        static void Doubt(World world) => world
            .Sight("T2", "K1-9", at: World.End.AddSeconds(80)).Sight("T3", "K1-4", at: World.End.AddSeconds(80))
            .Quarantine("T6", World.End.AddSeconds(10)).Quarantine("T7", World.Start.AddDays(-1), World.Start)
            .StandsNearby(World.K2, -10, 10).StandsNearby(World.K9, 5, 12);
    }

    private static void Shuffle<T>(List<T> list, Random random)
    {
        T[] items = [.. list];
        random.Shuffle(items);
        list.Clear();
        list.AddRange(items);
    }

    private static ReconciliationResult Result(ShiftCase shift, Action<World> change)
    {
        World world = shift.ToWorld();
        change(world);
        return world.Reconcile();
    }

    private static IReadOnlyList<int> Ranks(ShiftCase shift, Action<World> change) => [.. ShiftCase.Ranks(Result(shift, change))];

    private static void AssertNotHigher(IReadOnlyList<int> lower, IReadOnlyList<int> upper)
    {
        for (int i = 0; i < lower.Count; i++)
        {
            Assert.True(lower[i] <= upper[i], $"rank {i} rose");
        }
    }
}
