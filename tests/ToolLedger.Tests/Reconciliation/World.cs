using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Calibration;
using ToolLedger.Custody;
using ToolLedger.Identifiers;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>
/// The conventions of the scenario tables: kit K1 revision 3 (twelve tagged tools, a hex-key set of ten with a tag on its holder, one spool of wire,
/// six rags), station R1 with antennas 1 and 2 and control tag C1, persons P, Q and S, policy P0. All of it is invented.
/// </summary>
internal sealed partial class World
{
    public static readonly DateTimeOffset Start = new(2026, 3, 2, 15, 55, 0, TimeSpan.FromHours(1));
    public static readonly DateTimeOffset End = Start.AddSeconds(30);
    public static readonly KitId K1 = new("K1");
    public static readonly KitId K2 = new("K2");
    public static readonly KitId K9 = new("K9");
    public static readonly PersonId P = new("P");
    public static readonly PersonId Q = new("Q");
    public static readonly AntennaPort A1 = new(1);
    public static readonly AntennaPort A2 = new(2);
    public static readonly TagId C1 = TagOf("C1");
    public const int Baseline = -55;

    public List<LineCount> Counts { get; } = [];

    public List<Sighting> Sightings { get; } = [];

    public List<PieceCount> Pieces { get; } = [];

    public List<Signature> Signatures { get; } = [];

    public List<TagRead> Reads { get; } = [];

    public List<DateTimeOffset> PassStarts { get; } = [];

    public List<CalibrationRecord> Calibrations { get; } = [];

    public List<CalibrationEvent> CalibrationEvents { get; } = [];

    /// <summary>Manifests beside those of the conventions.</summary>
    public List<KitManifest> LaterRevisions { get; } = [];

    public List<CustodyEntry> Custody { get; } = [];

    public List<BindingQuarantine> Quarantines { get; } = [];

    /// <summary>Kits that stood within reach, in seconds after the start.</summary>
    public List<NearbyKit> Nearby { get; } = [];

    /// <summary>What people changed around the station.</summary>
    public List<SurroundingsChange> Changes { get; } = [];

    public ReadTimeSource TimeSource { get; set; }

    public List<ProximityNote> Notes { get; } = [];

    public Dictionary<TagId, TagHistory> History { get; } = [];

    public List<TagBinding> Bindings { get; } = [.. AllTools().Select(static tool => Binding(TagOf(tool), new ToolId(tool)))];

    public int T10Pieces { get; set; } = 1;

    public bool IsT9Marked { get; set; } = true;

    public bool ControlOnA1 { get; set; } = true;

    public bool ControlOnA2 { get; set; } = true;

    public TimeSpan? ClockBefore { get; set; } = TimeSpan.Zero;

    public TimeSpan? ClockAfter { get; set; } = TimeSpan.Zero;

    public ReconciliationPolicy Policy { get; set; } = new();

    public IReadOnlyList<IReconciliationRule> Rules { get; set; } = [];

    public DateTimeOffset AsOf { get; set; } = End.AddMinutes(2);

    public static TagId TagOf(string name)
    {
        byte[] bits = new byte[12];
        bits[0] = 0x34;
        for (int i = 0; i < name.Length; i++)
        {
            bits[i + 4] = (byte)name[i];
        }

        return TagId.FromEpc(Epc.FromBytes(bits, 96));
    }

    public static TagBinding Binding(TagId tag, ToolId tool, Tid tid = default)
        => new() { Tag = tag, Tid = tid, Tool = tool, From = Start.AddYears(-1), BoundBy = Q };

    public static IEnumerable<string> AllTools()
        => Enumerable.Range(1, 12).Select(static i => Text("T", i)).Append("H13")
            .Concat(Enumerable.Range(1, 8).Select(static i => Text("U", i)))
            .Concat(Enumerable.Range(1, 6).Select(static i => Text("V", i)));

