using System;
using System.Collections.Generic;
using System.Collections.ObjectModel;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Inventory;

/// <summary>What people said about kits and tools, and who signed: one list a kind of entry, as in <see cref="InventoryEntries"/>.</summary>
/// <remarks>The entries keep the order they were given in; a sheet with no entry is legal and settles nothing. Immutable and thread-safe.</remarks>
public sealed partial class InventorySheet
{
    /// <summary>The most entries of one kind that a sheet holds.</summary>
    public const int MaxEntryCount = 100_000;

    /// <summary>The most signatures that a sheet holds.</summary>
    public const int MaxSignatureCount = 64;

    private readonly Lazy<Digest> digest;

    /// <summary>Makes a sheet of what was said.</summary>
    /// <param name="entries">What was said, by kind.</param>
    /// <exception cref="ArgumentNullException">The entries, or one of them, are null.</exception>
    /// <exception cref="RecordException">A rule of <see cref="InventoryRules"/> is broken; the exception lists every issue.</exception>
    public InventorySheet(InventoryEntries entries)
        : this(entries, issues: null)
    {
    }

    /// <summary>Notes broken rules in the list, or throws where there is none.</summary>
    private InventorySheet(InventoryEntries entries, IssueList? issues)
    {
        ArgumentNullException.ThrowIfNull(entries);
        Entries = new InventoryEntries
        {
            Sightings = Copy(entries.Sightings),
            Counts = Copy(entries.Counts),
            PieceCounts = Copy(entries.PieceCounts),
            Openings = Copy(entries.Openings),
            Annotations = Copy(entries.Annotations),
            Uses = Copy(entries.Uses),
            Breakages = Copy(entries.Breakages),
            Reconstructions = Copy(entries.Reconstructions),
            Joinings = Copy(entries.Joinings),
            UnlistedItems = Copy(entries.UnlistedItems),
            Seals = Copy(entries.Seals),
            SealChecks = Copy(entries.SealChecks),
            Substitutions = Copy(entries.Substitutions),
            Signatures = Copy(entries.Signatures),
        };
        digest = new Lazy<Digest>(ComputeDigest);
        var found = issues ?? [];
        FindIssues(this, found);
        if (issues is null && found.Reported > 0)
        {
            throw new RecordException(found);
        }
    }

    /// <summary>A sheet on which nobody said anything.</summary>
    public static InventorySheet Empty { get; } = new(new InventoryEntries());

    /// <summary>Everything that was said, by kind; to be copied and added to for a further sheet.</summary>
    public InventoryEntries Entries { get; }

    /// <summary>Whether nobody said or signed anything.</summary>
    public bool IsEmpty => (Sightings.Count | Counts.Count | PieceCounts.Count | Openings.Count | Annotations.Count | Uses.Count | Breakages.Count
        | Reconstructions.Count | Joinings.Count | UnlistedItems.Count | Seals.Count | SealChecks.Count | Substitutions.Count | Signatures.Count) == 0;

    /// <inheritdoc cref="InventoryEntries.Sightings"/>
    public IReadOnlyList<Sighting> Sightings => Entries.Sightings;

    /// <inheritdoc cref="InventoryEntries.Counts"/>
    public IReadOnlyList<LineCount> Counts => Entries.Counts;

    /// <inheritdoc cref="InventoryEntries.PieceCounts"/>
    public IReadOnlyList<PieceCount> PieceCounts => Entries.PieceCounts;

    /// <inheritdoc cref="InventoryEntries.Openings"/>
    public IReadOnlyList<KitOpening> Openings => Entries.Openings;

    /// <inheritdoc cref="InventoryEntries.Annotations"/>
    public IReadOnlyList<Annotation> Annotations => Entries.Annotations;

    /// <inheritdoc cref="InventoryEntries.Uses"/>
    public IReadOnlyList<ConsumableUse> Uses => Entries.Uses;

    /// <inheritdoc cref="InventoryEntries.Breakages"/>
    public IReadOnlyList<Breakage> Breakages => Entries.Breakages;

    /// <inheritdoc cref="InventoryEntries.Reconstructions"/>
    public IReadOnlyList<Reconstruction> Reconstructions => Entries.Reconstructions;

    /// <inheritdoc cref="InventoryEntries.Joinings"/>
    public IReadOnlyList<JoiningStatement> Joinings => Entries.Joinings;

    /// <inheritdoc cref="InventoryEntries.UnlistedItems"/>
    public IReadOnlyList<UnlistedItemReport> UnlistedItems => Entries.UnlistedItems;

    /// <inheritdoc cref="InventoryEntries.Seals"/>
    public IReadOnlyList<SealRecord> Seals => Entries.Seals;

    /// <inheritdoc cref="InventoryEntries.SealChecks"/>
    public IReadOnlyList<SealCheck> SealChecks => Entries.SealChecks;

    /// <inheritdoc cref="InventoryEntries.Substitutions"/>
    public IReadOnlyList<Substitution> Substitutions => Entries.Substitutions;

    /// <inheritdoc cref="InventoryEntries.Signatures"/>
    public IReadOnlyList<Signature> Signatures => Entries.Signatures;

    /// <summary>SHA-256 over the canonical form (RFC 8785) of <see cref="ToJson"/>.</summary>
    public Digest Digest => digest.Value;

    /// <summary>Makes a sheet of what was said, or says everything that is wrong with it.</summary>
    /// <param name="entries">What was said, by kind.</param>
    /// <param name="sheet">The sheet, or null if it is refused.</param>
    /// <param name="issues">Every rule that is broken; empty if the sheet was made.</param>
    /// <returns>Whether the sheet was made.</returns>
    /// <exception cref="ArgumentNullException">The entries, or one of them, are null.</exception>
    public static bool TryCreate(InventoryEntries entries, [NotNullWhen(true)] out InventorySheet? sheet, out IReadOnlyList<RecordIssue> issues)
    {
        var found = new IssueList();
        var made = new InventorySheet(entries, found);
        issues = found;
        sheet = found.Reported == 0 ? made : null;
        return sheet is not null;
    }

