using System;
using System.Collections.Generic;

namespace ToolLedger.Records;

/// <summary>Items of a list grouped by a key: the indexes of all items with that key, in a stated order.</summary>
/// <remarks>One dictionary entry a key and four bytes an item, where a dictionary of lists would need an object a key.</remarks>
internal sealed class GroupIndex<TKey>
    where TKey : notnull
{
    private readonly Dictionary<TKey, int> _groups;
    private readonly int[] _starts;
    private readonly int[] _indexes;

    private GroupIndex(Dictionary<TKey, int> groups, int[] starts, int[] indexes)
    {
        _groups = groups;
        _starts = starts;
        _indexes = indexes;
    }

    internal int GroupCount => _groups.Count;

    internal IReadOnlyCollection<TKey> Keys => _groups.Keys;

    /// <summary>Groups the items; items that compare equal stay in the order given.</summary>
    internal static GroupIndex<TKey> Of<TItem>(TItem[] items, Func<TItem, TKey> keyOf, Comparison<TItem> order)
    {
        var groups = new Dictionary<TKey, int>(items.Length);
        int[] groupOf = new int[items.Length];
        int[] starts = new int[items.Length + 1];
        for (int i = 0; i < items.Length; i++)
        {
            TKey key = keyOf(items[i]);
            if (!groups.TryGetValue(key, out int group))
            {
                group = groups.Count;
                groups.Add(key, group);
            }

            groupOf[i] = group;
            starts[group + 1]++;
        }

        Array.Resize(ref starts, groups.Count + 1);
        for (int group = 1; group < starts.Length; group++)
        {
            starts[group] += starts[group - 1];
        }

        return new GroupIndex<TKey>(groups, starts, Fill(items, groupOf, starts, order));
    }

    /// <summary>Indexes of the items with the key; none if there is no such key.</summary>
    internal ReadOnlySpan<int> Of(TKey key) => _groups.TryGetValue(key, out int group) ? Group(group) : [];

    /// <summary>Indexes of the items of one group, 0 to <see cref="GroupCount"/> - 1.</summary>
    internal ReadOnlySpan<int> Group(int group) => _indexes.AsSpan(_starts[group].._starts[group + 1]);

    private static int[] Fill<TItem>(TItem[] items, int[] groupOf, int[] starts, Comparison<TItem> order)
    {
        int[] indexes = new int[items.Length];
        int[] next = starts.AsSpan(0, starts.Length - 1).ToArray();
        for (int i = 0; i < items.Length; i++)
        {
            indexes[next[groupOf[i]]++] = i;
        }

        for (int group = 0; group + 1 < starts.Length; group++)
        {
            if (starts[group + 1] - starts[group] > 1)
            {
                indexes.AsSpan(starts[group]..starts[group + 1]).Sort((left, right) =>
                {
                    int difference = order(items[left], items[right]);
                    return difference != 0 ? difference : left.CompareTo(right);
                });
            }
        }

        return indexes;
    }
}
