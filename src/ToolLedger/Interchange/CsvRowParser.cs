using System;
using System.Globalization;
using ToolLedger.Reads;
using ToolLedger.Records;

namespace ToolLedger.Interchange;

/// <summary>Reads lines of separated fields (RFC 4180, with the delimiter stated) under a header line. A field in quotation
/// marks ends on its line.</summary>
internal sealed class CsvRowParser : RowParser
{
    private const int MaxColumnCount = 4_096;

    private readonly byte _delimiter;
    private ReadColumn[] _columns = [];
    private byte[] _scratch = [];

    internal CsvRowParser(ReadFileOptions options)
        : base(options) => _delimiter = (byte)options.Delimiter;

    internal override bool HasHeader => true;

    internal override RowFault? ReadHeader(ReadOnlySpan<byte> line)
    {
        var columns = new ReadColumn[MaxColumnCount];
        uint given = 0;
        int count = 0;
        int at = 0;
        while (at <= line.Length)
        {
            if (!TryTakeField(line, ref at, out ReadOnlySpan<byte> name))
            {
                return Fault(line, ReadFileRules.BadQuotes);
            }

            if (count == MaxColumnCount)
            {
                return new RowFault(new Reason(ReadFileRules.TooManyColumns, ("count", Text(MaxColumnCount))), null);
            }

            ReadColumn column = Names.Find(name);
            if (column != ReadColumn.Ignored && (given & (1u << (int)column)) != 0)
            {
                return Fault(line, ReadFileRules.DuplicateColumn, column);
            }

            given |= 1u << (int)column;
            columns[count++] = column;
        }

        foreach (ReadColumn needed in (ReadOnlySpan<ReadColumn>)[ReadColumn.Tag, ReadColumn.FirstSeen])
        {
            if ((given & (1u << (int)needed)) == 0)
            {
                return Fault(line, ReadFileRules.MissingColumn, needed);
            }
        }

        _columns = columns[..count];
        return null;
    }

    internal override RowFault? Read(ReadOnlySpan<byte> line, out TagRead read)
    {
        read = default;
        ReadDraft draft = default;
        RowFault? first = null;
        int count = 0;
        int at = 0;
        while (at <= line.Length)
        {
            if (!TryTakeField(line, ref at, out ReadOnlySpan<byte> text))
            {
                return Fault(line, ReadFileRules.BadQuotes);
            }

            if (count == _columns.Length)
            {
                return new RowFault(new Reason(ReadFileRules.TooManyColumns, ("count", Text(count))), null);
            }

            ReadColumn column = _columns[count++];
            if (column != ReadColumn.Ignored && !text.IsEmpty && Fields.Read(ref draft, column, text) is { } kind)
            {
                first ??= Fault(line, kind, column, text);
            }
        }

        if (count < _columns.Length)
        {
            return new RowFault(
                new Reason(ReadFileRules.TooFewColumns, ("found", Text(count)), ("count", Text(_columns.Length))), null);
        }

        return first ?? Finish(line, draft, out read);
    }

    // Leaves the place behind the delimiter, or past the end of the line after the last field.
    private bool TryTakeField(ReadOnlySpan<byte> line, ref int at, out ReadOnlySpan<byte> text)
    {
        ReadOnlySpan<byte> rest = line[at..];
        if (!rest.IsEmpty && rest[0] == '"')
        {
            return TryTakeQuoted(line, ref at, out text);
        }

        int length = rest.IndexOf(_delimiter);
        length = length < 0 ? rest.Length : length;
        at += length + 1;
        text = rest[..length];
        if (length > 0 && (text[0] == ' ' || text[^1] == ' '))
        {
            text = text.Trim((byte)' ');
            return text.IsEmpty || text[0] != '"';
        }

        return true;
    }

    private bool TryTakeQuoted(ReadOnlySpan<byte> line, ref int at, out ReadOnlySpan<byte> text)
    {
        text = default;
        if (_scratch.Length < line.Length)
        {
            _scratch = new byte[line.Length];
        }

        int used = 0;
        for (int i = at + 1; i < line.Length; i++)
        {
            if (line[i] != '"')
            {
                _scratch[used++] = line[i];
            }
            else if (i + 1 < line.Length && line[i + 1] == '"')
            {
                // Two marks stand for one.
                _scratch[used++] = line[i++];
            }
            else
            {
                text = _scratch.AsSpan(0, used);
                at = i + 2;
                return i + 1 == line.Length || line[i + 1] == _delimiter;
            }
        }

        return false;
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
