using System;
using System.Collections.Generic;
using System.Linq;
using FsCheck;
using ToolLedger.Identifiers;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Testing.Cases;
using ToolLedger.Testing.Simulation;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Generators;

/// <summary>
/// A read session of a generated shift: of the kit under check or of others, one pass or two, on a station that works, is degraded or proves
/// nothing, some of whose control tags are bound to tools, with strays from other kits, unknown and re-encoded tags, reads out of the window and reports delivered twice.
/// </summary>
public static class AnyShiftSession
{
    private static readonly TagId Control = AnyReadStation.ControlTag;
    private static readonly AntennaPort First = new(1);
    private static readonly AntennaPort Other = new(2);

    private enum Station
    {
        Works,
        SecondAntennaSilent,
        AllSilent,
        WithoutControlTags,
    }

    /// <summary>Generates sessions.</summary>
    /// <param name="number">1 for the first session of the shift, and so on: its id, and when it is held.</param>
    /// <param name="manifests">The manifests.</param>
    /// <param name="bindings">The bindings.</param>
    /// <param name="quality">How well tags of presented kits are read.</param>
    /// <returns>A generator.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static Gen<SessionCase> Of(int number, IReadOnlyList<KitManifest> manifests, IReadOnlyList<TagBinding> bindings, ShiftQuality quality)
    {
        ArgumentNullException.ThrowIfNull(manifests);
        ArgumentNullException.ThrowIfNull(bindings);
        return ShiftPool.FromSeeds(chance => Draw(chance, number, manifests, bindings, quality));
    }

    internal static SessionCase Draw(SplitMix64 chance, int number, IReadOnlyList<KitManifest> manifests, IReadOnlyList<TagBinding> bindings, ShiftQuality quality)
    {
        SessionCase empty = Empty(chance, number, bindings);
        HashSet<ToolId> presented = [.. manifests.Where(manifest => empty.Kits.Contains(manifest.Id) || (manifest.Id == ShiftPool.Box && empty.Kits.Contains(ShiftPool.Subject)))
            .SelectMany(static manifest => manifest.Lines).SelectMany(AnyShiftParts.ToolsOf).Select(static tool => tool.Id)];
        var reads = new List<TagRead>();
        foreach (TagBinding binding in bindings)
        {
            Read(chance, empty, binding, presented.Contains(binding.Tool) && binding.IsLiveAt(empty.From), quality, reads);
        }

        AddStrange(chance, empty, bindings, reads);
        reads.AddRange(reads.Take(chance.Below(7)).ToArray());
        return WithStation((empty with { Reads = reads }).WithControlReads(TimeSpan.FromSeconds(3)), (Station)chance.Weighted(quality == ShiftQuality.Poor ? 3 : 12, 2, 1, 1));
    }

    /// <summary>The session without its reads.</summary>
    private static SessionCase Empty(SplitMix64 chance, int number, IReadOnlyList<TagBinding> bindings)
    {
        KitId[] kits = chance.Weighted(6, 2, number == 1 ? 1 : 4, 1) switch
        {
            0 => [ShiftPool.Subject],
            1 => [ShiftPool.Subject, ShiftPool.Second],
            2 => [ShiftPool.Second],
            _ => [],
        };
        int seconds = chance.Weighted(10, 1, 1) switch { 0 => 30, 1 => 90, _ => 10 };
        int passAt = chance.Weighted(4, 2, 1) switch { 0 => 0, 1 => 50, _ => 95 };
        DateTimeOffset from = ShiftPool.Start.AddSeconds(chance.OneIn(3) ? (300 * (number - 2)) + 15 : 300 * (number - 1));
        TimeSpan? offset = chance.Weighted(10, 1, 1) switch { 0 => TimeSpan.Zero, 1 => TimeSpan.FromSeconds(40), _ => null };
        int drift = chance.Weighted(12, 1, 1) switch { 0 => 0, 1 => 1, _ => 9 };
        ReportedLoss[] losses = chance.Weighted(12, 1, 1) switch
        {
            0 => [],
            1 => [new ReportedLoss(SessionLoss.AntennaDisconnected, from.AddSeconds(3), Other)],
            _ => [new ReportedLoss(SessionLoss.ConnectionClosed, from.AddSeconds(3))],
        };
        return new SessionCase
        {
            Id = new SessionId(FormattableString.Invariant($"S{number}")),
            Station = new ReadStation { Id = new StationId(chance.OneIn(8) ? "R2" : "R1"), Antennas = [First, Other], ControlTags = Controls(chance, bindings) },
            Kits = kits,
            From = from,
            To = from.AddSeconds(seconds),
            PassStarts = passAt == 0 ? [] : [from.AddSeconds(seconds * passAt / 100.0)],
            ClockOffset = offset,
            ClockOffsetAfter = offset + TimeSpan.FromSeconds(drift),
            Losses = losses,
            NearbyKits = chance.OneIn(6) ? [Near(chance, kits, from, seconds)] : [],
            SurroundingsChanges = chance.OneIn(6) ? [new SurroundingsChange(from.AddSeconds(seconds * chance.Among(-1, 120) / 100.0), AnyShiftEntries.Person(chance), "bag moved")] : [],
        };
    }

