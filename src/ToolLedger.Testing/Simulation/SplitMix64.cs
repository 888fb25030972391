using System;
using System.Text;

namespace ToolLedger.Testing.Simulation;

/// <summary>SplitMix64: the only source of chance in this package, with the same bits on every machine. Not thread-safe.</summary>
internal sealed class SplitMix64
{
    private ulong _state;

    public SplitMix64(ulong seed) => _state = seed;

    /// <summary>A generator of its own for one named subject, so that adding or removing a subject changes no other subject's draws.</summary>
    public static SplitMix64 ForSubject(ulong seed, string subject, int pass)
    {
        // FNV-1a over the UTF-8 bytes, stirred once more by the generator's own mixer.
        ulong hash = 14695981039346656037UL;
        foreach (byte value in Encoding.UTF8.GetBytes(subject))
        {
            hash = (hash ^ value) * 1099511628211UL;
        }

        return new SplitMix64(new SplitMix64(seed ^ hash).Next() + (ulong)pass);
    }

    public ulong Next()
    {
        ulong z = _state += 0x9E3779B97F4A7C15UL;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        return z ^ (z >> 31);
    }

    /// <summary>Uniform in [0, 1), 53 bits.</summary>
    public double Unit() => (Next() >> 11) * (1.0 / (1UL << 53));

    /// <summary>Uniform in [0, bound).</summary>
    public int Below(int bound) => (int)(((UInt128)Next() * (ulong)bound) >> 64);

    public bool Chance(double share) => Unit() < share;

    /// <summary>Uniform in [from, to), in whole ticks.</summary>
    public TimeSpan Between(TimeSpan from, TimeSpan to) => from + TimeSpan.FromTicks((long)(Unit() * (to - from).Ticks));

    /// <summary>Exponential with mean 1, by von Neumann's comparison method: no logarithm, so no difference between machines.</summary>
    public double Exponential()
    {
        for (int whole = 0; ; whole++)
        {
            double first = Unit();
            double last = first;
            bool isOdd = true;
            for (double next = Unit(); next < last; next = Unit())
            {
                last = next;
                isOdd = !isOdd;
            }

            if (isOdd)
            {
                return whole + first;
            }
        }
    }

    /// <summary>Nearly normal with mean 0 and standard deviation 1: twelve uniforms, so never beyond six.</summary>
    public double Bell()
    {
        double sum = -6;
        for (int i = 0; i < 12; i++)
        {
            sum += Unit();
        }

        return sum;
    }
}
