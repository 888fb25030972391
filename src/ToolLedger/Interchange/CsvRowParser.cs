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

    private readonly CsvFields _fields;
    private readonly ReadFileOptions _options;
    private ReadColumn[] _columns = [];
    private QuickCsvRows? _quick;

    internal CsvRowParser(ReadFileOptions options)
        : base(options)
    {
        _options = options;
        _fields = new CsvFields(options.Delimiter);
    }

    internal override bool HasHeader => true;

    internal override RowFault? ReadHeader(ReadOnlySpan<byte> line)
    {
        var columns = new ReadColumn[MaxColumnCount];
        uint given = 0;
        int count = 0;
        int at = 0;

        // Whole rows would else be taken for the names of columns that nobody declared, and be gone without a word.
        if (line.TrimEnd((byte)'\r').Contains((byte)'\r'))
        {
            return Fault(line, ReadFileRules.LineEnds);
        }

        while (at <= line.Length)
        {
            if (!_fields.TryTake(line, ref at, out ReadOnlySpan<byte> name))
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
        _quick = new QuickCsvRows(_options, _columns);
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
            if (!_fields.TryTake(line, ref at, out ReadOnlySpan<byte> text))
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

    internal override int ReadPlain(ReadOnlySpan<byte> bytes, Span<TagRead> destination, out int length)
    {
        length = 0;
        return _quick is null ? 0 : _quick.Read(bytes, destination, out length);
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