    /// <summary>The station's own tag, and now and then one that is bound to a tool as well.</summary>
    private static ControlTag[] Controls(SplitMix64 chance, IReadOnlyList<TagBinding> bindings)
    {
        TagId also = bindings.Count > 0 && chance.OneIn(40) ? bindings[chance.Below(bindings.Count)].Tag : Control;
        return [.. new[] { Control, also }.Distinct().Select(static tag => new ControlTag(tag, default))];
    }

    private static NearbyKit Near(SplitMix64 chance, KitId[] presented, DateTimeOffset from, int seconds)
    {
        KitId[] others = [.. new[] { ShiftPool.Subject, ShiftPool.Second, ShiftPool.Third }.Except(presented)];
        return new NearbyKit(others[chance.Below(others.Length)], from, chance.OneIn(2) ? null : from.AddSeconds(chance.Among(1, seconds)));
    }

    /// <summary>The reads of one binding's tag: well read, weakly read or silent.</summary>
    private static void Read(SplitMix64 chance, SessionCase session, TagBinding binding, bool isDue, ShiftQuality quality, List<TagRead> reads)
    {
        int how = (isDue, quality) switch
        {
            (false, _) => chance.Weighted(3, 2, 16),
            (true, ShiftQuality.Good) => chance.Weighted(30, 1, 1),
            (true, ShiftQuality.Mixed) => chance.Weighted(4, 1, 1),
            _ => chance.Weighted(1, 1, 2),
        };
        int count = how switch { 0 => chance.Among(4, 7), 1 => chance.Among(1, 2), _ => 0 };
        int firstAntenna = chance.Below(2);
        int strength = chance.Among(-75, -45);
        Tid chip = binding.Tid.IsEmpty ? default : chance.Weighted(8, 6, 1) switch { 0 => default, 1 => binding.Tid, _ => ShiftPool.Chip(999) };
        int halves = 2 * (int)(session.To - session.From).TotalSeconds;
        for (int i = 0; i < count; i++)
        {
            reads.Add(new TagRead(binding.Tag, (firstAntenna + i) % 2 == 0 ? First : Other, At(session, chance.Below(halves), 100))
            {
                Strength = Rssi.FromDbm(strength),
                Tid = chip,
            });
        }
    }

    /// <summary>Unknown tags, known identities in other words, reads before and after the window, reads that name no antenna or one that is not listed.</summary>
    private static void AddStrange(SplitMix64 chance, SessionCase session, IReadOnlyList<TagBinding> bindings, List<TagRead> reads)
    {
        int halves = 2 * (int)(session.To - session.From).TotalSeconds;
        for (int left = chance.Weighted(3, 2) == 0 ? 0 : chance.Among(1, 4); left > 0; left--)
        {
            int index = chance.Below(bindings.Count + 1);
            TagId tag = chance.Weighted(4, 1, 4) switch
            {
                1 => ShiftPool.Tag(index * ShiftPool.TagsPerTool, filter: 1),
                2 when index < bindings.Count => bindings[index].Tag,
                _ => ShiftPool.Tag(100_000 + index),
            };
            AntennaPort antenna = chance.Weighted(2, 2, 1, 1) switch { 0 => First, 1 => Other, 2 => default, _ => new AntennaPort(3) };
            reads.Add(new TagRead(tag, antenna, At(session, chance.Among(-8, halves + 8), 0)));
        }
    }

    private static DateTimeOffset At(SessionCase session, int halfSecond, int milliseconds)
        => session.From.AddMilliseconds((500 * halfSecond) + milliseconds) + session.ClockOffset.GetValueOrDefault();

    private static SessionCase WithStation(SessionCase session, Station station) => station switch
    {
        Station.SecondAntennaSilent => session with { Reads = [.. session.Reads.Where(static read => read.Tag != Control || read.Antenna == First)] },
        Station.AllSilent => session with { Reads = [.. session.Reads.Where(static read => read.Tag != Control)] },
        Station.WithoutControlTags => session with
        {
            Station = new ReadStation { Id = session.Station.Id, Antennas = session.Station.Antennas },
            Reads = [.. session.Reads.Where(static read => read.Tag != Control)],
        },
        _ => session,
    };
}
