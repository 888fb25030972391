using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Interchange;

/// <summary>What can be wrong with a file of reads.</summary>
public static class ReadFileRules
{
    /// <summary>There is no header line.</summary>
    public static ReasonKind NoHeader { get; } = new("read-file.no-header", "The file has no header line.");

    /// <summary>The lines end with CR alone, so that the whole file is one line.</summary>
    public static ReasonKind LineEnds { get; } = new("read-file.line-ends", "The header goes on behind a carriage return alone; lines end with LF or CR LF.");

    /// <summary>The header lacks a column that must be there.</summary>
    public static ReasonKind MissingColumn { get; } = new("read-file.missing-column", "The header has no column \"{column}\".");

    /// <summary>The header names a column twice, or a JSON object a member.</summary>
    public static ReasonKind DuplicateColumn { get; } = new("read-file.duplicate-column", "The name \"{column}\" stands there twice.");

    /// <summary>The file is not UTF-8.</summary>
    public static ReasonKind NotUtf8 { get; } = new("read-file.not-utf8", "The text is not UTF-8.");

    /// <summary>A line is not a JSON object.</summary>
    public static ReasonKind NotJson { get; } = new("read-file.not-json", "The line is not one JSON object.");

    /// <summary>A line is longer than the limit.</summary>
    public static ReasonKind LineTooLong { get; } = new("read-file.line-too-long", "The line is longer than {limit} bytes.");

    /// <summary>A row has more fields than the header has columns.</summary>
    public static ReasonKind TooManyColumns { get; } = new("read-file.too-many-columns", "The row has more fields than the {count} of the header.");

    /// <summary>A row has fewer fields than the header has columns; perhaps the file was cut off.</summary>
    public static ReasonKind TooFewColumns { get; } = new("read-file.too-few-columns", "The row has {found} fields; the header has {count}.");

    /// <summary>A quotation mark is not closed on its line, or does not enclose a whole field.</summary>
    public static ReasonKind BadQuotes { get; } = new("read-file.bad-quotes", "Quotation marks must enclose a whole field on one line.");

    /// <summary>There is no tag.</summary>
    public static ReasonKind MissingTag { get; } = new("read-file.missing-tag", "The row has no tag.");

    /// <summary>The tag cannot be read as one.</summary>
    public static ReasonKind BadTag { get; } = new("read-file.bad-tag", "\"{found}\" is not a tag of the form stated, {form}.");

    /// <summary>An EPC whose digits are no whole words of 16 bits, as a tag answers them (EPC Gen2 air interface, 6.3.2.1.2.2, from memory): some of them may be missing.</summary>
    public static ReasonKind TagNotWholeWords { get; } = new(
        "read-file.tag-not-whole-words", "The digits of \"{found}\" are no whole words of four, as a tag answers them: some may have been cut off.");

    /// <summary>There is no time.</summary>
    public static ReasonKind MissingTime { get; } = new("read-file.missing-time", "The row has no time.");

    /// <summary>The time cannot be read as one.</summary>
    public static ReasonKind BadTime { get; } = new("read-file.bad-time", "\"{found}\" is not a time of the form stated, {form}.");

    /// <summary>A time without an offset from UTC is no instant.</summary>
    public static ReasonKind TimeWithoutOffset { get; } = new("read-file.time-without-offset", "The time \"{found}\" has no offset from UTC.");

    /// <summary>A time with an offset from UTC where the file is declared to write local times.</summary>
    public static ReasonKind TimeWithOffset { get; } = new(
        "read-file.time-with-offset", "The time \"{found}\" has an offset from UTC, and the file is declared to write local times.");

    /// <summary>A local time that the clocks of the site showed twice.</summary>
    public static ReasonKind AmbiguousLocalTime { get; } = new(
        "read-file.ambiguous-local-time", "The clocks of the site showed the time \"{found}\" twice, so it names no instant.");

    /// <summary>A local time that the clocks of the site never showed.</summary>
    public static ReasonKind SkippedLocalTime { get; } = new(
        "read-file.skipped-local-time", "The clocks of the site never showed the time \"{found}\".");

    /// <summary>A time outside the years 1970 to 2999.</summary>
    public static ReasonKind TimeOutOfRange { get; } = new("read-file.time-out-of-range", "The time \"{found}\", read as {form}, is outside the years 1970 to 2999.");

    /// <summary>The last instant is before the first.</summary>
    public static ReasonKind TimesReversed { get; } = new("read-file.times-reversed", "The last time is before the first.");

    /// <summary>Not an antenna port.</summary>
    public static ReasonKind BadAntenna { get; } = new("read-file.bad-antenna", "\"{found}\" is not an antenna port, 1 to 255.");

    /// <summary>Not a signal strength.</summary>
    public static ReasonKind BadStrength { get; } = new("read-file.bad-strength", "\"{found}\" is not a signal strength, -327.68 to 327.67 dBm.");

    /// <summary>Not a count.</summary>
    public static ReasonKind BadCount { get; } = new("read-file.bad-count", "\"{found}\" is not a count, 1 to 2147483647.");

    /// <summary>Not a TID.</summary>
    public static ReasonKind BadTid { get; } = new("read-file.bad-tid", "\"{found}\" is not a TID of at most 512 hexadecimal digits.");

    /// <summary>Not a report number.</summary>
    public static ReasonKind BadReportId { get; } = new("read-file.bad-report-id", "\"{found}\" is not a whole number of 64 bits.");

    /// <summary>A member is neither text nor a number.</summary>
    public static ReasonKind WrongType { get; } = new("read-file.wrong-type", "The member must be text or a number.");

    /// <summary>A read has a value for which the file declares no column.</summary>
    public static ReasonKind NoColumn { get; } = new("read-file.no-column", "The read has a value for {member}, and the file declares no column for it.");

    /// <summary>The form stated cannot write the tag so that it is read back.</summary>
    public static ReasonKind UnwritableTag { get; } = new("read-file.unwritable-tag", "The tag \"{found}\" cannot be written in the form stated.");

    /// <summary>The form stated cannot write the time so that it is read back.</summary>
    public static ReasonKind UnwritableTime { get; } = new("read-file.unwritable-time", "The time {found} cannot be written in the form stated.");

    /// <summary>The TID is not of whole hexadecimal digits.</summary>
    public static ReasonKind UnwritableTid { get; } = new("read-file.unwritable-tid", "A TID of {count} bits is not of whole hexadecimal digits.");

    /// <summary>Every kind of this room's read files.</summary>
    public static IReadOnlyList<ReasonKind> All { get; } =
    [
        NoHeader, LineEnds, MissingColumn, DuplicateColumn, NotUtf8, NotJson, LineTooLong, TooManyColumns, TooFewColumns, BadQuotes, MissingTag,
        BadTag, TagNotWholeWords, MissingTime, BadTime, TimeWithoutOffset, TimeWithOffset, AmbiguousLocalTime, SkippedLocalTime, TimeOutOfRange, TimesReversed,
        BadAntenna, BadStrength, BadCount, BadTid, BadReportId, WrongType, NoColumn, UnwritableTag, UnwritableTime, UnwritableTid,
    ];
}
