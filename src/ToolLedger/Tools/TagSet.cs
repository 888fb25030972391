using System;
using System.Collections.Generic;
using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace ToolLedger.Tools;

/// <summary>
/// Some tags, such as those of one kit, arranged for quick comparison with what a reader hears: for a display that counts up
/// while a bag is presented. It says which tags were heard and nothing more: not heard is not missing, and heard is not yet
/// in the bag. Conclusions are the reconciler's.
/// </summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class TagSet
{
    /// <summary>The most tags of one set.</summary>
    public const int MaxCount = 16_384;

    internal const int SeedCount = 64;

    // Tags chosen to stand in each other's way under one seed do not under the others, so a seed is given up early.
    private const int StepsPerTag = 8;

    private readonly TagId[] _tags;

    // Two words of each tag, close together: what is compared first, and for tags of up to 128 bits everything but the form.
    private readonly ulong[] _words;

    // The form of all tags, where it is one and they are short; else -1.
    private readonly int _form;

    // By hash: the number of a tag plus 1, or 0. A tag stands at the first free place from its own on.
    private readonly ushort[] _places;
    private readonly ulong _seed;
    private readonly ulong _factor;
    private readonly int _shift;
    private readonly uint _mask;

    /// <summary>Makes a set.</summary>
    /// <param name="tags">The tags, at most 16,384; one given twice counts once.</param>
    /// <exception cref="ArgumentNullException"><paramref name="tags"/> is null.</exception>
    /// <exception cref="ArgumentException">There are too many.</exception>
    public TagSet(IEnumerable<TagId> tags)
    {
        ArgumentNullException.ThrowIfNull(tags);
        var distinct = new HashSet<TagId>();
        var list = new List<TagId>();
        foreach (TagId tag in tags)
        {
            if (distinct.Add(tag))
            {
                list.Add(tag);
            }

            if (list.Count > MaxCount)
            {
                throw new ArgumentException("A tag set holds at most 16,384 tags.", nameof(tags));
            }
        }

        _tags = [.. list];
        _words = new ulong[2 * _tags.Length];
        _form = _tags.Length > 0 && _tags[0].TryGetShort(out _, out _, out byte form) ? form : -1;
        for (int i = 0; i < _tags.Length; i++)
        {
            int own = WordsOf(_tags[i], out _words[2 * i], out _words[(2 * i) + 1]);
            _form = own == _form ? _form : -1;
        }

        int bits = Math.Max(2, BitOperations.Log2((uint)Math.Max(1, _tags.Length)) + 2);
        _shift = 64 - bits;
        _seed = BestSeed(bits);
        _factor = FactorOf(_seed);
        _places = new ushort[1 << bits];
        _mask = (1u << bits) - 1;
        StepCount = Arrange(_seed, _places, int.MaxValue);
        Tags = Array.AsReadOnly(_tags);
    }

    /// <summary>The tags in the order in which they were given, each once.</summary>
    public IReadOnlyList<TagId> Tags { get; }

    /// <summary>How many tags there are.</summary>
    public int Count => _tags.Length;

    /// <summary>How many steps aside were taken to place the tags: what finding them costs.</summary>
    internal int StepCount { get; }

    /// <summary>The number of a tag in <see cref="Tags"/>.</summary>
    /// <param name="tag">The tag.</param>
    /// <returns>The number, or -1.</returns>
    public int IndexOf(in TagId tag) => Find(tag);

    /// <summary>Compares what was heard with the set, without allocating.</summary>
    /// <param name="heard">The tags heard, in any order; a tag heard twice counts as heard.</param>
    /// <param name="wasHeard">Gets true at the number of each tag of the set that was heard, and false elsewhere; at least <see cref="Count"/> long.</param>
    /// <param name="otherCount">How many entries of <paramref name="heard"/> are not in the set.</param>
    /// <returns>How many tags of the set were heard.</returns>
    /// <exception cref="ArgumentException"><paramref name="wasHeard"/> is too short.</exception>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public int Compare(ReadOnlySpan<TagId> heard, Span<bool> wasHeard, out int otherCount)
    {
        if (wasHeard.Length < _tags.Length)
        {
            throw new ArgumentException("There must be room for every tag of the set.", nameof(wasHeard));
        }

        wasHeard = wasHeard[.._tags.Length];
        wasHeard.Clear();
        int count = 0;
        int others = 0;
        foreach (ref readonly TagId tag in heard)
        {
            int index = Find(tag);
            if (index < 0)
            {
                others++;
            }
            else
            {
                ref bool was = ref wasHeard[index];
                count += was ? 0 : 1;
                was = true;
            }
        }

        otherCount = others;
        return count;
    }

    // Most sets hold short tags of one form only, and are asked for such.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private int Find(in TagId tag) => tag.TryGetShort(out ulong first, out ulong second, out byte form) && form == _form
        ? FindWords(first, second)
        : FindWithCare(tag);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private int FindWords(ulong first, ulong second)
    {
        ref ushort places = ref MemoryMarshal.GetArrayDataReference(_places);
        ref ulong words = ref MemoryMarshal.GetArrayDataReference(_words);

        // A place is inside the table by the shift or the mask, and holds the number of a tag of the set or nothing.
        for (uint at = PlaceOf(first, second, _seed, _factor); ; at = (at + 1) & _mask)
        {
            uint number = Unsafe.Add(ref places, at);
            if (number == 0)
            {
                return -1;
            }

            ref ulong own = ref Unsafe.Add(ref words, (number - 1) * 2);
            if (((own ^ first) | (Unsafe.Add(ref own, 1) ^ second)) == 0)
            {
                return (int)number - 1;
            }
        }
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private int FindWithCare(in TagId tag)
    {
        WordsOf(tag, out ulong first, out ulong second);
        for (uint at = PlaceOf(first, second, _seed, _factor); ; at = (at + 1) & _mask)
        {
            int index = _places[at] - 1;
            if (index < 0 || (_words[2 * index] == first && _words[(2 * index) + 1] == second && _tags[index].Equals(tag)))
            {
                return index;
            }
        }
    }

    /// <summary>
    /// Each factor is odd and no word of a tag, so neither word can cancel the other. The seed comes before the first product and is in the last factor, so that tags that fall together under one seed part
    /// under another, whichever word they differ in.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private uint PlaceOf(ulong first, ulong second, ulong seed, ulong factor)
    {
        ulong mixed = (first ^ seed) * 0xFF51AFD7ED558CCDUL;
        return (uint)((((mixed ^ (mixed >> 32)) + second) * factor) >> _shift);
    }

    /// <summary>The last factor under a seed: odd.</summary>
    internal static ulong FactorOf(ulong seed) => 0xC4CEB9FE1A85EC53UL ^ (seed << 1);

    // The form of a short tag; -1 for a long one, whose words are its hash.
    private static int WordsOf(in TagId tag, out ulong first, out ulong second)
    {
        if (tag.TryGetShort(out first, out second, out byte form))
        {
            return form;
        }

        (first, second) = ((uint)tag.GetHashCode(), 0);
        return -1;
    }

    internal static ulong SeedOf(int number) => (ulong)number * 0xD1B54A32D192ED03UL;

    // The arrangement depends on the seed, what is found does not; the fewest steps aside win.
    private ulong BestSeed(int bits)
    {
        ulong best = 0;
        int fewest = (StepsPerTag * _tags.Length) + 1;
        var places = new ushort[1 << bits];
        for (int seed = 0; seed < SeedCount && fewest > 0; seed++)
        {
            ulong wide = SeedOf(seed);
            int steps = Arrange(wide, places, fewest);
            if (steps < fewest)
            {
                (best, fewest) = (wide, steps);
            }

            places.AsSpan().Clear();
        }

        return best;
    }

    // Places the tags and counts the steps aside; gives up at a number of steps.
    private int Arrange(ulong seed, ushort[] places, int limit)
    {
        int steps = 0;
        ulong factor = FactorOf(seed);
        for (int i = 0; i < _tags.Length && steps < limit; i++)
        {
            uint at = PlaceOf(_words[2 * i], _words[(2 * i) + 1], seed, factor);
            while (places[at] != 0)
            {
                at = (at + 1) & ((uint)places.Length - 1);
                steps++;
            }

            places[at] = (ushort)(i + 1);
        }

        return steps;
    }
}
