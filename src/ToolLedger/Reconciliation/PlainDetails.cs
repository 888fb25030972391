using System;
using System.Collections.Generic;
using System.Threading;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>What a plain kit's conclusions rest on: the reasons at once, everything else by the careful way when somebody asks.</summary>
/// <remarks>Thread-safe.</remarks>
internal sealed class PlainDetails
{
    private static readonly Reason[] NotCounted = [new Reason(ReconciliationReasons.NotCounted)];

    private readonly KitManifest manifest;
    private readonly PlainLine[] lines;
    private readonly Lazy<ReconciliationScope> scope;
    private readonly Reconciler by;
    private readonly bool hasHints;
    private ReconciliationResult? result;

    /// <summary>Makes the details of a kit that <see cref="PlainKit"/> judged.</summary>
    public PlainDetails(KitManifest manifest, PlainLine[] lines, Lazy<ReconciliationScope> scope, Reconciler by, ReconciliationInput input)
    {
        this.manifest = manifest;
        this.lines = lines;
        this.scope = scope;
        this.by = by;
        hasHints = input.History.Count > 0 || input.ProximityNotes.Count > 0;
    }

    /// <summary>What the careful way concludes, which is the same.</summary>
    public ReconciliationResult Result => LazyInitializer.EnsureInitialized(ref result, () => by.ReconcileWithCare(scope.Value, manifest));

    public LineConclusion LineAt(int index) => Result.Lines[index];

    public LineState StateOf(int index) => lines[index].State;

    public IReadOnlyList<Reason> ReasonsOf(int index) => lines[index] switch
    {
        { Risk: not null } => LineAt(index).Reasons,
        { Presence: null } => NotCounted,

        // Hints go with what is open.
        { State: not LineState.Accounted } when hasHints => LineAt(index).Reasons,
        { Presence: { } presence } => presence.Reasons,
    };

    public NextStep? NextOf(int index) => lines[index].State switch
    {
        LineState.Accounted => null,
        LineState.NotRead when !hasHints && lines[index].Risk is null => Steps.PresentAgain(manifest.Lines[index]),
        LineState.NotAssessed => Steps.CountItems(manifest.Lines[index]),
        _ => LineAt(index).Next,
    };
}
