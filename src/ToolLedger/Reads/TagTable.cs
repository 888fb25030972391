using ToolLedger.Tools;

namespace ToolLedger.Reads;

/// <summary>Finds the entry of a tag: open addressing, at most half full, entries numbered in order of arrival.</summary>
internal sealed class TagTable
{
    private readonly PagedList<TagEntry> _entries = new();
    private readonly int _limit;
    private long[] _buckets = new long[32];

    internal TagTable(int limit) => _limit = limit;

    internal int Count => _entries.Count;

    internal ref TagEntry this[int index] => ref _entries[index];

    /// <summary>The index of the tag's entry, or -1.</summary>
    internal int Find(in TagId tag)
    {
        int hash = tag.GetHashCode();
        long[] buckets = _buckets;
        int mask = buckets.Length - 1;
        for (int at = hash & mask; ; at = (at + 1) & mask)
        {
            long bucket = buckets[at];
            if (bucket == 0)
            {
                return -1;
            }

            // The upper half is the hash, the lower half the index plus 1.
            int index = (int)bucket - 1;
            if ((int)(bucket >> 32) == hash && _entries[index].Tag.Equals(tag))
            {
                return index;
            }
        }
    }

    /// <summary>The index of the tag's entry, which is made if there is none; -1 when the limit is reached.</summary>
    internal int FindOrAdd(in TagId tag)
    {
        int found = Find(tag);
        return found >= 0 ? found : Add(tag);
    }

    private int Add(in TagId tag)
    {
        if (_entries.Count == _limit)
        {
            return -1;
        }

        if ((_entries.Count + 1) * 2L > _buckets.Length)
        {
            Grow();
        }

        int index = _entries.Add();
        ref TagEntry entry = ref _entries[index];
        entry.Tag = tag;
        entry.Hash = tag.GetHashCode();
        entry.FirstCell = entry.RecentCell = entry.Tids = -1;
        Place(entry.Hash, index);
        return index;
    }

    private void Grow()
    {
        _buckets = new long[_buckets.Length * 2];
        for (int i = 0; i < _entries.Count; i++)
        {
            Place(_entries[i].Hash, i);
        }
    }

    private void Place(int hash, int index)
    {
        int mask = _buckets.Length - 1;
        int at = hash & mask;
        while (_buckets[at] != 0)
        {
            at = (at + 1) & mask;
        }

        _buckets[at] = ((long)hash << 32) | (uint)(index + 1);
    }
}
