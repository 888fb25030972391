using System;

namespace ToolLedger.Benchmarks.Identifiers;

/// <summary>SplitMix64: the only source of chance in the corpus.</summary>
internal sealed class SplitMixDraw(ulong seed)
{
    private ulong _state = seed;

    internal ulong Next()
    {
        ulong z = _state += 0x9E3779B97F4A7C15UL;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        return z ^ (z >> 31);
    }

    internal ulong Below(ulong limit) => (ulong)(((UInt128)Next() * limit) >> 64);

    internal int Below(int limit) => (int)Below((ulong)limit);
}
