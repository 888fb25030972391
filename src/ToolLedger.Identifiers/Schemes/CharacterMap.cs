#if NET
using System;
using System.Numerics;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>
/// The characters of the last part of a URI by class, one bit each, the first one in the least significant bit. With it a
/// codec sees all components at once instead of reading character after character.
/// </summary>
[StructLayout(LayoutKind.Auto)]
internal readonly struct CharacterMap
{
    /// <summary>The longest part that is mapped.</summary>
    internal const int MaximumLength = 64;

    private const int Half = 32;

    private CharacterMap(int length, ulong dots, ulong digits, ulong capitals, ulong smalls)
    {
        Length = length;
        Dots = dots;
        Digits = digits;
        Capitals = capitals;
        Smalls = smalls;
    }

    /// <summary>The number of characters.</summary>
    internal int Length { get; }

    internal ulong Dots { get; }

    internal ulong Digits { get; }

    /// <summary>Letters A to Z and the hyphen: with the digits, what every set of characters in EPC URIs has, and what is never escaped.</summary>
    internal ulong Capitals { get; }

    /// <summary>Letters a to z.</summary>
    internal ulong Smalls { get; }

    /// <summary>All characters.</summary>
    internal ulong All => ulong.MaxValue >> (MaximumLength - Length);

    /// <summary>Maps the text from a position to its end: 1 to 64 characters of a text of at least 32.</summary>
    internal static bool TryMap(ReadOnlySpan<byte> text, int position, out CharacterMap map)
    {
        int start = Math.Max(0, text.Length - MaximumLength);
        if (!Vector128.IsHardwareAccelerated || text.Length < Half || position < start || position >= text.Length)
        {
            map = default;
            return false;
        }

        // The two halves overlap where the text is shorter than both; the same character then gives the same bit twice.
        Vector256<byte> head = Vector256.Create(text.Slice(start));
        Vector256<byte> tail = Vector256.Create(text.Slice(text.Length - Half));
        int apart = text.Length - Half - start;
        int skip = position - start;
        map = new CharacterMap(
            text.Length - position,
            Join(IsDot(head), IsDot(tail), apart, skip),
            Join(IsDigit(head), IsDigit(tail), apart, skip),
            Join(IsCapital(head), IsCapital(tail), apart, skip),
            Join(IsSmall(head), IsSmall(tail), apart, skip));
        return true;
    }

    /// <summary>The position of the first set bit, 64 where there is none.</summary>
    internal static int First(ulong bits) => BitOperations.TrailingZeroCount(bits);

    private static ulong Join(Vector256<byte> head, Vector256<byte> tail, int apart, int skip) =>
        (head.ExtractMostSignificantBits() | ((ulong)tail.ExtractMostSignificantBits() << apart)) >> skip;

    private static Vector256<byte> IsDot(Vector256<byte> text) => Vector256.Equals(text, Vector256.Create((byte)'.'));

    private static Vector256<byte> IsDigit(Vector256<byte> text) => AtMost(text - Vector256.Create((byte)'0'), 9);

    private static Vector256<byte> IsCapital(Vector256<byte> text) =>
        AtMost(text - Vector256.Create((byte)'A'), 25) | Vector256.Equals(text, Vector256.Create((byte)'-'));

    private static Vector256<byte> IsSmall(Vector256<byte> text) => AtMost(text - Vector256.Create((byte)'a'), 25);

    private static Vector256<byte> AtMost(Vector256<byte> values, byte highest) =>
        Vector256.Equals(Vector256.Min(values, Vector256.Create(highest)), values);
}
#endif
