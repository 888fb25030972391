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

    /// <summary>Finds the silences of a session that may be longer than the limit. A look may stand anywhere in its slot, so that the silence between two looks may reach from the start of the slot of the first
    /// to the end of that of the second. Looks in neighbouring slots are never a silence.</summary>
    /// <param name="slotLength">The length of a slot, in ticks.</param>
    /// <param name="length">The length of the session, in ticks.</param>
    /// <param name="limit">The longest silence that is none, in ticks.</param>
    /// <param name="from">Where the longest may have begun, the earliest of them if several, in ticks from the start of the session.</param>
    /// <param name="longest">How long that may have been, in ticks.</param>
    /// <returns>How many there are.</returns>
    internal int FindSilences(long slotLength, long length, long limit, out long from, out long longest)
    {
        from = longest = 0;
        int slotCount = (int)Math.Min(int.MaxValue, (length + slotLength - 1) / slotLength);
        int count = 0;
        int run = 0;
        for (int slot = 0; slot <= slotCount; slot++)
        {
            if (slot < slotCount && !IsMarked(slot))
            {
                run++;
                continue;
            }

            long start = Math.Max(0, (slot - run - 1) * slotLength);
            long silence = Math.Min(length, (slot + 1) * slotLength) - start;
            count += run > 0 && silence > limit ? 1 : 0;
            if (run > 0 && silence > limit && silence > longest)
            {
                longest = silence;
                from = start;
            }

            run = 0;
        }

        return count;
    }
}
