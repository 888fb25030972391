using System;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace ToolLedger.Interchange;

/// <summary>What stood between two values of a line, and which value came next.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly struct QuickJsonStep
{
    private readonly Vector128<byte> _start;
    private readonly Vector128<byte> _mask;
    private readonly byte[]? _rest;

    internal QuickJsonStep(ReadOnlySpan<byte> text, int next)
    {
        int length = Vector128<byte>.Count;
        Span<byte> start = stackalloc byte[length];
        Span<byte> mask = stackalloc byte[length];
        start.Clear();
        mask.Clear();
        text[..Math.Min(text.Length, length)].CopyTo(start);
        mask[..Math.Min(text.Length, length)].Fill(byte.MaxValue);
        _start = Vector128.Create((ReadOnlySpan<byte>)start);
        _mask = Vector128.Create((ReadOnlySpan<byte>)mask);
        _rest = text.Length > length ? text[length..].ToArray() : null;
        Length = text.Length;
        Next = next;
    }

    /// <summary>How many bytes it has; 0 for no step.</summary>
    internal int Length { get; }

    /// <summary>Which value follows.</summary>
    internal int Next { get; }

    /// <summary>Whether these bytes stand there; as many as it has, and 16 in any case, may be read.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal bool Fits(ref byte text) => ((Vector128.LoadUnsafe(ref text) ^ _start) & _mask) == Vector128<byte>.Zero && (_rest is null || RestFits(ref text));

    private bool RestFits(ref byte text) =>
        MemoryMarshal.CreateReadOnlySpan(ref Unsafe.Add(ref text, Vector128<byte>.Count), _rest!.Length).SequenceEqual(_rest);
}