    public KitManifest K1Revision3()
    {
        IEnumerable<ManifestLine> tools = Enumerable.Range(1, 12).Select(i => (ManifestLine)new ToolLine
        {
            Number = i,
            Location = i <= 6 ? "left pocket" : "right pocket",
            Tool = new Tool
            {
                Id = new ToolId(Text("T", i)),
                Description = Text("tool ", i),
                Mark = i == 9 && !IsT9Marked ? null : i is 8 or 9 && SharedMark is { } shared ? shared : Text("K1-", i),
                PieceCount = i == 10 ? T10Pieces : 1,
                NeedsCalibration = i == 4,
            },
        });
        return new KitManifest(K1, 3, "invented scenario kit", Start.AddDays(-30), Signed(), tools.Concat(
        [
            new SetLine
            {
                Number = 13,
                Container = new Tool { Id = new ToolId("H13"), Description = "hex-key holder", Mark = "K1-13" },
                Contents = "nine hex keys",
                TotalCount = 10,
            },
            new ConsumableLine { Number = 14, Description = "safety wire", Quantity = new Quantity(1, new Unit("spool")) },
            new CountedLine { Number = 15, Description = "rags", Quantity = new Quantity(6, Unit.Each) },
            .. MoreLines,
        ]));
    }

    public KitRegister Kits() => new([K1Revision3(), .. LaterRevisions, PlainKit(K2, "U", 8), PlainKit(K9, "V", 6)]);

    public World ReadWell(params IEnumerable<string> tools)
    {
        foreach (string tool in tools)
        {
            Read(tool, A1, 6);
            Read(tool, A2, 7, 9, 11);
        }

        return this;
    }

    public World ReadAllBut(params string[] absent)
        => ReadWell(Enumerable.Range(1, 12).Select(static i => Text("T", i)).Append("H13").Except(absent, StringComparer.Ordinal));

    public World Read(string tool, AntennaPort antenna, params double[] seconds) => ReadAt(TagOf(tool), antenna, Baseline, seconds);

    public World ReadAt(TagId tag, AntennaPort antenna, double decibelMilliwatts, params double[] seconds)
    {
        foreach (double second in seconds)
        {
            Reads.Add(new TagRead(tag, antenna, Start.AddSeconds(second)) { Strength = Rssi.FromDbm(decibelMilliwatts) });
        }

        return this;
    }

    public World CountAll()
    {
        Count(13, 10, "each");
        Count(14, 1, "spool");
        return Count(15, 6, "each");
    }

    public World Count(int line, decimal amount, string unit, DateTimeOffset? at = null)
    {
        Counts.Add(new LineCount { Kit = K1, LineNumber = line, Quantity = new Quantity(amount, new Unit(unit)), By = P, Witness = Q, At = at ?? End });
        return this;
    }

    /// <summary>Q sees a tool in the kit given; where none is given, a tool of K1 in K1 and any other in no kit that was named.</summary>
    public World Sight(string tool, string mark, KitId? inKit = null, DateTimeOffset? at = null)
    {
        KitId kit = inKit ?? (tool[0] is 'T' or 'H' ? K1 : default);
        Sightings.Add(new Sighting { Tool = new ToolId(tool), MarkRead = mark, By = Q, At = at ?? End.AddMinutes(1), Where = new Place("bench 2"), InKit = kit });
        return this;
    }

    /// <summary>Q doubts a tag's binding, and perhaps clears the doubt later.</summary>
    public World Quarantine(string tool, DateTimeOffset from, DateTimeOffset? clearedAt = null)
    {
        Quarantines.Add(new BindingQuarantine
        {
            Tag = TagOf(tool),
            Tool = new ToolId(tool),
            From = from,
            By = Q,
            Reason = "mark and tag differ",
            ClearedAt = clearedAt,
            ClearedBy = clearedAt is null ? default : P,
            ClearedReason = clearedAt is null ? null : "mark and tag checked on the bench",
        });
        return this;
    }

    public World StandsNearby(KitId kit, double from, double? until)
    {
        Nearby.Add(new NearbyKit(kit, Start.AddSeconds(from), until is { } end ? Start.AddSeconds(end) : null));
        return this;
    }

