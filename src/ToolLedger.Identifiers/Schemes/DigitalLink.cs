using System;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>GS1 Digital Link URIs: read liberally, written canonically (GS1 TDS 2.3, chapter 7 and Annex E).</summary>
internal static class DigitalLink
{
    internal const string DefaultStem = "https://id.gs1.org";

    internal static bool TryWrite(in IdentityBits bits, ReadOnlySpan<byte> stem, ref TextSink sink)
    {
        Gs1Key? key = KindList.Has(bits.Kind) ? KindList.Of(bits.Kind).Gs1 : null;
        if (key is null)
        {
            return false;
        }

        sink.Add(stem);
        Span<byte> room = stackalloc byte[TextSink.Room];
        var value = new TextSink(room);
        Gs1Text.WriteKey(key, bits, ref value);
        WriteSegment(key.Ai, room.Slice(0, value.Length), ref sink);
        if (Gs1Text.HasQualifier(key, bits))
        {
            value = new TextSink(room);
            value.AddPlain(bits.C);
            WriteSegment(key.QualifierAi, room.Slice(0, value.Length), ref sink);
        }

        return true;
    }

    internal static bool TryRead(ReadOnlySpan<byte> uri, ref ElementReader elements, ref EpcFault fault)
    {
        int start = StartOfPath(uri);
        if (start < 0)
        {
            return Fail(EpcRule.UriPrefix, EpcField.Path, 0, 0, ref fault);
        }

        int end = uri.Slice(start).IndexOfAny((byte)'?', (byte)'#');
        int queryAt = end < 0 ? uri.Length : start + end;
        int key = FirstKey(uri.Slice(0, queryAt), start);
        if (key < 0)
        {
            return Fail(EpcRule.KeyPresent, EpcField.Path, start, 0, ref fault);
        }

        return TryReadPath(uri.Slice(0, queryAt), key, ref elements, ref fault)
            && TryReadQuery(uri, queryAt, ref elements, ref fault);
    }

    private static void WriteSegment(int ai, scoped ReadOnlySpan<byte> value, ref TextSink sink)
    {
        sink.Add((byte)'/');
        Ai.Write(ai, ref sink);
        sink.Add((byte)'/');
        foreach (byte character in value)
        {
            if (IsUnreserved(character))
            {
                sink.Add(character);
                continue;
            }

            sink.Add((byte)'%');
            sink.Add(HexText.UpperDigit((uint)character >> 4));
            sink.Add(HexText.UpperDigit((uint)character & 15));
        }
    }

    private static bool IsUnreserved(uint character) =>
        character is >= '0' and <= '9' or >= 'A' and <= 'Z' or >= 'a' and <= 'z' or '-' or '.' or '_' or '~';

    // The first slash behind scheme and host; -1 when there is none.
    private static int StartOfPath(ReadOnlySpan<byte> uri)
    {
        int host = StartsWithIgnoreCase(uri, "https://"u8) ? 8 : StartsWithIgnoreCase(uri, "http://"u8) ? 7 : -1;
        if (host < 0)
        {
            return -1;
        }

        int slash = uri.Slice(host).IndexOf((byte)'/');
        return slash <= 0 ? -1 : host + slash;
    }

    private static bool StartsWithIgnoreCase(ReadOnlySpan<byte> text, ReadOnlySpan<byte> lower)
    {
        if (text.Length < lower.Length)
        {
            return false;
        }

        for (int i = 0; i < lower.Length; i++)
        {
            byte character = text[i] is >= (byte)'A' and <= (byte)'Z' ? (byte)(text[i] | 0x20) : text[i];
            if (character != lower[i])
            {
                return false;
            }
        }

        return true;
    }

    // The stem may have a path of its own: the key is the first segment that names one and has an even number of
    // segments from there to the end.
    private static int FirstKey(ReadOnlySpan<byte> path, int start)
    {
        ReadOnlySpan<byte> trimmed = path.Length > start + 1 && path[path.Length - 1] == '/' ? path.Slice(0, path.Length - 1) : path;
        int segments = Count(trimmed.Slice(start), (byte)'/');
        int at = start;
        while (segments >= 2)
        {
            if ((segments & 1) == 0 && IsKey(SegmentAt(trimmed, at)))
            {
                return at;
            }

            at += SegmentAt(trimmed, at).Length + 1;
            segments--;
        }

        return -1;
    }

