using System;
using System.Collections.Generic;

namespace ToolLedger.Reconciliation;

/// <summary>Entries of one kind up to the as-of instant, by what they are about, latest first; entries of one instant in an order of their own, so that the order of entry decides nothing.</summary>
internal sealed class EntryIndex<TKey, TEntry>
    where TKey : notnull
{
    private readonly Dictionary<TKey, List<TEntry>> lists = [];

    public EntryIndex(IReadOnlyList<TEntry> entries, DateTimeOffset asOf, Func<TEntry, TKey> keyOf, Func<TEntry, DateTimeOffset> timeOf, Comparison<TEntry> sameInstant)
    {
        foreach (TEntry entry in entries)
        {
            if (timeOf(entry) <= asOf)
            {
                TKey key = keyOf(entry);
                if (!lists.TryGetValue(key, out List<TEntry>? list))
                {
                    lists.Add(key, list = []);
                }

                list.Add(entry);
            }
        }

        foreach (List<TEntry> list in lists.Values)
        {
            list.Sort((a, b) => timeOf(b).CompareTo(timeOf(a)) is var byTime && byTime != 0 ? byTime : sameInstant(a, b));
        }
    }

    public bool IsEmpty => lists.Count == 0;

    public IReadOnlyList<TEntry> Of(TKey key) => lists.TryGetValue(key, out List<TEntry>? list) ? list : [];
}
