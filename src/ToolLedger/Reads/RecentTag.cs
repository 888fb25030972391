using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace ToolLedger.Reads;

/// <summary>
/// A short tag that was read shortly before: the number of its entry, its latest look, and what plain reads in that look added since. That much
/// is kept here and not in the entry until <see cref="EvidenceStore.SettleRecent"/>; sums and extremes do not ask in which order they are made.
/// </summary>
[StructLayout(LayoutKind.Sequential)]
internal struct RecentTag
{
    /// <summary>How many are kept, as a power of two.</summary>
    internal const int PlaceBits = 9;

    private const ulong Odd = 0x9E3779B97F4A7C15UL;

    /// <summary>No tag: its form is none a short tag has.</summary>
    internal static RecentTag None => new() { _form = byte.MaxValue, _strengths = TagEntry.NoStrengths };

    private ulong _first;
    private ulong _second;
    private long _last;
    private int _number;

    /// <summary>Antenna and slot of the latest look.</summary>
    internal uint Look;

    private int _strengths;
    private uint _count;
    private byte _form;

    /// <summary>The number of the entry; -1 for none.</summary>
    internal readonly int Index => _number - 1;

    /// <summary>How many reads were added since.</summary>
    internal readonly uint Count => _count;

    /// <summary>The latest of these, in ticks after the origin.</summary>
    internal readonly long Last => _last;

    /// <summary>Their strengths, as <see cref="TagEntry"/> keeps them.</summary>
    internal readonly int Strengths => _strengths;

    /// <summary>Where a tag is kept. Tags that share a place only drive each other out, so this need not be a good hash.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static int PlaceOf(ulong first, ulong second) => (int)(((first ^ (second >> 32) ^ second) * Odd) >> (64 - PlaceBits));

    /// <summary>Whether it is this tag. A long tag has another form than every short one, so it never is.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal readonly bool IsOf(ulong first, ulong second, byte form) => ((first ^ _first) | (second ^ _second) | (uint)(form ^ _form)) == 0;

    /// <summary>Puts another tag here, of which nothing is to be added yet.</summary>
    internal void Become(ulong first, ulong second, byte form, int index)
    {
        (_first, _second, _form, _number) = (first, second, form, index + 1);
        Settled();
    }

    /// <summary>Adds a read in the latest look, later than all before.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal void Add(long at, in TagRead read)
    {
        _last = at;
        _count++;
        if (read.HasStrength)
        {
            _strengths = TagEntry.Stronger(_strengths, TagEntry.StrengthsOf(read.CentiDbm));
        }
    }

    /// <summary>Notes that all that was added is in the entry.</summary>
    internal void Settled()
    {
        _count = 0;
        _last = 0;
        _strengths = TagEntry.NoStrengths;
    }
}
