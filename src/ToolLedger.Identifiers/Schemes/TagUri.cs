using System;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>Tag URIs (GS1 TDS 2.3, chapter 12).</summary>
internal static class TagUri
{
    private const int StartLength = 12;

    internal static void Write(EpcCodec codec, in IdentityBits bits, ref TextSink sink)
    {
        sink.Add(codec.UriStart);
        if (codec.FilterBits > 0)
        {
            sink.AddNumber(bits.Filter);
            sink.Add((byte)'.');
        }

        UriComponents.Write(codec.Grammar, bits, ref sink);
    }

    /// <summary>Reads the URI and codes it: only what the scheme can hold is valid.</summary>
    internal static bool TryRead(
        ReadOnlySpan<byte> text, ref IdentityBits bits, Span<ulong> words, out int used, ref EpcFault fault)
    {
        used = 0;
        if (text.Length > EpcFields.MaxUriLength)
        {
            return Fail(EpcRule.TextLength, EpcField.None, EpcFields.MaxUriLength, (ulong)text.Length, ref fault);
        }

        if (!text.StartsWith("urn:epc:tag:"u8))
        {
            return Fail(EpcRule.UriPrefix, EpcField.Scheme, 0, (ulong)text.Length, ref fault);
        }

        return TryReadBody(text, StartLength, ref bits, words, out used, ref fault);
    }

    /// <summary>Reads from the name of the scheme on.</summary>
    internal static bool TryReadBody(
        ReadOnlySpan<byte> text, int position, ref IdentityBits bits, Span<ulong> words, out int used, ref EpcFault fault)
    {
        used = 0;
        EpcCodec? codec = SchemeList.OfName(text.Slice(position), out int length);
        if (codec is null)
        {
            return Fail(EpcRule.SchemeName, EpcField.Scheme, position, (ulong)(text.Length - position), ref fault);
        }

        position += length + 1;
        bits.Scheme = codec.Scheme;
        if (codec.FilterBits > 0 && !TryReadFilter(codec, text, ref position, ref bits, ref fault))
        {
            return false;
        }

        int body = position;
        if (!UriComponents.TryRead(codec.Grammar, text, position, ref bits, ref fault))
        {
            return false;
        }

        if (codec.TryEncode(bits, words, out used, ref fault))
        {
            return true;
        }

        // The codec knows the field; the place in the text is found again, for the explanation only.
        fault = new EpcFault(
            fault.Rule, fault.Field, EpcPositionUnit.Character, UriComponents.PositionOf(codec.Grammar, fault.Field, text, body), fault.Found);
        return false;
    }

    private static bool TryReadFilter(
        EpcCodec codec, ReadOnlySpan<byte> text, ref int position, ref IdentityBits bits, ref EpcFault fault)
    {
        int start = position;
        uint filter = 0;
        if (position + 1 < text.Length && text[position + 1] == '.' && (uint)text[position] - '0' <= 7)
        {
            bits.Filter = (byte)(text[position] - '0');
            position += 2;
            return true;
        }

        // Two digits of a wide filter.
        if (position + 2 < text.Length && text[position + 2] == '.' && (uint)text[position] - '1' <= 8 && (uint)text[position + 1] - '0' <= 9)
        {
            filter = ((uint)(text[position] - '0') * 10) + text[position + 1] - '0';
            if (filter >> codec.FilterBits == 0)
            {
                bits.Filter = (byte)filter;
                position += 3;
                return true;
            }

            filter = 0;
        }

        while (position < text.Length && position < start + 3 && (uint)text[position] - '0' <= 9)
        {
            filter = (filter * 10) + text[position++] - '0';
        }

        if (position == start)
        {
            byte found = start < text.Length ? text[start] : (byte)0;
            return Fail(EpcRule.DecimalDigits, EpcField.Filter, start, found, ref fault);
        }

        if (position - start > 1 && text[start] == '0')
        {
            return Fail(EpcRule.NoLeadingZero, EpcField.Filter, start, '0', ref fault);
        }

        if (filter >> codec.FilterBits != 0)
        {
            return Fail(EpcRule.FilterRange, EpcField.Filter, start, filter, ref fault);
        }

        if (position == text.Length || text[position] != '.')
        {
            return Fail(EpcRule.ComponentCount, EpcField.Filter, position, 1, ref fault);
        }

        position++;
        bits.Filter = (byte)filter;
        return true;
    }

    private static bool Fail(EpcRule rule, EpcField field, int position, ulong found, ref EpcFault fault)
    {
        fault = new EpcFault(rule, field, EpcPositionUnit.Character, position, found);
        return false;
    }
}
