using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>A manifest under check with the manifests of its sub-kits, each found by the revision listed, and each kit once.</summary>
internal sealed class KitTree
{
    private readonly Dictionary<SubKitLine, KitTree>? inner;
    private readonly Dictionary<SubKitLine, Reason>? doubts;
    private readonly KitTree? outer;
    private readonly Dictionary<ManifestLine, (ToolLine InPlace, Substitution Record)>? swaps;
    private readonly Dictionary<int, DateTimeOffset>? swappedAt;

    // Of every kit of the tree; null for a kit without sub-kits.
    private readonly Dictionary<KitId, KitTree>? byKit;
    private Dictionary<int, IdentityDoubt>? swapDoubts;
    private Dictionary<ToolId, (ManifestLine Line, string Label)>? lines;
    private Dictionary<string, int>? marks;
    private Dictionary<ToolId, List<string>>? labels;

    private KitTree(KitManifest manifest, KitTree? outer, IReadOnlyList<int> within, ReconciliationScope scope, DateTimeOffset presentedAt)
    {
        Manifest = manifest;
        PresentedAt = presentedAt;
        Within = within;
        this.outer = outer;
        byKit = outer?.byKit ?? (manifest.HasSubKits ? [] : null);
        byKit?.Add(manifest.Id, this);
        if (scope.People.HasSubstitutions)
        {
            swappedAt = [];
            swaps = FindSwaps(scope, swappedAt);
        }

        if (!manifest.HasSubKits)
        {
            return;
        }

        inner = new Dictionary<SubKitLine, KitTree>(ReferenceEqualityComparer.Instance);
        doubts = new Dictionary<SubKitLine, Reason>(ReferenceEqualityComparer.Instance);
        foreach (SubKitLine line in manifest.Lines.OfType<SubKitLine>())
        {
            Resolve(line, scope);
        }
    }

    public KitManifest Manifest { get; }

    /// <summary>When the kit under check was first shown: what was recorded of its lines after that counts for nothing.</summary>
    public DateTimeOffset PresentedAt { get; }

    /// <summary>What this is directly inside of; null for the kit under check.</summary>
    public KitTree? Outer => outer;

    /// <summary>The lines as they stand: where a substitution is recorded, with the tool that is in place.</summary>
    public IEnumerable<ManifestLine> Lines => swaps is null ? Manifest.Lines : Manifest.Lines.Select(line => swaps.TryGetValue(line, out (ToolLine InPlace, Substitution) swap) ? swap.InPlace : line);

    /// <summary>The kit under check, of which this is a part or the whole.</summary>
    public KitTree Subject => outer?.Subject ?? this;

    /// <summary>Numbers of the sub-kit lines that lead here, outermost first; empty for the subject.</summary>
    public IReadOnlyList<int> Within { get; }

    /// <summary>This manifest and those of all sub-kits, in the order of the lines.</summary>
    public IEnumerable<KitTree> All => inner is null ? [this] : inner.Values.SelectMany(static tree => tree.All).Prepend(this);

    /// <summary>The sub-kits whose manifest was not handed in, by their place in the kit.</summary>
    public IReadOnlyList<KitId> Unresolved => [.. All
        .SelectMany(static part => part.doubts ?? [])
        .Where(static pair => pair.Value.Kind == ReconciliationReasons.SubKitUnresolved)
        .Select(static pair => pair.Key.Kit)];

    public static KitTree Of(KitManifest manifest, ReconciliationScope scope, DateTimeOffset presentedAt) => new(manifest, null, [], scope, presentedAt);

    /// <summary>The sub-kit of a line, or null if nothing says what it holds.</summary>
    public KitTree? Inner(SubKitLine line) => inner?.GetValueOrDefault(line);

    /// <summary>Why what is known of a sub-kit settles nothing, or null.</summary>
    public Reason? DoubtOf(SubKitLine line) => doubts?.GetValueOrDefault(line);

    /// <summary>The tree's part for a kit, or null if the kit is not part of it.</summary>
    public KitTree? Find(KitId kit) => byKit is not null ? byKit.GetValueOrDefault(kit) : kit == Manifest.Id ? this : null;

    /// <summary>True for the kit of this manifest and those it is inside.</summary>
    public bool IsInside(KitId kit) => Manifest.Id == kit || (outer?.IsInside(kit) ?? false);

