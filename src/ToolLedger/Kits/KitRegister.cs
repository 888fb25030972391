using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using System.Linq;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Kits;

/// <summary>All manifests of a site: which revision of a kit was in force at an instant, and which kit lists a tool.</summary>
/// <remarks>
/// In force at an instant is the highest revision whose effective time has come by then. A revision that comes into force
/// later never changes an earlier instant. Immutable and thread-safe; compared by reference, or by <see cref="Digest"/>.
/// </remarks>
public sealed partial class KitRegister
{
    /// <summary>Most manifests of one register.</summary>
    public const int MaxManifestCount = 1_000_000;

    /// <summary>Most levels of sub-kits below a kit: a sub-kit, a sub-kit of it, and so on.</summary>
    public const int MaxSubKitDepth = 8;

    private readonly KitManifest[] _manifests;
    private readonly DateTimeOffset[] _ends;
    private readonly GroupIndex<KitId> _byKit;
    private readonly LineEntries<ToolId> _tools;
    private readonly LineEntries<KitId>? _subKits;
    private readonly Lazy<IReadOnlyList<RecordIssue>> _faults;
    private readonly Lazy<Digest> _digest;
    private readonly Lazy<ILookup<ToolId, KitManifest>> _alternates;

    /// <summary>Makes a register.</summary>
    /// <param name="manifests">The manifests in any order, at most 1,000,000. The same revision with the same content may be given twice.</param>
    /// <exception cref="ArgumentNullException">The list or a manifest is null.</exception>
    /// <exception cref="RecordException">A revision of a kit is given twice with different content, a kit contains itself, sub-kits are more than 8 deep, or there are too many.</exception>
    public KitRegister(IEnumerable<KitManifest> manifests)
        : this(Accept(manifests))
    {
    }

    private KitRegister(KitManifest[] manifests)
    {
        _manifests = manifests;
        _byKit = GroupIndex<KitId>.Of(manifests, manifest => manifest.Id, static (left, right) => left.Revision.CompareTo(right.Revision));
        _ends = EndsOf(manifests, _byKit);
        _tools = new LineEntries<ToolId>(manifests, _ends, IsTool);
        HasSubKits = Array.Exists(manifests, static manifest => manifest.HasSubKits);
        _subKits = HasSubKits ? new LineEntries<KitId>(manifests, _ends, IsSubKit) : null;
        _faults = new(() => FindFaults(), System.Threading.LazyThreadSafetyMode.ExecutionAndPublication);
        _digest = new(ComputeDigest, System.Threading.LazyThreadSafetyMode.ExecutionAndPublication);
        _alternates = new(FindAlternates, System.Threading.LazyThreadSafetyMode.ExecutionAndPublication);
        Manifests = Array.AsReadOnly(manifests);
        KitIds = IdsOf(manifests);
    }

    /// <summary>A register without manifests.</summary>
    public static KitRegister Empty { get; } = new(Array.Empty<KitManifest>());

    /// <summary>The manifests, ordered by kit id (ordinal) and revision.</summary>
    public IReadOnlyList<KitManifest> Manifests { get; }

    /// <summary>The kits, ordered by id (ordinal).</summary>
    public IReadOnlyList<KitId> KitIds { get; }

    /// <summary>Faults of the data that are shown, not refused; at most 10,001, found when first asked for.</summary>
    /// <remarks>
    /// A tool or a sub-kit on the manifests of two kits in force at one instant; one mark on tools of two such kits (within
    /// one kit it is legal and marks the kit); a sub-kit whose listed revision is not in the register, or not in force.
    /// </remarks>
    public IReadOnlyList<RecordIssue> Faults => _faults.Value;

    /// <summary>SHA-256 of the canonical JSON list of kits, revisions and their digests; computed once, when first asked for.</summary>
    public Digest Digest => _digest.Value;

    /// <summary>True if a manifest lists a sub-kit.</summary>
    public bool HasSubKits { get; }

    /// <summary>Makes a register if nothing speaks against it.</summary>
    /// <param name="manifests">The manifests in any order, at most 1,000,000. The same revision with the same content may be given twice.</param>
    /// <param name="register">The register, or null.</param>
    /// <param name="issues">Every issue; empty when the register was made. The place counts manifests in the order given.</param>
    /// <returns>False if there are issues.</returns>
    /// <exception cref="ArgumentNullException">The list or a manifest is null.</exception>
    public static bool TryCreate(IEnumerable<KitManifest> manifests, [NotNullWhen(true)] out KitRegister? register, out IReadOnlyList<RecordIssue> issues)
    {
        var found = new IssueList();
        KitManifest[]? accepted = Check(manifests, found);
        register = accepted is null ? null : new KitRegister(accepted);
        issues = found;
        return register is not null;
    }

    /// <summary>The revision of a kit in force then.</summary>
    /// <param name="kit">The kit.</param>
    /// <param name="asOf">The instant.</param>
    /// <returns>The manifest, or null if there is none yet.</returns>
    public KitManifest? Find(KitId kit, DateTimeOffset asOf)
    {
        ReadOnlySpan<int> revisions = _byKit.Of(kit);
        for (int i = revisions.Length - 1; i >= 0; i--)
        {
            if (_manifests[revisions[i]].EffectiveFrom <= asOf)
            {
                return _manifests[revisions[i]];
            }
        }

        return null;
    }

