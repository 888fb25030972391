using System;
using System.Text;
using System.Text.Unicode;
using ToolLedger.Reads;
using ToolLedger.Records;

namespace ToolLedger.Interchange;

/// <summary>Reads the lines of one file, one after another. A good line costs no memory.</summary>
internal abstract class RowParser
{
    private const int FoundLength = 80;

    private readonly ReadFileOptions options;

    private protected RowParser(ReadFileOptions options)
    {
        Names = new ColumnNames(options.Columns);
        Fields = new FieldReader(options);
        this.options = options;
    }

    private protected ColumnNames Names { get; }

    private protected FieldReader Fields { get; }

    /// <summary>Whether the first line is a header.</summary>
    internal abstract bool HasHeader { get; }

    /// <summary>Takes the header line.</summary>
    internal virtual RowFault? ReadHeader(ReadOnlySpan<byte> line) => null;

    /// <summary>Reads a line; what is wrong with it, or null.</summary>
    internal abstract RowFault? Read(ReadOnlySpan<byte> line, out TagRead read);

    /// <summary>Reads whole lines up to the first that is not plain, which is to be read by <see cref="Read"/>.</summary>
    /// <param name="bytes">Begin with a line; nothing of it has been looked at.</param>
    /// <param name="destination">Where the reads go.</param>
    /// <param name="length">How many bytes the lines have, with their ends.</param>
    /// <returns>How many lines were read, each to a read.</returns>
    internal abstract int ReadPlain(ReadOnlySpan<byte> bytes, Span<TagRead> destination, out int length);

    private protected RowFault Fault(ReadOnlySpan<byte> line, ReasonKind kind, ReadColumn column = ReadColumn.Ignored, ReadOnlySpan<byte> found = default)
    {
        string? name = Names.TextOf(column);
        if (!Utf8.IsValid(line))
        {
            return new RowFault(new Reason(ReadFileRules.NotUtf8), name);
        }

        string text = Encoding.UTF8.GetString(found[..Math.Min(found.Length, 4 * FoundLength)]);
        string excerpt = SafeText.Excerpt(text);
        Reason reason = kind == ReadFileRules.BadTag ? new Reason(kind, ("found", excerpt), ("form", TagForm()))
            : kind == ReadFileRules.BadTime || kind == ReadFileRules.TimeOutOfRange ? new Reason(kind, ("found", excerpt), ("form", TimeForm()))
            : new Reason(kind, ("found", excerpt), ("column", name ?? ""));
        return new RowFault(reason, name);
    }

    private string TagForm() => options.TagForm switch
    {
        ReadTagForm.EpcHex => "hexadecimal digits of an EPC",
        ReadTagForm.TagIdText => "epc:, iso11784:, iso15693: or text: and the number, or bare digits of an EPC",
        _ => "1 to 64 printable characters",
    };

    private string TimeForm() => options.TimeForm switch
    {
        ReadTimeForm.Iso8601WithOffset => "date and time with an offset, such as 2026-03-01T15:55:01Z",
        ReadTimeForm.EpochSeconds => "seconds since 1970",
        ReadTimeForm.EpochMilliseconds => "milliseconds since 1970",
        ReadTimeForm.EpochMicroseconds => "microseconds since 1970",
        _ => "local date and time, such as 2026-03-01T15:55:01",
    };

    private protected RowFault? Finish(ReadOnlySpan<byte> line, in ReadDraft draft, out TagRead read)
    {
        if (FieldReader.Complete(draft, out ReadColumn column) is { } kind)
        {
            read = default;
            return Fault(line, kind, column);
        }

        read = draft.ToRead();
        return null;
    }
}
