using System;
using System.Runtime.InteropServices;

namespace ToolLedger.Benchmarks.Reads;

/// <summary>The only source of chance in the benchmarks' data.</summary>
[StructLayout(LayoutKind.Auto)]
public struct SplitMix64(ulong seed)
{
    private ulong _state = seed;

    public ulong Next()
    {
        ulong mixed = _state += 0x9E3779B97F4A7C15UL;
        mixed = (mixed ^ (mixed >> 30)) * 0xBF58476D1CE4E5B9UL;
        mixed = (mixed ^ (mixed >> 27)) * 0x94D049BB133111EBUL;
        return mixed ^ (mixed >> 31);
    }

    public int Below(int limit) => (int)(((UInt128)Next() * (uint)limit) >> 64);
}