    /// <summary>Checks what was entered against the lists, to be asked before an entry is kept: which entries would settle nothing, and why.</summary>
    /// <remarks>
    /// A sheet is made without knowing the lists, so an entry that fits no line is kept, used for nothing and told by the reconciliation. A host that asks here first can refuse it while the person who
    /// made it still stands there: a count in another unit, a line or kit that is not there, a tool on no list, a mark that several tools of the kit carry. What contradicts a list is evidence and no issue:
    /// a count that is too low or too high, another mark than the tool's, a tool in a kit that does not list it while another list does. A thing on no list that truly lies there is worth keeping all the
    /// same: once the person has confirmed what was entered, keep the sighting, and the kit is told a difference.
    /// </remarks>
    /// <param name="kits">The lists.</param>
    /// <param name="issued">The revisions that kits were issued under; an entry about any other kit is held against the revision in force when it was made. Null (the default) for none.</param>
    /// <returns>Every issue with its place, such as <c>$.counts[3].unit</c>; empty if every entry speaks of something listed.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="kits"/> is null.</exception>
    public IReadOnlyList<RecordIssue> CheckAgainst(KitRegister kits, IReadOnlyDictionary<KitId, int>? issued = null)
    {
        ArgumentNullException.ThrowIfNull(kits);
        return new SheetCheck(kits, issued ?? ReadOnlyDictionary<KitId, int>.Empty).Run(this);
    }

    private static ReadOnlyCollection<T> Copy<T>(IReadOnlyList<T> entries)
        where T : class
    {
        T[] copy = [.. entries];
        foreach (T entry in copy)
        {
            ArgumentNullException.ThrowIfNull(entry, nameof(entries));
        }

        return Array.AsReadOnly(copy);
    }

    private static void FindIssues(InventorySheet sheet, IssueList issues)
    {
        NoteLimit(issues, "$.sightings", sheet.Sightings.Count, MaxEntryCount);
        NoteLimit(issues, "$.counts", sheet.Counts.Count, MaxEntryCount);
        NoteLimit(issues, "$.pieceCounts", sheet.PieceCounts.Count, MaxEntryCount);
        NoteLimit(issues, "$.openings", sheet.Openings.Count, MaxEntryCount);
        NoteLimit(issues, "$.annotations", sheet.Annotations.Count, MaxEntryCount);
        NoteLimit(issues, "$.uses", sheet.Uses.Count, MaxEntryCount);
        NoteLimit(issues, "$.breakages", sheet.Breakages.Count, MaxEntryCount);
        NoteLimit(issues, "$.reconstructions", sheet.Reconstructions.Count, MaxEntryCount);
        NoteLimit(issues, "$.joinings", sheet.Joinings.Count, MaxEntryCount);
        NoteLimit(issues, "$.unlistedItems", sheet.UnlistedItems.Count, MaxEntryCount);
        NoteLimit(issues, "$.seals", sheet.Seals.Count, MaxEntryCount);
        NoteLimit(issues, "$.sealChecks", sheet.SealChecks.Count, MaxEntryCount);
        NoteLimit(issues, "$.substitutions", sheet.Substitutions.Count, MaxEntryCount);
        NoteLimit(issues, "$.signatures", sheet.Signatures.Count, MaxSignatureCount);
        NoteAll(issues, "$.sightings", sheet.Sightings, "witness", static sighting => EntryChecks.Witness(sighting.By, sighting.Witness));
        NoteAll(issues, "$.counts", sheet.Counts, "witness", static count => EntryChecks.Witness(count.By, count.Witness));
        NoteAll(issues, "$.pieceCounts", sheet.PieceCounts, "witness", static count => EntryChecks.Witness(count.By, count.Witness));
        NoteAll(issues, "$.annotations", sheet.Annotations, "shortBy", EntryChecks.ShortBy);
        NoteAll(issues, "$.reconstructions", sheet.Reconstructions, "witness", static entry => EntryChecks.Witness(entry.SignedBy.By, entry.Witness));
        NoteAll(issues, "$.joinings", sheet.Joinings, "wholes", EntryChecks.Joining);
        NoteAll(issues, "$.seals", sheet.Seals, "witness", static seal => EntryChecks.Witness(seal.By, seal.Witness));
        NoteAll(issues, "$.seals", sheet.Seals, "inventoriedAt", EntryChecks.Sealing);
        NoteAll(issues, "$.unlistedItems", sheet.UnlistedItems, "touchedSince", EntryChecks.Touched);
    }

    private static void NoteAll<T>(IssueList issues, string list, IReadOnlyList<T> entries, string member, Func<T, Reason?> check)
    {
        for (int index = 0; index < entries.Count; index++)
        {
            if (check(entries[index]) is { } fault)
            {
                issues.Report(string.Create(CultureInfo.InvariantCulture, $"{list}[{index}].{member}"), fault);
            }
        }
    }

    private static void NoteLimit(IssueList issues, string place, int count, int limit) =>
        EntryChecks.Note(issues, place, EntryChecks.Limit(count, limit));

    private Digest ComputeDigest() => Records.Digest.Of(CanonicalJson.Canonicalize(ToJson()));

    /// <summary>How many entries of each kind it holds.</summary>
    /// <returns>One line of English text.</returns>
    public override string ToString() => Entries.ToString();
}
