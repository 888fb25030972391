using System;
using System.Collections.Generic;
using System.Runtime.CompilerServices;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Simulation;

/// <summary>What truly happens in one presentation: which kits stand on the station, what is not in them, what else is near. Immutable and thread-safe.</summary>
public sealed class SessionScenario
{
    /// <summary>The session's id.</summary>
    public required SessionId Id { get; init; }

    /// <summary>The station, its antennas and its control tags.</summary>
    public required ReadStation Station { get; init; }

    /// <summary>True start of the first pass.</summary>
    public required DateTimeOffset From { get; init; }

    /// <summary>Length of each pass; one follows the other.</summary>
    /// <value>1 s to 1 day. The default is 60 s.</value>
    public TimeSpan PassLength
    {
        get;
        init => field = value >= TimeSpan.FromSeconds(1) && value <= TimeSpan.FromDays(1) ? value : throw Outside(value, "1 s to 1 day");
    } = TimeSpan.FromSeconds(60);

    /// <summary>Number of passes.</summary>
    /// <value>1 to 100. The default is 1.</value>
    public int PassCount { get; init => field = value is >= 1 and <= 100 ? value : throw Outside(value, "1 to 100"); } = 1;

    /// <summary>The kits that are presented.</summary>
    public required IReadOnlyList<KitManifest> Kits { get; init; }

    /// <summary>Kits that stand within reach and are not presented; their tags are heard too.</summary>
    public IReadOnlyList<KitManifest> Neighbours { get; init; } = [];

    /// <summary>Which tag sits on which tool.</summary>
    public required TagRegister Tags { get; init; }

    /// <summary>Tools that are not there, though a manifest of <see cref="Kits"/> or <see cref="Neighbours"/> lists them.</summary>
    public IReadOnlyCollection<ToolId> AbsentTools { get; init; } = [];

    /// <summary>Tools that are there, where radio hardly reaches their tags.</summary>
    public IReadOnlyCollection<ToolId> ObscuredTools { get; init; } = [];

    /// <summary>Number of foreign tags in the field.</summary>
    /// <value>0 to 1000. The default, <see langword="null"/>, draws it by <see cref="SimulationSettings.StraySessionShare"/>.</value>
    public int? StrayCount { get; init => field = value is null or (>= 0 and <= 1000) ? value : throw Outside(value, "0 to 1000"); }

    /// <summary>Silences of the reader.</summary>
    public IReadOnlyList<ReaderDropOut> DropOuts { get; init; } = [];

    /// <summary>What the antennas hear, against each other. An antenna that is not listed has weight 1.</summary>
    public IReadOnlyList<AntennaCoverage> Coverage { get; init; } = [];

    /// <summary>How far the reader's clock is ahead of true time at <see cref="From"/>; negative if it is behind.</summary>
    public TimeSpan ReaderClockOffset { get; init; }

    /// <summary>How much further ahead the reader's clock is at the end than at the start.</summary>
    public TimeSpan ReaderClockDrift { get; init; }

    /// <summary>Whether the host knows the offset: it is measured at both ends, or not at all.</summary>
    /// <value>The default is <see langword="true"/>.</value>
    public bool IsClockOffsetKnown { get; init; } = true;

    /// <summary>True end of the last pass.</summary>
    public DateTimeOffset To => From + (PassLength * PassCount);

    private static ArgumentOutOfRangeException Outside(object? value, string range, [CallerMemberName] string name = "") =>
        new(name, value, $"{name} must be {range}.");
}
