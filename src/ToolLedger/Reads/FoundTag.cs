using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace ToolLedger.Reads;

/// <summary>A short tag that was found shortly before, with the number of its entry.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly struct FoundTag
{
    private const ulong Odd = 0x9E3779B97F4A7C15UL;

    private readonly ulong _first;
    private readonly ulong _second;
    private readonly int _number;
    private readonly byte _form;

    /// <summary>Notes the entry of a short tag.</summary>
    internal FoundTag(ulong first, ulong second, byte form, int index)
    {
        (_first, _second, _form, _number) = (first, second, form, index + 1);
    }

    /// <summary>The number of the entry; -1 for none.</summary>
    internal int Index => _number - 1;

    /// <summary>Whether it is this tag that was found. A long tag has another form than every short one, so it never is.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal bool IsOf(ulong first, ulong second, byte form) => ((first ^ _first) | (second ^ _second) | (uint)(form ^ _form)) == 0 && _number > 0;

    /// <summary>Where it is kept, of 2^<paramref name="bits"/> places. Tags that share one only drive each other out, so this need not be a good hash.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static int PlaceOf(ulong first, ulong second, int bits) => (int)(((first ^ (second >> 32) ^ second) * Odd) >> (64 - bits));
}