    /// <summary>The number of the line of the kit under check that a line is, or is inside of.</summary>
    public int OuterNumberOf(ManifestLine line) => Within.Count > 0 ? Within[0] : line.Number;

    /// <summary>A finding about one line.</summary>
    public Finding FindingOf(ManifestLine line, Reason reason) => new(FindingLevel.Line, reason)
    {
        LineNumbers = [OuterNumberOf(line)],
        LineLabels = [LineConclusion.LabelOf(Within, line.Number)],
    };

    /// <summary>Openings of any part of the kit under check up to the as-of instant, latest first: whoever opens a box in the bag has opened the bag.</summary>
    public IReadOnlyList<KitOpening> Openings(ReconciliationScope scope) => byKit is null
        ? scope.People.OpeningsOf(Manifest.Id)
        : [.. byKit.Keys.SelectMany(scope.People.OpeningsOf).OrderByDescending(static opening => opening.At).ThenBy(static opening => opening.Kit.Value, StringComparer.Ordinal)];

    /// <summary>The tool of a line, and the tools of all lines inside if it is a sub-kit.</summary>
    public IEnumerable<ToolId> ToolsOf(ManifestLine line)
    {
        IEnumerable<ToolId> own = line.Tool is { } tool ? [tool.Id] : [];
        return line is SubKitLine subKit && All.Select(part => part.Inner(subKit)).OfType<KitTree>().FirstOrDefault() is { } inside
            ? own.Concat(inside.All.SelectMany(static part => part.Lines).Select(static deeper => deeper.Tool?.Id).OfType<ToolId>())
            : own;
    }

    /// <summary>How many tools of the whole kit carry a mark.</summary>
    public int CountOfMark(string mark) => outer is not null
        ? outer.CountOfMark(mark)
        : LazyInitializer.EnsureInitialized(ref marks, CountMarks).GetValueOrDefault(mark);

    /// <summary>The line that lists a tool, with its number as reports print it; null if none does.</summary>
    public (ManifestLine Line, string Label)? FindLine(ToolId tool)
    {
        if (byKit is not null || swaps is not null)
        {
            return LazyInitializer.EnsureInitialized(ref lines, IndexLines).TryGetValue(tool, out (ManifestLine, string) found) ? found : null;
        }

        return Manifest.FindLine(tool) is { } line ? (line, LineConclusion.Text(line.Number)) : null;
    }

    /// <summary>The number, as reports print it, of the line that names a tool as an alternate; null if none does.</summary>
    public string? FindAlternate(ToolId tool) => byKit is null
        ? Manifest.FindAlternate(tool) is { } line ? LineConclusion.Text(line.Number) : null
        : byKit.Values
            .Select(part => part.Manifest.FindAlternate(tool) is { } line ? LineConclusion.LabelOf(part.Within, line.Number) : null)
            .FirstOrDefault(static label => label is not null);

    /// <summary>The number, as reports print it, of the line on which a tool was replaced on record; null if none was.</summary>
    public string? FindReplaced(ToolId tool)
    {
        foreach (KitTree part in All)
        {
            if (part.swaps is not null && part.Manifest.FindLine(tool) is { } line && part.swaps.ContainsKey(line))
            {
                return LineConclusion.LabelOf(part.Within, line.Number);
            }
        }

        return null;
    }

    /// <summary>The record by which another tool than the listed one is in place on a line, with the tool listed; null if there is none.</summary>
    public (ToolLine Listed, Substitution Record)? SwapOf(ManifestLine inPlace)
    {
        if (swaps is null)
        {
            return null;
        }

        foreach ((ManifestLine listed, (ToolLine other, Substitution record)) in swaps)
        {
            if (other == inPlace)
            {
                return ((ToolLine)listed, record);
            }
        }

        return null;
    }

    /// <summary>When a record that counts last changed what is in place on a line, or put the listed tool back; null if none did.</summary>
    public DateTimeOffset? SwappedAt(ManifestLine line) => swappedAt is not null && swappedAt.TryGetValue(line.Number, out DateTimeOffset at) ? at : null;

    /// <summary>Why nobody can tell which tool is in place on a line, or null.</summary>
    public IdentityDoubt? SwapDoubtOf(ManifestLine? line) => line is not null && swapDoubts is not null && swapDoubts.TryGetValue(line.Number, out IdentityDoubt doubt) ? doubt : null;

