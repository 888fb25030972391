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

    /// <summary>Codes the URI without keeping its components.</summary>
    internal static bool TryEncode(ReadOnlySpan<byte> text, Span<ulong> words, out int used, ref EpcFault fault)
    {
        if (text.Length <= EpcFields.MaxUriLength && text.StartsWith("urn:epc:tag:"u8)
            && SchemeList.OfName(text.Slice(StartLength), out int length) is { } codec)
        {
            int position = StartLength + length + 1;
            if (TryReadUsualFilter(codec.FilterBits, text, ref position, out uint filter)
                && codec.TryEncodeAtOnce(text, position, filter, words, out used))
            {
                return true;
            }
        }

        return TryEncodeWithCare(text, words, out used, ref fault);
    }

    private static bool TryEncodeWithCare(ReadOnlySpan<byte> text, Span<ulong> words, out int used, ref EpcFault fault)
    {
        words.Clear();
        IdentityBits bits = default;
        return TryRead(text, ref bits, words, out used, ref fault);
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
        if (TryReadUsualFilter(codec.FilterBits, text, ref position, out uint filter))
        {
            bits.Filter = (byte)filter;
            return true;
        }

        int start = position;
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

    // One or two digits and a dot, or no filter at all. No is not an answer.
    private static bool TryReadUsualFilter(int width, ReadOnlySpan<byte> text, ref int position, out uint filter)
    {
        filter = 0;
        if (width == 0)
        {
            return true;
        }

        if (position + 2 >= text.Length)
        {
            return false;
        }

        uint first = (uint)text[position] - '0';
        if (text[position + 1] == '.' && first <= 9 && first >> width == 0)
        {
            filter = first;
            position += 2;
            return true;
        }

        uint second = (uint)text[position + 1] - '0';
        uint both = (first * 10) + second;
        if (text[position + 2] != '.' || first - 1 > 8 || second > 9 || both >> width != 0)
        {
            return false;
        }

        filter = both;
        position += 3;
        return true;
    }

    private static bool Fail(EpcRule rule, EpcField field, int position, ulong found, ref EpcFault fault)
    {
        fault = new EpcFault(rule, field, EpcPositionUnit.Character, position, found);
        return false;
    }
}
