using System;
using System.Collections.Generic;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Testing.Cases;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Generators;

/// <summary>
/// A read session of a generated shift: of the kit under check or of others, one pass or two, on a station that works, is degraded or proves
/// nothing, with strays from other kits, unknown and re-encoded tags, reads out of the window and reports delivered twice.
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
        return
            from empty in Empty(number)
            let presented = new HashSet<ToolId>(manifests.Where(manifest => empty.Kits.Contains(manifest.Id))
                .SelectMany(static manifest => manifest.Lines).Select(static line => line.Tool?.Id).OfType<ToolId>())
            let seconds = (int)(empty.To - empty.From).TotalSeconds
            from station in Gen.Frequency(
                (quality == ShiftQuality.Poor ? 3 : 12, Gen.Constant(Station.Works)),
                (2, Gen.Constant(Station.SecondAntennaSilent)),
                (1, Gen.Constant(Station.AllSilent)),
                (1, Gen.Constant(Station.WithoutControlTags)))
            from tools in Gen.CollectToArray(bindings, binding => Reads(binding, IsDue(binding, presented, empty), quality, seconds))
            from strange in Strange(bindings, seconds)
            from repeated in Gen.Choose(0, 6)
            select Fill(empty, station, [.. tools.SelectMany(static reads => reads), .. strange], repeated);
    }

    private static bool IsDue(TagBinding binding, HashSet<ToolId> presented, SessionCase session)
        => presented.Contains(binding.Tool) && binding.IsLiveAt(session.From);

    /// <summary>The session without its reads.</summary>
    private static Gen<SessionCase> Empty(int number) =>
        from kits in Gen.Frequency(
            (6, Gen.Constant<KitId[]>([ShiftPool.Subject])),
            (2, Gen.Constant<KitId[]>([ShiftPool.Subject, ShiftPool.Second])),
            (number == 1 ? 1 : 3, Gen.Constant<KitId[]>([ShiftPool.Second])),
            (1, Gen.Constant<KitId[]>([])))
        from seconds in Gen.Frequency((10, Gen.Constant(30)), (1, Gen.Constant(90)), (1, Gen.Constant(10)))
        from overlaps in AnyShiftKits.Rarely(6)
        from passAt in Gen.Frequency((4, Gen.Constant(0)), (2, Gen.Constant(50)), (1, Gen.Constant(95)))
        from offset in Gen.Frequency((10, Gen.Constant((TimeSpan?)TimeSpan.Zero)), (1, Gen.Constant((TimeSpan?)TimeSpan.FromSeconds(40))), (1, Gen.Constant((TimeSpan?)null)))
        from drift in Gen.Frequency((12, Gen.Constant(0)), (1, Gen.Constant(1)), (1, Gen.Constant(9)))
        from loss in Gen.Frequency((12, Gen.Constant(0)), (1, Gen.Constant(1)), (1, Gen.Constant(2)))
        from isElsewhere in AnyShiftKits.Rarely(8)
        let start = ShiftPool.Start.AddSeconds(overlaps ? (300 * (number - 2)) + 15 : 300 * (number - 1))
        select new SessionCase
        {
            Id = new SessionId(FormattableString.Invariant($"S{number}")),
            Station = new ReadStation { Id = new StationId(isElsewhere ? "R2" : "R1"), Antennas = [First, Other], ControlTags = [new ControlTag(Control, default)] },
            Kits = kits,
            From = start,
            To = start.AddSeconds(seconds),
            PassStarts = passAt == 0 ? [] : [start.AddSeconds(seconds * passAt / 100.0)],
            ClockOffset = offset,
            ClockOffsetAfter = offset + TimeSpan.FromSeconds(drift),
            Losses = loss == 0 ? [] : [new ReportedLoss(loss == 1 ? SessionLoss.AntennaDisconnected : SessionLoss.ConnectionClosed, start.AddSeconds(3), loss == 1 ? Other : default)],
        };

    /// <summary>The reads of one binding's tag, in seconds from the start: well read, weakly read or silent.</summary>
    private static Gen<TagRead[]> Reads(TagBinding binding, bool isDue, ShiftQuality quality, int seconds)
    {
        (int well, int weak, int silent) = (isDue, quality) switch
        {
            (false, _) => (1, 1, 24),
            (true, ShiftQuality.Good) => (30, 1, 1),
            (true, ShiftQuality.Mixed) => (4, 1, 1),
            _ => (1, 1, 2),
        };
        return
            from count in Gen.Frequency((well, Gen.Choose(4, 7)), (weak, Gen.Choose(1, 2)), (silent, Gen.Constant(0)))
            from halves in Gen.Choose(0, (2 * seconds) - 1).ArrayOf(count)
            from start in Gen.Choose(1, 2)
            from strength in Gen.Choose(-75, -45)
            from chip in Gen.Frequency((8, Gen.Constant(0)), (6, Gen.Constant(1)), (1, Gen.Constant(2)))
            select halves
                .Select((half, i) => new TagRead(binding.Tag, (start + i) % 2 == 0 ? First : Other, ShiftPool.Start.AddSeconds((half * 0.5) + 0.1))
                {
                    Strength = Rssi.FromDbm(strength),
                    Tid = binding.Tid.IsEmpty || chip == 0 ? default : chip == 1 ? binding.Tid : ShiftPool.Chip(999),
                })
                .ToArray();
    }

    /// <summary>Unknown tags, known identities in other words, reads before and after the window, reads that name no antenna or one that is not listed.</summary>
    private static Gen<TagRead[]> Strange(IReadOnlyList<TagBinding> bindings, int seconds) =>
        from count in Gen.Frequency((3, Gen.Constant(0)), (2, Gen.Choose(1, 4)))
        from reads in (
            from kind in Gen.Frequency((4, Gen.Constant(0)), (1, Gen.Constant(1)), (4, Gen.Constant(2)))
            from index in Gen.Choose(0, int.Max(0, bindings.Count - 1))
            from antenna in Gen.Frequency((4, Gen.Choose(1, 2)), (1, Gen.Constant(0)), (1, Gen.Constant(3)))
            from half in Gen.Choose(-8, (2 * seconds) + 8)
            select new TagRead(
                kind == 2 && bindings.Count > 0 ? bindings[index].Tag : kind == 1 ? ShiftPool.Tag(index * ShiftPool.TagsPerTool, filter: 1) : ShiftPool.Tag(100_000 + index),
                antenna == 0 ? default : new AntennaPort((byte)antenna),
                ShiftPool.Start.AddSeconds(half * 0.5))).ArrayOf(count)
        select reads;

    private static SessionCase Fill(SessionCase empty, Station station, TagRead[] reads, int repeated)
    {
        TimeSpan shift = empty.From - ShiftPool.Start + empty.ClockOffset.GetValueOrDefault();
        TagRead[] placed = [.. reads.Select(read => new TagRead(read.Tag, read.Antenna, read.FirstSeen + shift) { Strength = read.Strength, Tid = read.Tid })];
        SessionCase filled = (empty with { Reads = [.. placed, .. placed.Take(repeated)] }).WithControlReads(TimeSpan.FromSeconds(3));
        return station switch
        {
            Station.SecondAntennaSilent => filled with { Reads = [.. filled.Reads.Where(static read => read.Tag != Control || read.Antenna == First)] },
            Station.AllSilent => filled with { Reads = [.. filled.Reads.Where(static read => read.Tag != Control)] },
            Station.WithoutControlTags => filled with
            {
                Station = new ReadStation { Id = empty.Station.Id, Antennas = empty.Station.Antennas },
                Reads = [.. filled.Reads.Where(static read => read.Tag != Control)],
            },
            _ => filled,
        };
    }
}
