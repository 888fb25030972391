using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;
using ToolLedger.Calibration;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Policies;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Testing.Simulation;
using ToolLedger.Tools;

namespace ToolLedger.Samples.Tests.ShiftCloseout;

/// <summary>
/// Makes the files of the sample's demo from a seed. The truth behind them: of the nacelle bag the 36 mm spanner lies on the yaw ring, the 30 mm spanner in the yaw
/// bag, which stands open beside antenna 2 during the first session and is moved away before the second; the inspection mirror sits behind sheet metal, the headlamp's tag
/// is dead, the cable cutter is at the grinder and signed out, one grease cartridge was used and recorded, nobody counted the hex keys and one cloth is gone. The hub bag is
/// whole with the crimping set in it, and is opened again after everybody has signed. Two foreign tags pass.
/// </summary>
internal static class DemoScenario
{
    public const ulong Seed = 20261014;

    private static readonly TimeSpan PassLength = TimeSpan.FromSeconds(30);
    private static readonly TimeSpan ClockOffset = TimeSpan.FromSeconds(0.4);
    private static readonly DateTimeOffset Shift = new(2026, 10, 14, 15, 40, 0, DemoKits.SiteOffset);
    private static readonly PersonId Technician = new("P-017");
    private static readonly PersonId Second = new("P-021");
    private static readonly Place Station = new("service container, station WT-R1");

    // Before the session, which uses it: static members are initialised in the order they are written.
    private static TagRegister Bindings { get; } = new(DemoKits.All
        .SelectMany(kit => kit.Lines)
        .Where(line => line.Tool is not null)
        .Select((line, index) => new TagBinding { Tag = Tag(101 + index), Tool = line.Tool!.Id, From = DemoKits.Issued, BoundBy = new PersonId("P-002") }));

    private static TagId[] BesideAntenna2 { get; } = [.. new[] { "07-04", "11-01", "11-02" }.SelectMany(mark => Bindings.LiveTagsOf(DemoKits.Id(mark), Shift)).Select(binding => binding.Tag)];

    /// <summary>The first session: the yaw bag stands open beside antenna 2.</summary>
    public static IReadOnlyList<TagRead> Reads { get; } = Simulate("WT-2026-10-14-2", Shift, isYawBagNear: true);

    /// <summary>The second one: the yaw bag was moved away.</summary>
    private static IReadOnlyList<TagRead> ReadsWithoutNeighbour { get; } = Simulate("WT-2026-10-14-3", Shift.AddMinutes(3), isYawBagNear: false);

    /// <summary>Every file of the demo folder by name.</summary>
    public static IReadOnlyDictionary<string, byte[]> Files() => new SortedDictionary<string, byte[]>(StringComparer.Ordinal)
    {
        ["manifest-nacelle-bag.json"] = DemoKits.NacelleBag.ToJson(),
        ["manifest-hub-bag.json"] = DemoKits.HubBag.ToJson(),
        ["manifest-yaw-bag.json"] = DemoKits.YawBag.ToJson(),
        ["bindings.json"] = Bindings.ToJson(),
        ["manifest-crimping-set.json"] = DemoKits.CrimpingSet.ToJson(),
        ["presentation.json"] = Sheet("WT-2026-10-14-2", Shift, new NearbyKit(DemoKits.YawBag.Id, Shift.AddMinutes(-20), Shift.AddMinutes(2))).ToJson(),
        ["presentation-2.json"] = Sheet("WT-2026-10-14-3", Shift.AddMinutes(3)).ToJson(),
        ["reads.jsonl"] = JsonLines(Reads),
        ["reads-2.jsonl"] = JsonLines(ReadsWithoutNeighbour),
        ["tag-history.json"] = History.ToJson(),
        ["counts.json"] = Counts.ToJson(),
        ["calibration.json"] = Calibration.ToJson(),
        ["policy.json"] = Policy.ToJson(),
        ["policy-stated-risk.json"] = StatedRisk.ToJson(),
    };

    private static InventorySheet Counts { get; } = new(new InventoryEntries
    {
        Sightings =
        [
            new Sighting { Tool = DemoKits.Id("07-11"), MarkRead = "07-11", By = Technician, At = Shift.AddMinutes(7), Where = Station, InKit = new KitId("WT-BAG-07") },
        ],
        Counts =
        [
            Count(DemoKits.NacelleBag, 14, 1, new Unit("cartridge")),
            Count(DemoKits.NacelleBag, 15, 5, Unit.Each),
            Count(DemoKits.HubBag, 7, 12, Unit.Each),
            Count(DemoKits.CrimpingSet, 3, 6, Unit.Each),
        ],
        PieceCounts =
        [
            new PieceCount { Tool = DemoKits.Id("07-06"), Pieces = 3, By = Technician, At = Shift.AddMinutes(9), Witness = Second },
            new PieceCount { Tool = DemoKits.Id("08-06"), Pieces = 2, By = Technician, At = Shift.AddMinutes(12), Witness = Second },
        ],
        Signatures =
        [
            new Signature { By = Technician, At = Shift.AddMinutes(15), Role = new Role("user") },
            new Signature { By = Second, At = Shift.AddMinutes(16), Role = new Role("second person") },
        ],
        Annotations =
        [
            new Annotation
            {
                Kit = DemoKits.NacelleBag.Id,
                LineNumber = 12,
                Kind = AnnotationKind.Removed,
                Reason = "edge chipped, at the grinder",
                SignedBy = new Signature { By = new PersonId("P-002"), At = Shift.AddHours(-8), Role = new Role("custodian") },
            },
        ],
        Uses =
        [
            new ConsumableUse { Kit = DemoKits.NacelleBag.Id, LineNumber = 14, Job = "WT-04 yaw bearing", Unit = new Unit("cartridge"), Used = 1, By = Technician, At = Shift.AddHours(-2) },
        ],
        Openings =
        [
            new KitOpening { Kit = DemoKits.HubBag.Id, By = Technician, At = Shift.AddMinutes(18), Where = new Place("foot of turbine WT-04") },
        ],
    });

