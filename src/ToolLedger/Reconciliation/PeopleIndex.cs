using System;
using System.Collections.Generic;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>What people said up to the as-of instant, by what it is about, latest first.</summary>
internal sealed class PeopleIndex
{
    private readonly Dictionary<ToolId, List<Sighting>> sightings = [];
    private readonly Dictionary<string, List<Sighting>> sightingsByMark = new(StringComparer.Ordinal);
    private readonly Dictionary<(KitId Kit, int Line), List<LineCount>> counts = [];
    private readonly Dictionary<ToolId, List<PieceCount>> pieces = [];

    public PeopleIndex(InventorySheet sheet, DateTimeOffset asOf)
    {
        foreach (Sighting sighting in sheet.Sightings)
        {
            if (sighting.At <= asOf)
            {
                Put(sightings, sighting.Tool, sighting);
                Put(sightingsByMark, sighting.MarkRead, sighting);
            }
        }

        foreach (LineCount count in sheet.Counts)
        {
            if (count.At <= asOf)
            {
                Put(counts, (count.Kit, count.LineNumber), count);
            }
        }

        foreach (PieceCount count in sheet.PieceCounts)
        {
            if (count.At <= asOf)
            {
                Put(pieces, count.Tool, count);
            }
        }

        // Same instant: the one that shows less comes first, then the ordinal order of names, so that the order of entry decides nothing.
        foreach (List<Sighting> list in sightings.Values)
        {
            list.Sort(static (a, b) => Latest(b.At.CompareTo(a.At), string.CompareOrdinal(a.MarkRead, b.MarkRead), string.CompareOrdinal(a.By.Value, b.By.Value)));
        }

        foreach (List<LineCount> list in counts.Values)
        {
            list.Sort(static (a, b) => Latest(b.At.CompareTo(a.At), a.Quantity.Amount.CompareTo(b.Quantity.Amount), string.CompareOrdinal(a.By.Value, b.By.Value)));
        }

        foreach (List<PieceCount> list in pieces.Values)
        {
            list.Sort(static (a, b) => Latest(b.At.CompareTo(a.At), (a.Pieces ?? -1).CompareTo(b.Pieces ?? -1), string.CompareOrdinal(a.By.Value, b.By.Value)));
        }
    }

    public IReadOnlyList<Sighting> SightingsOf(ToolId tool) => sightings.TryGetValue(tool, out List<Sighting>? list) ? list : [];

    public bool HasSightings => sightings.Count > 0;

    /// <summary>The sightings that read a mark, whatever tool they were taken for; in the order entered.</summary>
    public IReadOnlyList<Sighting> SightingsByMark(string mark) => sightingsByMark.TryGetValue(mark, out List<Sighting>? list) ? list : [];

    public IReadOnlyList<LineCount> CountsOf(KitId kit, int line) => counts.TryGetValue((kit, line), out List<LineCount>? list) ? list : [];

    public IReadOnlyList<PieceCount> PiecesOf(ToolId tool) => pieces.TryGetValue(tool, out List<PieceCount>? list) ? list : [];

    private static int Latest(int byTime, int byContent, int byName) => byTime != 0 ? byTime : byContent != 0 ? byContent : byName;

    private static void Put<TKey, TValue>(Dictionary<TKey, List<TValue>> map, TKey key, TValue value)
        where TKey : notnull
    {
        if (!map.TryGetValue(key, out List<TValue>? list))
        {
            map.Add(key, list = []);
        }

        list.Add(value);
    }
}