    /// <summary>A stated revision of a kit.</summary>
    /// <param name="kit">The kit.</param>
    /// <param name="revision">The revision.</param>
    /// <returns>The manifest, or null.</returns>
    public KitManifest? Find(KitId kit, int revision)
    {
        foreach (int index in _byKit.Of(kit))
        {
            if (_manifests[index].Revision == revision)
            {
                return _manifests[index];
            }
        }

        return null;
    }

    /// <summary>The manifests in force then that list a tool; more than one is a fault of the data.</summary>
    /// <param name="tool">The tool.</param>
    /// <param name="asOf">The instant.</param>
    /// <returns>The manifests, ordered by kit id (ordinal).</returns>
    public IReadOnlyList<KitManifest> ManifestsWith(ToolId tool, DateTimeOffset asOf) => _tools.Live(tool, asOf);

    /// <summary>The manifests in force then that name a tool as an alternate, ordered by kit id (ordinal).</summary>
    internal IEnumerable<KitManifest> ManifestsWithAlternate(ToolId tool, DateTimeOffset asOf) => _alternates.Value[tool].Where(manifest => Find(manifest.Id, asOf) == manifest);

    /// <summary>Whether a manifest of another kit in force then lists a tool too.</summary>
    internal bool IsOnOther(ToolId tool, KitId kit, DateTimeOffset asOf) => _tools.IsOnOther(tool, kit, asOf);

    /// <summary>The manifests that list a tool and were in force at any instant of a stretch of time, and those that are wanted all the same.</summary>
    internal IEnumerable<KitManifest> Listing(ToolId tool, DateTimeOffset from, DateTimeOffset to, Predicate<KitManifest> isWanted) => _tools.Listing(tool, from, to, isWanted);

    /// <summary>The same for the manifests that list a kit as their sub-kit.</summary>
    internal IEnumerable<KitManifest> Listing(KitId subKit, DateTimeOffset from, DateTimeOffset to, Predicate<KitManifest> isWanted) =>
        _subKits?.Listing(subKit, from, to, isWanted) ?? [];

    /// <summary>The manifests in force then that list a kit as their sub-kit; more than one is a fault of the data.</summary>
    /// <param name="subKit">The sub-kit.</param>
    /// <param name="asOf">The instant.</param>
    /// <returns>The manifests, ordered by kit id (ordinal).</returns>
    public IReadOnlyList<KitManifest> ManifestsWith(KitId subKit, DateTimeOffset asOf) => _subKits?.Live(subKit, asOf) ?? [];

    /// <summary>The kit whose manifest in force then lists a tool.</summary>
    /// <param name="tool">The tool.</param>
    /// <param name="asOf">The instant.</param>
    /// <returns>The kit, or null. If several list it (see <see cref="Faults"/>), the first by id; ask <see cref="ManifestsWith(ToolId, DateTimeOffset)"/> for all.</returns>
    public KitId? KitOf(ToolId tool, DateTimeOffset asOf) => _tools.FirstLive(tool, asOf)?.Id;

    /// <summary>The manifest of a sub-kit, of the revision that the line lists.</summary>
    /// <param name="line">The line.</param>
    /// <returns>The manifest, or null if the register does not hold it.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="line"/> is null.</exception>
    public KitManifest? Find(SubKitLine line)
    {
        ArgumentNullException.ThrowIfNull(line);
        return Find(line.Kit, line.Revision);
    }

    /// <summary>Tools in force that carry the mark of a tool that was not found: whoever reads that mark may take one for the other.</summary>
    /// <param name="notFound">The tools that people have declared not found; those without a mark match nothing.</param>
    /// <param name="asOf">The instant whose manifests are searched.</param>
    /// <returns>Every match, alternates included, ordered by kit id (ordinal) and line.</returns>
    /// <exception cref="ArgumentNullException">The list or a tool is null.</exception>
    public IReadOnlyList<MarkReuse> FindMarkReuse(IEnumerable<Tool> notFound, DateTimeOffset asOf)
    {
        ArgumentNullException.ThrowIfNull(notFound);
        ILookup<string, Tool> byMark = notFound.Where(static tool => tool.Mark is not null).ToLookup(static tool => tool.Mark!, StringComparer.Ordinal);
        return byMark.Count == 0
            ? []
            : [.. from kit in KitIds
                  let manifest = Find(kit, asOf)
                  where manifest is not null
                  from line in manifest.Lines
                  from tool in ToolsOf(line)
                  from lost in tool.Mark is { } mark ? byMark[mark] : []
                  where lost.Id != tool.Id
                  select new MarkReuse(lost, tool, kit, manifest.Revision, line.Number)];
    }

    private ILookup<ToolId, KitManifest> FindAlternates() => _manifests
        .SelectMany(static manifest => manifest.Lines.OfType<ToolLine>().SelectMany(static line => line.Alternates).Select(alternate => (alternate.Id, Manifest: manifest)))
        .ToLookup(static one => one.Id, static one => one.Manifest);

    /// <summary>How many kits and manifests it holds.</summary>
    /// <returns>One line of English text.</returns>
    public override string ToString() => FormattableString.Invariant($"{KitIds.Count} {(KitIds.Count == 1 ? "kit" : "kits")} in {Manifests.Count} {(Manifests.Count == 1 ? "manifest" : "manifests")}");
}
