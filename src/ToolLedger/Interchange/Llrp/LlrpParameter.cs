using System;
using System.Buffers.Binary;

namespace ToolLedger.Interchange.Llrp;

/// <summary>A parameter as received: its type and the bytes of its value.</summary>
/// <remarks>It refers to the bytes of its message. The default value has the type 0. Immutable.</remarks>
public readonly ref struct LlrpParameter
{
    private const int CustomPrefixLength = 8;

    private readonly bool _isFixed;

    internal LlrpParameter(int type, bool isFixed, ReadOnlySpan<byte> value)
    {
        Type = type;
        _isFixed = isFixed;
        Value = value;
    }

    /// <summary>The type: 1 to 127 for a parameter of fixed size, else up to 1023.</summary>
    public int Type { get; }

    /// <summary>What follows the type, or the type and the length.</summary>
    public ReadOnlySpan<byte> Value { get; }

    /// <summary>Whether it is a maker's own (type 1023).</summary>
    public bool IsCustom => Type == LlrpParameterType.Custom;

    /// <summary>Whose own it is, by private enterprise number; 0 when it is nobody's.</summary>
    public uint VendorId => IsCustom ? BinaryPrimitives.ReadUInt32BigEndian(Value) : 0;

    /// <summary>The maker's number for it; 0 when it is nobody's own.</summary>
    public uint Subtype => IsCustom ? BinaryPrimitives.ReadUInt32BigEndian(Value[4..]) : 0;

    /// <summary>What the maker put into it, not interpreted; empty when it is nobody's own.</summary>
    public ReadOnlySpan<byte> CustomData => IsCustom ? Value[CustomPrefixLength..] : [];

    /// <summary>Reads it as the result of an access operation (LLRP 1.1, 16.2.9.3, and ClientRequestOpSpecResult).</summary>
    /// <param name="result">The result, or the default value.</param>
    /// <returns>False when it is something else.</returns>
    public bool TryReadAccessResult(out LlrpAccessResult result)
    {
        switch (Type)
        {
            case LlrpParameterType.ReadResult or LlrpParameterType.PermalockStatusResult:
                result = new LlrpAccessResult(Type, Value[0], BinaryPrimitives.ReadUInt16BigEndian(Value[1..]), null, Value[5..]);
                return true;
            case LlrpParameterType.WriteResult or LlrpParameterType.BlockWriteResult:
                int written = BinaryPrimitives.ReadUInt16BigEndian(Value[3..]);
                result = new LlrpAccessResult(Type, Value[0], BinaryPrimitives.ReadUInt16BigEndian(Value[1..]), written, []);
                return true;
            case LlrpParameterType.KillResult or LlrpParameterType.LockResult or LlrpParameterType.BlockEraseResult
                or LlrpParameterType.RecommissionResult or LlrpParameterType.BlockPermalockResult:
                result = new LlrpAccessResult(Type, Value[0], BinaryPrimitives.ReadUInt16BigEndian(Value[1..]), null, []);
                return true;
            case LlrpParameterType.ClientRequestResult when _isFixed:
                result = new LlrpAccessResult(Type, null, BinaryPrimitives.ReadUInt16BigEndian(Value), null, []);
                return true;
            default:
                result = default;
                return false;
        }
    }
}
