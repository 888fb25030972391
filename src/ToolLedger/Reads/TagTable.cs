using System;
using System.Collections.Generic;
using System.Runtime.CompilerServices;
using ToolLedger.Tools;

namespace ToolLedger.Reads;

/// <summary>Finds the entry of a tag: open addressing, at most half full, entries numbered in order of arrival.</summary>
internal sealed class TagTable
{
    /// <summary>How many reads are looked up together, so that their cache misses overlap.</summary>
    internal const int BatchLength = 64;

    // The form of a short tag needs six bits; no short tag has them all set. A mark stands above.
    private const byte LongForm = 0x3F;
    private const byte FormMask = 0x3F;
    private const byte ControlMark = 0x40;

    // A bucket is the number of the entry plus 1 and eight bits of the hash; a policy allows 4,000,000 tags at most.
    private const int NumberBits = 24;
    private const uint NumberMask = (1u << NumberBits) - 1;

    private readonly TagEntryList _entries = new();
    private readonly PagedList<TagStart> _starts = new();
    private readonly List<TagId> _long = [];
    private readonly uint[] _hashes = new uint[BatchLength];
    private readonly int[] _found = new int[BatchLength];
    private readonly int _limit;
    private readonly HashSet<TagId> _controls;
    private uint[] _buckets = new uint[32];

    /// <summary>Makes an empty table.</summary>
    /// <param name="limit">The most tags.</param>
    /// <param name="controls">The control tags of the station; their entries get a mark.</param>
    internal TagTable(int limit, IEnumerable<TagId> controls)
    {
        _limit = limit;
        _controls = [.. controls];
    }

    internal int Count => _entries.Count;

    /// <summary>Whether so many more tags are within the limit.</summary>
    internal bool HasRoomFor(int count) => _entries.Count <= _limit - count;

    internal ref TagEntry this[int index] => ref _entries[index];

    /// <summary>What else is kept of the tag of an entry.</summary>
    internal ref TagStart StartOf(int index) => ref _starts[index];

    /// <summary>The entries, for who walks over many of them.</summary>
    internal TagEntryList Entries => _entries;

    /// <summary>The tag of an entry.</summary>
    internal TagId TagOf(in TagEntry entry) => IsLong(entry)
        ? _long[(int)entry.SecondWord]
        : TagId.FromShort(entry.FirstWord, entry.SecondWord, (byte)(entry.Form & FormMask));

    internal static bool IsControl(in TagEntry entry) => (entry.Form & ControlMark) != 0;

    /// <summary>The order of the tags of two entries.</summary>
    internal int Compare(in TagEntry left, in TagEntry right)
    {
        // Tags of one kind and one length, as most are, are ordered by their words.
        if (((left.Form ^ right.Form) & FormMask) != 0 || IsLong(left))
        {
            return TagOf(left).CompareTo(TagOf(right));
        }

        int order = left.FirstWord.CompareTo(right.FirstWord);
        return order != 0 ? order : left.SecondWord.CompareTo(right.SecondWord);
    }

    /// <summary>The index of the tag's entry, or -1.</summary>
    internal int Find(in TagId tag) => Find(tag, HashOf(tag));

    /// <summary>The index of the tag's entry, which is made if there is none; -1 when the limit is reached.</summary>
    internal int FindOrAdd(in TagId tag) => FindOrAdd(tag, HashOf(tag));

    /// <summary>The entry of a tag that was looked for together with others, which is made if there is none; -1 when the limit is reached.</summary>
    /// <param name="tag">The tag.</param>
    /// <param name="position">The read it is of.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal int Confirm(in TagId tag, int position)
    {
        int found = _found[position];
        return found >= 0 && IsAt(_entries[found], tag) ? found : FindOrAdd(tag, _hashes[position]);
    }

    /// <summary>Looks for the entries of some reads' tags, so that the cache misses of one overlap those of the others; <see cref="Confirm"/> then gives each.</summary>
    /// <param name="reads">The reads, at most <see cref="BatchLength"/>.</param>
    internal void FindTogether(ReadOnlySpan<TagRead> reads)
    {
        Span<byte> positions = stackalloc byte[BatchLength];
        for (int i = 0; i < reads.Length; i++)
        {
            positions[i] = (byte)i;
        }

        FindTogether(reads, positions[..reads.Length]);
    }

