using System;
using System.Collections.Generic;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using ToolLedger.Calibration;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Testing.Cases;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Generators;

/// <summary>Whole shifts of three invented kits: lists, tags, up to three sessions, entries of people, calibration records, and an instant to answer for.</summary>
/// <remarks>Under the default policy every conclusion of a line and of a kit occurs among them. Ask it for as many as a rule needs to meet all that it cares about.</remarks>
public static class AnyReconciliationCase
{
    /// <summary>Generates cases.</summary>
    public static Gen<ReconciliationCase> Generator { get; } =
        from quality in Gen.Frequency((3, Gen.Constant(ShiftQuality.Good)), (3, Gen.Constant(ShiftQuality.Mixed)), (1, Gen.Constant(ShiftQuality.Poor)))
        from manifests in AnyShiftKits.Generator
        from bindings in AnyShiftBindings.Of(manifests)
        from sessionCount in Gen.Frequency((1, Gen.Constant(0)), (6, Gen.Constant(1)), (4, Gen.Constant(2)), (1, Gen.Constant(3)))
        from sessions in Gen.CollectToArray(Enumerable.Range(1, sessionCount), number => AnyShiftSession.Of(number, manifests, bindings, quality))
        from later in Gen.Frequency((8, Gen.Constant(120)), (2, Gen.Constant(0)), (2, Gen.Constant(1800)), (1, Gen.Constant(3900)), (1, Gen.Constant(-200)))
        let asOf = sessions.Select(static session => session.To).Append(ShiftPool.Start).Max().AddSeconds(later)
        from sightings in AnyShiftEntries.Sightings(manifests, asOf, quality)
        from counts in AnyShiftEntries.Counts(manifests, asOf, quality)
        from pieces in AnyShiftEntries.PieceCounts(manifests, asOf, quality)
        from signatures in AnyShiftEntries.Signatures(asOf)
        from calibrations in Calibrations(manifests)
        select new ReconciliationCase
        {
            Manifests = manifests,
            Subject = ShiftPool.Subject,
            Bindings = bindings,
            Sessions = sessions,
            Entries = new InventoryEntries { Sightings = sightings, Counts = counts, PieceCounts = pieces, Signatures = signatures },
            Calibrations = calibrations,
            AsOf = asOf,
        };

    /// <summary>The cases as FsCheck wants them.</summary>
    /// <returns>Values that shrink by taking facts away.</returns>
    public static Arbitrary<ReconciliationCase> Arbitrary() => Arb.From(Generator, CaseShrinker.Smaller);

    /// <summary>The same case for the same seed, on any machine.</summary>
    /// <param name="seed">Any number.</param>
    /// <returns>The case.</returns>
    public static ReconciliationCase FromSeed(ulong seed) => Generator.Sample(50, new Rnd(seed), 1).First();

    private static Gen<CalibrationRecord[]> Calibrations(IReadOnlyList<KitManifest> manifests)
    {
        ToolId[] tools = [.. manifests[0].Lines.Select(static line => line.Tool?.Id).OfType<ToolId>()];
        return Gen.CollectToArray(tools, tool =>
            from isRecorded in Gen.Elements(true, false)
            from days in Gen.Choose(-40, 200)
            select isRecorded ? [Record(tool, ShiftPool.Start, days)] : Array.Empty<CalibrationRecord>()).Select(static all => all.SelectMany(static one => one).ToArray());
    }

    internal static CalibrationRecord Record(ToolId tool, DateTimeOffset shift, int daysLeft) => new()
    {
        Tool = tool,
        CalibratedOn = DateOnly.FromDateTime(shift.UtcDateTime).AddDays(-100),
        DueOn = DateOnly.FromDateTime(shift.UtcDateTime).AddDays(daysLeft),
        RecordedAt = shift.AddDays(-99),
        RecordedBy = new PersonId("S"),
    };
}
