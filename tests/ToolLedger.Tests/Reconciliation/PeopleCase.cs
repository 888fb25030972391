using System;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Reconciliation;
using ToolLedger.Records;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>
/// What people may record of a well-read kit, drawn at random: job records of twenty pins (line 16), rags with halves (15) and their joining, pliers (5) that broke, annotations
/// and openings. Times are minutes before the end of the session; below -2 they are later than the as-of instant.
/// </summary>
public sealed record PeopleCase(
    int Returned, UseDraw[] Uses, int Whole, int Parts, int JoinedParts, int Wholes, int Broken, int Reconstructed, bool IsWitnessed, int Pieces, AnnotationDraw[] Annotations, int[] Openings)
{
    internal const int Pins = 20;

    public static Arbitrary<PeopleCase> Arbitrary()
    {
        Gen<UseDraw> use =
            from job in Gen.Choose(1, 4)
            from used in Gen.Choose(0, 4)
            from scrapped in Gen.Choose(used == 0 ? 1 : 0, 2)
            from minutes in Gen.Frequency((8, Gen.Choose(0, 300)), (1, Gen.Choose(-10, 900)))
            select new UseDraw(job, used, scrapped, minutes);
        Gen<AnnotationDraw> annotation =
            from line in Gen.Choose(1, 16)
            from kind in Gen.Elements(AnnotationKind.Removed, AnnotationKind.Shortage, AnnotationKind.Restored)
            from minutes in Gen.Choose(-10, 600)
            from amount in Gen.Choose(1, 3)
            select new AnnotationDraw(line, kind, minutes, amount);
        Gen<PeopleCase> people =
            from returned in Gen.Choose(6, 21)
            from uses in use.ArrayOf()
            from whole in Gen.Choose(4, 7)
            from parts in Gen.Choose(0, 4)
            from joinedParts in Gen.Choose(2, 4)
            from wholes in Gen.Choose(1, joinedParts / 2)
            from broken in Gen.Choose(0, 4)
            from reconstructed in Gen.Choose(0, 5)
            from witnessed in Gen.Elements(true, false)
            from pieces in Gen.Choose(0, 5)
            from annotations in Gen.Frequency((1, Gen.Constant(Array.Empty<AnnotationDraw>())), (1, annotation.ArrayOf(3)))
            from openings in Gen.Frequency((2, Gen.Constant(Array.Empty<int>())), (1, Gen.Choose(-10, 30).ArrayOf(2)))
            select new PeopleCase(returned, uses, whole, parts, joinedParts, wholes, broken, reconstructed, witnessed, pieces, annotations, openings);
        return people.ToArbitrary();
    }

    internal World ToWorld()
    {
        World world = new World().ReadAllBut();
        world.MoreLines.Add(new ConsumableLine { Number = 16, Description = "cotter pins", Quantity = new Quantity(Pins, Unit.Each) });
        world.Count(13, 10, "each").Count(14, 1, "spool").Count(16, Returned, "each").CountParts(15, Whole, Parts, "each", World.End);
        world.Join(15, JoinedParts, Wholes, World.End.AddSeconds(30));
        foreach (UseDraw use in Uses)
        {
            world.Use(16, $"J-{use.Job}", use.Used, "each", World.End.AddMinutes(-use.Minutes), use.Scrapped);
        }

        // 0: not broken; 4: shattered; otherwise that many pieces.
        if (Broken > 0)
        {
            world.Break("T5", Broken == 4 ? null : Broken, World.End.AddHours(-2));
        }

        if (Reconstructed > 0)
        {
            world.Reconstruct("T5", Reconstructed, World.End.AddHours(-1), IsWitnessed ? World.Q : default);
        }

        if (Pieces > 0)
        {
            world.CountPieces("T5", Pieces);
        }

        foreach (AnnotationDraw draw in Annotations)
        {
            Quantity shortBy = draw.Kind == AnnotationKind.Shortage ? new Quantity(draw.Amount, Unit.Each) : default;
            world.Annotate(draw.Line, draw.Kind, World.End.AddMinutes(-draw.Minutes), shortBy: shortBy);
        }

        foreach (int minutes in Openings)
        {
            world.Open(World.End.AddMinutes(-minutes));
        }

        return world;
    }

    internal static LineConclusion? LineOf(ReconciliationResult result, int number) => result.Lines.FirstOrDefault(line => line.Line.Number == number);
}
