using System;
using System.Buffers;

namespace ToolLedger.Reads;

/// <summary>Sorts looks byte by byte from the least significant one on, leaving out bytes in which all looks agree.</summary>
internal static class LookSort
{
    private const int SmallCount = 512;

    internal static void Sort(Span<ulong> looks)
    {
        if (looks.Length < SmallCount)
        {
            looks.Sort();
            return;
        }

        ulong[] rented = ArrayPool<ulong>.Shared.Rent(looks.Length);
        Span<int> counts = stackalloc int[sizeof(ulong) << 8];
        CountBytes(looks, counts);
        SortByBytes(looks, rented.AsSpan(0, looks.Length), counts);
        ArrayPool<ulong>.Shared.Return(rented);
    }

    private static void SortByBytes(Span<ulong> looks, Span<ulong> room, Span<int> counts)
    {
        Span<ulong> from = looks;
        Span<ulong> to = room;
        bool isElsewhere = false;
        for (int place = 0; place < sizeof(ulong); place++)
        {
            Span<int> starts = counts.Slice(place << 8, 256);
            if (starts[(int)(from[0] >> (8 * place)) & 0xFF] == looks.Length)
            {
                continue;
            }

            int sum = 0;
            foreach (ref int start in starts)
            {
                (start, sum) = (sum, sum + start);
            }

            foreach (ulong look in from)
            {
                to[starts[(int)(look >> (8 * place)) & 0xFF]++] = look;
            }

            Span<ulong> other = from;
            from = to;
            to = other;
            isElsewhere = !isElsewhere;
        }

        if (isElsewhere)
        {
            from.CopyTo(looks);
        }
    }

    private static void CountBytes(ReadOnlySpan<ulong> looks, Span<int> counts)
    {
        counts.Clear();
        foreach (ulong look in looks)
        {
            for (int place = 0; place < sizeof(ulong); place++)
            {
                counts[(place << 8) | ((int)(look >> (8 * place)) & 0xFF)]++;
            }
        }
    }
}