    /// <summary>The numbers, as reports print them, of all lines of the kit under check on which a tool stands, listed or in place of another.</summary>
    public IReadOnlyList<string> LabelsOf(ToolId tool)
    {
        KitTree subject = Subject;
        return subject.byKit is null && subject.swaps is null ? []
            : LazyInitializer.EnsureInitialized(ref subject.labels, subject.IndexLabels).GetValueOrDefault(tool) ?? (IReadOnlyList<string>)[];
    }

    private void Resolve(SubKitLine line, ReconciliationScope scope)
    {
        KitRegister kits = scope.Input.Kits;
        (string, string)[] values = [("kit", line.Kit.Value), ("revision", LineConclusion.Text(line.Revision))];
        if (kits.Find(line) is not { } manifest)
        {
            doubts!.Add(line, new Reason(ReconciliationReasons.SubKitUnresolved, values));
        }
        else if (byKit!.TryGetValue(line.Kit, out KitTree? elsewhere))
        {
            string where = elsewhere.Within.Count > 0 ? "line " + string.Join('.', elsewhere.Within.Select(LineConclusion.Text)) : "the kit itself";
            doubts!.Add(line, new Reason(ReconciliationReasons.SubKitTwice, ("kit", line.Kit.Value), ("where", where)));
        }
        else
        {
            inner!.Add(line, new KitTree(manifest, this, [.. Within, line.Number], scope, PresentedAt));

            // A list that is not in force at all was asked for on purpose, and so were the lists it names.
            bool isCurrent = kits.Find(Manifest.Id, scope.AsOf) == Manifest;
            if (isCurrent && kits.Find(line.Kit, scope.AsOf) != manifest)
            {
                doubts!.Add(line, new Reason(ReconciliationReasons.SubKitNotInForce, values));
            }
        }
    }

    private Dictionary<string, int> CountMarks()
    {
        var counts = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (ManifestLine line in All.SelectMany(static part => part.Lines))
        {
            if (line.Tool?.Mark is { } mark)
            {
                counts[mark] = counts.GetValueOrDefault(mark) + 1;
            }
        }

        return counts;
    }

    private Dictionary<ToolId, (ManifestLine Line, string Label)> IndexLines()
    {
        var index = new Dictionary<ToolId, (ManifestLine Line, string Label)>();
        foreach (KitTree part in All)
        {
            foreach (ManifestLine line in part.Lines)
            {
                if (line.Tool is { } tool)
                {
                    index.TryAdd(tool.Id, (line, LineConclusion.LabelOf(part.Within, line.Number)));
                }
            }
        }

        return index;
    }

    private Dictionary<ToolId, List<string>> IndexLabels()
    {
        var index = new Dictionary<ToolId, List<string>>();
        foreach (KitTree part in All)
        {
            foreach (ManifestLine line in part.Lines)
            {
                if (line.Tool is not { } tool)
                {
                    continue;
                }

                if (!index.TryGetValue(tool.Id, out List<string>? found))
                {
                    index.Add(tool.Id, found = new List<string>(1));
                }

                found.Add(LineConclusion.LabelOf(part.Within, line.Number));
            }
        }

        return index;
    }

    /// <summary>The latest record that counts stands alone; one that puts the listed tool back leaves the line as it is listed, and so do two of one instant that differ.</summary>
    private Dictionary<ManifestLine, (ToolLine InPlace, Substitution Record)> FindSwaps(ReconciliationScope scope, Dictionary<int, DateTimeOffset> changes)
    {
        var found = new Dictionary<ManifestLine, (ToolLine, Substitution)>(ReferenceEqualityComparer.Instance);
        foreach (ToolLine line in Manifest.Lines.OfType<ToolLine>())
        {
            IReadOnlyList<Substitution> latest = InPlaceSearch.Latest(scope, Manifest, line.Number, PresentedAt);
            if (latest.Count == 0)
            {
                continue;
            }

            changes.Add(line.Number, latest[0].At);
            if (latest.Count > 1)
            {
                (swapDoubts ??= []).Add(line.Number, InPlaceSearch.Doubt(scope, latest));
            }
            else if (line.FindAlternate(latest[0].InPlace) is { } inPlace)
            {
                found.Add(line, (new ToolLine { Number = line.Number, Location = line.Location, Tool = inPlace }, latest[0]));
            }
        }

        return found;
    }
}
