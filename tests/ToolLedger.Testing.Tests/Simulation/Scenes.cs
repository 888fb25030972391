using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Reads;
using ToolLedger.Testing.Simulation;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Tests.Simulation;

/// <summary>Scenarios the tests share.</summary>
internal static class Scenes
{
    public static readonly DateTimeOffset Start = new(2026, 3, 2, 15, 40, 0, TimeSpan.Zero);

    /// <summary>No chance in the delivery: reports come in time order, once.</summary>
    public static SimulationSettings PlainDelivery { get; } = new() { LateReportShare = 0, RepeatShare = 0, StraySessionShare = 0 };

    public static SimulatedSite Site(int kits, int tools, int antennas = 2) => SimulatedSite.Create(kits, tools, Start.AddDays(-1), antennas);

    public static ToolId ToolOf(SimulatedSite site, int kit, int line) => site.Kits[kit - 1].Lines[line - 1].Tool!.Id;

    public static SessionScenario Presenting(
        SimulatedSite site,
        int presented = 1,
        int passes = 1,
        IReadOnlyList<ToolId>? absent = null,
        IReadOnlyList<ToolId>? obscured = null,
        int? strays = null,
        IReadOnlyList<ReaderDropOut>? dropOuts = null,
        IReadOnlyList<AntennaCoverage>? coverage = null,
        TimeSpan clockOffset = default,
        TimeSpan clockDrift = default,
        bool isClockKnown = true) => new()
        {
            Id = new SessionId("S-1"),
            Station = site.Station,
            From = Start,
            PassCount = passes,
            Kits = [.. site.Kits.Take(presented)],
            Neighbours = [.. site.Kits.Skip(presented)],
            Tags = site.Tags,
            AbsentTools = absent ?? [],
            ObscuredTools = obscured ?? [],
            StrayCount = strays,
            DropOuts = dropOuts ?? [],
            Coverage = coverage ?? [],
            ReaderClockOffset = clockOffset,
            ReaderClockDrift = clockDrift,
            IsClockOffsetKnown = isClockKnown,
        };
}
