using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Interchange;

/// <summary>A master inventory list as it was read: the lines that were understood, and row by row what was not.</summary>
/// <remarks>Every row that is not blank gave either one line or at least one issue. Immutable and thread-safe.</remarks>
public sealed class MasterList
{
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
    /// <remarks>It does not ask whether rows were refused: the person who signs decides whether a list with <see cref="Issues"/> may become a manifest.</remarks>
    /// <param name="id">The kit.</param>
    /// <param name="revision">The revision, 1 to 1,000,000.</param>
    /// <param name="title">What the kit is, 1 to 200 printable characters.</param>
    /// <param name="effectiveFrom">From when it is in force, in the years 1970 to 2999.</param>
    /// <param name="signedBy">Who signed it.</param>
    /// <param name="manifest">The manifest, or null.</param>
    /// <param name="issues">Every issue; empty when the manifest was made.</param>
    /// <returns>False if there are issues.</returns>
    public bool TryMakeManifest(KitId id, int revision, string? title, DateTimeOffset effectiveFrom, Signature? signedBy,
        [NotNullWhen(true)] out KitManifest? manifest, out IReadOnlyList<RecordIssue> issues) =>
        KitManifest.TryCreate(id, revision, title, effectiveFrom, signedBy, Lines, out manifest, out issues);

    /// <summary>Makes a manifest of the lines that were understood. See <see cref="TryMakeManifest"/>.</summary>
    /// <param name="id">The kit.</param>
    /// <param name="revision">The revision, 1 to 1,000,000.</param>
    /// <param name="title">What the kit is, 1 to 200 printable characters.</param>
    /// <param name="effectiveFrom">From when it is in force, in the years 1970 to 2999.</param>
    /// <param name="signedBy">Who signed it.</param>
    /// <returns>The manifest.</returns>
    /// <exception cref="RecordException">The manifest is refused; the exception lists every issue.</exception>
    public KitManifest MakeManifest(KitId id, int revision, string title, DateTimeOffset effectiveFrom, Signature signedBy) =>
        TryMakeManifest(id, revision, title, effectiveFrom, signedBy, out KitManifest? manifest, out IReadOnlyList<RecordIssue> issues)
            ? manifest
            : throw new RecordException(issues);

    /// <summary>How many lines were understood and how many rows were not.</summary>
    /// <returns>One line of English text.</returns>
    public override string ToString() => $"{CountText.Of(Lines.Count, "line")} understood, {CountText.Of(BadRowCount, "row")} not";
}
