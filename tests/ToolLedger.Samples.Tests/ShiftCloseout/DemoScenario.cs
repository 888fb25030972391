using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;
using ToolLedger.Calibration;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Policies;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Testing.Simulation;
using ToolLedger.Tools;

namespace ToolLedger.Samples.Tests.ShiftCloseout;

/// <summary>
/// Makes the files of the sample's demo from a seed. The truth behind them: of the nacelle bag the 36 mm spanner lies on the yaw ring, the
/// inspection mirror sits behind sheet metal, the headlamp's tag is dead, nobody counted the hex keys and one cloth is gone; the hub bag is
/// whole; the torque multiplier of a third bag stands beside the station, and two foreign tags pass.
/// </summary>
internal static class DemoScenario
{
    public const ulong Seed = 20261014;

    private static readonly DateTimeOffset Shift = new(2026, 10, 14, 15, 40, 0, DemoKits.SiteOffset);
    private static readonly PersonId Technician = new("P-017");
    private static readonly PersonId Second = new("P-021");
    private static readonly Place Station = new("service container, station WT-R1");

    // Before the session, which uses it: static members are initialised in the order they are written.
    private static TagRegister Bindings { get; } = new(DemoKits.All
        .SelectMany(kit => kit.Lines)
        .Where(line => line.Tool is not null)
        .Select((line, index) => new TagBinding { Tag = Tag(101 + index), Tool = line.Tool!.Id, From = DemoKits.Issued, BoundBy = new PersonId("P-002") }));

    public static SimulatedSession Session { get; } = new SessionSimulator(Seed, new SimulationSettings
    {
        ReportsPerPassMean = 24, // a bag that stands on the station for half a minute, instead of a walk past it
        ObscuredFactor = 0.03,
        OneAntennaShare = 0,
    }).Run(new SessionScenario
    {
        Id = new SessionId("WT-2026-10-14-2"),
        Station = new ReadStation
        {
            Id = new StationId("WT-R1"),
            Antennas = [new AntennaPort(1), new AntennaPort(2)],
            ControlTags = [new ControlTag(Tag(900))],
        },
        From = Shift,
        PassLength = TimeSpan.FromSeconds(30),
        PassCount = 2,
        Kits = [DemoKits.NacelleBag, DemoKits.HubBag],
        Neighbours = [DemoKits.YawBag],
        Tags = Bindings,
        AbsentTools = [DemoKits.Id("07-05"), DemoKits.Id("07-11"), DemoKits.Id("11-02")],
        ObscuredTools = [DemoKits.Id("07-10")],
        StrayCount = 2,
        ReaderClockOffset = TimeSpan.FromSeconds(0.4),
    });

    /// <summary>Every file of the demo folder by name.</summary>
    public static IReadOnlyDictionary<string, byte[]> Files() => new SortedDictionary<string, byte[]>(StringComparer.Ordinal)
    {
        ["manifest-nacelle-bag.json"] = DemoKits.NacelleBag.ToJson(),
        ["manifest-hub-bag.json"] = DemoKits.HubBag.ToJson(),
        ["manifest-yaw-bag.json"] = DemoKits.YawBag.ToJson(),
        ["bindings.json"] = Bindings.ToJson(),
        ["presentation.json"] = Session.Presentation.ToJson(),
        ["reads.jsonl"] = JsonLines(Session.Reads),
        ["counts.json"] = Counts.ToJson(),
        ["calibration.json"] = Calibration.ToJson(),
        ["policy.json"] = Policy.ToJson(),
    };

    private static InventorySheet Counts { get; } = new(new InventoryEntries
    {
        Sightings =
        [
            new Sighting { Tool = DemoKits.Id("07-11"), MarkRead = "07-11", By = Technician, At = Shift.AddMinutes(7), Where = Station },
        ],
        Counts =
        [
            Count(DemoKits.NacelleBag, 14, 2, new Unit("cartridge")),
            Count(DemoKits.NacelleBag, 15, 5, Unit.Each),
            Count(DemoKits.HubBag, 7, 12, Unit.Each),
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
    });

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
