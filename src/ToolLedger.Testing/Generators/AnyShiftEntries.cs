using System;
using System.Collections.Generic;
using FsCheck;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Testing.Simulation;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Generators;

/// <summary>
/// What people say in a generated shift about the tools and lines of its kits: sightings by the right mark or another one, counts as expected, short,
/// over or in another unit, pieces, signatures; fresh, old and too late, in two voices, witnessed or not.
/// </summary>
public static class AnyShiftEntries
{
    private static readonly Place Bench = new("bench 2");
    private static readonly PersonId[] Persons = [new("P"), new("Q"), new("S")];

    /// <summary>Generates entries.</summary>
    /// <param name="manifests">The manifests.</param>
    /// <param name="asOf">The instant around which people speak.</param>
    /// <param name="quality">How much is said and how rightly.</param>
    /// <returns>A generator.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="manifests"/> is null.</exception>
    public static Gen<InventoryEntries> Of(IReadOnlyList<KitManifest> manifests, DateTimeOffset asOf, ShiftQuality quality)
    {
        ArgumentNullException.ThrowIfNull(manifests);
        return ShiftPool.FromSeeds(chance => Draw(chance, manifests, asOf, quality));
    }

    internal static InventoryEntries Draw(SplitMix64 chance, IReadOnlyList<KitManifest> manifests, DateTimeOffset asOf, ShiftQuality quality)
    {
        var sightings = new List<Sighting>();
        var counts = new List<LineCount>();
        var pieces = new List<PieceCount>();
        foreach (KitManifest manifest in manifests)
        {
            foreach (ManifestLine line in manifest.Lines)
            {
                Repeat(chance, line is ToolLine ? 24 : 1, line is ToolLine ? 1 : Rightly(quality), () => counts.Add(Count(chance, manifest.Id, line, asOf, quality)));
                if (line.Tool is { } tool)
                {
                    Repeat(chance, quality == ShiftQuality.Good ? 4 : 7, quality == ShiftQuality.Poor ? 1 : 3, () => sightings.Add(Sight(chance, tool, asOf)));
                    Repeat(chance, tool.PieceCount > 1 ? 1 : 24, tool.PieceCount > 1 ? Rightly(quality) : 1, () => pieces.Add(Pieces(chance, tool, asOf, quality)));
                }
            }
        }

        return new InventoryEntries { Sightings = sightings, Counts = counts, PieceCounts = pieces, Signatures = Sign(chance, asOf) };
    }

    private static int Rightly(ShiftQuality quality) => quality == ShiftQuality.Good ? 24 : 4;

    /// <summary>No, one or sometimes two entries.</summary>
    private static void Repeat(SplitMix64 chance, int none, int some, Action add)
    {
        for (int left = chance.Weighted(4 * none, 3 * some, some); left > 0; left--)
        {
            add();
        }
    }

    private static Sighting Sight(SplitMix64 chance, Tool tool, DateTimeOffset asOf)
    {
        PersonId who = Person(chance), witness = Person(chance);
        return new Sighting
        {
            Tool = tool.Id,
            MarkRead = chance.Weighted(16, 1, 1) switch { 0 => tool.Mark ?? "K9", 1 => "K1-1", _ => "K1" },
            By = who,
            At = Time(chance, asOf),
            Where = Bench,
            InKit = chance.Weighted(2, 13, 1) switch { 0 => default, 1 => ShiftPool.Subject, _ => ShiftPool.Second },
            Witness = chance.OneIn(3) && witness != who ? witness : default,
        };
    }

    private static LineCount Count(SplitMix64 chance, KitId kit, ManifestLine line, DateTimeOffset asOf, ShiftQuality quality)
    {
        int difference = chance.Weighted(quality == ShiftQuality.Good ? 30 : 5, 1, 1) switch { 0 => 0, 1 => -1, _ => 1 };
        PersonId who = Person(chance), witness = Person(chance);
        return new LineCount
        {
            Kit = kit,
            LineNumber = line.Number,
            Quantity = new Quantity(line.Expected.Amount + difference, chance.OneIn(20) ? new Unit("box") : line.Expected.Unit),
            By = who,
            At = Time(chance, asOf),
            Witness = chance.OneIn(3) && witness != who ? witness : default,
        };
    }

    private static PieceCount Pieces(SplitMix64 chance, Tool tool, DateTimeOffset asOf, ShiftQuality quality) => new()
    {
        Tool = tool.Id,
        Pieces = chance.Weighted(quality == ShiftQuality.Good ? 30 : 5, 1, 1, 1) switch { 0 => tool.PieceCount, 1 => tool.PieceCount - 1, 2 => tool.PieceCount + 1, _ => null },
        By = Person(chance),
        At = Time(chance, asOf),
    };

    private static Signature[] Sign(SplitMix64 chance, DateTimeOffset asOf)
    {
        var signatures = new Signature[chance.Below(3)];
        for (int i = 0; i < signatures.Length; i++)
        {
            signatures[i] = new Signature { By = Person(chance), At = Time(chance, asOf) };
        }

        return signatures;
    }

    internal static PersonId Person(SplitMix64 chance) => Persons[chance.Below(Persons.Length)];

    /// <summary>Mostly the last ten minutes; some older than the default policy allows, some after the instant asked for, some at it.</summary>
    internal static DateTimeOffset Time(SplitMix64 chance, DateTimeOffset asOf)
    {
        int before = chance.Weighted(16, 1, 1, 3) switch
        {
            0 => chance.Among(1, 600),
            1 => chance.Among(3600, 9000),
            2 => chance.Among(-300, -1),
            _ => 0,
        };
        return asOf.AddSeconds(-before);
    }
}
