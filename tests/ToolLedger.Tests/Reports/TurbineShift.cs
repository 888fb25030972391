using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Calibration;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Policies;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Reports;
using ToolLedger.Tests.Reconciliation;
using ToolLedger.Tools;

namespace ToolLedger.Tests.Reports;

/// <summary>An invented shift of a crew that services wind turbines: a bag of fifteen lines, one of them weak, one silent, one torque wrench overdue, a tool of another bag
/// and two stray tags in the field.</summary>
internal sealed class TurbineShift
{
    public static readonly SiteCalendar Yard = SiteCalendar.Fixed("Nordhafen yard", TimeSpan.FromHours(1));

    public static readonly KitId Other = new("B-09");

    public string[] Names { get; init; } =
    [
        "Combination spanner 13 mm", "Combination spanner 17 mm", "Combination spanner 24 mm", "Torque wrench 20-100 N.m", "Ratchet 1/2 in, fine tooth", "Extension bar 250 mm",
        "Deep socket 24 mm", "Slotted screwdriver 8 mm", "Side cutter, insulated", "Bit ratchet with holder and tip", "Inspection mirror", "Feeler gauge set in case",
    ];

    public string Title { get; init; } = "Yaw drive service bag";

    public KitId Kit { get; init; } = new("B-07");

    /// <summary>Whether the other bag, B-09, was presented in the same session.</summary>
    public bool IsOtherPresented { get; init; }

    public HashSet<int> NotRead { get; init; } = [7];

    public HashSet<int> Weak { get; init; } = [11];

    public bool IsCounted { get; init; } = true;

    public bool IsStationAlive { get; init; } = true;

    /// <summary>Who signs as the second person, one after the other.</summary>
    public IReadOnlyList<string> Signers { get; init; } = ["P-204"];

    /// <summary>When the bag was opened once more, if it was.</summary>
    public DateTimeOffset? OpenedAt { get; init; }

    public SitePolicy Policy { get; init; } = new() { Calendar = Yard };

    public IReadOnlyList<TagRead> Strays { get; init; } =
    [
        .. Enumerable.Range(0, 4).Select(static number => new TagRead(World.TagOf("U5"), World.A1, World.Start.AddSeconds(5 + number))),
        new TagRead(World.TagOf("X1"), World.A2, World.Start.AddSeconds(9)),
        new TagRead(World.TagOf("X2"), World.A2, World.Start.AddSeconds(10)),
    ];

    public ShiftReport Report() => Report([Reconcile()]);

    public ShiftReport Report(params IReadOnlyList<ReconciliationResult> results) => new(new ShiftReportInput
    {
        Results = results,
        MadeAt = World.End.AddMinutes(3),
        Calendar = Yard,
        PolicyName = Policy.Name,
        PolicyDigest = Policy.Digest,
        Sources = [new SourceDigest("reads.jsonl", Digest.Of("reads"u8)), new SourceDigest("counts.json", Digest.Of("counts"u8))],
        Refused =
        [
            new RefusedRows
            {
                Source = "reads.jsonl",
                Count = 2,
                First = [new RefusedRow(118, new Reason(RecordRules.TimeWithoutOffset, ("found", "2026-03-02T15:55:09")))],
            },
        ],
    });

    public ReconciliationResult Reconcile() => Reconcile(Kit);

    public ReconciliationResult Reconcile(KitId subject) => new Reconciler(Policy.Reconciliation).Reconcile(new ReconciliationInput
    {
        Kits = new KitRegister([Manifest(), OtherKit()]),
        Subject = subject,
        Sessions = [Session()],
        Tags = new TagRegister(Enumerable.Range(1, 13).Select(number => World.Binding(World.TagOf(ToolName(number)), new ToolId(ToolName(number))))
            .Append(World.Binding(World.TagOf("U5"), new ToolId("U5")))),
        Inventory = IsCounted ? Sheet() : InventorySheet.Empty,
        Calibration = new CalibrationRegister([Calibrated("T4", new DateOnly(2025, 2, 20)), Calibrated("T12", new DateOnly(2025, 9, 1))]),
        History = Enumerable.Range(1, 13).ToDictionary(
            static number => World.TagOf(ToolName(number)),
            static number => new TagHistory(60, number == 11 ? 18 : 60, Rssi.FromDbm(-55))),
        AsOf = World.End.AddMinutes(2),
    });

