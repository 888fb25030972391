using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace ToolLedger.Reads;

/// <summary>What most reads of a tag touch, in 32 bytes: lines of memory are what many tags cost. The rest is in <see cref="TagStart"/>.</summary>
[StructLayout(LayoutKind.Sequential)]
internal struct TagEntry
{
    /// <summary>The strengths of no read.</summary>
    internal const int NoStrengths = unchecked((int)0x80008000);

    /// <summary>How many accepted reads are counted here; then the count begins anew.</summary>
    internal const long CountLimit = 1L << (32 - FormBits);

    private const int FormBits = 7;
    private const uint FormMask = (1u << FormBits) - 1;
    private const uint One = 1u << FormBits;

    /// <summary>The tag's bits; for one that is no short one, its number among those.</summary>
    internal ulong FirstWord;
    internal ulong SecondWord;

    private uint _look;
    private uint _offset;
    private int _strengths;
    private uint _countAndForm;

    /// <summary>What the words are, and a mark: see <see cref="TagTable"/>. Seven bits.</summary>
    internal readonly byte Form => (byte)(_countAndForm & FormMask);

    /// <summary>How many reads were accepted since the count began anew.</summary>
    internal readonly uint Accepted => _countAndForm >> FormBits;

    /// <summary>Antenna and slot of the latest look, as <see cref="EvidenceStore"/> tells them.</summary>
    internal readonly uint Look => _look;

    /// <summary>The strongest and the weakest look; the other way round while no strength was reported.</summary>
    internal readonly short Strongest => (short)_strengths;

    internal readonly short Weakest => (short)~(_strengths >> 16);

    internal readonly bool HasStrength => Strongest >= Weakest;

    /// <summary>Begins with nothing known of a tag.</summary>
    internal void Begin(ulong first, ulong second, byte form, uint noLook)
    {
        (FirstWord, SecondWord, _countAndForm) = (first, second, form);
        (_look, _offset) = (noLook, 0);
        _strengths = NoStrengths;
    }

    /// <summary>The latest instant, in ticks after the origin.</summary>
    internal readonly long Last(long slotLength) => ((_look & (LookKey.SlotLimit - 1)) * slotLength) + _offset;

    /// <summary>Notes the latest look.</summary>
    /// <param name="look">Antenna and slot.</param>
    /// <param name="offset">Ticks after the start of the slot, less than it is long.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal void MoveTo(uint look, long offset) => (_look, _offset) = (look, (uint)offset);

    /// <summary>Counts an accepted read; false when the count begins anew.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal bool TryCount() => (_countAndForm += One) >= One;

    /// <summary>Counts some accepted reads, and gives how often the count began anew.</summary>
    internal long Count(uint accepted)
    {
        long sum = (long)Accepted + accepted;
        _countAndForm = ((uint)(sum % CountLimit) << FormBits) | (_countAndForm & FormMask);
        return sum / CountLimit;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal void Include(short strength) => IncludeStrengths(StrengthsOf(strength));

    /// <summary>Adds strengths as they are kept here.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal void IncludeStrengths(int strengths) => _strengths = Stronger(_strengths, strengths);

    /// <summary>A strength as strongest and weakest. The weakest is kept as the strongest of its complement.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static int StrengthsOf(short strength) => (int)(ushort)strength | (~strength << 16);

    /// <summary>The strongest and the weakest of both. Strengths wander, so that a branch on them would be guessed wrong as often as not.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static int Stronger(int left, int right) =>
        Vector128.Max(Vector128.CreateScalarUnsafe(left).AsInt16(), Vector128.CreateScalarUnsafe(right).AsInt16()).AsInt32().ToScalar();
}
