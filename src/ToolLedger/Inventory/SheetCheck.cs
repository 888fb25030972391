using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Inventory;

/// <summary>Finds the entries of a sheet that would settle nothing, because the list they speak of has no such line, keeps it in another unit, or has several tools of that mark.</summary>
internal sealed class SheetCheck(KitRegister kits, IReadOnlyDictionary<KitId, int> revisions)
{
    private readonly IssueList issues = [];

    public IReadOnlyList<RecordIssue> Run(InventorySheet sheet)
    {
        All("counts", sheet.Counts, Count);
        All("annotations", sheet.Annotations, Annotate);
        All("uses", sheet.Uses, Use);
        All("joinings", sheet.Joinings, (joining, place) => LineOf(joining.Kit, joining.LineNumber, joining.At, place));
        All("substitutions", sheet.Substitutions, Substitute);
        All("openings", sheet.Openings, (opening, place) => ManifestOf(opening.Kit, opening.At, place + ".kit"));
        All("seals", sheet.Seals, (seal, place) => ManifestOf(seal.Kit, seal.At, place + ".kit"));
        All("sealChecks", sheet.SealChecks, (check, place) => ManifestOf(check.Kit, check.At, place + ".kit"));
        All("sightings", sheet.Sightings, Sight);
        All("pieceCounts", sheet.PieceCounts, (count, place) => _ = Listed(count.Tool, count.At, place));
        All("breakages", sheet.Breakages, (breakage, place) => _ = Listed(breakage.Tool, breakage.At, place));
        All("reconstructions", sheet.Reconstructions, (decision, place) => _ = Listed(decision.Tool, decision.SignedBy.At, place));
        return issues;
    }

    private static void All<T>(string list, IReadOnlyList<T> entries, Action<T, string> check)
    {
        for (int i = 0; i < entries.Count; i++)
        {
            check(entries[i], string.Create(CultureInfo.InvariantCulture, $"$.{list}[{i}]"));
        }
    }

    private void Count(LineCount count, string place)
    {
        if (LineOf(count.Kit, count.LineNumber, count.At, place) is { } line)
        {
            InUnit(line, count.Quantity.Unit, place + ".unit");
        }
    }

    private void Annotate(Annotation annotation, string place)
    {
        if (LineOf(annotation.Kit, annotation.LineNumber, annotation.SignedBy.At, place) is { } line && annotation.Kind == AnnotationKind.Shortage)
        {
            InUnit(line, annotation.ShortBy.Unit, place + ".unit");
        }
    }

    private void Use(ConsumableUse use, string place)
    {
        if (LineOf(use.Kit, use.LineNumber, use.At, place) is not { } line)
        {
            return;
        }

        if (line is ConsumableLine)
        {
            InUnit(line, use.Unit, place + ".unit");
        }
        else
        {
            issues.Report(place + ".line", new Reason(InventoryRules.UseOfNoConsumable, ("line", Text(line.Number)), ("kit", use.Kit.Value)), line.Number);
        }
    }

    private void Substitute(Substitution swap, string place)
    {
        if (LineOf(swap.Kit, swap.LineNumber, swap.At, place) is { } line
            && line.Tool?.Id != swap.InPlace && !(line is ToolLine tool && tool.Alternates.Any(alternate => alternate.Id == swap.InPlace)))
        {
            issues.Report(place + ".inPlace", new Reason(InventoryRules.NotAnAlternate, ("tool", swap.InPlace.Value), ("line", Text(line.Number)), ("kit", swap.Kit.Value)), line.Number);
        }
    }

