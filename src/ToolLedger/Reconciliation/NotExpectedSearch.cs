using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>Finds which lines of a kit are not expected now, or expected less, and what contradicts that.</summary>
internal sealed class NotExpectedSearch
{
    private readonly ReconciliationScope scope;
    private readonly KitTree tree;
    private readonly KitManifest manifest;
    private readonly Dictionary<int, Annotation>? annotations;

    public NotExpectedSearch(ReconciliationScope scope, KitTree tree)
        : this(scope, tree, [], [], [])
    {
    }

    private NotExpectedSearch(
        ReconciliationScope scope, KitTree tree, List<LineNotExpected> lines, List<Reason> contradictions, List<Finding> findings)
    {
        this.scope = scope;
        this.tree = tree;
        manifest = tree.Manifest;
        Lines = lines;
        Contradictions = contradictions;
        Findings = findings;
        if (!scope.People.HasAnnotations)
        {
            return;
        }

        annotations = [];
        foreach (ManifestLine line in manifest.Lines)
        {
            if (Effective(line) is { } annotation)
            {
                annotations.Add(line.Number, annotation);
            }
        }
    }

    public List<LineNotExpected> Lines { get; }

    /// <summary>Why a line removed on record cannot be passed over: it is inside after all.</summary>
    public List<Reason> Contradictions { get; }

    public List<Finding> Findings { get; }

    /// <summary>The same search for a sub-kit; what it notes stands with the rest.</summary>
    public NotExpectedSearch Of(KitTree inner) => new(scope, inner, Lines, Contradictions, Findings);

    /// <summary>True where the line is not expected; then it and what contradicts that are noted.</summary>
    public bool IsNotExpected(ManifestLine line, ToolReadsCollector collector)
    {
        if (Find(line) is { Kind: AnnotationKind.Removed } annotation)
        {
            Reason reason = Say(PeopleReasons.RemovedOnRecord, annotation);
            Lines.Add(new LineNotExpected { Line = line, Within = tree.Within, Reason = reason, Annotation = annotation });
            NoteContradictions(line, collector);
            return true;
        }

        // Whoever counts the line although no rule asks for it is heard.
        if (line is ConsumableLine && scope.Policy.Inventory.UnitsNotCounted is { Count: > 0 } units && units.Contains(line.Expected.Unit)
            && scope.People.CountsOf(manifest.Id, line.Number).Count == 0)
        {
            Lines.Add(new LineNotExpected { Line = line, Within = tree.Within, Reason = new Reason(PeopleReasons.NotCountedByRule, ("unit", line.Expected.Unit.Value)) });
            return true;
        }

        return false;
    }

    /// <summary>How much of the line is known to be short.</summary>
    public decimal ShortOf(ManifestLine line, List<Reason> remarks)
    {
        if (Find(line) is not { Kind: AnnotationKind.Shortage } annotation)
        {
            return 0;
        }

        remarks.Add(Say(PeopleReasons.KnownShort, annotation, ("short", annotation.ShortBy.ToString())));
        return annotation.ShortBy.Amount;
    }

    /// <summary>Whether another shortage annotation of the same instant says another number than the one that counts.</summary>
    public bool IsDisputed(ManifestLine line) => Find(line) is { Kind: AnnotationKind.Shortage } annotation
        && scope.People.AnnotationsOf(manifest.Id, line.Number).Any(other => other.Kind == AnnotationKind.Shortage
            && other.SignedBy.At == annotation.SignedBy.At && other.ShortBy != annotation.ShortBy && WhyNot(line, other) is null);

    private Annotation? Find(ManifestLine line) => annotations?.GetValueOrDefault(line.Number);

    /// <summary>The latest annotation that counts stands alone; one that has ended leaves the line expected in full.</summary>
    private Annotation? Effective(ManifestLine line)
    {
        foreach (Annotation annotation in scope.People.AnnotationsOf(manifest.Id, line.Number))
        {
            if (WhyNot(line, annotation) is not { } why)
            {
                return annotation.Until <= scope.AsOf ? null : annotation;
            }

            Findings.Add(new Finding(FindingLevel.Line, new Reason(
                PeopleReasons.FindingAnnotation, ("line", LineConclusion.LabelOf(tree.Within, line.Number)), ("by", annotation.SignedBy.By.Value), ("at", scope.Time(annotation.SignedBy.At)), ("why", why)))
            {
                LineNumbers = [tree.OuterNumberOf(line)],
                LineLabels = [LineConclusion.LabelOf(tree.Within, line.Number)],
            });
        }

        return null;
    }

