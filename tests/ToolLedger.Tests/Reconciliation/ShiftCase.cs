using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Tools;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>A shift drawn at random: reads of own, foreign and unknown tags, station faults, passes, counts, piece counts and sightings.</summary>
public sealed record ShiftCase(ReadDraw[] Draws, bool ControlOnA1, bool ControlOnA2, bool TwoPasses, bool ClockKnown, int[] Counts, int PieceDraw, int SightMask)
{
    private const int OwnCount = 13;
    private const int ForeignCount = 14;
    private const int UnknownCount = 2;

    /// <summary>Mostly well-read kits, so that complete kits occur and not only open ones.</summary>
    public static Arbitrary<ShiftCase> Arbitrary()
    {
        Gen<ReadDraw> draw =
            from tag in Gen.Choose(0, OwnCount + ForeignCount + UnknownCount - 1)
            from antenna in Gen.Choose(1, 2)
            from slot in Gen.Choose(0, 65)
            select new ReadDraw(tag, antenna, slot);
        Gen<ReadDraw> own =
            from tag in Gen.Choose(0, OwnCount - 1)
            from antenna in Gen.Choose(1, 2)
            from slot in Gen.Choose(0, 59)
            select new ReadDraw(tag, antenna, slot);
        Gen<ReadDraw[]> reads =
            from dense in Gen.Elements(0, 40, 200)
            from mine in own.ArrayOf(dense)
            from others in draw.ArrayOf()
            select mine.Concat(others).ToArray();
        Gen<ShiftCase> shift =
            from draws in reads
            from a1 in Gen.Frequency((4, Gen.Constant(true)), (1, Gen.Constant(false)))
            from a2 in Gen.Frequency((4, Gen.Constant(true)), (1, Gen.Constant(false)))
            from passes in Gen.Elements(true, false)
            from clock in Gen.Frequency((6, Gen.Constant(true)), (1, Gen.Constant(false)))
            from counts in Gen.Frequency((3, Gen.Constant(new[] { 10, 1, 6 })), (2, Gen.Choose(0, 11).ArrayOf(3)), (1, Gen.Constant(Array.Empty<int>())))
            from pieces in Gen.Choose(0, 4)
            from sights in Gen.Frequency((3, Gen.Choose(0, (1 << 12) - 1)), (1, Gen.Constant((1 << 12) - 1)), (2, Gen.Constant(0)))
            select new ShiftCase(draws, a1, a2, passes, clock, counts, pieces, sights);
        return shift.ToArbitrary();
    }

    internal World ToWorld(Func<ReadDraw, bool>? keep = null)
    {
        var world = new World
        {
            ControlOnA1 = ControlOnA1,
            ControlOnA2 = ControlOnA2,
            ClockBefore = ClockKnown ? TimeSpan.Zero : null,
            ClockAfter = TimeSpan.Zero,
            T10Pieces = 3,
        };
        if (TwoPasses)
        {
            world.PassStarts.Add(World.Start.AddSeconds(15));
        }

        foreach (ReadDraw draw in Draws)
        {
            if (keep is null || keep(draw))
            {
                world.Reads.Add(ToRead(draw));
            }
        }

        string[] units = ["each", "spool", "each"];
        for (int i = 0; i < Counts.Length; i++)
        {
            world.Count(13 + i, Counts[i], units[i]);
        }

        if (PieceDraw > 0)
        {
            world.CountPieces("T10", PieceDraw == 4 ? 3 : PieceDraw);
        }

        for (int i = 0; i < 12; i++)
        {
            if ((SightMask >> i & 1) != 0)
            {
                world.Sight(Name("T", i + 1), Name("K1-", i + 1));
            }
        }

        return world;
    }

    internal static TagRead ToRead(ReadDraw draw)
        => new(TagOf(draw.Tag), new AntennaPort((byte)draw.Antenna), World.Start.AddSeconds((draw.HalfSecond * 0.5) + 0.1));

    internal static TagId TagOf(int index) => index < OwnCount + ForeignCount
        ? World.TagOf(World.AllTools().ElementAt(index))
        : World.TagOf(Name("X", index));

    /// <summary>The line an own tag belongs to, or 0.</summary>
    internal static int LineOf(int index) => index < OwnCount ? index + 1 : 0;

    internal static IEnumerable<int> Ranks(ReconciliationResult result)
        => result.Lines.Select(static line => line.IsAccounted ? 1 : 0).Append(result.Kit.State == KitState.Complete ? 1 : 0);

    private static string Name(string prefix, int number) => prefix + number.ToString(CultureInfo.InvariantCulture);
}
