using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Interchange;

/// <summary>What can be wrong with a row of a master inventory list, beside the rules of <see cref="ReadFileRules"/> for CSV and of the manifest for its lines.</summary>
public static class MasterListRules
{
    /// <summary>A word for a kind of line that was not declared.</summary>
    public static ReasonKind UnknownKind { get; } = new("master-list.unknown-kind", "\"{found}\" is none of the declared words for a kind of line.");

    /// <summary>Not a number.</summary>
    public static ReasonKind BadNumber { get; } = new("master-list.bad-number", "\"{found}\" is not a number written with digits and a decimal point.");

    /// <summary>Neither of the words for yes and no.</summary>
    public static ReasonKind BadFlag { get; } = new("master-list.bad-flag", "\"{found}\" is neither \"{yes}\" nor \"{no}\".");

    /// <summary>A field that says nothing about a line of that kind.</summary>
    public static ReasonKind NotForKind { get; } = new("master-list.not-for-kind", "A line of kind {kind} has no {member}; it must be empty.");

    /// <summary>Several tools on one row.</summary>
    public static ReasonKind NotOne { get; } = new("master-list.not-one", "A line of kind {kind} lists one each; found \"{found}\". Several need a row each.");

    /// <summary>Columns that were declared and are not in the header.</summary>
    public static ReasonKind MissingColumns { get; } = new("master-list.missing-columns", "The header has no {count:column|columns} {columns}.");

    /// <summary>A list with refused rows that is to become a manifest.</summary>
    public static ReasonKind RowsRefused { get; } = new("master-list.rows-refused",
        "{count} {count:row was|rows were} refused, {count:line|lines} {lines} of the file: the manifest would lack what {count:it lists|they list}. Mend the file, or say that they are left out.");

    /// <summary>Every kind for master inventory lists.</summary>
    public static IReadOnlyList<ReasonKind> All { get; } = [UnknownKind, BadNumber, BadFlag, NotForKind, NotOne, MissingColumns, RowsRefused];
}
