using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using PitReaderLog;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Samples.Tests.PitReaderLog;
using ToolLedger.Tools;
using WornTagTrials;
using Xunit;

namespace ToolLedger.Samples.Tests.RealReads;

/// <summary>
/// Real reads at a stated risk, from sessions to the reconciler: a stream antenna with marker tags (MIT), and a tag worn in a room with four antennas (CC BY 4.0); sources and licences lie beside the files.
/// Models are invented; of the worn tag the control reads are too, since that file has none.
/// </summary>
public sealed class StatedRiskTests
{
    // A tag that is there answers in one look of eight.
    private static readonly DetectionModel Model = new(0.1m, new BetaRate(1, 7), 0.02m, new BetaRate(0.2m, 30));

    // A policy that takes a read or two for enough, so that nothing but the session's health holds it back.
    private static readonly StatedRiskPolicy Loosest = new() { Model = Model, KitRiskLimit = 0.5m, LineRiskMax = 0.5m };

    private static readonly TimeSpan Slot = TimeSpan.FromSeconds(10);

    private static readonly StatedRiskPolicy Worn = new() { Model = Model };

    // The longest silence of the control tag that a session may have is two of its intervals and a half, measured in whole empty slots: a read at the edge of one may hide nearly two.
    [Theory]
    [InlineData("reader_1.txt", 180)]
    [InlineData("reader_3.txt", 60)]
    public void Nothing_is_concluded_inside_a_silence_of_the_reader(string file, int markerSeconds)
    {
        TagId marker = file == "reader_1.txt" ? Logs.Marker1 : Logs.Marker3, twin = TagId.FromText("twin");
        TimeSpan gapMax = TimeSpan.FromSeconds(markerSeconds * 2.5);

        // The tool's tag is heard whenever the marker is, so that there is always something that could wrongly speak for it.
        IReadOnlyList<TagRead> log = Logs.Read(file).Reads;
        TagRead[] reads = [.. log, .. log.Where(read => read.Tag == marker).Select(read => new TagRead(twin, read.Antenna, read.FirstSeen) { LastSeen = read.LastSeen, Count = read.Count })];
        DateTimeOffset[] heard = [.. reads.Where(read => read.Tag == marker).Select(static read => read.FirstSeen).Order()];
        WholePath path = PitPath(marker, twin, gapMax);
        int silent = 0, accounted = 0;
        for (DateTimeOffset from = heard[0]; from < heard[^1]; from += TimeSpan.FromMinutes(7))
        {
            foreach (int minutes in (int[])[9, 25])
            {
                DateTimeOffset to = from.AddMinutes(minutes);
                LineConclusion line = path.Conclude(reads.Where(read => read.LastSeen >= from && read.FirstSeen < to), from, to).Lines[0];
                DateTimeOffset[] inside = [from, .. heard.Where(at => at > from && at < to), to];
                if (inside.Zip(inside.Skip(1)).Any(pair => pair.Second - pair.First > gapMax + (2 * Slot)))
                {
                    silent++;
                    Assert.False(line.IsAccounted, $"{from:O}, {minutes} min: {line}");
                }

                accounted += line.IsAccounted ? 1 : 0;
            }
        }

        Assert.True(silent >= 5 && accounted >= 20, $"{silent} windows with a silence, {accounted} accounted");
    }

    [Fact]
    public void The_order_and_the_number_of_reports_of_a_marker_tag_change_nothing()
    {
        TagRead[] reads = [.. Logs.Read("reader_1.txt").Reads];
        WholePath path = PitPath(Logs.Marker1, Logs.Second1, TimeSpan.FromSeconds(450));
        var states = new HashSet<LineState>();
        for (DateTimeOffset from = reads[0].FirstSeen; from < reads[^1].FirstSeen.AddMinutes(-25); from += TimeSpan.FromMinutes(23))
        {
            DateTimeOffset to = from.AddMinutes(50);
            TagRead[] window = [.. reads.Where(read => read.LastSeen >= from && read.FirstSeen < to)];

            // The first pass ends at the very instant of a read.
            DateTimeOffset turn = window.FirstOrDefault(read => read.Tag == Logs.Second1 && read.FirstSeen > from.AddMinutes(20)) is { Count: > 0 } at ? at.FirstSeen : from.AddMinutes(25);
            ReconciliationResult plain = path.Conclude(window, from, to, turn);
            states.Add(plain.Lines[0].State);
            Assert.All(Enumerable.Range(1, 5), seed => Assert.Equal(WholePath.Text(plain), WholePath.Text(path.Conclude(WholePath.Disturbed(window, seed), from, to, turn))));
        }

        Assert.Contains(LineState.Accounted, states);
        Assert.True(states.Count > 1, string.Join(", ", states));
    }

