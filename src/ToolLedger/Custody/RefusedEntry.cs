using System;
using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Custody;

/// <summary>An entry that took no effect, and why.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class RefusedEntry
{
    internal RefusedEntry(RecordEntry entry, IReadOnlyList<RecordIssue> issues)
    {
        Entry = entry;
        Issues = issues;
    }

    /// <summary>The entry.</summary>
    public RecordEntry Entry { get; }

    /// <summary>Every rule that speaks against it; at least one.</summary>
    public IReadOnlyList<RecordIssue> Issues { get; }

    /// <summary>The refusal as a fact of its own, so that it can be recorded.</summary>
    /// <param name="id">The id of that fact.</param>
    /// <param name="at">When it was refused.</param>
    /// <param name="by">The person who was told.</param>
    /// <returns>The fact.</returns>
    /// <exception cref="ArgumentException">An id is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The year is outside 1970 to 2999.</exception>
    public EntryRefusal ToEntry(EntryId id, DateTimeOffset at, PersonId by) => new()
    {
        Id = id,
        At = at,
        By = by,
        Refused = Entry.Id,
        RefusedKind = Entry.Kind,
        RefusedDigest = Entry.Digest,
        Codes = [.. System.Linq.Enumerable.Select(Issues, static issue => issue.Rule)],
        Remark = Shortened(string.Join(' ', Issues)),
    };

    /// <summary>The entry and its first issue.</summary>
    /// <returns>Text for people.</returns>
    public override string ToString() => $"{Entry}: {Issues[0]}";

    private static string Shortened(string text) => text.Length <= RecordEntry.MaxRemarkLength ? text : text[..(RecordEntry.MaxRemarkLength - 3)].TrimEnd() + "...";
}