    // The mirror has been hard to hear for as long as it is tagged; the spanner that is silent today never was.
    private static TagHistoryRegister History { get; } = new(Shift.AddDays(-1), Bindings.Bindings.Select(binding =>
        new TagHistoryEntry(binding.Tag, binding.Tool, 40, binding.Tool == DemoKits.Id("07-10") ? 13 : 40, 10, 10 * -5800)));

    private static CalibrationRegister Calibration { get; } = new(
    [
        Calibrated("07-01", new DateOnly(2025, 9, 30), 12),  // overdue since the end of September
        Calibrated("07-02", new DateOnly(2026, 4, 20), 12),
        Calibrated("07-07", new DateOnly(2025, 10, 27), 12), // due soon
        Calibrated("08-03", new DateOnly(2026, 2, 10), 12),  // the insulation tester, 07-08, has no record at all
    ]);

    private static SitePolicy Policy { get; } = new()
    {
        Name = "Wind farm service, invented example",
        Calendar = SiteCalendar.Fixed("wind farm", DemoKits.SiteOffset),
    };

    // No measurement: a tag that is there is heard in about a quarter of the looks, and the model is learned from nothing.
    private static SitePolicy StatedRisk { get; } = new()
    {
        Name = "Wind farm service, invented example with a stated risk",
        Calendar = Policy.Calendar,
        Presence = new StatedRiskPolicy { Model = new DetectionModel(obscuredShare: 0.05m, present: new BetaRate(3, 10), strayShare: 0.02m, stray: new BetaRate(0.2m, 60)) },
    };

    private static ReadStation ReaderStation => new()
    {
        Id = new StationId("WT-R1"),
        Antennas = [new AntennaPort(1), new AntennaPort(2)],
        ControlTags = [new ControlTag(Tag(900))],
    };

    private static Presentation Sheet(string session, DateTimeOffset from, params IReadOnlyList<NearbyKit> nearby) => new()
    {
        Id = new SessionId(session),
        Station = ReaderStation,
        Kits = [DemoKits.NacelleBag.Id, DemoKits.HubBag.Id],
        From = from,
        Until = from + PassLength,
        ReaderClockOffset = ClockOffset,
        ReaderClockOffsetAfter = ClockOffset,
        NearbyKits = nearby,
    };

    /// <summary>One pass of both bags. What stands beside antenna 2 is heard by that antenna alone, which the simulator does not know of.</summary>
    private static IReadOnlyList<TagRead> Simulate(string session, DateTimeOffset from, bool isYawBagNear)
    {
        SimulatedSession simulated = new SessionSimulator(isYawBagNear ? Seed : Seed + 2, new SimulationSettings
        {
            ReportsPerPassMean = 24, // a bag that stands on the station for half a minute, instead of a walk past it
            ObscuredFactor = 0.05,
            OneAntennaShare = 0,
        }).Run(new SessionScenario
        {
            Id = new SessionId(session),
            Station = ReaderStation,
            From = from,
            PassLength = PassLength,
            Kits = [DemoKits.InTruth(DemoKits.NacelleBag, [4, 5, 11, 12]), DemoKits.HubBag, DemoKits.CrimpingSet],
            Neighbours = isYawBagNear ? [DemoKits.InTruth(DemoKits.YawBag, [2], DemoKits.NacelleBag.FindLine(4)!)] : [],
            Tags = Bindings,
            ObscuredTools = [DemoKits.Id("07-10")],
            StrayCount = isYawBagNear ? 2 : 0,
            ReaderClockOffset = ClockOffset,
        });
        return [.. simulated.Reads.Where(read => read.Antenna == new AntennaPort(2) || !BesideAntenna2.Contains(read.Tag))];
    }

    private static LineCount Count(KitManifest kit, int line, decimal amount, Unit unit) =>
        new() { Kit = kit.Id, LineNumber = line, Quantity = new Quantity(amount, unit), By = Technician, At = Shift.AddMinutes(10), Witness = Second };

    private static CalibrationRecord Calibrated(string mark, DateOnly on, int months) => new()
    {
        Tool = DemoKits.Id(mark),
        CalibratedOn = on,
        IntervalMonths = months,
        RecordedAt = new DateTimeOffset(on.AddDays(1), new TimeOnly(9, 0), DemoKits.SiteOffset),
        RecordedBy = new PersonId("P-005"),
    };

    // GS1 EPC Tag Data Standard 2.3, GIAI-96, with the company prefix of the standard's own examples: 0614141, and a number of ours.
    private static TagId Tag(int asset) => TagId.Parse(((UInt128)0x34 << 88 | (UInt128)5 << 82 | (UInt128)614141 << 58 | (UInt128)asset).ToString("X24", CultureInfo.InvariantCulture));

    private static byte[] JsonLines(IEnumerable<TagRead> reads)
    {
        var text = new StringBuilder();
        foreach (TagRead read in reads)
        {
            text.Append(CultureInfo.InvariantCulture, $$"""{"epc":"{{read.Tag.Epc}}","antenna":{{read.Antenna}},"time":"{{read.FirstSeen.UtcDateTime:yyyy-MM-dd'T'HH:mm:ss.ffffff'Z'}}","rssi":{{read.Strength!.Value.ToDbm():0.0#}}}""");
            text.Append('\n');
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }
}
