using System;
using System.Runtime.InteropServices;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>One component of a pattern: anything, one value, or a range of numbers.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly struct PatternComponent : IEquatable<PatternComponent>
{
    private readonly EpcComponent _low;
    private readonly EpcComponent _high;
    private readonly bool _any;
    private readonly bool _padded;

    private PatternComponent(bool any, in EpcComponent low, in EpcComponent high, bool padded)
    {
        _any = any;
        _low = low;
        _high = high;
        _padded = padded;
    }

    internal static PatternComponent Anything => new(true, default, default, false);

    internal bool IsAny => _any;

    /// <summary>The length of the value; 0 for anything.</summary>
    internal int LengthOfValue => _low.Length;

    internal static PatternComponent Value(in EpcComponent value) => new(false, value, value, false);

    /// <summary>Numbers from the lowest to the highest; padded ones have a fixed number of digits too.</summary>
    internal static PatternComponent Range(in EpcComponent low, in EpcComponent high, bool padded) => new(false, low, high, padded);

    internal bool Matches(in EpcComponent component)
    {
        if (_any || _low == _high)
        {
            return _any || component == _low;
        }

        return component.IsNumber && component.Number >= _low.Number && component.Number <= _high.Number
            && (!_padded || component.Length == _low.Length);
    }

    internal void Write(ref TextSink sink)
    {
        if (_any)
        {
            sink.Add((byte)'*');
        }
        else if (_low == _high)
        {
            sink.AddEscaped(_low);
        }
        else
        {
            sink.Add((byte)'[');
            sink.AddEscaped(_low);
            sink.Add((byte)'-');
            sink.AddEscaped(_high);
            sink.Add((byte)']');
        }
    }

    public bool Equals(PatternComponent other) => _any == other._any && _low == other._low && _high == other._high;

    public override bool Equals(object? obj) => obj is PatternComponent other && Equals(other);

    public override int GetHashCode() => _low.GetHashCode() ^ (_high.GetHashCode() * 3) ^ (_any ? 1 : 0);
}
