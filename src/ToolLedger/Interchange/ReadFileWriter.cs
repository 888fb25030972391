using System;
using System.Buffers;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text;
using System.Text.Json;
using ToolLedger.Reads;
using ToolLedger.Records;

namespace ToolLedger.Interchange;

/// <summary>Writes reads as JSON Lines or CSV, so that a log of reads can be kept and read again: <see cref="ReadFile"/> with the same options gives back the same
/// reads.</summary>
/// <remarks>
/// <para>A read that the declared form cannot hold (a tag of another kind, a value without a column, an instant that the site's clocks showed twice) is refused
/// with its reason and leaves nothing in the output; it is never written in part. With <see cref="ReadFileOptions.Archive"/> the form holds every read of
/// the years 1970 to 2999 whose tag and TID are of whole hexadecimal digits, and real tags answer in words of four.</para>
/// <para>What is absent is written as nothing: no member, or an empty field. Lines end with LF. Not thread-safe.</para>
/// </remarks>
public sealed class ReadFileWriter
{
    private const char ByteOrderMark = '\uFEFF';

    private readonly IBufferWriter<byte> _output;
    private readonly ReadFileOptions _options;
    private readonly ColumnNames _names;
    private readonly ReadRowText _text;
    private readonly bool _isJson;
    private readonly ArrayBufferWriter<byte> _line = new(256);
    private readonly JsonEncodedText[] _members = new JsonEncodedText[(int)ReadColumn.ReportId + 1];

    private ReadFileWriter(IBufferWriter<byte> output, ReadFileOptions? options, bool isJson)
    {
        ArgumentNullException.ThrowIfNull(output);
        _output = output;
        _options = ReadFileOptions.Checked(options);
        _names = new ColumnNames(_options.Columns);
        _text = new ReadRowText(_options);
        _isJson = isJson;
        foreach (ReadColumn column in Columns)
        {
            _members[(int)column] = isJson ? JsonEncodedText.Encode(_names.TextOf(column) ?? "") : default;
        }
    }

    private static ReadOnlySpan<ReadColumn> Columns =>
    [
        ReadColumn.Tag, ReadColumn.Antenna, ReadColumn.FirstSeen, ReadColumn.LastSeen, ReadColumn.Rssi, ReadColumn.Count, ReadColumn.Tid, ReadColumn.ReportId,
    ];

    /// <summary>How many reads were written.</summary>
    public long WrittenCount { get; private set; }

    /// <summary>Begins a file of JSON Lines.</summary>
    /// <param name="output">Where it goes.</param>
    /// <param name="options">The form, the same with which it will be read; null for the library's own.</param>
    /// <returns>A writer.</returns>
    /// <exception cref="ArgumentNullException">The output is null.</exception>
    /// <exception cref="ArgumentException">Two columns have one name, a name is no text, or the options contradict each other.</exception>
    public static ReadFileWriter JsonLines(IBufferWriter<byte> output, ReadFileOptions? options = null) => new(output, options, isJson: true);

    /// <summary>Begins a CSV file: writes its header line.</summary>
    /// <param name="output">Where it goes.</param>
    /// <param name="options">The form, the same with which it will be read; null for the library's own.</param>
    /// <returns>A writer.</returns>
    /// <exception cref="ArgumentNullException">The output is null.</exception>
    /// <exception cref="ArgumentException">Two columns have one name, a name holds a line end, or the options contradict each other.</exception>
    public static ReadFileWriter Csv(IBufferWriter<byte> output, ReadFileOptions? options = null)
    {
        var writer = new ReadFileWriter(output, options, isJson: false);
        foreach (ReadColumn column in Columns)
        {
            if (writer._names.TextOf(column).AsSpan().ContainsAny('\r', '\n'))
            {
                throw new ArgumentException("The name of a CSV column holds no line end.", nameof(options));
            }
        }

        writer.WriteHeader();
        return writer;
    }

    /// <summary>Writes a read.</summary>
    /// <param name="read">The read.</param>
    /// <exception cref="RecordException">The form cannot hold it; nothing was written.</exception>
    public void Write(in TagRead read)
    {
        if (!TryWrite(read, out Reason? refusal))
        {
            throw new RecordException([new RecordIssue("$", refusal)]);
        }
    }

