using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using System.Threading;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Kits;

/// <summary>The signed list of what a kit must contain: one revision of it.</summary>
/// <remarks>
/// A permanent change makes a new revision; a signed revision is never edited. Immutable and thread-safe; compared by
/// reference, or by <see cref="Digest"/>.
/// </remarks>
public sealed partial class KitManifest
{
    /// <summary>Most lines of one manifest.</summary>
    public const int MaxLineCount = 10_000;

    /// <summary>Highest revision.</summary>
    public const int MaxRevision = 1_000_000;

    /// <summary>Longest title, in characters.</summary>
    public const int MaxTitleLength = 200;

    private readonly ManifestLine[] _lines;
    private readonly bool _hasAlternates;
    private Digest _digest;
    private volatile bool _hasDigest;

    /// <summary>Makes a manifest.</summary>
    /// <param name="id">The kit.</param>
    /// <param name="revision">The revision, 1 to 1,000,000.</param>
    /// <param name="title">What the kit is, 1 to 200 printable characters.</param>
    /// <param name="effectiveFrom">From when this revision is in force, in the years 1970 to 2999.</param>
    /// <param name="signedBy">Who signed it.</param>
    /// <param name="lines">The lines in any order, 1 to 10,000.</param>
    /// <exception cref="ArgumentNullException">The list or a line is null.</exception>
    /// <exception cref="RecordException">The manifest is refused; the exception lists every issue.</exception>
    public KitManifest(KitId id, int revision, string title, DateTimeOffset effectiveFrom, Signature signedBy, IEnumerable<ManifestLine> lines)
        : this(Accept(id, revision, title, effectiveFrom, signedBy, lines))
    {
    }

    private KitManifest(ManifestContent content)
    {
        Id = content.Id;
        Revision = content.Revision;
        Title = content.Title;
        EffectiveFrom = content.EffectiveFrom;
        SignedBy = content.SignedBy;
        _lines = content.Lines;
        Lines = Array.AsReadOnly(_lines);
        HasSubKits = Array.Exists(_lines, static line => line is SubKitLine);
        _hasAlternates = Array.Exists(_lines, static line => line is ToolLine { Alternates.Count: > 0 });
    }

    /// <summary>The kit.</summary>
    public KitId Id { get; }

    /// <summary>The revision, from 1 on.</summary>
    public int Revision { get; }

    /// <summary>What the kit is.</summary>
    public string Title { get; }

    /// <summary>From when this revision is in force.</summary>
    public DateTimeOffset EffectiveFrom { get; }

    /// <summary>Who signed it.</summary>
    public Signature SignedBy { get; }

    /// <summary>The lines, ordered by number; at least one.</summary>
    public IReadOnlyList<ManifestLine> Lines { get; }

    /// <summary>True if a line lists a sub-kit.</summary>
    public bool HasSubKits { get; }

    /// <summary>SHA-256 of the canonical form (RFC 8785) of <see cref="ToJson"/>; computed once, when first asked for.</summary>
    public Digest Digest
    {
        get
        {
            if (!_hasDigest)
            {
                // Two threads may both compute it; they write the same value before either sets the flag.
                _digest = CanonicalJson.DigestOf(ToJson());
                _hasDigest = true;
            }

            return _digest;
        }
    }

    /// <summary>Makes a manifest if nothing speaks against it.</summary>
    /// <param name="id">The kit.</param>
    /// <param name="revision">The revision, 1 to 1,000,000.</param>
    /// <param name="title">What the kit is, 1 to 200 printable characters.</param>
    /// <param name="effectiveFrom">From when this revision is in force, in the years 1970 to 2999.</param>
    /// <param name="signedBy">Who signed it; null is an issue.</param>
    /// <param name="lines">The lines in any order, 1 to 10,000.</param>
    /// <param name="manifest">The manifest, or null.</param>
    /// <param name="issues">Every issue; empty when the manifest was made. Places count lines in the order given.</param>
    /// <returns>False if there are issues.</returns>
    /// <exception cref="ArgumentNullException">The list or a line is null.</exception>
    public static bool TryCreate(KitId id, int revision, string? title, DateTimeOffset effectiveFrom, Signature? signedBy,
        IEnumerable<ManifestLine> lines, [NotNullWhen(true)] out KitManifest? manifest, out IReadOnlyList<RecordIssue> issues)
    {
        var found = new IssueList();
        ManifestContent? content = ManifestContent.Check(id, revision, title, effectiveFrom, signedBy, lines, found);
        manifest = content is null ? null : new KitManifest(content);
        issues = found;
        return manifest is not null;
    }

    /// <summary>Finds a line by its number.</summary>
    /// <param name="number">The number.</param>
    /// <returns>The line, or null.</returns>
    public ManifestLine? FindLine(int number)
    {
        int low = 0;
        int high = _lines.Length - 1;
        while (low <= high)
        {
            int middle = (low + high) >>> 1;
            int difference = _lines[middle].Number.CompareTo(number);
            if (difference == 0)
            {
                return _lines[middle];
            }

            (low, high) = difference < 0 ? (middle + 1, high) : (low, middle - 1);
        }

        return null;
    }

    /// <summary>Finds the line that lists a tool, or a set in that container.</summary>
    /// <param name="tool">The tool.</param>
    /// <returns>The line, or null. One line at most lists a tool.</returns>
    public ManifestLine? FindLine(ToolId tool)
    {
        if (_lines.Length > LinearSearchLength)
        {
            return LazyInitializer.EnsureInitialized(ref _lineByTool, IndexTools).GetValueOrDefault(tool);
        }

        foreach (ManifestLine line in _lines)
        {
            if (line.Tool is { } listed && listed.Id == tool)
            {
                return line;
            }
        }

        return null;
    }

    /// <summary>Finds the line that names a tool as an alternate.</summary>
    /// <param name="tool">The tool.</param>
    /// <returns>The line, or null. One line at most names a tool.</returns>
    public ToolLine? FindAlternate(ToolId tool) =>
        _hasAlternates ? LazyInitializer.EnsureInitialized(ref _lineByAlternate, IndexAlternates).GetValueOrDefault(tool) : null;

    /// <summary>What a later revision of the kit lists differently: lines added, removed, moved to another number, or changed, member by member.</summary>
    /// <remarks>
    /// The same tool or sub-kit is the same by its id, wherever it stands. Title, effective time and signature are not compared.
    /// Backwards, the same number of differences is found.
    /// </remarks>
    /// <param name="later">The other manifest of this kit.</param>
    /// <returns>The differences in the order of the earlier lines, then what was added; empty if the lines are the same.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="later"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="later"/> is of another kit.</exception>
    public IReadOnlyList<ManifestChange> ChangesTo(KitManifest later)
    {
        ArgumentNullException.ThrowIfNull(later);
        return later.Id == Id
            ? ManifestComparison.Compare(this, later)
            : throw new ArgumentException($"A manifest of kit {later.Id} cannot be compared with one of kit {Id}.", nameof(later));
    }

    /// <summary>Kit, revision and title.</summary>
    /// <returns>Text for people.</returns>
    public override string ToString() => FormattableString.Invariant($"{Id.Value} revision {Revision}: {Title}");

    private static ManifestContent Accept(KitId id, int revision, string? title, DateTimeOffset effectiveFrom, Signature? signedBy, IEnumerable<ManifestLine> lines)
    {
        var issues = new IssueList();
        return ManifestContent.Check(id, revision, title, effectiveFrom, signedBy, lines, issues) ?? throw new RecordException(issues);
    }
}