    /// <summary>A mark that is not the tool's own is evidence of a swap and no mistake of the entry, so only one that several tools carry is told; an id that no list knows is a slip of the pen, or a thing to be put on a list.</summary>
    private void Sight(Sighting sighting, string place)
    {
        if (!sighting.InKit.IsEmpty)
        {
            ManifestOf(sighting.InKit, sighting.At, place + ".inKit");
        }

        if (Listed(sighting.Tool, sighting.At, place) is not { } list || sighting.AlsoIdentifiedBy is not null)
        {
            return;
        }

        int bearers = WholeOf(list, sighting.At).SelectMany(static manifest => manifest.Lines)
            .Select(static line => line.Tool).OfType<Tool>()
            .Where(tool => string.Equals(tool.Mark, sighting.MarkRead, StringComparison.Ordinal))
            .DistinctBy(static tool => tool.Id).Count();
        if (bearers > 1)
        {
            issues.Report(place + ".markRead", new Reason(InventoryRules.MarkOfSeveral, ("mark", sighting.MarkRead), ("count", Text(bearers)), ("kit", list.Id.Value), ("tool", sighting.Tool.Value)), list.FindLine(sighting.Tool)?.Number);
        }
    }

    /// <summary>The first list that names a tool; that there is none is told.</summary>
    private KitManifest? Listed(ToolId tool, DateTimeOffset at, string place)
    {
        KitManifest? list = ListsOf(tool, at).FirstOrDefault();
        if (list is null)
        {
            issues.Report(place + ".tool", new Reason(InventoryRules.ToolOnNoList, ("tool", tool.Value), ("time", RecordTime.ToText(at))));
        }

        return list;
    }

    /// <summary>The lists that name a tool: of a kit whose revision is stated that one, of any other the one in force then.</summary>
    private KitManifest[] ListsOf(ToolId tool, DateTimeOffset at)
    {
        KitManifest[] stated = [.. revisions.OrderBy(static pair => pair.Key.Value, StringComparer.Ordinal)
            .Select(pair => kits.Find(pair.Key, pair.Value)).OfType<KitManifest>()
            .Where(manifest => manifest.FindLine(tool) is not null || HasAlternate(manifest, tool))];
        return stated.Length > 0 ? stated : [.. kits.ManifestsWith(tool, at).Concat(kits.ManifestsWithAlternate(tool, at)).Where(manifest => !revisions.ContainsKey(manifest.Id))];
    }

    private static bool HasAlternate(KitManifest manifest, ToolId tool) => manifest.Lines.OfType<ToolLine>().Any(line => line.Alternates.Any(alternate => alternate.Id == tool));

    /// <summary>The outermost kit around a list, with all that is in it: marks are told apart within the whole bag.</summary>
    private List<KitManifest> WholeOf(KitManifest list, DateTimeOffset at)
    {
        for (int level = 0; level < KitRegister.MaxSubKitDepth && kits.ManifestsWith(list.Id, at) is [var holder, ..]; level++)
        {
            list = holder;
        }

        var whole = new List<KitManifest> { list };
        var seen = new HashSet<KitManifest>(ReferenceEqualityComparer.Instance) { list };
        for (int i = 0; i < whole.Count; i++)
        {
            whole.AddRange(whole[i].Lines.OfType<SubKitLine>().Select(kits.Find).OfType<KitManifest>().Where(seen.Add));
        }

        return whole;
    }

    private ManifestLine? LineOf(KitId kit, int number, DateTimeOffset at, string place)
    {
        if (ManifestOf(kit, at, place + ".kit") is not { } manifest)
        {
            return null;
        }

        ManifestLine? line = manifest.Lines.FirstOrDefault(line => line.Number == number);
        if (line is null)
        {
            issues.Report(place + ".line", new Reason(InventoryRules.NoSuchLine, ("revision", Text(manifest.Revision)), ("kit", kit.Value), ("line", Text(number))));
        }

        return line;
    }

    private KitManifest? ManifestOf(KitId kit, DateTimeOffset at, string place)
    {
        KitManifest? manifest = revisions.TryGetValue(kit, out int revision) ? kits.Find(kit, revision) : kits.Find(kit, at);
        if (manifest is null)
        {
            issues.Report(place, new Reason(InventoryRules.NoSuchKit, ("kit", kit.Value), ("time", RecordTime.ToText(at))));
        }

        return manifest;
    }

    private void InUnit(ManifestLine line, Unit unit, string place)
    {
        if (unit != line.Expected.Unit)
        {
            issues.Report(place, new Reason(InventoryRules.OtherUnitThanLine, ("line", Text(line.Number)), ("unit", line.Expected.Unit.Value), ("found", unit.Value)), line.Number);
        }
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
