using System;

namespace ToolLedger.Identifiers;

/// <summary>Hashing of bits: one wide multiplication, keyed per process so that crafted tags cannot be made to collide.</summary>
internal static class EpcHash
{
#if NET
    // HashCode is seeded per process by the runtime.
    private static readonly ulong KeyA = Key(1);
    private static readonly ulong KeyB = Key(2);

    private static ulong Key(int number) =>
        ((ulong)(uint)HashCode.Combine(number) << 32) | (uint)HashCode.Combine(number, number);

    internal static ulong Mix(ulong high, ulong low, int bitCount)
    {
        ulong upper = Math.BigMul(high ^ KeyA, low ^ KeyB ^ (uint)bitCount, out ulong lower);
        return upper ^ lower;
    }
#else
    private const ulong KeyA = 0x9E3779B97F4A7C15UL;
    private const ulong KeyB = 0xD1B54A32D192ED03UL;

    internal static ulong Mix(ulong high, ulong low, int bitCount)
    {
        ulong hash = (high ^ KeyA) * 0xFF51AFD7ED558CCDUL;
        hash = (hash ^ (hash >> 32) ^ low ^ (uint)bitCount) * KeyB;
        return hash ^ (hash >> 32);
    }
#endif

    internal static int Fold(ulong hash, ReadOnlySpan<ulong> words)
    {
        foreach (ulong word in words)
        {
            hash = Mix(hash, word, 0);
        }

        return (int)hash;
    }
}
