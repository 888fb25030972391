using System;

namespace ToolLedger.Benchmarks;

/// <summary>The only source of chance in the benchmarks' data.</summary>
internal sealed class SplitMix64(ulong seed)
{
    private ulong _state = seed;

    internal ulong Next()
    {
        ulong mixed = _state += 0x9E3779B97F4A7C15UL;
        mixed = (mixed ^ (mixed >> 30)) * 0xBF58476D1CE4E5B9UL;
        mixed = (mixed ^ (mixed >> 27)) * 0x94D049BB133111EBUL;
        return mixed ^ (mixed >> 31);
    }

    internal ulong Below(ulong limit) => (ulong)(((UInt128)Next() * limit) >> 64);

    internal int Below(int limit) => (int)Below((ulong)limit);
}
