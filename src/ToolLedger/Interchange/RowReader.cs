using System;
using System.Globalization;
using ToolLedger.Reads;
using ToolLedger.Records;

namespace ToolLedger.Interchange;

/// <summary>Reads the rows of one file from a buffer of lines, and passes on what is bad.</summary>
internal sealed class RowReader
{
    private readonly LineBuffer _lines;
    private readonly RowParser _parser;
    private readonly ReadFileOptions _options;
    private readonly Action<BadRow>? _onBadRow;
    private bool _needsHeader;
    private long _badRowCount;

    internal RowReader(LineBuffer lines, RowParser parser, ReadFileOptions options, Action<BadRow>? onBadRow)
    {
        _lines = lines;
        _parser = parser;
        _options = options;
        _onBadRow = onBadRow;
        _needsHeader = parser.HasHeader;
    }

    /// <summary>How many rows were refused.</summary>
    internal long BadRowCount => _badRowCount;

    /// <summary>Reads rows as long as they are plain; the next one is to be read by <see cref="TryRead"/>.</summary>
    internal int ReadPlain(Span<TagRead> destination)
    {
        if (_needsHeader)
        {
            return 0;
        }

        int count = _parser.ReadPlain(_lines.Held, destination, out int length);
        if (count > 0)
        {
            _lines.PassLines(length, count);
        }

        return count;
    }

    /// <summary>Reads the next good row; false when more bytes are needed, or at the end of the file.</summary>
    internal bool TryRead(out TagRead read)
    {
        while (_lines.TryTakeLine(out ReadOnlySpan<byte> line))
        {
            line = _lines.LineNumber == 1 ? Checked(line) : line;
            if (_lines.IsTooLong)
            {
                Refuse(line, new RowFault(
                    new Reason(ReadFileRules.LineTooLong, ("limit", _options.LineLengthMax.ToString(CultureInfo.InvariantCulture))), null));
            }
            else if (LineBuffer.IsBlank(line))
            {
                continue;
            }
            else if (_needsHeader)
            {
                _needsHeader = false;
                if (_parser.ReadHeader(line) is { } fault)
                {
                    throw new ReadFileException(ToBadRow(line, fault));
                }
            }
            else if (_parser.Read(line, out read) is { } fault)
            {
                Refuse(line, fault);
            }
            else
            {
                return true;
            }
        }

        read = default;
        return false;
    }

    /// <summary>Says that the file has ended.</summary>
    internal void End()
    {
        if (_needsHeader)
        {
            throw new ReadFileException(ToBadRow(default, new RowFault(new Reason(ReadFileRules.NoHeader), null)));
        }
    }

    // Nobody to tell, or told to stop: a bad row is never passed over in silence.
    private void Refuse(ReadOnlySpan<byte> line, in RowFault fault)
    {
        BadRow row = ToBadRow(line, fault);
        _badRowCount++;
        if (_needsHeader || _onBadRow is null || _options.StopAtBadRow || _badRowCount > _options.BadRowMax)
        {
            throw new ReadFileException(row);
        }

        _onBadRow(row);
    }

    private BadRow ToBadRow(ReadOnlySpan<byte> line, in RowFault fault) => BadRow.Of(_lines, line, fault);

    private ReadOnlySpan<byte> Checked(ReadOnlySpan<byte> line) => LineBuffer.IsUtf16(line)
        ? throw new ReadFileException(ToBadRow(line, new RowFault(new Reason(ReadFileRules.NotUtf8), null)))
        : LineBuffer.WithoutMark(line);
}
