using System;
using System.Text.Json;
using ToolLedger.Reads;

namespace ToolLedger.Interchange;

/// <summary>Reads lines that are JSON objects (RFC 8259). Plain lines are read by hand; whatever is not plain, and every
/// fault, is left to the framework's reader, so that there is one judge of what is JSON.</summary>
internal sealed class JsonRowParser(ReadFileOptions options) : RowParser(options)
{
    private const int ExpectedLength = 16;
    private const int ValuesMax = 16;

    private static readonly JsonReaderOptions Strict = new() { MaxDepth = 64 };

    // The columns of the line before by position: a guess that nearly always saves comparing names.
    private readonly ReadColumn[] _expected = new ReadColumn[ExpectedLength];

    // The names with what follows them when nothing is spaced.
    private readonly byte[][] _starts = new byte[(int)ReadColumn.ReportId + 1][];

    private readonly QuickJsonRows _quick = new(options);
    private readonly QuickJsonValue[] _values = new QuickJsonValue[ValuesMax];
    private int _valueCount;
    private byte[] _scratch = [];

    internal override bool HasHeader => false;

    internal override RowFault? Read(ReadOnlySpan<byte> line, out TagRead read)
    {
        ReadDraft draft = default;
        if (TryReadPlain(line, ref draft))
        {
            if (FieldReader.Complete(draft, out _) is null)
            {
                read = draft.ToRead();
                if (_valueCount <= ValuesMax)
                {
                    _quick.Learn(line, _values.AsSpan(0, _valueCount));
                }

                return null;
            }
        }

        return ReadStrictly(line, out read);
    }

    internal override int ReadPlain(ReadOnlySpan<byte> bytes, Span<TagRead> destination, out int length) => _quick.Read(bytes, destination, out length);

    private bool TryReadPlain(ReadOnlySpan<byte> line, ref ReadDraft draft)
    {
        _valueCount = 0;
        int at = SkipSpaces(line, 0);
        if (at >= line.Length || line[at] != '{')
        {
            return false;
        }

        for (int position = 0; ; position++)
        {
            at = SkipSpaces(line, at + 1);
            if (!TryReadName(line, ref at, position, out ReadColumn column) || !TryReadValue(line, ref at, column, ref draft))
            {
                return false;
            }

            at = SkipSpaces(line, at);
            if (at >= line.Length || line[at] != ',')
            {
                return at < line.Length && line[at] == '}' && SkipSpaces(line, at + 1) == line.Length;
            }
        }
    }

    // Leaves the place at the first character of the value.
    private bool TryReadName(ReadOnlySpan<byte> line, ref int at, int position, out ReadColumn column)
    {
        column = ReadColumn.Ignored;
        if (at >= line.Length || line[at] != '"')
        {
            return false;
        }

        ReadOnlySpan<byte> rest = line[(at + 1)..];
        ref ReadColumn expected = ref _expected[position & (ExpectedLength - 1)];
        byte[]? start = _starts[(int)expected];
        if (start is not null && rest.Length > start.Length && rest.StartsWith(start))
        {
            column = expected;
            at = SkipSpaces(line, at + 1 + start.Length);
            return at < line.Length;
        }

        int length = 0;
        while (length < rest.Length && rest[length] != '"')
        {
            if (rest[length] is < 0x20 or >= 0x7F or (byte)'\\')
            {
                return false;
            }

            length++;
        }

        if (length == rest.Length)
        {
            return false;
        }

        ReadOnlySpan<byte> name = rest[..length];
        column = expected = Names.Find(name);
        if (column != ReadColumn.Ignored && _starts[(int)column] is null)
        {
            _starts[(int)column] = [.. name, (byte)'"', (byte)':'];
        }

        at = SkipSpaces(line, at + length + 2);
        if (at >= line.Length || line[at] != ':')
        {
            return false;
        }

        at = SkipSpaces(line, at + 1);
        return at < line.Length;
    }

    // Leaves the place behind the value.
    private bool TryReadValue(ReadOnlySpan<byte> line, ref int at, ReadColumn column, ref ReadDraft draft)
    {
        ReadOnlySpan<byte> rest = line[at..];
        bool isQuoted = rest[0] == '"';
        int start = at + (isQuoted ? 1 : 0);
        int length = isQuoted ? rest[1..].IndexOf((byte)'"') : IndexBehindWord(rest);
        if (length < 0)
        {
            return false;
        }

        ReadOnlySpan<byte> text = line.Slice(start, length);
        at = start + length + (isQuoted ? 1 : 0);
        if (!isQuoted && (text.SequenceEqual("null"u8) || (column == ReadColumn.Ignored && (text.SequenceEqual("true"u8) || text.SequenceEqual("false"u8)))))
        {
            // No value, or one of nobody's: the same every time, as the names are.
            return true;
        }

        if (isQuoted
            ? (column == ReadColumn.Ignored || Fields.TakesNumberAsTag) && (text.ContainsAnyExceptInRange((byte)0x20, (byte)0x7E) || text.Contains((byte)'\\'))
            : !IsPlainNumber(text) || (column == ReadColumn.Tag && !Fields.TakesNumberAsTag))
        {
            return false;
        }

        if (_valueCount++ < ValuesMax)
        {
            _values[_valueCount - 1] = new QuickJsonValue(column, isQuoted, start, start + length);
        }

        // A column met twice is a fault, and faults are not judged here.
        return column == ReadColumn.Ignored || (!draft.Has(column) && Fields.Read(ref draft, column, text) is null);
    }

