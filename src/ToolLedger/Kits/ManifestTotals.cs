using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Kits;

/// <summary>The totals of a manifest: for the kit, and for every drawer or place in it.</summary>
/// <remarks>
/// Sub-kits are counted once, with the lines of the revision that is listed, at the place where the sub-kit sits. Immutable
/// and thread-safe; compared by reference.
/// </remarks>
public sealed class ManifestTotals
{
    private ManifestTotals(KitManifest manifest, List<ManifestTotal.CountedPart> parts, List<SubKitLine> unresolved)
    {
        Manifest = manifest;
        Kit = new ManifestTotal(null, parts);
        Locations = [.. parts
            .GroupBy(static part => part.Location, StringComparer.Ordinal)
            .OrderBy(static group => group.Key, StringComparer.Ordinal)
            .Select(static group => new ManifestTotal(group.Key, group))];
        Unresolved = unresolved.AsReadOnly();
    }

    /// <summary>The manifest that was added up.</summary>
    public KitManifest Manifest { get; }

    /// <summary>The whole kit.</summary>
    public ManifestTotal Kit { get; }

    /// <summary>One total a place, ordered by place (ordinal); first, if there are any, the lines that state none.</summary>
    public IReadOnlyList<ManifestTotal> Locations { get; }

    /// <summary>Sub-kits whose manifest the register does not hold: what they contain is in no total.</summary>
    public IReadOnlyList<SubKitLine> Unresolved { get; }

    /// <summary>Adds up a manifest.</summary>
    /// <param name="manifest">The manifest.</param>
    /// <param name="kits">Where the manifests of sub-kits are found.</param>
    /// <param name="tags">Which tools carry a live tag.</param>
    /// <param name="asOf">The instant at which tags must be live.</param>
    /// <returns>The totals.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static ManifestTotals Of(KitManifest manifest, KitRegister kits, TagRegister tags, DateTimeOffset asOf)
    {
        ArgumentNullException.ThrowIfNull(manifest);
        ArgumentNullException.ThrowIfNull(kits);
        ArgumentNullException.ThrowIfNull(tags);
        var parts = new List<ManifestTotal.CountedPart>(manifest.Lines.Count);
        var unresolved = new List<SubKitLine>();
        var seen = new HashSet<KitManifest>(ReferenceEqualityComparer.Instance) { manifest };
        foreach (ManifestLine line in manifest.Lines)
        {
            Add(line, line.Location, 1);
        }

        return new ManifestTotals(manifest, parts, unresolved);

        void Add(ManifestLine line, string? location, int depth)
        {
            parts.Add(PartOf(line, location, line.Tool is { } tool && tags.LiveTagsOf(tool.Id, asOf).Count > 0));
            if (line is not SubKitLine subKit)
            {
                return;
            }

            // A manifest that was handed in beside the register may be deeper than a register allows.
            if (kits.Find(subKit) is not { } inner || depth > KitRegister.MaxSubKitDepth)
            {
                unresolved.Add(subKit);
            }
            else if (seen.Add(inner))
            {
                foreach (ManifestLine innerLine in inner.Lines)
                {
                    Add(innerLine, location, depth + 1);
                }
            }
        }
    }

    private static ManifestTotal.CountedPart PartOf(ManifestLine line, string? location, bool isTagged)
    {
        int pieces = line.Tool?.PieceCount ?? 0;
        bool isThing = line is not SubKitLine { Case: null };
        bool needsPeople = isThing && (!isTagged || line is SetLine || pieces > 1);
        return new ManifestTotal.CountedPart(location, line.Expected.Unit, isThing ? line.Expected.Amount : 0, pieces, isTagged, needsPeople);
    }

    /// <summary>Kit, revision and the totals of the whole kit.</summary>
    /// <returns>One line of English text.</returns>
    public override string ToString() =>
        $"{Manifest}: {Kit}{(Unresolved.Count == 0 ? "" : $"; {CountText.Of(Unresolved.Count, "sub-kit")} not at hand")}";
}
