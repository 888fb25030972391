using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Reads;
using ToolLedger.Tools;

namespace ToolLedger.Tests.Reads;

/// <summary>The evidence of one tag as plain sets, written without looking at how the builder does it.</summary>
internal sealed class EvidenceModel
{
    private readonly HashSet<(int Pass, int Antenna, long Slot)> _looks = [];
    private readonly List<DateTimeOffset> _times = [];
    private readonly List<Rssi> _strengths = [];
    private readonly HashSet<string> _tids = [];

    internal static Dictionary<TagId, EvidenceModel> Of(Presentation presentation, IEnumerable<TagRead> reads, SessionPolicy policy)
    {
        Dictionary<TagId, EvidenceModel> models = [];
        foreach (TagRead read in reads)
        {
            AntennaPort antenna = !read.Antenna.IsKnown && presentation.Station.Antennas.Count == 1 ? presentation.Station.Antennas[0] : read.Antenna;
            DateTimeOffset[] inside = [.. new[] { read.FirstSeen, read.LastSeen }
                .Select(time => time - presentation.ReaderClockOffset.GetValueOrDefault())
                .Where(time => time >= presentation.From && (presentation.Until is null || time < presentation.Until))];
            if (inside.Length == 0 || (antenna.IsKnown && !presentation.Station.Antennas.Contains(antenna)))
            {
                continue;
            }

            if (!models.TryGetValue(read.Tag, out EvidenceModel? model))
            {
                models.Add(read.Tag, model = new EvidenceModel());
            }

            foreach (DateTimeOffset time in inside)
            {
                int pass = 1 + presentation.PassStarts.Count(start => start <= time);
                model._looks.Add((pass, antenna.Number, (time - presentation.From).Ticks / policy.SlotLength.Ticks));
                model._times.Add(time);
            }

            model._strengths.AddRange(read.Strength is { } strength ? [strength] : []);
            model._tids.UnionWith(read.Tid.IsEmpty ? [] : [read.Tid.ToString()]);
        }

        return models;
    }

    internal static string TextOf(TagEvidence tag) => Text(
        tag.Cells.Select(cell => (cell.Pass, (int)cell.Antenna.Number, cell.LookCount)),
        tag.FirstSeen!.Value,
        tag.LastSeen!.Value,
        tag.Strongest,
        tag.Weakest,
        tag.Tids.Select(tid => tid.ToString()),
        tag.HasMoreTids);

    internal string ToText(int looksKept) => Text(
        _looks.GroupBy(look => (look.Pass, look.Antenna)).OrderBy(cell => cell.Key)
            .Select(cell => (cell.Key.Pass, cell.Key.Antenna, Math.Min(cell.Count(), looksKept))),
        _times.Min(),
        _times.Max(),
        _strengths.Count == 0 ? null : _strengths.Max(),
        _strengths.Count == 0 ? null : _strengths.Min(),
        _tids.Order(StringComparer.Ordinal).Take(2),
        _tids.Count > 2);

    private static string Text(
        IEnumerable<(int, int, int)> cells, DateTimeOffset first, DateTimeOffset last, Rssi? strongest, Rssi? weakest, IEnumerable<string> tids, bool more) =>
        string.Create(CultureInfo.InvariantCulture, $"{string.Join(' ', cells)} {first:O} {last:O} {strongest} {weakest} {string.Join(' ', tids)} {more}");
}
