namespace ToolLedger.Identifiers.Tests;

/// <summary>SplitMix64: the same draws on every platform from the same seed.</summary>
internal sealed class SplitMix(ulong seed)
{
    private ulong _state = seed;

    internal ulong Next()
    {
        ulong z = _state += 0x9E3779B97F4A7C15UL;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        return z ^ (z >> 31);
    }

    /// <summary>A number from 0 to one below the limit.</summary>
    internal int Below(int limit) => (int)(Next() % (ulong)limit);

    internal ulong Below(ulong limit) => Next() % limit;
}