    private static int IndexBehindWord(ReadOnlySpan<byte> text)
    {
        int length = 0;
        while (length < text.Length && text[length] is not ((byte)',' or (byte)'}' or (byte)' '))
        {
            length++;
        }

        return length;
    }

    // The commonest numbers of JSON: minus, digits without a leading zero, and decimals.
    private static bool IsPlainNumber(ReadOnlySpan<byte> text)
    {
        int at = text.Length > 0 && text[0] == '-' ? 1 : 0;
        int whole = CountDigits(text[at..]);
        if (whole == 0 || (whole > 1 && text[at] == '0'))
        {
            return false;
        }

        at += whole;
        if (at == text.Length)
        {
            return true;
        }

        int decimals = text[at] == '.' ? CountDigits(text[(at + 1)..]) : 0;
        return decimals > 0 && at + 1 + decimals == text.Length;
    }

    private static int CountDigits(ReadOnlySpan<byte> text)
    {
        int count = 0;
        while (count < text.Length && (uint)(text[count] - '0') <= 9)
        {
            count++;
        }

        return count;
    }

    private static int SkipSpaces(ReadOnlySpan<byte> line, int at)
    {
        while (at < line.Length && line[at] == ' ')
        {
            at++;
        }

        return at;
    }

    private RowFault? ReadStrictly(ReadOnlySpan<byte> line, out TagRead read)
    {
        read = default;
        ReadDraft draft = default;
        try
        {
            return ReadObject(line, ref draft) ?? Finish(line, draft, out read);
        }
        catch (JsonException)
        {
            return Fault(line, ReadFileRules.NotJson);
        }
    }

    private RowFault? ReadObject(ReadOnlySpan<byte> line, ref ReadDraft draft)
    {
        RowFault? first = null;
        var reader = new Utf8JsonReader(line, Strict);
        if (!reader.Read() || reader.TokenType != JsonTokenType.StartObject)
        {
            return Fault(line, ReadFileRules.NotJson);
        }

        while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
        {
            ReadColumn column = Names.Find(Unescaped(ref reader));
            reader.Read();
            RowFault? fault = column == ReadColumn.Ignored ? null : ReadMember(line, ref reader, column, ref draft);
            first ??= fault;
            reader.Skip();
        }

        // Reads the white space behind the object; anything else there is no JSON.
        while (reader.Read())
        {
        }

        return first;
    }

    private RowFault? ReadMember(ReadOnlySpan<byte> line, ref Utf8JsonReader reader, ReadColumn column, ref ReadDraft draft)
    {
        if (draft.Has(column))
        {
            return Fault(line, ReadFileRules.DuplicateColumn, column);
        }

        switch (reader.TokenType)
        {
            case JsonTokenType.Null:
                return null;
            case JsonTokenType.String:
            case JsonTokenType.Number when column != ReadColumn.Tag || Fields.TakesNumberAsTag:
                ReadOnlySpan<byte> text = Unescaped(ref reader);
                return Fields.Read(ref draft, column, text) is { } kind ? Fault(line, kind, column, text) : null;
            default:
                draft.Give(column);
                return Fault(line, ReadFileRules.WrongType, column);
        }
    }

    // The line is one piece of memory, so that every token is too.
    private ReadOnlySpan<byte> Unescaped(ref Utf8JsonReader reader)
    {
        if (!reader.ValueIsEscaped)
        {
            return reader.ValueSpan;
        }

        if (_scratch.Length < reader.ValueSpan.Length)
        {
            _scratch = new byte[reader.ValueSpan.Length];
        }

        return _scratch.AsSpan(0, CopyUnescaped(ref reader));
    }

    // Half of a surrogate pair cannot be written as UTF-8: such a text equals no name and is no value.
    private int CopyUnescaped(ref Utf8JsonReader reader)
    {
        try
        {
            return reader.CopyString(_scratch);
        }
        catch (InvalidOperationException)
        {
            return 0;
        }
    }
}
