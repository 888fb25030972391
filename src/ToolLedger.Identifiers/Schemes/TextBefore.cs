#if NET
using System;
using System.Buffers.Binary;
using System.Runtime.CompilerServices;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>
/// Short runs of characters read backwards from their end, in steps of eight and without a branch on their length: what stands
/// in front of the run is read with it and cleared. Every text has a URI prefix in front, so there is always something to read.
/// </summary>
internal static class TextBefore
{
    /// <summary>The number that 0 to 16 digits in front of a position write. The caller knows that they are digits.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static ulong Number16(ReadOnlySpan<byte> text, int end, int count) =>
        (Eight(text, end - 8, count - 8) * 100_000_000) + Eight(text, end, count);

    /// <summary>The number that 0 to 19 digits in front of a position write. The caller knows that they are digits.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static ulong Number19(ReadOnlySpan<byte> text, int end, int count) =>
        (Eight(text, end - 16, count - 16) * 10_000_000_000_000_000) + Number16(text, end, count);

    /// <summary>The last 0 to 8 characters in front of a position, the last one in the least significant byte; zeros in front.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static ulong Characters(ReadOnlySpan<byte> text, int end, int count)
    {
        int kept = Math.Min(Math.Max(count, 0), 8);
        ulong word = BinaryPrimitives.ReadUInt64BigEndian(text.Slice(end - 8));
        return word & ~((ulong.MaxValue << (4 * kept)) << (4 * kept));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static ulong Eight(ReadOnlySpan<byte> text, int end, int count)
    {
        int kept = Math.Min(Math.Max(count, 0), 8);
        ulong word = BinaryPrimitives.ReadUInt64LittleEndian(text.Slice(end - 8)) ^ 0x3030303030303030UL;
        return DecimalText.ValueOfEight(word & ~((ulong.MaxValue >> (4 * kept)) >> (4 * kept)));
    }
}
#endif
