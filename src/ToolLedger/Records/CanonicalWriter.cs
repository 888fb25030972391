using System;
using System.Collections.Generic;
using System.Text.Json;

namespace ToolLedger.Records;

/// <summary>Writes one JSON value in the canonical form of RFC 8785; the text was scanned before.</summary>
internal ref struct CanonicalWriter
{
    private Utf8JsonReader _reader;
    private byte[] _output;
    private int _length;

    internal CanonicalWriter(ReadOnlySpan<byte> utf8Json)
    {
        _reader = new Utf8JsonReader(utf8Json, new JsonReaderOptions { MaxDepth = CanonicalJson.MaxDepth + 1 });
        _output = new byte[Math.Max(64, utf8Json.Length)];
        _length = 0;
    }

    internal readonly byte[] ToArray() => _output.AsSpan(0, _length).ToArray();

    /// <summary>Writes the value; null, or what is wrong with it.</summary>
    internal RecordIssue? Write()
    {
        _reader.Read();
        Reason? reason = WriteValue();
        return reason is null ? null : new RecordIssue("$", reason);
    }

    private Reason? WriteValue()
    {
        switch (_reader.TokenType)
        {
            case JsonTokenType.StartObject:
                return WriteObject();
            case JsonTokenType.StartArray:
                return WriteArray();
            case JsonTokenType.String:
                WriteText(_reader.GetString()!);
                return null;
            case JsonTokenType.Number:
                return WriteNumber();
            default:
                Append(_reader.ValueSpan);
                return null;
        }
    }

    private Reason? WriteArray()
    {
        Append((byte)'[');
        for (bool first = true; _reader.Read() && _reader.TokenType != JsonTokenType.EndArray; first = false)
        {
            if (!first)
            {
                Append((byte)',');
            }

            if (WriteValue() is { } reason)
            {
                return reason;
            }
        }

        Append((byte)']');
        return null;
    }

    /// <summary>RFC 8785 section 3.2.3: members in the order of the UTF-16 code units of their names.</summary>
    private Reason? WriteObject()
    {
        var members = new List<Member>();
        bool inOrder = true;
        Append((byte)'{');
        int start = _length;
        while (_reader.Read() && _reader.TokenType != JsonTokenType.EndObject)
        {
            string name = _reader.GetString()!;
            int from = _length;
            WriteText(name);
            Append((byte)':');
            _reader.Read();
            if (WriteValue() is { } reason)
            {
                return reason;
            }

            inOrder &= members.Count == 0 || string.CompareOrdinal(members[^1].Name, name) < 0;
            members.Add(new Member(name, from, _length));
            Append((byte)',');
        }

        if (!inOrder && Reorder(members, start) is { } duplicate)
        {
            return duplicate;
        }

        _length -= members.Count > 0 ? 1 : 0;
        Append((byte)'}');
        return null;
    }

    /// <summary>Puts members already written into order; a name given twice has no canonical form (RFC 7493 section 2.3).</summary>
    private readonly Reason? Reorder(List<Member> members, int start)
    {
        members.Sort(static (left, right) => string.CompareOrdinal(left.Name, right.Name));
        for (int i = 1; i < members.Count; i++)
        {
            if (string.Equals(members[i - 1].Name, members[i].Name, StringComparison.Ordinal))
            {
                return new Reason(RecordRules.DuplicateMember, ("member", SafeText.Excerpt(members[i].Name)));
            }
        }

        byte[] written = _output.AsSpan(start, _length - start).ToArray();
        int position = start;
        foreach (Member member in members)
        {
            ReadOnlySpan<byte> bytes = written.AsSpan(member.From - start, member.To - member.From);
            bytes.CopyTo(_output.AsSpan(position));
            position += bytes.Length;
            _output[position++] = (byte)',';
        }

        return null;
    }

    private Reason? WriteNumber()
    {
        if (!_reader.TryGetDouble(out double value) || !double.IsFinite(value))
        {
            return new Reason(RecordRules.OutOfRange, ("range", "a number a double can hold"),
                ("found", SafeText.Excerpt(System.Text.Encoding.ASCII.GetString(_reader.ValueSpan))));
        }

        Span<byte> digits = stackalloc byte[EcmaNumber.MaxLength];
        Append(digits[..EcmaNumber.Format(value, digits)]);
        return null;
    }

    /// <summary>RFC 8785 section 3.2.2.2: escapes for quote, backslash and controls, all else as it is.</summary>
    private void WriteText(string text)
    {
        Append((byte)'"');
        int clean = 0;
        for (int i = 0; i < text.Length; i++)
        {
            if (text[i] is '"' or '\\' or < ' ')
            {
                AppendUtf8(text.AsSpan(clean, i - clean));
                AppendEscape(text[i]);
                clean = i + 1;
            }
        }

        AppendUtf8(text.AsSpan(clean));
        Append((byte)'"');
    }

    private void AppendEscape(char c)
    {
        ReadOnlySpan<byte> escape = c switch
        {
            '"' => "\\\""u8,
            '\\' => "\\\\"u8,
            '\b' => "\\b"u8,
            '\t' => "\\t"u8,
            '\n' => "\\n"u8,
            '\f' => "\\f"u8,
            '\r' => "\\r"u8,
            _ => [],
        };
        if (!escape.IsEmpty)
        {
            Append(escape);
            return;
        }

        Append("\\u00"u8);
        Append((byte)('0' + (c >> 4)));
        Append("0123456789abcdef"u8[c & 0xF]);
    }

    private void AppendUtf8(scoped ReadOnlySpan<char> text)
    {
        Reserve(3 * text.Length);
        _length += System.Text.Encoding.UTF8.GetBytes(text, _output.AsSpan(_length));
    }

    private void Append(scoped ReadOnlySpan<byte> bytes)
    {
        Reserve(bytes.Length);
        bytes.CopyTo(_output.AsSpan(_length));
        _length += bytes.Length;
    }

    private void Append(byte value)
    {
        Reserve(1);
        _output[_length++] = value;
    }

    private void Reserve(int count)
    {
        if (_output.Length - _length < count)
        {
            Array.Resize(ref _output, checked((int)Math.Max((long)_length + count, Math.Min(2L * _output.Length, Array.MaxLength))));
        }
    }

    private readonly record struct Member(string Name, int From, int To);
}