    /// <summary>Writes a read, if the form can hold it.</summary>
    /// <param name="read">The read.</param>
    /// <param name="refusal">Why it was not written (<see cref="ReadFileRules"/>), or null.</param>
    /// <returns>Whether it was written.</returns>
    public bool TryWrite(in TagRead read, [NotNullWhen(false)] out Reason? refusal)
    {
        _line.ResetWrittenCount();
        _line.Write(_isJson ? "{"u8 : default);
        bool isFirst = true;
        foreach (ReadColumn column in Columns)
        {
            refusal = TextOf(read, column, out string? text) ?? (text is null || _names.TextOf(column) is not null ? null : new Reason(ReadFileRules.NoColumn, ("member", column.ToString())));
            if (refusal is not null)
            {
                return false;
            }

            if (_names.TextOf(column) is not null)
            {
                if (!_isJson)
                {
                    AddField(text ?? "", isFirst);
                }
                else if (text is not null)
                {
                    AddMember(column, text, isFirst);
                }

                isFirst = false;
            }
        }

        _line.Write(_isJson ? "}"u8 : default);
        if (_line.WrittenCount > _options.LineLengthMax)
        {
            refusal = new Reason(ReadFileRules.LineTooLong, ("limit", _options.LineLengthMax.ToString(CultureInfo.InvariantCulture)));
            return false;
        }

        _output.Write(_line.WrittenSpan);
        _output.Write("\n"u8);
        WrittenCount++;
        refusal = null;
        return true;
    }

    private void AddMember(ReadColumn column, string text, bool isFirst)
    {
        _line.Write(isFirst ? "\""u8 : ",\""u8);
        _line.Write(_members[(int)column].EncodedUtf8Bytes);
        _line.Write("\":"u8);
        if (_text.IsNumber(column))
        {
            Encoding.UTF8.GetBytes(text, _line);
        }
        else
        {
            _line.Write("\""u8);
            _line.Write(JsonEncodedText.Encode(text).EncodedUtf8Bytes);
            _line.Write("\""u8);
        }
    }

    // Null text and no reason: the read has no such value.
    private Reason? TextOf(in TagRead read, ReadColumn column, out string? text)
    {
        text = null;
        switch (column)
        {
            case ReadColumn.Tag:
                text = _text.Tag(read.Tag);
                return text is null ? new Reason(ReadFileRules.UnwritableTag, ("found", SafeText.Excerpt(read.Tag.ToString()))) : null;
            case ReadColumn.FirstSeen:
                return TimeOf(read.FirstSeen, out text);
            case ReadColumn.LastSeen:
                return read.LastSeen == read.FirstSeen ? null : TimeOf(read.LastSeen, out text);
            case ReadColumn.Tid:
                text = read.Tid.IsEmpty ? null : read.Tid.ToString();
                return read.Tid.BitCount % 4 == 0 ? null
                    : new Reason(ReadFileRules.UnwritableTid, ("count", read.Tid.BitCount.ToString(CultureInfo.InvariantCulture)));
            case ReadColumn.Antenna:
                text = read.Antenna.IsKnown ? read.Antenna.ToString() : null;
                return null;
            case ReadColumn.Rssi:
                text = read.Strength is { } strength ? ReadRowText.Strength(strength.CentiDbm) : null;
                return null;
            case ReadColumn.Count:
                text = read.Count?.ToString(CultureInfo.InvariantCulture);
                return null;
            default:
                text = read.ReportId?.ToString(CultureInfo.InvariantCulture);
                return null;
        }
    }

    private Reason? TimeOf(DateTimeOffset time, out string? text)
    {
        text = _text.Time(time.UtcTicks);
        return text is null ? new Reason(ReadFileRules.UnwritableTime, ("found", RecordTime.ToText(time))) : null;
    }

    private void WriteHeader()
    {
        bool isFirst = true;
        foreach (ReadColumn column in Columns)
        {
            if (_names.TextOf(column) is { } name)
            {
                AddField(name, isFirst);
                isFirst = false;
            }
        }

        _output.Write(_line.WrittenSpan);
        _output.Write("\n"u8);
    }

    // RFC 4180, section 2: quotation marks where the text could be taken for more than a field, and two for one inside.
    private void AddField(string text, bool isFirst)
    {
        if (!isFirst)
        {
            _line.GetSpan(1)[0] = (byte)_options.Delimiter;
            _line.Advance(1);
        }

        bool isPlain = !text.Contains(_options.Delimiter, StringComparison.Ordinal) && !text.Contains('"', StringComparison.Ordinal)
            && (text.Length == 0 || (text[0] is not (' ' or ByteOrderMark) && text[^1] != ' '));
        Encoding.UTF8.GetBytes(isPlain ? text : "\"" + text.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"", _line);
    }
}
