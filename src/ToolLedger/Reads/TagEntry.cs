using System.Runtime.CompilerServices;
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
    /// <summary>The strengths of no read.</summary>
    internal const int NoStrengths = unchecked((int)0x80008000);

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
        _strengths = NoStrengths;
        First = NoInstant;
        Recent = uint.MaxValue;
        Rest = -1;
    }

    internal void Include(short strength) => IncludeStrengths(StrengthsOf(strength));

    /// <summary>Adds strengths as they are kept here.</summary>
    internal void IncludeStrengths(int strengths) => _strengths = Stronger(_strengths, strengths);

    /// <summary>A strength as strongest and weakest. The weakest is kept as the strongest of its complement.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static int StrengthsOf(short strength) => (int)(ushort)strength | (~strength << 16);

    /// <summary>The strongest and the weakest of both. Strengths wander, so that a branch on them would be guessed wrong as often as not.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static int Stronger(int left, int right) =>
        Vector128.Max(Vector128.CreateScalarUnsafe(left).AsInt16(), Vector128.CreateScalarUnsafe(right).AsInt16()).AsInt32().ToScalar();

    /// <summary>Adds an instant later than every other of the session.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal void Extend(long at)
    {
        if (Accepted == 0)
        {
            Include(at);
        }

        Last = at;
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
