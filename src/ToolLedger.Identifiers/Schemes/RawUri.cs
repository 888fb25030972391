using System;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>Raw URIs of EPCs (GS1 TDS 2.3, chapter 12): bits that need no decoding.</summary>
internal static class RawUri
{
    internal static int LengthOf(Epc epc)
    {
        int bits = PaddedBits(epc);
        return "urn:epc:raw:".Length + DecimalText.CountDigits((ulong)bits) + ".x".Length + (bits / 4);
    }

    internal static string Format(Epc epc)
    {
        int length = LengthOf(epc);
        Span<char> text = length <= 512 ? stackalloc char[length] : new char[length];
        TryFormat(epc, text, out _);
        return text.ToString();
    }

    internal static bool TryFormat(Epc epc, Span<byte> destination, out int written)
    {
        int length = LengthOf(epc);
        if (destination.Length < length)
        {
            written = 0;
            return false;
        }

        int bits = PaddedBits(epc);
        Span<byte> start = stackalloc byte[32];
        var sink = new TextSink(start);
        sink.Add("urn:epc:raw:"u8);
        sink.AddNumber((ulong)bits);
        sink.Add(".x"u8);
        start.Slice(0, sink.Length).CopyTo(destination);
        epc.TryFormatHex(destination.Slice(sink.Length), out int digits);
        destination.Slice(sink.Length + digits, (bits / 4) - digits).Fill((byte)'0');
        written = length;
        return true;
    }

    internal static bool TryFormat(Epc epc, Span<char> destination, out int written)
    {
        int length = LengthOf(epc);
        if (destination.Length < length)
        {
            written = 0;
            return false;
        }

        int bits = PaddedBits(epc);
        Span<byte> start = stackalloc byte[32];
        var sink = new TextSink(start);
        sink.Add("urn:epc:raw:"u8);
        sink.AddNumber((ulong)bits);
        sink.Add(".x"u8);
        AsciiText.TryWiden(start.Slice(0, sink.Length), destination, out _);
        epc.TryFormatHex(destination.Slice(sink.Length), out int digits);
        destination.Slice(sink.Length + digits, (bits / 4) - digits).Fill('0');
        written = length;
        return true;
    }

    /// <summary>Reads <c>urn:epc:raw:N.xHEX</c>, <c>urn:epc:raw:N.xAFI.xHEX</c>, and the deprecated decimal form
    /// <c>urn:epc:raw:N.DECIMAL</c>.</summary>
    internal static bool TryRead(ReadOnlySpan<byte> text, ref MemoryUriParts parts, out Epc epc, ref EpcFault fault)
    {
        epc = default;
        if (!text.StartsWith("urn:epc:raw:"u8))
        {
            return Fail(EpcRule.UriPrefix, EpcField.Scheme, 0, (ulong)text.Length, ref fault);
        }

        int position = "urn:epc:raw:".Length;
        int dot = text.Slice(position).IndexOf((byte)'.');
        if (dot is < 1 or > 5 || !DecimalText.TryRead(text.Slice(position, dot), out ulong count) || count > Epc.MaxBitCount + 1)
        {
            return Fail(EpcRule.LengthField, EpcField.Length, position, (ulong)Math.Max(dot, 0), ref fault);
        }

        position += dot + 1;
        ReadOnlySpan<byte> rest = text.Slice(position);
        if (rest.Length > 3 && rest[0] == 'x' && rest[3] == '.')
        {
            uint afi = (HexText.Nibble(rest[1]) << 4) | HexText.Nibble(rest[2]);
            if (afi > 0xFF)
            {
                return Fail(EpcRule.HexDigits, EpcField.Control, position + 1, rest[1], ref fault);
            }

            parts.Toggle = true;
            parts.Low = (byte)afi;
            position += 4;
            rest = text.Slice(position);
        }

        return rest.Length > 0 && rest[0] == 'x'
            ? TryReadHex(rest.Slice(1), (int)count, position + 1, out epc, ref fault)
            : TryReadDecimal(rest, (int)count, position, out epc, ref fault);
    }

    private static bool TryReadHex(ReadOnlySpan<byte> digits, int count, int position, out Epc epc, ref EpcFault fault)
    {
        if (digits.Length != (count + 3) / 4)
        {
            epc = default;
            return Fail(EpcRule.DigitCount, EpcField.Value, position, (ulong)digits.Length, ref fault);
        }

        // The widest value that exists is 65,535 bits; written out it is 65,536.
        if (!Epc.TryParse(digits.Length == 16_384 ? digits.Slice(0, 16_383) : digits, out Epc padded))
        {
            epc = default;
            return Fail(EpcRule.HexDigits, EpcField.Value, position, (ulong)digits.Length, ref fault);
        }

        if (count == padded.BitCount)
        {
            epc = padded;
            return true;
        }

        Span<byte> bytes = padded.ByteCount <= 512 ? stackalloc byte[512] : new byte[padded.ByteCount];
        padded.TryWriteBytes(bytes, out _);
        return Epc.TryFromBytes(bytes, count, out epc) || Fail(EpcRule.MaximumLength, EpcField.Value, position, (ulong)count, ref fault);
    }

    // Deprecated: the bits as one decimal number. Only as many bits as a tag can hold.
    private static bool TryReadDecimal(ReadOnlySpan<byte> digits, int count, int position, out Epc epc, ref EpcFault fault)
    {
        epc = default;
        if (count is 0 or > Bits.MaximumDecoded || digits.Length is 0 or > 150)
        {
            return Fail(EpcRule.DigitCount, EpcField.Value, position, (ulong)digits.Length, ref fault);
        }

        Span<byte> bytes = stackalloc byte[64];
        int bytesUsed = (count + 7) / 8;
        for (int i = 0; i < digits.Length; i++)
        {
            uint carry = (uint)digits[i] - '0';
            if (carry > 9)
            {
                return Fail(EpcRule.DecimalDigits, EpcField.Value, position + i, digits[i], ref fault);
            }

            for (int at = bytesUsed - 1; at >= 0; at--)
            {
                carry += bytes[at] * 10u;
                bytes[at] = (byte)carry;
                carry >>= 8;
            }

            if (carry != 0)
            {
                return Fail(EpcRule.FitsBits, EpcField.Value, position, (ulong)count, ref fault);
            }
        }

        return ShiftLeft(bytes.Slice(0, bytesUsed), (bytesUsed * 8) - count)
            ? Epc.TryFromBytes(bytes.Slice(0, bytesUsed), count, out epc)
            : Fail(EpcRule.FitsBits, EpcField.Value, position, (ulong)count, ref fault);
    }

    // False when a bit that is set falls out at the front.
    private static bool ShiftLeft(Span<byte> bytes, int bits)
    {
        if (bits == 0)
        {
            return true;
        }

        bool lost = bytes[0] >> (8 - bits) != 0;
        for (int i = 0; i < bytes.Length; i++)
        {
            int next = i + 1 < bytes.Length ? bytes[i + 1] >> (8 - bits) : 0;
            bytes[i] = (byte)((bytes[i] << bits) | next);
        }

        return !lost;
    }

    private static bool Fail(EpcRule rule, EpcField field, int position, ulong found, ref EpcFault fault)
    {
        fault = new EpcFault(rule, field, EpcPositionUnit.Character, position, found);
        return false;
    }

    private static int PaddedBits(Epc epc) => (epc.BitCount + 15) & ~15;
}
