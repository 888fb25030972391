using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Testing.Simulation;
using ToolLedger.Tools;

namespace ToolLedger.Tests.Reconciliation.Closeouts;

/// <summary>One simulated closeout of a kit of twenty tools, a set, rags and wire, under the default policy: two passes of a minute, reports of which a fifth come twice.</summary>
internal sealed class Closeout
{
    private const int ToolCount = 20;
    private static readonly DateTimeOffset Start = new(2026, 3, 2, 15, 0, 0, TimeSpan.Zero);
    private static readonly SimulatedSite Site = SimulatedSite.Create(kitCount: 3, toolCount: ToolCount + 1, Start.AddDays(-1));
    private static readonly SimulationSettings Settings = new() { RepeatShare = 0.2 };
    private static readonly ReconciliationPolicy Policy = new();
    private static readonly KitManifest Kit = MakeKit();
    private static readonly KitRegister Kits = new([Kit, Site.Kits[1], Site.Kits[2]]);

    private readonly int seed;

    public Closeout(int seed)
    {
        this.seed = seed;
        Truth = new CloseoutTruth(seed, Kit.Lines.Select(line => line.Tool?.Id).OfType<ToolId>());
    }

    public CloseoutTruth Truth { get; }

    /// <summary>Nobody near: no neighbour, no pocket, no stray, no bag passing.</summary>
    public ReconciliationResult Quiet() => Reconcile(Session("S1", Start, isBusy: false));

    /// <summary>The neighbour's bag stands open beside, its owner with it; strays and bags pass.</summary>
    public ReconciliationResult Busy() => Reconcile(Session("S1", Start, isBusy: true));

    /// <summary>As busy, and then a second session of the kit with everything else moved away.</summary>
    public ReconciliationResult BusyThenQuiet() => Reconcile(Session("S1", Start, isBusy: true), Session("S2", Start.AddMinutes(5), isBusy: false));

    private static KitManifest MakeKit()
    {
        KitManifest plain = Site.Kits[0];
        var lines = new List<ManifestLine>(plain.Lines.Take(ToolCount))
        {
            new SetLine { Number = 21, Container = plain.Lines[ToolCount].Tool!, Contents = "nine hex keys", TotalCount = 10 },
            new CountedLine { Number = 22, Description = "rags", Quantity = new Quantity(6, Unit.Each) },
            new ConsumableLine { Number = 23, Description = "safety wire", Quantity = new Quantity(1, new Unit("spool")) },
        };
        return new KitManifest(plain.Id, 1, "invented kit", plain.EffectiveFrom, plain.SignedBy, lines);
    }

    private ReadSession Session(string id, DateTimeOffset from, bool isBusy)
    {
        var scenario = new SessionScenario
        {
            Id = new SessionId(id),
            Station = Site.Station,
            From = from,
            PassCount = 2,
            Kits = [Holding(Kit, Truth.In(TruePlace.InTheBag, TruePlace.InTheBagShielded, TruePlace.InTheWetBag))],
            Neighbours = isBusy ? [Holding(Site.Kits[1], [.. Site.Kits[1].Lines.Select(line => line.Tool!.Id), .. Truth.In(TruePlace.InTheNeighboursBag, TruePlace.InAPocketBeside)])] : [],
            Tags = Site.Tags,
            ObscuredTools = Truth.In(TruePlace.InTheBagShielded, TruePlace.InTheWetBag, TruePlace.InAPocketBeside),
            StrayCount = isBusy ? null : 0,
            DropOuts = Silences(from),
        };

        // Busy and quiet share their seed, so that the kit's own reads are the same in both; every session draws anew.
        SimulatedSession session = new SessionSimulator((ulong)seed + ((ulong)(from - Start).Ticks << 20), Settings).Run(scenario);
        var builder = new ReadSessionBuilder(session.Presentation, Policy.Sessions);
        foreach (TagRead read in isBusy && Truth.BagPasses ? session.Reads.Concat(Passing(from)) : session.Reads)
        {
            builder.Add(read);
        }

        return builder.Close(scenario.To, session.ReaderClockOffsetAfter);
    }

    private List<ReaderDropOut> Silences(DateTimeOffset from)
    {
        var silences = new List<ReaderDropOut>();
        if (Truth.BrokenAntenna)
        {
            silences.Add(new ReaderDropOut(from.AddSeconds(60), from.AddSeconds(120), Site.Station.Antennas[1]));
        }

        if (Truth.ReaderDropsOut)
        {
            silences.Add(new ReaderDropOut(from.AddSeconds(50), from.AddSeconds(90)));
        }

        if (Truth.StationDies)
        {
            silences.Add(new ReaderDropOut(from.AddSeconds(100), from.AddSeconds(200)));
        }

        return silences;
    }

    /// <summary>Four seconds of another bag.</summary>
    private IReadOnlyList<TagRead> Passing(DateTimeOffset from) => new SessionSimulator((ulong)seed, Settings).Run(new SessionScenario
    {
        Id = new SessionId("passing"),
        Station = new ReadStation { Id = Site.Station.Id, Antennas = Site.Station.Antennas },
        From = from.AddSeconds(20),
        PassLength = TimeSpan.FromSeconds(4),
        Kits = [],
        Neighbours = [Site.Kits[2]],
        Tags = Site.Tags,
        StrayCount = 0,
    }).Reads;

    /// <summary>What truly is in a bag, written as a manifest for the simulator.</summary>
    private static KitManifest Holding(KitManifest bag, IReadOnlyList<ToolId> tools) => new(bag.Id, 1, "what is in it", bag.EffectiveFrom, bag.SignedBy,
        [
            .. tools.Select((tool, i) => new ToolLine { Number = i + 1, Tool = new Tool { Id = tool, Description = tool.Value } }),
            new CountedLine { Number = 9000, Description = "rags", Quantity = new Quantity(6, Unit.Each) },
        ]);

    private ReconciliationResult Reconcile(params IReadOnlyList<ReadSession> sessions)
    {
        DateTimeOffset end = sessions[^1].To;
        return new Reconciler(Policy).Reconcile(new ReconciliationInput
        {
            Kits = Kits,
            Subject = Kit.Id,
            Sessions = sessions,
            Tags = Site.Tags,
            Inventory = new InventorySheet(new InventoryEntries
            {
                Counts = [Count(21, Truth.CountInSet(Kit.Lines[ToolCount].Tool!.Id), Unit.Each, end), Count(22, 6, Unit.Each, end), Count(23, 1, new Unit("spool"), end)],
            }),
            AsOf = end.AddSeconds(30),
        });
    }

    private static LineCount Count(int line, int amount, Unit unit, DateTimeOffset at)
        => new() { Kit = Kit.Id, LineNumber = line, Quantity = new Quantity(amount, unit), By = new PersonId("P"), Witness = new PersonId("Q"), At = at };
}