    private static int Count(ReadOnlySpan<byte> text, byte wanted)
    {
        int count = 0;
        foreach (byte character in text)
        {
            count += character == wanted ? 1 : 0;
        }

        return count;
    }

    // The segment behind the slash at the position.
    private static ReadOnlySpan<byte> SegmentAt(ReadOnlySpan<byte> path, int slash)
    {
        ReadOnlySpan<byte> rest = path.Slice(slash + 1);
        int end = rest.IndexOf((byte)'/');
        return end < 0 ? rest : rest.Slice(0, end);
    }

    private static bool IsKey(ReadOnlySpan<byte> segment)
    {
        int ai = WholeAi(segment);
        foreach (KindGrammar grammar in KindList.Grammars)
        {
            if (ai != 0 && grammar.Gs1?.Ai == ai)
            {
                return true;
            }
        }

        return false;
    }

    private static int WholeAi(ReadOnlySpan<byte> segment)
    {
        int ai = Ai.Read(segment);
        return Ai.DigitsOf(ai) == segment.Length ? ai : 0;
    }

    private static bool TryReadPath(ReadOnlySpan<byte> path, int slash, ref ElementReader elements, ref EpcFault fault)
    {
        while (slash < path.Length - 1)
        {
            ReadOnlySpan<byte> name = SegmentAt(path, slash);
            int ai = WholeAi(name);
            if (ai == 0)
            {
                return Fail(EpcRule.ApplicationIdentifierKnown, EpcField.Path, slash + 1, 0, ref fault);
            }

            int value = slash + 1 + name.Length;
            if (value >= path.Length)
            {
                return Fail(EpcRule.NotEmpty, EpcField.Path, value, 0, ref fault);
            }

            ReadOnlySpan<byte> text = SegmentAt(path, value);
            if (!elements.TryBegin(ai, slash + 1, ref fault) || !TryReadValue(text, value + 1, ref elements, ref fault))
            {
                return false;
            }

            slash = value + 1 + text.Length;
        }

        return true;
    }

    // Attributes whose names are application identifiers take part; others are not ours.
    private static bool TryReadQuery(ReadOnlySpan<byte> uri, int at, ref ElementReader elements, ref EpcFault fault)
    {
        if (at >= uri.Length || uri[at] == '#')
        {
            return true;
        }

        int fragment = uri.IndexOf((byte)'#');
        ReadOnlySpan<byte> whole = fragment < 0 ? uri : uri.Slice(0, fragment);
        int position = at + 1;
        while (position < whole.Length)
        {
            ReadOnlySpan<byte> rest = whole.Slice(position);
            int end = rest.IndexOfAny((byte)'&', (byte)';');
            ReadOnlySpan<byte> pair = end < 0 ? rest : rest.Slice(0, end);
            int equals = pair.IndexOf((byte)'=');
            int ai = equals > 0 ? WholeAi(pair.Slice(0, equals)) : 0;
            if (ai != 0 && (!elements.TryBegin(ai, position, ref fault)
                || !TryReadValue(pair.Slice(equals + 1), position + equals + 1, ref elements, ref fault)))
            {
                return false;
            }

            position += pair.Length + 1;
        }

        return true;
    }

    private static bool TryReadValue(ReadOnlySpan<byte> text, int position, ref ElementReader elements, ref EpcFault fault)
    {
        for (int i = 0; i < text.Length; i++)
        {
            uint character = text[i];
            int at = position + i;
            if (character == '%')
            {
                uint high = i + 2 < text.Length ? HexText.Nibble(text[i + 1]) : 0xFF;
                uint low = i + 2 < text.Length ? HexText.Nibble(text[i + 2]) : 0xFF;
                if ((high | low) > 15)
                {
                    return Fail(EpcRule.EscapeForm, EpcField.Value, at, character, ref fault);
                }

                character = (high << 4) | low;
                i += 2;
            }

            if (!elements.TryAdd(character, at, ref fault))
            {
                return false;
            }
        }

        return elements.TryEnd(position, ref fault);
    }

    private static bool Fail(EpcRule rule, EpcField field, int position, ulong found, ref EpcFault fault)
    {
        fault = new EpcFault(rule, field, EpcPositionUnit.Character, position, found);
        return false;
    }
}
