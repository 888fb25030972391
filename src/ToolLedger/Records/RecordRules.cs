using System.Collections.Generic;

namespace ToolLedger.Records;

/// <summary>What can be wrong with any stored record, whatever it holds.</summary>
public static class RecordRules
{
    /// <summary>The bytes are not JSON (RFC 8259).</summary>
    public static ReasonKind NotJson { get; } = new("record.not-json", "This is not JSON: {fault}.");

    /// <summary>There is nothing to read.</summary>
    public static ReasonKind Empty { get; } = new("record.empty", "There is nothing to read.");

    /// <summary>The bytes are not UTF-8.</summary>
    public static ReasonKind NotUtf8 { get; } = new("record.not-utf8", "The bytes are not UTF-8 from byte {offset} on.");

    /// <summary>A text holds half of a surrogate pair.</summary>
    public static ReasonKind LoneSurrogate { get; } = new("record.lone-surrogate", "A text holds half of a surrogate pair, which is no character.");

    /// <summary>More bytes, entries or members than the stated limit.</summary>
    public static ReasonKind TooLarge { get; } = new("record.too-large", "More than {limit} {what}.");

    /// <summary>Nested deeper than 64 levels.</summary>
    public static ReasonKind TooDeep { get; } = new("record.too-deep", "Nested deeper than {limit} levels.");

    /// <summary>An object names one member twice.</summary>
    public static ReasonKind DuplicateMember { get; } = new("record.duplicate-member", "A member is named twice.");

    /// <summary>The record is of another kind or version.</summary>
    public static ReasonKind SchemaVersion { get; } = new("record.schema-version", "The schema must be \"{expected}\"; found \"{found}\".");

    /// <summary>A member that this version does not know.</summary>
    public static ReasonKind UnknownMember { get; } = new("record.unknown-member", "The member \"{member}\" is not known here.");

    /// <summary>A member that must be there is not.</summary>
    public static ReasonKind MissingMember { get; } = new("record.missing-member", "The member \"{member}\" is missing.");

    /// <summary>A member is of another JSON type.</summary>
    public static ReasonKind WrongType { get; } = new("record.wrong-type", "Expected {expected}, found {found}.");

    /// <summary>A number or count outside its range.</summary>
    public static ReasonKind OutOfRange { get; } = new("record.out-of-range", "Must be {range}; found {found}.");

    /// <summary>A word that is none of the allowed ones.</summary>
    public static ReasonKind UnknownWord { get; } = new("record.unknown-word", "Must be one of {allowed}; found \"{found}\".");

    /// <summary>A text that must say something is empty.</summary>
    public static ReasonKind TextEmpty { get; } = new("record.text-empty", "The text is empty.");

    /// <summary>A text over its limit.</summary>
    public static ReasonKind TextTooLong { get; } = new("record.text-too-long", "The text is longer than {limit} characters.");

    /// <summary>A text with a control, format, private-use, unassigned or ignorable character.</summary>
    public static ReasonKind TextNotPrintable { get; } = new("record.text-not-printable", "The text holds {character} at position {position}, which is not a printable character.");

    /// <summary>A text that starts or ends with white space.</summary>
    public static ReasonKind TextWhiteSpace { get; } = new("record.text-white-space", "The text starts or ends with white space.");

    /// <summary>A text of another form than its kind has.</summary>
    public static ReasonKind BadForm { get; } = new("record.bad-form", "Expected {expected}; found \"{found}\".");

    /// <summary>A time that is not RFC 3339 text.</summary>
    public static ReasonKind BadTime { get; } = new("record.bad-time", "Not a time of the form 2026-03-01T15:55:00+01:00: \"{found}\".");

    /// <summary>A time without an offset from UTC is no instant.</summary>
    public static ReasonKind TimeWithoutOffset { get; } = new("record.time-without-offset", "The time \"{found}\" has no offset from UTC.");

    /// <summary>A time outside the years 1970 to 2999.</summary>
    public static ReasonKind TimeOutOfRange { get; } = new("record.time-out-of-range", "The time \"{found}\" is outside the years 1970 to 2999.");

    /// <summary>A time of the right form with a part that no calendar or clock has, or that is not kept.</summary>
    public static ReasonKind TimePartOutOfRange { get; } = new("record.time-part-out-of-range", "The {part} of the time \"{found}\" must be {range}.");

    /// <summary>Something that may be listed once is listed twice.</summary>
    public static ReasonKind Duplicate { get; } = new("record.duplicate", "\"{what}\" is listed twice.");

    /// <summary>There are more issues than are listed.</summary>
    public static ReasonKind MoreIssues { get; } = new("record.more-issues", "There are more issues; only the first {limit} are listed.");

    /// <summary>Every kind of this room.</summary>
    public static IReadOnlyList<ReasonKind> All { get; } =
    [
        NotJson, Empty, NotUtf8, LoneSurrogate, TooLarge, TooDeep, DuplicateMember, SchemaVersion, UnknownMember, MissingMember,
        WrongType, OutOfRange, UnknownWord, TextEmpty, TextTooLong, TextNotPrintable, TextWhiteSpace, BadForm, BadTime,
        TimeWithoutOffset, TimeOutOfRange, TimePartOutOfRange, Duplicate, MoreIssues,
    ];
}
