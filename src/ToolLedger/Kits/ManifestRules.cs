using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Kits;

/// <summary>What a manifest must not be when it is signed.</summary>
/// <remarks>That two tools share a mark is legal: a mark may identify the kit (US Air Force Instruction 21-101 of 16 January 2020, paragraph 8.6.1.4.2).</remarks>
public static class ManifestRules
{
    /// <summary>A manifest without a line.</summary>
    public static ReasonKind Empty { get; } = new("manifest.empty", "The manifest has no line.");

    /// <summary>More lines than a manifest may have.</summary>
    public static ReasonKind TooManyLines { get; } = new("manifest.too-many-lines", "The manifest has more than {limit} lines.");

    /// <summary>One tool on two lines.</summary>
    public static ReasonKind SameToolTwice { get; } = new("manifest.same-tool-twice", "The tool {tool} is listed on line {otherLine} already.");

    /// <summary>One number for two lines.</summary>
    public static ReasonKind DuplicateLineNumber { get; } = new("manifest.duplicate-line-number", "The number {number} stands for another line already.");

    /// <summary>A line without a number.</summary>
    public static ReasonKind NoLineNumber { get; } = new("manifest.no-line-number", "The line has no number.");

    /// <summary>A counted item or consumable without an amount, or with an amount of 0.</summary>
    public static ReasonKind LineWithoutQuantity { get; } = new("manifest.line-without-quantity", "The line does not say how many.");

    /// <summary>A counted item or consumable without a unit.</summary>
    public static ReasonKind LineWithoutUnit { get; } = new("manifest.line-without-unit", "The line does not say in which unit it counts.");

    /// <summary>A line of a kind this version does not know.</summary>
    public static ReasonKind UnknownKind { get; } = new("manifest.unknown-kind", "A line is of kind {allowed}; found \"{found}\".");

    /// <summary>A manifest nobody signed.</summary>
    public static ReasonKind NotSigned { get; } = new("manifest.not-signed", "The manifest is not signed.");

    /// <summary>A tool that does not say of how many pieces it is.</summary>
    public static ReasonKind NoPieceCount { get; } = new("manifest.no-piece-count", "The tool {tool} has no number of pieces; it must be {range}.");

    /// <summary>A set without a usable total.</summary>
    public static ReasonKind SetTotal { get; } = new("manifest.set-total", "The total of a set, its container included, is {range}; found {found}.");

    /// <summary>A manifest without an effective time.</summary>
    public static ReasonKind NoEffectiveTime { get; } = new("manifest.no-effective-time", "The manifest does not say from when it is in force.");

    /// <summary>One sub-kit on two lines.</summary>
    public static ReasonKind SameSubKitTwice { get; } = new("manifest.same-sub-kit-twice", "The sub-kit {kit} is listed on line {otherLine} already.");

    /// <summary>A kit listed as its own sub-kit.</summary>
    public static ReasonKind ContainsItself { get; } = new("manifest.contains-itself", "The kit {kit} is listed as a sub-kit of itself.");

    /// <summary>An alternate of another segregation class than the tool it may replace.</summary>
    public static ReasonKind AlternateOfOtherClass { get; } = new("manifest.alternate-of-other-class",
        "The alternate {tool} is of segregation class {found}; the tool of the line is of {expected}.");

    /// <summary>A mark of another form than the site's.</summary>
    public static ReasonKind MarkFormat { get; } = new("manifest.mark-format", "The mark {mark} of tool {tool} does not follow the form of this site: {form}.");

    /// <summary>A tool without a mark where the site asks for one.</summary>
    public static ReasonKind NoMark { get; } = new("manifest.no-mark", "The tool {tool} carries no mark, and this site asks for one.");

    /// <summary>Every kind for manifests.</summary>
    public static IReadOnlyList<ReasonKind> All { get; } =
    [
        Empty, TooManyLines, SameToolTwice, DuplicateLineNumber, NoLineNumber, LineWithoutQuantity, LineWithoutUnit,
        UnknownKind, NotSigned, NoPieceCount, SetTotal, NoEffectiveTime, SameSubKitTwice, ContainsItself, AlternateOfOtherClass, MarkFormat, NoMark,
    ];
}
