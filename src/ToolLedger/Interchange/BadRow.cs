using System;
using System.Globalization;
using System.Text;
using ToolLedger.Records;

namespace ToolLedger.Interchange;

/// <summary>A row of a file that could not be read: where, what and by which rule.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class BadRow
{
    private const int ExcerptLength = 80;

    internal BadRow(long lineNumber, long byteOffset, Reason reason, string? column, string excerpt)
    {
        LineNumber = lineNumber;
        ByteOffset = byteOffset;
        Reason = reason;
        Column = column;
        Excerpt = excerpt;
    }

    /// <summary>The bad row of the line that was taken last.</summary>
    internal static BadRow Of(LineBuffer lines, ReadOnlySpan<byte> line, in RowFault fault)
    {
        // Bytes that are no UTF-8 show as replacement characters.
        string text = Encoding.UTF8.GetString(line[..Math.Min(line.Length, 4 * ExcerptLength)]);
        string excerpt = SafeText.Escape(text);
        excerpt = excerpt.Length <= ExcerptLength ? excerpt : excerpt[..(char.IsHighSurrogate(excerpt[ExcerptLength - 1]) ? ExcerptLength - 1 : ExcerptLength)];
        return new BadRow(Math.Max(1, lines.LineNumber), lines.LineOffset, fault.Reason, fault.Column, excerpt);
    }

    /// <summary>The number of the line in the file, from 1.</summary>
    public long LineNumber { get; }

    /// <summary>Where the line begins: bytes from the start of the file.</summary>
    public long ByteOffset { get; }

    /// <summary>What is wrong.</summary>
    public Reason Reason { get; }

    /// <summary>The stable code of the rule that was broken.</summary>
    public string Rule => Reason.Code;

    /// <summary>The column or member that is wrong, a member of a stored entry with its path from $; null when it is the row as a whole.</summary>
    public string? Column { get; }

    /// <summary>The beginning of the line, at most 80 characters, with every character that is not printable escaped.</summary>
    public string Excerpt { get; }

    /// <summary>Place, sentence, rule and excerpt.</summary>
    /// <returns>One line of text.</returns>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"line {LineNumber}{(Column is null ? "" : (Column.StartsWith('$') ? ", at " : ", column ") + SafeText.Escape(Column))}: {Reason} ({Rule}) {Excerpt}");
}
