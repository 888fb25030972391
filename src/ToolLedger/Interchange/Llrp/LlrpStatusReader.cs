using System;
using System.Buffers.Binary;
using System.Diagnostics.CodeAnalysis;
using System.Text;

namespace ToolLedger.Interchange.Llrp;

/// <summary>Reads the LLRPStatus that responses and error messages begin with. Source: LLRP 1.1 (2010), LLRPStatus.</summary>
internal static class LlrpStatusReader
{
    internal static bool TryRead(in LlrpMessage message, [NotNullWhen(true)] out LlrpStatus? status, out LlrpFault fault)
    {
        status = null;
        var reader = new LlrpParameterReader(message.Body, 0);
        if (!reader.TryRead() || reader.IsFixed || reader.Type != LlrpParameterType.Status)
        {
            LlrpRule rule = reader.Rule == LlrpRule.None ? LlrpRule.MissingData : reader.Rule;
            fault = message.FaultAt(rule, reader.Start, (ulong)reader.Found);
            return false;
        }

        ReadOnlySpan<byte> value = reader.Value;
        int length = BinaryPrimitives.ReadUInt16BigEndian(value[2..]);
        if (length > value.Length - 4)
        {
            fault = message.FaultAt(LlrpRule.CountMismatch, reader.Start, (ulong)length);
            return false;
        }

        fault = default;
        status = new LlrpStatus(BinaryPrimitives.ReadUInt16BigEndian(value), Encoding.UTF8.GetString(value.Slice(4, length)));
        return true;
    }
}