    /// <summary>Every tag has been read in 49 of 50 sessions, at the usual strength.</summary>
    public World WithHistory()
    {
        foreach (string tool in AllTools())
        {
            History[TagOf(tool)] = new TagHistory(50, 49, Rssi.FromDbm(Baseline));
        }

        return this;
    }

    public World CountPieces(string tool, int? pieces)
    {
        Pieces.Add(new PieceCount { Tool = new ToolId(tool), Pieces = pieces, By = P, At = End });
        return this;
    }

    public IEnumerable<TagRead> ControlReads()
    {
        for (double second = 0.5; second < 30; second += 1.5)
        {
            if (ControlOnA1)
            {
                yield return new TagRead(C1, A1, Start.AddSeconds(second));
            }

            if (ControlOnA2)
            {
                yield return new TagRead(C1, A2, Start.AddSeconds(second + 0.25));
            }
        }
    }

    /// <summary>The control reads, and the reads of the first time or some of them, so many minutes later.</summary>
    public static IEnumerable<TagRead> Later(World world, int minutes, Func<TagRead, bool>? isRead = null)
        => world.ControlReads().Concat(world.Reads.Where(isRead ?? (static _ => true)))
            .Select(read => new TagRead(read.Tag, read.Antenna, read.FirstSeen.AddMinutes(minutes)) { Strength = read.Strength });

    public static ReadStation Station() => new()
    {
        Id = new StationId("R1"),
        Antennas = [A1, A2],
        ControlTags = [new ControlTag(C1, A1), new ControlTag(C1, A2)],
    };

    public ReadSession Session(string id = "S1", KitId? kit = null, IEnumerable<TagRead>? reads = null) => Session(id, [kit ?? K1], reads);

    public ReadSession Session(string id, IReadOnlyList<KitId> kits, IEnumerable<TagRead>? reads = null, DateTimeOffset? from = null)
    {
        DateTimeOffset start = from ?? Start;
        var builder = new ReadSessionBuilder(
            new Presentation
            {
                Id = new SessionId(id),
                Station = Station(),
                Kits = kits,
                From = start,
                Until = start + (End - Start),
                PassStarts = PassStarts,
                ReaderClockOffset = ClockBefore,
                NearbyKits = Nearby,
                SurroundingsChanges = Changes,
                TimeSource = TimeSource,
            },
            Policy.Sessions);
        foreach (TagRead read in reads ?? ControlReads().Concat(Reads))
        {
            builder.Add(read);
        }

        return builder.Close(start + (End - Start), ClockAfter);
    }

    public ReconciliationInput Input(params IReadOnlyList<ReadSession> sessions) => new()
    {
        Kits = Kits(),
        Subject = K1,
        Sessions = sessions,
        Tags = new TagRegister(Bindings, Quarantines),
        Inventory = Sheet(),
        Custody = new CustodyRegister(Policy.Custody, Kits(), new CustodyLog(Custody)),
        Calibration = new CalibrationRegister(Calibrations, CalibrationEvents),
        History = History,
        ProximityNotes = Notes,
        AsOf = AsOf,
    };

    public ReconciliationResult Reconcile() => Reconcile(Session());

    public ReconciliationResult Reconcile(params IReadOnlyList<ReadSession> sessions)
        => new Reconciler(Policy, Rules).Reconcile(Input(sessions));

    private static KitManifest PlainKit(KitId kit, string prefix, int count)
        => new(kit, 1, "another invented kit", Start.AddDays(-30), Signed(), Enumerable.Range(1, count).Select(i => new ToolLine
        {
            Number = i,
            Tool = new Tool { Id = new ToolId(Text(prefix, i)), Description = Text("tool ", i), Mark = Text(kit.Value + "-", i) },
        }));

    private static Signature Signed() => new() { By = new PersonId("S"), At = Start.AddDays(-30), Role = new Role("custodian") };

    private static string Text(string prefix, int number) => prefix + number.ToString(CultureInfo.InvariantCulture);
}
