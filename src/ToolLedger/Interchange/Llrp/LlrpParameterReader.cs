using System;
using System.Buffers.Binary;

namespace ToolLedger.Interchange.Llrp;

/// <summary>Steps over the parameters that lie one after another in an enclosing one.</summary>
/// <remarks>First bit 1: 7 bits type and a value of fixed size. First bit 0: 6 reserved bits, 10 bits type, 16 bits length with these four
/// bytes. Source: LLRP 1.1 (2010), parameter encodings.</remarks>
internal ref struct LlrpParameterReader
{
    private const int HeaderLength = 4;
    private const byte FixedMark = 0x80;

    private readonly ReadOnlySpan<byte> _bytes;
    private int _next;

    internal LlrpParameterReader(ReadOnlySpan<byte> bytes, int start)
    {
        _bytes = bytes;
        _next = start;
    }

    /// <summary>Where the parameter begins.</summary>
    internal int Start { get; private set; }

    /// <summary>Where its value begins.</summary>
    internal int ValueStart { get; private set; }

    /// <summary>Where it ends, and the next one begins.</summary>
    internal readonly int End => _next;

    internal int Type { get; private set; }

    internal bool IsFixed { get; private set; }

    internal readonly ReadOnlySpan<byte> Value => _bytes[ValueStart.._next];

    /// <summary>What stopped the reader; <see cref="LlrpRule.None"/> at the end.</summary>
    internal LlrpRule Rule { get; private set; }

    /// <summary>The type or length that broke the rule.</summary>
    internal int Found { get; private set; }

    internal bool TryRead()
    {
        Start = _next;
        int left = _bytes.Length - _next;
        if (left == 0)
        {
            return false;
        }

        byte first = _bytes[_next];
        if (first >= FixedMark)
        {
            Type = first & (FixedMark - 1);
            IsFixed = true;
            ValueStart = _next + 1;
            int size = LlrpParameterType.FixedSize(Type);
            return size == 0 ? Stop(LlrpRule.UnknownParameter, Type)
                : size >= left ? Stop(LlrpRule.ParameterOverrun, Type)
                : MoveTo(ValueStart + size);
        }

        if (left < HeaderLength)
        {
            return Stop(LlrpRule.StrayBytes, left);
        }

        IsFixed = false;
        Type = BinaryPrimitives.ReadUInt16BigEndian(_bytes[_next..]) & 0x3FF;
        int length = BinaryPrimitives.ReadUInt16BigEndian(_bytes[(_next + 2)..]);
        ValueStart = _next + HeaderLength;
        return length < LlrpParameterType.LengthMin(Type) ? Stop(LlrpRule.ParameterTooShort, length)
            : length > left ? Stop(LlrpRule.ParameterOverrun, length)
            : MoveTo(_next + length);
    }

    private bool MoveTo(int next)
    {
        _next = next;
        return true;
    }

    private bool Stop(LlrpRule rule, int found)
    {
        Rule = rule;
        Found = found;
        _next = _bytes.Length;
        return false;
    }
}
