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

    private protected RowParser(ReadFileOptions options)
    {
        Names = new ColumnNames(options.Columns);
        Fields = new FieldReader(options);
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
        return new RowFault(new Reason(kind, ("found", SafeText.Excerpt(text)), ("column", name ?? "")), name);
    }

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