    // Times of the file are whole parts of the slot, so that many reads lie on the border of two slots, and some on that of two passes.
    [Fact]
    public void The_order_and_the_number_of_reports_of_a_worn_tag_change_nothing()
    {
        TrialRow[][] trials = WornTrials();
        var states = new Dictionary<LineState, int>();
        int onSlot = 0, onPass = 0;
        for (int trial = 0; trial < trials.Length; trial++)
        {
            DateTimeOffset start = WindowEvidence.FirstStart.AddDays(trial);
            for (int window = 0; window < 4; window++)
            {
                DateTimeOffset from = start.AddSeconds(30 * window), to = from.AddSeconds(30);
                TagRead[] own = [.. trials[trial].Select(row => new TagRead(WindowEvidence.Tag, row.Antenna, start + row.Time) { Strength = row.Strength }).Where(read => read.FirstSeen >= from && read.FirstSeen < to)];
                if (own.Length == 0)
                {
                    continue;
                }

                // The middle pass begins at the very instant of a read.
                DateTimeOffset turn = own.FirstOrDefault(read => read.FirstSeen >= from.AddSeconds(8) && read.FirstSeen < from.AddSeconds(14)) is { Count: > 0 } at ? at.FirstSeen : from.AddSeconds(10);
                onPass += own.Count(read => read.FirstSeen == turn);
                onSlot += own.Count(read => (read.FirstSeen - from).Ticks % TimeSpan.FromSeconds(0.5).Ticks == 0);
                TagRead[] reads = [.. ControlReads(from), .. own];
                ReconciliationResult plain = WornPath.Conclude(reads, from, to, turn, from.AddSeconds(20));
                states[plain.Lines[0].State] = states.GetValueOrDefault(plain.Lines[0].State) + 1;
                Assert.All(Enumerable.Range(1, 3), seed => Assert.Equal(WholePath.Text(plain), WholePath.Text(WornPath.Conclude(WholePath.Disturbed(reads, seed), from, to, turn, from.AddSeconds(20)))));
            }
        }

        Assert.True(onSlot > 500 && onPass > 30, $"{onSlot} on the border of slots, {onPass} on that of passes");
        Assert.True(states.GetValueOrDefault(LineState.Accounted) > 30 && states.GetValueOrDefault(LineState.Weak) > 5, string.Join(", ", states));
    }

    // The reader falls silent within the window: its control tag stops, and so does everything. What was read before is a degraded session's, and settles nothing.
    [Fact]
    public void A_worn_tag_is_not_accounted_for_where_the_reader_fell_silent()
    {
        TrialRow[][] trials = WornTrials();
        int accounted = 0;
        for (int trial = 0; trial < trials.Length; trial++)
        {
            DateTimeOffset from = WindowEvidence.FirstStart.AddDays(trial), to = from.AddSeconds(30);
            TagRead[] reads = [.. ControlReads(from), .. trials[trial].Where(static row => row.Time < TimeSpan.FromSeconds(30)).Select(row => new TagRead(WindowEvidence.Tag, row.Antenna, from + row.Time))];
            accounted += WornPath.Conclude(reads, from, to).Lines[0].IsAccounted ? 1 : 0;

            LineConclusion cut = WornPath.Conclude(reads.Where(read => read.FirstSeen < from.AddSeconds(14)), from, to).Lines[0];
            Assert.False(cut.IsAccounted, $"trial {trial}: {cut}");
        }

        Assert.True(accounted > 5, $"{accounted}");
    }

    private static readonly ReadStation Room = new()
    {
        Id = new StationId("room-1"),
        Antennas = [.. Enumerable.Range(1, 4).Select(static port => new AntennaPort((byte)port))],
        ControlTags = [.. Enumerable.Range(1, 4).Select(static port => new ControlTag(TagId.FromText("control"), new AntennaPort((byte)port)))],
    };

    private static readonly WholePath WornPath = new(Room, WindowEvidence.Tag, new SessionPolicy(), Worn);

    private static IEnumerable<TagRead> ControlReads(DateTimeOffset start) =>
        from second in Enumerable.Range(0, 30)
        from antenna in Room.Antennas
        select new TagRead(TagId.FromText("control"), antenna, start.AddSeconds(second + 0.5));

    private static TrialRow[][] WornTrials()
    {
        using StreamReader file = File.OpenText(Path.Combine(Repository.Root, "tests", "ToolLedger.Samples.Tests", "data", "worn-tag-room1", "reads.csv"));
        return [.. TrialFile.Rows(file).GroupBy(static row => row.Trial, StringComparer.Ordinal).Select(static group => group.ToArray())];
    }

    private static WholePath PitPath(TagId marker, TagId kit, TimeSpan gapMax) => new(
        new ReadStation { Id = new StationId("pit-reader"), Antennas = [LogReader.Antenna], ControlTags = [new ControlTag(marker)] }, kit,
        new SessionPolicy { ControlTagEdge = gapMax, SilenceGapMax = gapMax, MaximumWindow = TimeSpan.FromHours(2), SlotLength = Slot }, Loosest);
}
