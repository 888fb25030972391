using System;
using System.Collections.Generic;

namespace ToolLedger.Reconciliation;

/// <summary>Entries of one kind up to the as-of instant, by what they are about, latest first; entries of one instant in an order of their own, so that the order of entry decides nothing.</summary>
internal sealed class EntryIndex<TKey, TEntry>
    where TKey : struct
{
    private readonly Dictionary<TKey, List<TEntry>>? lists;

    /// <summary>Indexes the entries; those whose key is the default value are left out.</summary>
    public EntryIndex(IReadOnlyList<TEntry> entries, DateTimeOffset asOf, Func<TEntry, TKey> keyOf, Func<TEntry, DateTimeOffset> timeOf, Comparison<TEntry> sameInstant)
    {
        foreach (TEntry entry in entries)
        {
            TKey key = keyOf(entry);
            if (timeOf(entry) <= asOf && !EqualityComparer<TKey>.Default.Equals(key, default))
            {
                lists ??= [];
                if (!lists.TryGetValue(key, out List<TEntry>? list))
                {
                    lists.Add(key, list = []);
                }

                list.Add(entry);
            }
        }

        foreach (List<TEntry> list in lists?.Values ?? (IEnumerable<List<TEntry>>)[])
        {
            list.Sort((a, b) => timeOf(b).CompareTo(timeOf(a)) is var byTime && byTime != 0 ? byTime : sameInstant(a, b));
        }
    }

    public bool IsEmpty => lists is null;

    public IReadOnlyList<TEntry> Of(TKey key) => lists is not null && lists.TryGetValue(key, out List<TEntry>? list) ? list : (IReadOnlyList<TEntry>)[];
}