    private static CalibrationRecord Calibrated(string tool, DateOnly day) => new()
    {
        Tool = new ToolId(tool),
        CalibratedOn = day,
        IntervalMonths = 12,
        RecordedAt = new DateTimeOffset(day, new TimeOnly(16, 0), TimeSpan.Zero),
    };

    private static string ToolName(int number) => FormattableString.Invariant($"T{number}");

    private static KitManifest OtherKit() => new(Other, 1, "Blade root bag", World.Start.AddDays(-9), Custodian(), [new ToolLine { Number = 1, Tool = new Tool { Id = new ToolId("U5"), Description = "Strap wrench" } }]);

    private static Signature Custodian() => new() { By = new PersonId("C-2"), At = World.Start.AddDays(-9), Role = new Role("custodian") };

    private KitManifest Manifest() => new(Kit, 3, Title, World.Start.AddDays(-9), Custodian(),
    [
        .. Enumerable.Range(1, 12).Select(number => (ManifestLine)new ToolLine
        {
            Number = number,
            Tool = new Tool
            {
                Id = new ToolId(ToolName(number)),
                Description = Names[number - 1],
                Mark = FormattableString.Invariant($"B07-{number:00}"),
                PieceCount = number == 10 ? 3 : 1,
                NeedsCalibration = number is 4 or 12,
            },
        }),
        new SetLine
        {
            Number = 13,
            Container = new Tool { Id = new ToolId("T13"), Description = "Hex key holder", Mark = "B07-13" },
            Contents = "nine hex keys, 1.5 to 10 mm",
            TotalCount = 10,
        },
        new ConsumableLine { Number = 14, Description = "Locking wire 0.8 mm", Quantity = new Quantity(1, new Unit("spool")) },
        new CountedLine { Number = 15, Description = "Wiping cloths", Quantity = new Quantity(6, Unit.Each) },
    ]);

    private InventorySheet Sheet() => new(new InventoryEntries
    {
        Counts = [Count(13, 10, Unit.Each), Count(14, 1, new Unit("spool")), Count(15, 6, Unit.Each)],
        PieceCounts = [new PieceCount { Tool = new ToolId("T10"), Pieces = 3, By = new PersonId("P-118"), At = World.End.AddSeconds(40), Witness = new PersonId("P-204") }],
        Signatures = [.. Signers.Select(static person => new Signature { By = new PersonId(person), At = World.End.AddSeconds(100), Role = new Role("second person") })],
        Openings = OpenedAt is { } at ? [new KitOpening { Kit = Kit, By = new PersonId("P-118"), At = at, Where = new Place("nacelle") }] : [],
    });

    private LineCount Count(int line, decimal amount, Unit unit) => new()
    {
        Kit = Kit,
        LineNumber = line,
        Quantity = new Quantity(amount, unit),
        By = new PersonId("P-118"),
        At = World.End.AddSeconds(30 + line),
        Witness = new PersonId("P-204"),
    };

    private ReadSession Session()
    {
        var builder = new ReadSessionBuilder(
            new Presentation
            {
                Id = new SessionId("S-0302-3"),
                Station = World.Station(),
                Kits = IsOtherPresented ? [Kit, Other] : [Kit],
                From = World.Start,
                Until = World.End,
                ReaderClockOffset = TimeSpan.FromSeconds(1.5),
            },
            Policy.Sessions);
        foreach (TagRead read in Reads())
        {
            // The reader's clock is 1.5 s ahead: what happened at a time is stamped later.
            builder.Add(new TagRead(read.Tag, read.Antenna, read.FirstSeen.AddSeconds(1.5)) { Strength = read.Strength });
        }

        return builder.Close(World.End, TimeSpan.FromSeconds(1.5));
    }

    private IEnumerable<TagRead> Reads()
    {
        IEnumerable<TagRead> control = IsStationAlive ? new World().ControlReads() : [];
        IEnumerable<TagRead> tools = Enumerable.Range(1, 13)
            .Where(number => IsStationAlive && !NotRead.Contains(number))
            .SelectMany(number => Enumerable.Range(0, Weak.Contains(number) ? 1 : 5).Select(look => new TagRead(
                World.TagOf(ToolName(number)),
                look % 2 == 0 ? World.A1 : World.A2,
                World.Start.AddSeconds(6 + (2 * look) + (number * 0.1)))
            {
                Strength = Rssi.FromDbm(Weak.Contains(number) ? -71 : -54),
            }));
        return control.Concat(tools).Concat(IsStationAlive ? Strays : []);
    }
}
