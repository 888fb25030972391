using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Interchange;

/// <summary>A master inventory list as it was read: the lines that were understood, and row by row what was not.</summary>
/// <remarks>Every row that is not blank gave either one line or at least one issue. Immutable and thread-safe.</remarks>
public sealed class MasterList
{
    private const int RowsNamed = 20;

    internal MasterList(List<ManifestLine> lines, List<MasterListIssue> issues, List<string> unusedColumns, long badRowCount)
    {
        Lines = lines.AsReadOnly();
        Issues = issues.AsReadOnly();
        UnusedColumns = unusedColumns.AsReadOnly();
        BadRowCount = badRowCount;
    }

    /// <summary>The lines that were understood, in the order of the file; at most 10,000.</summary>
    public IReadOnlyList<ManifestLine> Lines { get; }

    /// <summary>What was not understood, in the order of the file; at most 10,001, the last of which then says that there are more.</summary>
    public IReadOnlyList<MasterListIssue> Issues { get; }

    /// <summary>Columns of the file that no name was declared for, in the order of the file; what they say was not read.</summary>
    public IReadOnlyList<string> UnusedColumns { get; }

    /// <summary>Rows that gave no line, counted beyond the limit of <see cref="Issues"/> too; the header is one if it does not fit.</summary>
    public long BadRowCount { get; }

    /// <summary>True if every row gave a line, and there is at least one.</summary>
    public bool IsComplete => Issues.Count == 0 && Lines.Count > 0;

    /// <summary>Makes a manifest of the lines that were understood.</summary>
    /// <remarks>A refused row is a tool that nobody would look for, so a list with <see cref="Issues"/> becomes no manifest unless the caller says that those rows are to be left out.</remarks>
    /// <param name="id">The kit.</param>
    /// <param name="revision">The revision, 1 to 1,000,000.</param>
    /// <param name="title">What the kit is, 1 to 200 printable characters.</param>
    /// <param name="effectiveFrom">From when it is in force, in the years 1970 to 2999.</param>
    /// <param name="signedBy">Who signed it.</param>
    /// <param name="manifest">The manifest, or null.</param>
    /// <param name="issues">Every issue; empty when the manifest was made.</param>
    /// <param name="leaveOutRefusedRows">Whether the person who signs has seen <see cref="Issues"/> and wants a manifest without the refused rows; the default is false.</param>
    /// <returns>False if there are issues.</returns>
    public bool TryMakeManifest(KitId id, int revision, string? title, DateTimeOffset effectiveFrom, Signature? signedBy,
        [NotNullWhen(true)] out KitManifest? manifest, out IReadOnlyList<RecordIssue> issues, bool leaveOutRefusedRows = false)
    {
        KitManifest.TryCreate(id, revision, title, effectiveFrom, signedBy, Lines, out manifest, out issues);
        if (RowsRefused() is { } refused && !leaveOutRefusedRows)
        {
            manifest = null;
            issues = [refused, .. issues];
        }

        return manifest is not null;
    }

    /// <summary>Makes a manifest of the lines that were understood. See <see cref="TryMakeManifest"/>.</summary>
    /// <param name="id">The kit.</param>
    /// <param name="revision">The revision, 1 to 1,000,000.</param>
    /// <param name="title">What the kit is, 1 to 200 printable characters.</param>
    /// <param name="effectiveFrom">From when it is in force, in the years 1970 to 2999.</param>
    /// <param name="signedBy">Who signed it.</param>
    /// <param name="leaveOutRefusedRows">Whether the person who signs has seen <see cref="Issues"/> and wants a manifest without the refused rows; the default is false.</param>
    /// <returns>The manifest.</returns>
    /// <exception cref="RecordException">The manifest is refused; the exception lists every issue.</exception>
    public KitManifest MakeManifest(KitId id, int revision, string title, DateTimeOffset effectiveFrom, Signature signedBy, bool leaveOutRefusedRows = false) =>
        TryMakeManifest(id, revision, title, effectiveFrom, signedBy, out KitManifest? manifest, out IReadOnlyList<RecordIssue> issues, leaveOutRefusedRows)
            ? manifest
            : throw new RecordException(issues);

    /// <summary>How many lines were understood and how many rows were not.</summary>
    /// <returns>One line of English text.</returns>
    public override string ToString() => $"{CountText.Of(Lines.Count, "line")} understood, {CountText.Of(BadRowCount, "row")} not";

    /// <summary>That rows were refused, with the first of their lines in the file; null if none was.</summary>
    private RecordIssue? RowsRefused()
    {
        if (BadRowCount == 0)
        {
            return null;
        }

        long[] rows = [.. Issues.Where(static issue => issue.Reason.Kind != RecordRules.MoreIssues).Select(static issue => issue.RowNumber).Distinct().Take(RowsNamed)];
        string named = string.Join(", ", rows.Select(static row => row.ToString(CultureInfo.InvariantCulture)));
        long others = BadRowCount - rows.Length;
        return new RecordIssue("$.lines", new Reason(
            MasterListRules.RowsRefused,
            ("lines", others > 0 ? string.Create(CultureInfo.InvariantCulture, $"{named} and {others} more") : named),
            ("count", BadRowCount.ToString(CultureInfo.InvariantCulture))));
    }
}
