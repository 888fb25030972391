using System;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Generators;

/// <summary>FsCheck generators of what people say; hand the type to <c>Arbitrary</c> of a property.</summary>
/// <remarks>Everything generated keeps the rules of <see cref="InventoryRules"/>. Thread-safe.</remarks>
public static class InventoryGenerators
{
    /// <summary>Sightings of few tools by few persons, with marks of several scripts.</summary>
    /// <returns>The generator.</returns>
    public static Arbitrary<Sighting> Sighting() => Arb.From(Sightings());

    /// <summary>Counts of few lines of few kits.</summary>
    /// <returns>The generator.</returns>
    public static Arbitrary<LineCount> LineCount() => Arb.From(LineCounts());

    /// <summary>Piece counts of few tools, some with an unknown number.</summary>
    /// <returns>The generator.</returns>
    public static Arbitrary<PieceCount> PieceCount() => Arb.From(PieceCounts());

    /// <summary>Openings of few kits.</summary>
    /// <returns>The generator.</returns>
    public static Arbitrary<KitOpening> KitOpening() => Arb.From(KitOpenings());

    /// <summary>Sheets with up to six entries of each kind.</summary>
    /// <returns>The generator.</returns>
    public static Arbitrary<InventorySheet> InventorySheet() => Arb.From(
        from sightings in GeneratedValues.ListOf(Sightings(), 6)
        from counts in GeneratedValues.ListOf(LineCounts(), 6)
        from pieceCounts in GeneratedValues.ListOf(PieceCounts(), 6)
        from openings in GeneratedValues.ListOf(KitOpenings(), 3)
        from annotations in GeneratedValues.ListOf(EntryGenerators.Annotations(), 3)
        from uses in GeneratedValues.ListOf(EntryGenerators.Uses(), 3)
        from breakages in GeneratedValues.ListOf(EntryGenerators.Breakages(), 3)
        from reconstructions in GeneratedValues.ListOf(EntryGenerators.Reconstructions(), 3)
        from joinings in GeneratedValues.ListOf(EntryGenerators.Joinings(), 3)
        from unlisted in GeneratedValues.ListOf(EntryGenerators.UnlistedItems(), 2)
        from seals in GeneratedValues.ListOf(EntryGenerators.Seals(), 2)
        from sealChecks in GeneratedValues.ListOf(EntryGenerators.SealChecks(), 2)
        from substitutions in GeneratedValues.ListOf(EntryGenerators.Substitutions(), 2)
        from signatures in GeneratedValues.ListOf(EntryGenerators.Signatures(), 3)
        select new InventorySheet(new InventoryEntries
        {
            Sightings = sightings,
            Counts = counts,
            PieceCounts = pieceCounts,
            Openings = openings,
            Annotations = annotations,
            Uses = uses,
            Breakages = breakages,
            Reconstructions = reconstructions,
            Joinings = joinings,
            UnlistedItems = unlisted,
            Seals = seals,
            SealChecks = sealChecks,
            Substitutions = substitutions,
            Signatures = signatures,
        }));

    /// <summary>Inventory policies over the whole range of every setting.</summary>
    /// <returns>The generator.</returns>
    public static Arbitrary<InventoryPolicy> InventoryPolicy() => Arb.From(
        from allowed in Gen.Elements(true, false)
        from persons in Gen.Choose(1, 4)
        from seconds in Gen.Choose(1, 366 * 86_400)
        from jobSeconds in Gen.Choose(1, 366 * 86_400)
        from reconstructors in Gen.Choose(1, 2)
        from flags in Gen.Choose(0, 31)
        from sealSeconds in Gen.Choose(1, 366 * 86_400)
        from roles in GeneratedValues.ListOf(GeneratedValues.Text(20), 3)
        from units in GeneratedValues.ListOf(GeneratedValues.Text(20), 3)
        select new InventoryPolicy
        {
            JobRecordAgeMax = TimeSpan.FromSeconds(jobSeconds),
            ReconstructionPersonsNeeded = reconstructors,
            SightingWitnessNeeded = (flags & 1) != 0,
            CountWitnessNeeded = (flags & 2) != 0,
            CounterMaySign = (flags & 4) != 0,
            FurtherIdentificationAccepted = (flags & 8) != 0,
            SealsAccepted = (flags & 16) != 0,
            SealAgeMax = TimeSpan.FromSeconds(sealSeconds),
            RolesThatMaySign = [.. roles.Select(text => new Role(text))],
            UnitsNotCounted = [.. units.Select(text => new Unit(text))],
            ManualInventoryAllowed = allowed,
            ManualInventoryPersonsNeeded = persons,
            EvidenceAgeMax = TimeSpan.FromSeconds(seconds),
        });

    private static Gen<Sighting> Sightings() =>
        from tool in GeneratedValues.FewIds("T")
        from mark in GeneratedValues.Text(12)
        from who in EntryGenerators.Persons()
        from at in GeneratedValues.Times()
        from place in GeneratedValues.Text(20)
        from kit in Gen.Frequency((2, Gen.Constant(default(KitId))), (1, GeneratedValues.FewIds("K").Select(id => new KitId(id))))
        from also in Gen.Frequency((3, Gen.Constant((string?)null)), (1, GeneratedValues.Text(20).Select(text => (string?)text)))
        from witness in EntryGenerators.Witnesses(who)
        select new Sighting { Tool = new ToolId(tool), MarkRead = mark, By = who, At = at, Where = new Place(place), InKit = kit, AlsoIdentifiedBy = also, Witness = witness };

    private static Gen<LineCount> LineCounts() =>
        from kit in GeneratedValues.FewIds("K")
        from line in Gen.Choose(1, 20)
        from thousandths in Gen.Frequency((4, Gen.Choose(0, 30).Select(whole => whole * 1000)), (1, Gen.Choose(0, 1_000_000_000)))
        from unit in Gen.Elements("each", "piece", "spool", "m")
        from who in EntryGenerators.Persons()
        from at in GeneratedValues.Times()
        from witness in EntryGenerators.Witnesses(who)
        from parts in Gen.Frequency((3, Gen.Constant(0)), (1, Gen.Choose(0, 999)))
        select new LineCount
        {
            Kit = new KitId(kit),
            LineNumber = line,
            Quantity = new Quantity(thousandths / 1000m, new Unit(unit)),
            By = who,
            At = at,
            Witness = witness,
            Parts = parts,
        };

    private static Gen<PieceCount> PieceCounts() =>
        from tool in GeneratedValues.FewIds("T")
        from pieces in Gen.Frequency((1, Gen.Constant((int?)null)), (4, Gen.Choose(0, 999).Select(count => (int?)count)))
        from who in EntryGenerators.Persons()
        from at in GeneratedValues.Times()
        from witness in EntryGenerators.Witnesses(who)
        select new PieceCount { Tool = new ToolId(tool), Pieces = pieces, By = who, At = at, Witness = witness };

    private static Gen<KitOpening> KitOpenings() =>
        from kit in GeneratedValues.FewIds("K")
        from who in EntryGenerators.Persons()
        from at in GeneratedValues.Times()
        from place in Gen.Frequency((1, Gen.Constant(default(Place))), (1, GeneratedValues.Text(20).Select(text => new Place(text))))
        select new KitOpening { Kit = new KitId(kit), By = who, At = at, Where = place };
}