    private string? WhyNot(ManifestLine line, Annotation annotation) => annotation.Kind switch
    {
        AnnotationKind.Restored => null,
        _ when annotation.SignedBy.At < manifest.EffectiveFrom => "it is older than this revision of the manifest",
        _ when annotation.SignedBy.At > tree.PresentedAt => "it was signed after the kit was presented",
        _ when !SignatureSearch.IsOfRole(scope.Policy.Inventory, annotation.SignedBy) => "the policy does not name its role among those that may sign",
        AnnotationKind.Removed => null,
        _ when line is ToolLine or SubKitLine => "a line of one tool or sub-kit is removed or expected, never short by a number",
        _ when annotation.ShortBy.Unit != line.Expected.Unit => "it is in another unit than the line",
        _ when annotation.ShortBy.Amount >= line.Expected.Amount => "it leaves nothing of the line, which only a removal can do",
        _ => null,
    };

    /// <summary>A sub-kit that is removed is gone with all that is in it.</summary>
    private void NoteContradictions(ManifestLine line, ToolReadsCollector collector)
    {
        KitTree? inside = line is SubKitLine subKit ? tree.Inner(subKit) : null;
        foreach (KitTree part in inside?.All ?? [])
        {
            foreach (ManifestLine deeper in part.Lines)
            {
                NoteContradiction(line, part, deeper, inside, collector);
            }
        }

        NoteContradiction(line, tree, line, inside, collector);
    }

    private void NoteContradiction(ManifestLine removed, KitTree part, ManifestLine line, KitTree? inside, ToolReadsCollector collector)
    {
        if (line.Tool is { } tool)
        {
            if (collector.Collect(tool, part).Best is { LookCount: > 0 })
            {
                Findings.Add(new Finding(FindingLevel.Line, new Reason(PeopleReasons.FindingRemovedRead, ("tool", tool.Id.Value))) { LineNumbers = [tree.OuterNumberOf(removed)], LineLabels = [LineConclusion.LabelOf(tree.Within, removed.Number)] });
            }

            if (scope.People.SightingsOf(tool.Id).FirstOrDefault(sighting => IsFresh(sighting.At)) is { } seen)
            {
                bool isInside = tree.IsInside(seen.InKit) || (inside?.All.Any(deeper => deeper.Manifest.Id == seen.InKit) ?? false);
                if (isInside || seen.InKit.IsEmpty)
                {
                    NoteSighting(removed, seen, isInside);
                }
            }
        }

        if (scope.People.CountsOf(part.Manifest.Id, line.Number).FirstOrDefault(count => IsFresh(count.At)) is { } counted && counted.Quantity.Amount + counted.Parts > 0)
        {
            Contradictions.Add(Inside(removed, "counted", counted.By, counted.At));
        }
    }

    private void NoteSighting(ManifestLine line, Sighting seen, bool isInside)
    {
        Findings.Add(new Finding(FindingLevel.Line, new Reason(
            PeopleReasons.FindingRemovedSighted, ("tool", seen.Tool.Value), ("by", seen.By.Value), ("at", scope.Time(seen.At)), ("where", seen.Where.Value)))
        {
            LineNumbers = [tree.OuterNumberOf(line)],
            LineLabels = [LineConclusion.LabelOf(tree.Within, line.Number)],
        });
        if (isInside)
        {
            Contradictions.Add(Inside(line, "sighted", seen.By, seen.At));
        }
    }

    private bool IsFresh(DateTimeOffset at) => scope.AsOf - at <= scope.Policy.Inventory.EvidenceAgeMax;

    private Reason Inside(ManifestLine line, string how, PersonId by, DateTimeOffset at)
        => new(PeopleReasons.KitRemovedSeen, ("line", LineConclusion.LabelOf(tree.Within, line.Number)), ("how", how), ("by", by.Value), ("at", scope.Time(at)));

    private Reason Say(ReasonKind kind, Annotation annotation, params ReadOnlySpan<(string, string)> more) => new(
        kind,
        [.. more, ("by", annotation.SignedBy.By.Value), ("at", scope.Time(annotation.SignedBy.At)), ("reason", annotation.Report is { } report ? $"{annotation.Reason} ({report})" : annotation.Reason)]);
}
