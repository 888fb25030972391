using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace ToolLedger.Reads;

/// <summary>
/// What is kept of every tag while reads come in: 46 bytes, so that with its place in the table and its first look a tag takes
/// no more than 64. Instants are ticks after the origin of the store, below 2^48.
/// </summary>
[StructLayout(LayoutKind.Sequential, Pack = 2)]
internal struct TagEntry
{
    private const long NoInstant = (1L << 48) - 1;

    /// <summary>The tag's bits; for one that is no short one, its number among those.</summary>
    internal ulong FirstWord;
    internal ulong SecondWord;

    /// <summary>Antenna and slot of the look added last, where these fit 32 bits.</summary>
    internal uint Recent;

    internal uint Accepted;

    /// <summary>The number of what few tags have, or -1.</summary>
    internal int Rest;

    private uint _firstLow;
    private uint _lastLow;
    private ushort _firstHigh;
    private ushort _lastHigh;
    /// <summary>The strongest and the weakest look; the other way round while no strength was reported.</summary>
    internal readonly short Strongest => (short)_strengths;

    internal readonly short Weakest => (short)~(_strengths >> 16);

    private int _strengths;

    /// <summary>What the words are, and a mark: see <see cref="TagTable"/>.</summary>
    internal byte Form;

    /// <summary>The earliest instant of a look.</summary>
    internal long First
    {
        readonly get => ((long)_firstHigh << 32) | _firstLow;
        private set => (_firstHigh, _firstLow) = ((ushort)(value >> 32), (uint)value);
    }

    /// <summary>The latest instant of a look.</summary>
    internal long Last
    {
        readonly get => ((long)_lastHigh << 32) | _lastLow;
        private set => (_lastHigh, _lastLow) = ((ushort)(value >> 32), (uint)value);
    }

    /// <summary>Whether there was a look.</summary>
    internal readonly bool IsSeen => First <= Last;

    internal readonly bool HasStrength => Strongest >= Weakest;

    internal void Clear()
    {
        _strengths = unchecked((int)0x80008000);
        First = NoInstant;
        Recent = uint.MaxValue;
        Rest = -1;
    }

    /// <summary>Moves the latest instant on, which is known to be earlier.</summary>
    internal void ExtendTo(long at) => Last = at;

    internal void Include(short strength)
    {
        // Strengths wander, so that a branch on them would be guessed wrong as often as not. The weakest is kept as the strongest of its complement.
        Vector128<short> both = Vector128.Max(Vector128.CreateScalarUnsafe(_strengths).AsInt16(), Vector128.CreateScalarUnsafe((int)(ushort)strength | (~strength << 16)).AsInt16());
        _strengths = both.AsInt32().ToScalar();
    }

    internal void Include(long at)
    {
        if (at > Last)
        {
            Last = at;
        }

        if (at < First)
        {
            First = at;
        }
    }
}
