using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Samples.Tests.ShiftCloseout;

/// <summary>The invented wind-turbine crew's bags. No such crew, wind farm or bag exists.</summary>
internal static class DemoKits
{
    public static readonly TimeSpan SiteOffset = TimeSpan.FromHours(2);

    public static readonly DateTimeOffset Issued = new(2026, 9, 1, 7, 30, 0, SiteOffset);

    private static readonly Unit Cartridge = new("cartridge");

    public static KitManifest NacelleBag { get; } = Manifest("WT-BAG-07", 3, "Nacelle service bag",
    [
        Tool(1, "07-01", "Torque wrench 60-340 N·m", needsCalibration: true),
        Tool(2, "07-02", "Torque screwdriver 1-6 N·m", needsCalibration: true),
        Tool(3, "07-03", "Combination spanner 24 mm"),
        Tool(4, "07-04", "Combination spanner 30 mm"),
        Tool(5, "07-05", "Combination spanner 36 mm"),
        Tool(6, "07-06", "Ratchet, extension bar, adapter", pieces: 3),
        Tool(7, "07-07", "Multimeter", needsCalibration: true),
        Tool(8, "07-08", "Insulation tester", needsCalibration: true),
        Tool(9, "07-09", "Feeler gauge"),
        Tool(10, "07-10", "Inspection mirror, telescopic"),
        Tool(11, "07-11", "Headlamp"),
        Tool(12, "07-12", "Cable cutter"),
        new SetLine
        {
            Number = 13,
            Location = "lid",
            Container = MakeTool("07-13", "Holder for hex keys", 1, false),
            Contents = "Hex keys 1.5-10 mm, nine and the holder",
            TotalCount = 10,
        },
        new ConsumableLine { Number = 14, Location = "outer pocket", Description = "Grease cartridge", Quantity = new Quantity(2, Cartridge) },
        new CountedLine { Number = 15, Location = "outer pocket", Description = "Cleaning cloth", Quantity = new Quantity(6, Unit.Each) },
    ]);

    public static KitManifest HubBag { get; } = Manifest("WT-BAG-08", 1, "Hub bag",
    [
        Tool(1, "08-01", "Socket 46 mm, 3/4 inch drive"),
        Tool(2, "08-02", "Breaker bar, 3/4 inch drive"),
        Tool(3, "08-03", "Dial gauge", needsCalibration: true),
        Tool(4, "08-04", "Pitch lock pin"),
        Tool(5, "08-05", "Pin punch 8 mm"),
        Tool(6, "08-06", "Hand pump with hose", pieces: 2),
        new CountedLine { Number = 7, Location = "outer pocket", Description = "Bolt cap", Quantity = new Quantity(12, Unit.Each) },
        new SubKitLine
        {
            Number = 8,
            Location = "lid",
            Kit = new KitId("WT-SET-21"),
            Revision = 1,
            Case = MakeTool("08-08", "Case of the crimping set", 1, false),
        },
    ]);

    /// <summary>The kit inside the hub bag.</summary>
    public static KitManifest CrimpingSet { get; } = Manifest("WT-SET-21", 1, "Crimping set",
    [
        Tool(1, "21-01", "Crimping tool"),
        Tool(2, "21-02", "Wire stripper"),
        new CountedLine { Number = 3, Location = "tray 1", Description = "Crimping insert", Quantity = new Quantity(6, Unit.Each) },
    ]);

    /// <summary>Stands in the same container as the station and is presented by nobody.</summary>
    public static KitManifest YawBag { get; } = Manifest("WT-BAG-11", 2, "Yaw drive bag",
    [
        Tool(1, "11-01", "Torque multiplier"),
        Tool(2, "11-02", "Reaction arm"),
    ]);

    public static IReadOnlyList<KitManifest> All { get; } = [NacelleBag, HubBag, CrimpingSet, YawBag];

    /// <summary>A bag as it truly is: without some of its lines, and with lines of another bag.</summary>
    public static KitManifest InTruth(KitManifest bag, IReadOnlyList<int> without, params IEnumerable<ManifestLine> with) =>
        new(bag.Id, bag.Revision, bag.Title, bag.EffectiveFrom, bag.SignedBy, [.. bag.Lines.Where(line => !without.Contains(line.Number)), .. with]);

    public static ToolId Id(string mark) => new("WT-" + mark);

    private static ToolLine Tool(int number, string mark, string description, int pieces = 1, bool needsCalibration = false) =>
        new() { Number = number, Location = number <= 6 ? "tray 1" : "tray 2", Tool = MakeTool(mark, description, pieces, needsCalibration) };

    private static Tool MakeTool(string mark, string description, int pieces, bool needsCalibration) => new()
    {
        Id = Id(mark),
        Description = description,
        Mark = mark,
        PieceCount = pieces,
        NeedsCalibration = needsCalibration,
    };

    private static KitManifest Manifest(string id, int revision, string title, IReadOnlyList<ManifestLine> lines) =>
        new(new KitId(id), revision, title, Issued, new Signature { By = new PersonId("P-002"), At = Issued.AddHours(-16), Role = new Role("custodian") }, lines);
}
