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
    private readonly Dictionary<(KitId Kit, int Line), List<LineCount>> counts = [];
    private readonly Dictionary<ToolId, List<PieceCount>> pieces = [];

    public PeopleIndex(InventorySheet sheet, DateTimeOffset asOf)
    {
        foreach (Sighting sighting in sheet.Sightings)
        {
            if (sighting.At <= asOf)
            {
                Put(sightings, sighting.Tool, sighting);
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

        // Same instant: by content, then by the ordinal order of names, so that the order of entry decides nothing.
        foreach (List<Sighting> list in sightings.Values)
        {
            list.Sort(static (a, b) => First(
                b.At.CompareTo(a.At), Names(a.MarkRead, b.MarkRead), Names(a.InKit.Value, b.InKit.Value), Names(a.By.Value, b.By.Value), Names(a.Where.Value, b.Where.Value)));
        }

        foreach (List<LineCount> list in counts.Values)
        {
            list.Sort(static (a, b) => First(
                b.At.CompareTo(a.At), a.Quantity.Amount.CompareTo(b.Quantity.Amount), Names(a.Quantity.Unit.Value, b.Quantity.Unit.Value), Names(a.By.Value, b.By.Value), Names(a.Witness.Value, b.Witness.Value)));
        }

        foreach (List<PieceCount> list in pieces.Values)
        {
            list.Sort(static (a, b) => First(
                b.At.CompareTo(a.At), (a.Pieces ?? -1).CompareTo(b.Pieces ?? -1), Names(a.By.Value, b.By.Value), Names(a.Witness.Value, b.Witness.Value)));
        }
    }

    public IReadOnlyList<Sighting> SightingsOf(ToolId tool) => sightings.TryGetValue(tool, out List<Sighting>? list) ? list : [];

    public IReadOnlyList<LineCount> CountsOf(KitId kit, int line) => counts.TryGetValue((kit, line), out List<LineCount>? list) ? list : [];

    public IReadOnlyList<PieceCount> PiecesOf(ToolId tool) => pieces.TryGetValue(tool, out List<PieceCount>? list) ? list : [];

    private static int Names(string a, string b) => string.CompareOrdinal(a, b);

    /// <summary>The first comparison that decides.</summary>
    private static int First(params ReadOnlySpan<int> comparisons)
    {
        foreach (int comparison in comparisons)
        {
            if (comparison != 0)
            {
                return comparison;
            }
        }

        return 0;
    }

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
