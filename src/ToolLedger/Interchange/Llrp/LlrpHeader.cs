using System;
using System.Buffers.Binary;
using System.Runtime.InteropServices;

namespace ToolLedger.Interchange.Llrp;

/// <summary>The 10 bytes before every message. Big-endian: 3 reserved bits, ignored on receipt; 3 bits version; 10 bits type;
/// 32 bits length with the header; 32 bits id. Source: LLRP 1.1 (2010), message header.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly struct LlrpHeader
{
    internal const int Length = 10;

    internal LlrpHeader(ReadOnlySpan<byte> bytes)
    {
        ushort first = BinaryPrimitives.ReadUInt16BigEndian(bytes);
        Version = (byte)((first >> 10) & 7);
        Type = (LlrpMessageType)(first & 0x3FF);
        MessageLength = BinaryPrimitives.ReadUInt32BigEndian(bytes[2..]);
        Id = BinaryPrimitives.ReadUInt32BigEndian(bytes[6..]);
    }

    internal byte Version { get; }

    internal LlrpMessageType Type { get; }

    internal uint MessageLength { get; }

    internal uint Id { get; }

    /// <summary>Whether the border of the message can be believed.</summary>
    internal LlrpRule Check(int lengthMax) => Version is < 1 or > 3 ? LlrpRule.UnsupportedVersion
        : MessageLength < Length ? LlrpRule.MessageTooShort
        : MessageLength > (uint)lengthMax ? LlrpRule.MessageTooLong
        : LlrpRule.None;
}
