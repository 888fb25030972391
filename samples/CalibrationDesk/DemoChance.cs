namespace CalibrationDesk;

/// <summary>The only source of chance of the invented fleet: SplitMix64 from a seed, so that every run invents the same.</summary>
internal sealed class DemoChance(ulong seed)
{
    private ulong state = seed;

    internal int Below(int limit)
    {
        ulong mixed = state += 0x9E3779B97F4A7C15UL;
        mixed = (mixed ^ (mixed >> 30)) * 0xBF58476D1CE4E5B9UL;
        mixed = (mixed ^ (mixed >> 27)) * 0x94D049BB133111EBUL;
        return (int)((mixed ^ (mixed >> 31)) % (ulong)limit);
    }

    internal bool OneIn(int count) => Below(count) == 0;
}
