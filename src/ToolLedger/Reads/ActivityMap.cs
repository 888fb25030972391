using System;

namespace ToolLedger.Reads;

/// <summary>In which slots of a session an antenna heard anything: one bit a slot.</summary>
internal sealed class ActivityMap
{
    private ulong[] _words = new ulong[4];
    private int _recent = -1;

    internal void Mark(int slot)
    {
        if (slot == _recent)
        {
            return;
        }

        _recent = slot;
        int word = slot >> 6;
        if (word >= _words.Length)
        {
            Array.Resize(ref _words, Math.Max(word + 1, _words.Length * 2));
        }

        _words[word] |= 1UL << slot;
    }

    internal bool IsMarked(int slot) => slot >> 6 < _words.Length && (_words[slot >> 6] & (1UL << slot)) != 0;

    /// <summary>In which slots any of the maps is marked.</summary>
    internal static ActivityMap Union(ReadOnlySpan<ActivityMap?> maps)
    {
        var union = new ActivityMap();
        foreach (ActivityMap? map in maps)
        {
            if (map is null)
            {
                continue;
            }

            if (map._words.Length > union._words.Length)
            {
                Array.Resize(ref union._words, map._words.Length);
            }

            for (int i = 0; i < map._words.Length; i++)
            {
                union._words[i] |= map._words[i];
            }
        }

        return union;
    }

    /// <summary>Finds the runs of at least <paramref name="shortest"/> silent slots among the first slots.</summary>
    /// <returns>How many there are; the longest, the earliest of them if several, is given back.</returns>
    internal int FindSilences(int slotCount, int shortest, out int longestFrom, out int longest)
    {
        longestFrom = longest = 0;
        int count = 0;
        int run = 0;
        for (int slot = 0; slot <= slotCount; slot++)
        {
            if (slot < slotCount && !IsMarked(slot))
            {
                run++;
                continue;
            }

            count += run >= shortest && run > 0 ? 1 : 0;
            if (run >= shortest && run > longest)
            {
                longest = run;
                longestFrom = slot - run;
            }

            run = 0;
        }

        return count;
    }
}