    /// <summary>The same for the reads at some positions only.</summary>
    /// <remarks>Two rounds, each of which asks for what the next step needs: buckets, entries.</remarks>
    [MethodImpl(MethodImplOptions.NoInlining)]
    internal void FindTogether(ReadOnlySpan<TagRead> reads, ReadOnlySpan<byte> positions)
    {
        uint[] buckets = _buckets;
        uint[] hashes = _hashes;
        int[] found = _found;
        uint mask = (uint)buckets.Length - 1;
        foreach (byte i in positions)
        {
            uint hash = HashOf(in reads[i].TagInPlace);
            hashes[i] = hash;
            Prefetch.Line(ref buckets[hash & mask]);
        }

        foreach (byte i in positions)
        {
            int candidate = Candidate(buckets, hashes[i]);
            found[i] = candidate;
            if (candidate >= 0)
            {
                Prefetch.Line(ref _entries[candidate]);
            }
        }
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private int FindOrAdd(in TagId tag, uint hash)
    {
        int found = Find(tag, hash);
        return found >= 0 ? found : Add(tag, hash);
    }

    /// <summary>Whether an entry is that of a short tag; false for every tag that is none.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static bool IsAt(in TagEntry entry, in TagId tag) => tag.TryGetShort(out ulong first, out ulong second, out byte form)
        && ((entry.FirstWord ^ first) | (entry.SecondWord ^ second) | (uint)((entry.Form & FormMask) ^ form)) == 0;

    private bool IsSame(in TagEntry entry, in TagId tag) => IsAt(entry, tag) || (!tag.TryGetShort(out _, out _, out _) && IsSameLong(entry, tag));

    // The first entry whose bucket has the bits of the hash.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static int Candidate(uint[] buckets, uint hash)
    {
        uint mask = (uint)buckets.Length - 1;
        uint upper = hash & ~NumberMask;
        for (uint at = hash & mask; ; at = (at + 1) & mask)
        {
            uint bucket = buckets[at];
            if (bucket == 0 || (bucket & ~NumberMask) == upper)
            {
                return (int)(bucket & NumberMask) - 1;
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static uint HashOf(in TagId tag) => tag.TryGetShort(out ulong first, out ulong second, out byte form)
        ? (uint)TagId.HashOfShort(first, second, form)
        : HashOfLong(tag);

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static uint HashOfLong(in TagId tag) => (uint)tag.GetHashCode();

    private uint HashOf(in TagEntry entry) => IsLong(entry)
        ? HashOf(_long[(int)entry.SecondWord])
        : (uint)TagId.HashOfShort(entry.FirstWord, entry.SecondWord, (byte)(entry.Form & FormMask));

    private int Find(in TagId tag, uint hash)
    {
        uint[] buckets = _buckets;
        uint mask = (uint)buckets.Length - 1;
        uint upper = hash & ~NumberMask;
        for (uint at = hash & mask; ; at = (at + 1) & mask)
        {
            uint bucket = buckets[at];
            int index = (int)(bucket & NumberMask) - 1;
            if (bucket == 0 || ((bucket & ~NumberMask) == upper && IsSame(_entries[index], tag)))
            {
                return index;
            }
        }
    }

    private static bool IsLong(in TagEntry entry) => (entry.Form & FormMask) == LongForm;

    [MethodImpl(MethodImplOptions.NoInlining)]
    private bool IsSameLong(in TagEntry entry, in TagId tag) => IsLong(entry) && _long[(int)entry.SecondWord].Equals(tag);

    private int Add(in TagId tag, uint hash)
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
        if (!tag.TryGetShort(out ulong first, out ulong second, out byte form))
        {
            (first, second, form) = (0, (ulong)_long.Count, LongForm);
            _long.Add(tag);
        }

        form |= _controls.Count > 0 && _controls.Contains(tag) ? ControlMark : (byte)0;
        _entries[index].Begin(first, second, form, EvidenceStore.NoLook);
        _starts[_starts.Add()] = TagStart.None;
        Place(hash, index);
        return index;
    }

    private void Grow()
    {
        _buckets = new uint[_buckets.Length * 2];
        uint[] hashes = new uint[BatchLength];
        for (int start = 0; start < _entries.Count; start += BatchLength)
        {
            int count = Math.Min(BatchLength, _entries.Count - start);
            for (int i = 0; i < count; i++)
            {
                hashes[i] = HashOf(_entries[start + i]);
                Prefetch.Line(ref _buckets[hashes[i] & (_buckets.Length - 1)]);
            }

            for (int i = 0; i < count; i++)
            {
                Place(hashes[i], start + i);
            }
        }
    }

    private void Place(uint hash, int index)
    {
        uint mask = (uint)_buckets.Length - 1;
        uint at = hash & mask;
        while (_buckets[at] != 0)
        {
            at = (at + 1) & mask;
        }

        _buckets[at] = (hash & ~NumberMask) | (uint)(index + 1);
    }
}
