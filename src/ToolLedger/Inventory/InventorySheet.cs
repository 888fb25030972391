using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Linq;
using ToolLedger.Records;

namespace ToolLedger.Inventory;

/// <summary>What people said about kits and tools: sightings, counts, piece counts, and who signed.</summary>
/// <remarks>The entries keep the order they were given in; a sheet with no entry is legal and settles nothing. Immutable and thread-safe.</remarks>
public sealed partial class InventorySheet
{
    /// <summary>The most entries of one kind that a sheet holds.</summary>
    public const int MaxEntryCount = 100_000;

    /// <summary>The most signatures that a sheet holds.</summary>
    public const int MaxSignatureCount = 64;

    private readonly Lazy<Digest> digest;

    /// <summary>Makes a sheet of what was said.</summary>
    /// <param name="sightings">Tools that were seen; null for none.</param>
    /// <param name="counts">Lines that were counted; null for none.</param>
    /// <param name="pieceCounts">Tools whose pieces were counted; null for none.</param>
    /// <param name="signatures">Who signed the sheet; null for nobody.</param>
    /// <exception cref="RecordException">A rule of <see cref="InventoryRules"/> is broken; the exception lists every issue.</exception>
    public InventorySheet(
        IEnumerable<Sighting>? sightings = null,
        IEnumerable<LineCount>? counts = null,
        IEnumerable<PieceCount>? pieceCounts = null,
        IEnumerable<Signature>? signatures = null)
        : this([.. sightings ?? []], [.. counts ?? []], [.. pieceCounts ?? []], [.. signatures ?? []])
    {
        var issues = new List<RecordIssue>();
        FindIssues(this, issues);
        if (issues.Count > 0)
        {
            throw new RecordException(issues);
        }
    }

    private InventorySheet(Sighting[] sightings, LineCount[] counts, PieceCount[] pieceCounts, Signature[] signatures)
    {
        Sightings = sightings.AsReadOnly();
        Counts = counts.AsReadOnly();
        PieceCounts = pieceCounts.AsReadOnly();
        Signatures = signatures.AsReadOnly();
        digest = new Lazy<Digest>(ComputeDigest);
    }

    /// <summary>A sheet on which nobody said anything.</summary>
    public static InventorySheet Empty { get; } = new();

    /// <summary>Tools that were seen.</summary>
    public IReadOnlyList<Sighting> Sightings { get; }

    /// <summary>Lines that were counted.</summary>
    public IReadOnlyList<LineCount> Counts { get; }

    /// <summary>Tools whose pieces were counted.</summary>
    public IReadOnlyList<PieceCount> PieceCounts { get; }

    /// <summary>Who signed the sheet.</summary>
    public IReadOnlyList<Signature> Signatures { get; }

    /// <summary>SHA-256 over the canonical form (RFC 8785) of <see cref="ToJson"/>.</summary>
    public Digest Digest => digest.Value;

    /// <summary>Makes a sheet of what was said, or says everything that is wrong with it.</summary>
    /// <param name="sightings">Tools that were seen; null for none.</param>
    /// <param name="counts">Lines that were counted; null for none.</param>
    /// <param name="pieceCounts">Tools whose pieces were counted; null for none.</param>
    /// <param name="signatures">Who signed the sheet; null for nobody.</param>
    /// <param name="sheet">The sheet, or null if it is refused.</param>
    /// <param name="issues">Every rule that is broken; empty if the sheet was made.</param>
    /// <returns>Whether the sheet was made.</returns>
    public static bool TryCreate(
        IEnumerable<Sighting>? sightings,
        IEnumerable<LineCount>? counts,
        IEnumerable<PieceCount>? pieceCounts,
        IEnumerable<Signature>? signatures,
        [NotNullWhen(true)] out InventorySheet? sheet,
        out IReadOnlyList<RecordIssue> issues)
    {
        var made = new InventorySheet([.. sightings ?? []], [.. counts ?? []], [.. pieceCounts ?? []], signatures?.ToArray() ?? []);
        var found = new List<RecordIssue>();
        FindIssues(made, found);
        issues = found;
        sheet = found.Count == 0 ? made : null;
        return sheet is not null;
    }

    private static void FindIssues(InventorySheet sheet, List<RecordIssue> issues)
    {
        NoteLimit(issues, "$.sightings", sheet.Sightings.Count, MaxEntryCount);
        NoteLimit(issues, "$.counts", sheet.Counts.Count, MaxEntryCount);
        NoteLimit(issues, "$.pieceCounts", sheet.PieceCounts.Count, MaxEntryCount);
        NoteLimit(issues, "$.signatures", sheet.Signatures.Count, MaxSignatureCount);
        for (int index = 0; index < sheet.Counts.Count; index++)
        {
            LineCount count = sheet.Counts[index];
            EntryChecks.Note(issues, Place("$.counts", index, "witness"), EntryChecks.Witness(count.By, count.Witness));
        }

        for (int index = 0; index < sheet.PieceCounts.Count; index++)
        {
            PieceCount count = sheet.PieceCounts[index];
            EntryChecks.Note(issues, Place("$.pieceCounts", index, "witness"), EntryChecks.Witness(count.By, count.Witness));
        }
    }

    private static void NoteLimit(List<RecordIssue> issues, string place, int count, int limit) =>
        EntryChecks.Note(issues, place, count <= limit ? null : new Reason(
            InventoryRules.TooManyEntries,
            ("limit", limit.ToString(CultureInfo.InvariantCulture)),
            ("count", count.ToString(CultureInfo.InvariantCulture))));

    private static string Place(string list, int index, string member) => string.Create(CultureInfo.InvariantCulture, $"{list}[{index}].{member}");

    private Digest ComputeDigest() => Records.Digest.Of(CanonicalJson.Canonicalize(ToJson()));
}
