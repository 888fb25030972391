using System;
using System.Collections.ObjectModel;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using ToolLedger.Calibration;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Testing.Cases;
using ToolLedger.Testing.Simulation;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Generators;

/// <summary>
/// Whole shifts of invented kits: lists with alternates and a box inside the kit, tags, doubts about them and their histories, up to three sessions with kits nearby, entries of people of every kind,
/// calibration records, custody with receipts, and an instant to answer for.
/// </summary>
/// <remarks>Under the default policy every conclusion of a line and of a kit occurs among them. Ask it for as many as a rule needs to meet all that it cares about.</remarks>
public static class AnyReconciliationCase
{
    /// <summary>Generates cases.</summary>
    public static Gen<ReconciliationCase> Generator { get; } = ShiftPool.FromSeeds(Draw);

    /// <summary>The cases as FsCheck wants them.</summary>
    /// <returns>Values that shrink by taking facts away.</returns>
    public static Arbitrary<ReconciliationCase> Arbitrary() => Arb.From(Generator, CaseShrinker.Smaller);

    /// <summary>The same case for the same seed, on any machine.</summary>
    /// <param name="seed">Any number.</param>
    /// <returns>The case.</returns>
    public static ReconciliationCase FromSeed(ulong seed) => Draw(new SplitMix64(seed));

    private static ReconciliationCase Draw(SplitMix64 chance)
    {
        var quality = (ShiftQuality)chance.Weighted(3, 3, 1);
        KitManifest[] manifests = AnyShiftKits.Draw(chance);
        TagBinding[] bindings = AnyShiftBindings.Draw(chance, manifests);
        var sessions = new SessionCase[chance.Weighted(1, 6, 4, 1)];
        DateTimeOffset asOf = ShiftPool.Start;
        for (int i = 0; i < sessions.Length; i++)
        {
            sessions[i] = AnyShiftSession.Draw(chance, i + 1, manifests, bindings, quality);
            asOf = sessions[i].To > asOf ? sessions[i].To : asOf;
        }

        asOf = asOf.AddSeconds(chance.Weighted(8, 2, 2, 1, 1) switch { 0 => 120, 1 => 0, 2 => 1800, 3 => 3900, _ => -200 });
        InventoryEntries entries = AnyShiftEntries.Draw(chance, manifests, asOf, quality);
        bool isRich = chance.OneIn(2);
        return new ReconciliationCase
        {
            Manifests = manifests,
            Subject = ShiftPool.Subject,
            Bindings = bindings,
            Sessions = sessions,
            Entries = isRich ? AnyShiftRecords.Draw(chance, manifests, asOf, entries) : entries,
            Quarantines = isRich ? AnyShiftRecords.Quarantines(chance, bindings, asOf) : [],
            History = isRich ? bindings.Select(static binding => binding.Tag).Distinct().Where(_ => chance.OneIn(3)).ToDictionary(static tag => tag, _ => Past(chance)) : ReadOnlyDictionary<TagId, TagHistory>.Empty,
            Calibrations = [.. manifests[0].Lines
                .Select(static line => line.Tool?.Id).OfType<ToolId>()
                .Where(_ => chance.OneIn(2))
                .Select(tool => Record(tool, ShiftPool.Start, chance.Among(-40, 200)))],
            Custody = AnyShiftCustody.Draw(chance, manifests, asOf),
            AsOf = asOf,
        };
    }

    private static TagHistory Past(SplitMix64 chance)
    {
        int presented = chance.Among(1, 60);
        return new TagHistory(presented, chance.Below(presented + 1), Rssi.FromDbm(chance.Among(-75, -45)));
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
