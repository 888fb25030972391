using System;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>
/// The control fields in front of a tag URI (GS1 TDS 2.3, Table 12-1): attribute bits, user memory indicator and XPC words, in
/// this order and each left out when zero. Section 15.2.4 names the XPC field differently from the table; both are read, the
/// table's form is written.
/// </summary>
internal static class ControlFields
{
    internal static void Write(in MemoryUriParts parts, ref TextSink sink)
    {
        if (parts.Low != 0)
        {
            sink.Add("[att=x"u8);
            WriteHex(parts.Low, 2, ref sink);
            sink.Add((byte)']');
        }

        if (parts.UserMemory)
        {
            sink.Add("[umi=1]"u8);
        }

        if (parts.HasFirst && (parts.First != 0 || parts.HasSecond))
        {
            sink.Add("[xpc=x"u8);
            WriteHex(parts.First, 4, ref sink);
            if (parts.HasSecond)
            {
                WriteHex(parts.Second, 4, ref sink);
            }

            sink.Add((byte)']');
        }
    }

    internal static void WriteHex(uint value, int digits, ref TextSink sink)
    {
        for (int i = digits - 1; i >= 0; i--)
        {
            sink.Add(HexText.UpperDigit((value >> (4 * i)) & 15));
        }
    }

    internal static bool TryRead(ReadOnlySpan<byte> text, ref int position, ref MemoryUriParts parts, ref EpcFault fault)
    {
        int last = 0;
        while (position < text.Length && text[position] == '[')
        {
            int start = position;
            int close = text.Slice(position).IndexOf((byte)']');
            ReadOnlySpan<byte> body = close < 0 ? default : text.Slice(position + 1, close - 1);
            int order = ReadOne(body, ref parts);
            if (order <= last)
            {
                byte found = position + 1 < text.Length ? text[position + 1] : (byte)0;
                fault = new EpcFault(EpcRule.ControlField, EpcField.Control, EpcPositionUnit.Character, start, found);
                return false;
            }

            last = order;
            position += close + 1;
        }

        return true;
    }

    // The place of the field in the order, or 0 when it is none.
    private static int ReadOne(ReadOnlySpan<byte> body, ref MemoryUriParts parts)
    {
        if (body.StartsWith("att=x"u8) && TryHex(body.Slice(5), 2, out uint attributes))
        {
            parts.Low = (byte)attributes;
            return 1;
        }

        if (body.SequenceEqual("umi=1"u8) || body.SequenceEqual("umi=0"u8))
        {
            parts.UserMemory = body[4] == '1';
            return 2;
        }

        int value = body.StartsWith("xpc=x"u8) ? 5 : body.StartsWith("xpc-w1=x"u8) ? 8 : 0;
        if (value == 0)
        {
            return 0;
        }

        ReadOnlySpan<byte> digits = body.Slice(value);
        if (digits.Length == 8 && value == 5 && TryHex(digits, 8, out uint both))
        {
            parts.HasSecond = true;
            parts.Second = (ushort)both;
            parts.First = (ushort)((both >> 16) | 0x8000);
            parts.HasFirst = true;
            return both >> 31 != 0 ? 3 : 0;
        }

        if (!TryHex(digits, 4, out uint first) || first >> 15 != 0)
        {
            return 0;
        }

        parts.First = (ushort)first;
        parts.HasFirst = first != 0;
        return 3;
    }

    private static bool TryHex(ReadOnlySpan<byte> digits, int count, out uint value)
    {
        value = 0;
        foreach (byte digit in digits)
        {
            uint nibble = HexText.Nibble(digit);
            if (nibble > 15)
            {
                return false;
            }

            value = (value << 4) | nibble;
        }

        return digits.Length == count;
    }
}
