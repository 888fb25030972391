using System;
using System.Collections.Generic;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Generators;

/// <summary>What people say in a generated shift about the tools and lines of its kits: right and wrong, fresh, old and too late, in two voices, witnessed or not.</summary>
public static class AnyShiftEntries
{
    private static readonly Place Bench = new("bench 2");

    /// <summary>Generates sightings of the tools on some manifests: by the tool's mark or another one, some inside another kit.</summary>
    /// <param name="manifests">The manifests.</param>
    /// <param name="asOf">The instant around which people speak.</param>
    /// <param name="quality">How much is seen and how rightly.</param>
    /// <returns>A generator.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="manifests"/> is null.</exception>
    public static Gen<Sighting[]> Sightings(IReadOnlyList<KitManifest> manifests, DateTimeOffset asOf, ShiftQuality quality)
    {
        ArgumentNullException.ThrowIfNull(manifests);
        Tool[] tools = [.. manifests.SelectMany(static manifest => manifest.Lines).Select(static line => line.Tool).OfType<Tool>()];
        return Some(tools, tool => Sighting(tool, asOf), quality == ShiftQuality.Good ? 4 : 7, quality == ShiftQuality.Poor ? 1 : 3);
    }

    /// <summary>Generates counts of the lines of some manifests: as expected, short, over, in another unit.</summary>
    /// <param name="manifests">The manifests.</param>
    /// <param name="asOf">The instant around which people speak.</param>
    /// <param name="quality">How much is counted and how rightly.</param>
    /// <returns>A generator.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="manifests"/> is null.</exception>
    public static Gen<LineCount[]> Counts(IReadOnlyList<KitManifest> manifests, DateTimeOffset asOf, ShiftQuality quality)
    {
        ArgumentNullException.ThrowIfNull(manifests);
        (KitId Kit, ManifestLine Line)[] lines = [.. manifests.SelectMany(static manifest => manifest.Lines.Select(line => (manifest.Id, line)))];
        Gen<LineCount[]> untagged = Some(lines.Where(static pair => pair.Line is not ToolLine), pair => Count(pair.Kit, pair.Line, asOf, quality), 1, quality == ShiftQuality.Good ? 24 : 4);
        Gen<LineCount[]> tools = Some(lines.Where(static pair => pair.Line is ToolLine), pair => Count(pair.Kit, pair.Line, asOf, quality), 24, 1);
        return from one in untagged from other in tools select one.Concat(other).ToArray();
    }

    /// <summary>Generates counts of the pieces of tools, some of an unknown number.</summary>
    /// <param name="manifests">The manifests.</param>
    /// <param name="asOf">The instant around which people speak.</param>
    /// <param name="quality">How much is counted and how rightly.</param>
    /// <returns>A generator.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="manifests"/> is null.</exception>
    public static Gen<PieceCount[]> PieceCounts(IReadOnlyList<KitManifest> manifests, DateTimeOffset asOf, ShiftQuality quality)
    {
        ArgumentNullException.ThrowIfNull(manifests);
        Tool[] tools = [.. manifests.SelectMany(static manifest => manifest.Lines).Select(static line => line.Tool).OfType<Tool>()];
        Gen<PieceCount[]> several = Some(tools.Where(static tool => tool.PieceCount > 1), tool => Pieces(tool, asOf, quality), 1, quality == ShiftQuality.Good ? 24 : 3);
        Gen<PieceCount[]> single = Some(tools.Where(static tool => tool.PieceCount == 1), tool => Pieces(tool, asOf, quality), 24, 1);
        return from one in several from other in single select one.Concat(other).ToArray();
    }

    /// <summary>Generates up to two signatures, some older than the last entry.</summary>
    /// <param name="asOf">The instant around which people sign.</param>
    /// <returns>A generator.</returns>
    public static Gen<Signature[]> Signatures(DateTimeOffset asOf) =>
        from count in Gen.Choose(0, 2)
        from signatures in (
            from who in Persons
            from at in Times(asOf)
            select new Signature { By = who, At = at }).ArrayOf(count)
        select signatures;

    private static Gen<PersonId> Persons { get; } = Gen.Elements(new PersonId("P"), new PersonId("Q"), new PersonId("S"));

    /// <summary>Mostly the last ten minutes; some older than the default policy allows, some after the instant asked for, some at it.</summary>
    private static Gen<DateTimeOffset> Times(DateTimeOffset asOf) =>
        from seconds in Gen.Frequency(
            (16, Gen.Choose(1, 600)),
            (1, Gen.Choose(3600, 9000)),
            (1, Gen.Choose(-300, -1)),
            (3, Gen.Constant(0)))
        select asOf.AddSeconds(-seconds);

    private static Gen<Sighting> Sighting(Tool tool, DateTimeOffset asOf) =>
        from mark in Gen.Frequency((16, Gen.Constant(tool.Mark ?? "K9")), (1, Gen.Constant("K1-1")), (1, Gen.Constant("K1")))
        from who in Persons
        from at in Times(asOf)
        from kit in Gen.Frequency((12, Gen.Constant(default(KitId))), (3, Gen.Constant(ShiftPool.Subject)), (1, Gen.Constant(ShiftPool.Second)))
        select new Sighting { Tool = tool.Id, MarkRead = mark, By = who, At = at, Where = Bench, InKit = kit };

    private static Gen<LineCount> Count(KitId kit, ManifestLine line, DateTimeOffset asOf, ShiftQuality quality) =>
        from difference in Gen.Frequency((quality == ShiftQuality.Good ? 30 : 5, Gen.Constant(0)), (1, Gen.Constant(-1)), (1, Gen.Constant(1)))
        from unit in Gen.Frequency((20, Gen.Constant(line.Expected.Unit)), (1, Gen.Constant(new Unit("box"))))
        from who in Persons
        from at in Times(asOf)
        from witness in Gen.Frequency((2, Gen.Constant(default(PersonId))), (1, Persons.Where(person => person != who)))
        select new LineCount
        {
            Kit = kit,
            LineNumber = line.Number,
            Quantity = new Quantity(line.Expected.Amount + difference, unit),
            By = who,
            At = at,
            Witness = witness,
        };

    private static Gen<PieceCount> Pieces(Tool tool, DateTimeOffset asOf, ShiftQuality quality) =>
        from difference in Gen.Frequency((quality == ShiftQuality.Good ? 30 : 5, Gen.Constant((int?)0)), (1, Gen.Constant((int?)-1)), (1, Gen.Constant((int?)1)), (1, Gen.Constant((int?)null)))
        from who in Persons
        from at in Times(asOf)
        select new PieceCount { Tool = tool.Id, Pieces = difference is { } more ? tool.PieceCount + more : null, By = who, At = at };

    /// <summary>None, one or sometimes two entries about each subject.</summary>
    private static Gen<TEntry[]> Some<TSubject, TEntry>(IEnumerable<TSubject> subjects, Func<TSubject, Gen<TEntry>> entry, int none, int some) =>
        Gen.CollectToArray(subjects, subject =>
            from count in Gen.Frequency((4 * none, Gen.Constant(0)), (3 * some, Gen.Constant(1)), (some, Gen.Constant(2)))
            from entries in entry(subject).ArrayOf(count)
            select entries).Select(static all => all.SelectMany(static one => one).ToArray());
}
