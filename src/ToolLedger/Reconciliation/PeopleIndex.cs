using System;
using System.Collections.Generic;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>What people said up to the as-of instant, by what it is about, latest first. Of entries of one instant the one that shows less comes first.</summary>
internal sealed class PeopleIndex
{
    private readonly EntryIndex<ToolId, Sighting> sightings;
    private readonly EntryIndex<KitId, Sighting> sightingsInKit;
    private readonly EntryIndex<ValueTuple<string>, Sighting> sightingsByMark;
    private readonly EntryIndex<(KitId Kit, int Line), LineCount> counts;
    private readonly EntryIndex<ToolId, PieceCount> pieces;
    private readonly EntryIndex<KitId, KitOpening> openings;
    private readonly EntryIndex<(KitId Kit, int Line), Annotation> annotations;
    private readonly EntryIndex<(KitId Kit, int Line), ConsumableUse> uses;
    private readonly EntryIndex<ToolId, Breakage> breakages;
    private readonly EntryIndex<ToolId, Reconstruction> reconstructions;
    private readonly EntryIndex<(KitId Kit, int Line), JoiningStatement> joinings;
    private readonly EntryIndex<KitId, SealRecord> seals;
    private readonly EntryIndex<KitId, SealCheck> sealChecks;
    private readonly EntryIndex<(KitId Kit, int Line), Substitution> substitutions;

    // Most kits are looked at before anybody said a word.
    private static readonly PeopleIndex Nothing = new(InventorySheet.Empty, DateTimeOffset.MinValue);

    private PeopleIndex(InventorySheet sheet, DateTimeOffset asOf)
    {
        sightings = new(sheet.Sightings, asOf, static entry => entry.Tool, static entry => entry.At, CompareSightings);
        sightingsInKit = new(sheet.Sightings, asOf, static entry => entry.InKit, static entry => entry.At, CompareSightings);
        sightingsByMark = new(sheet.Sightings, asOf, static entry => ValueTuple.Create(entry.MarkRead), static entry => entry.At, CompareSightings);
        counts = new(sheet.Counts, asOf, static entry => (entry.Kit, entry.LineNumber), static entry => entry.At, CompareCounts);
        pieces = new(sheet.PieceCounts, asOf, static entry => entry.Tool, static entry => entry.At, static (a, b) =>
            First((a.Pieces ?? -1).CompareTo(b.Pieces ?? -1), Compare(a.By, b.By), Compare(a.Witness, b.Witness)));
        openings = new(sheet.Openings, asOf, static entry => entry.Kit, static entry => entry.At, static (a, b) => Compare(a.By, b.By));
        annotations = new(sheet.Annotations, asOf, static entry => (entry.Kit, entry.LineNumber), static entry => entry.SignedBy.At, CompareAnnotations);
        uses = new(sheet.Uses, asOf, static entry => (entry.Kit, entry.LineNumber), static entry => entry.At, CompareUses);
        breakages = new(sheet.Breakages, asOf, static entry => entry.Tool, static entry => entry.At, static (a, b) =>
            First((b.Pieces ?? int.MaxValue).CompareTo(a.Pieces ?? int.MaxValue), Compare(a.By, b.By), 0));
        reconstructions = new(sheet.Reconstructions, asOf, static entry => entry.Tool, static entry => entry.SignedBy.At, static (a, b) =>
            First(
                First(b.Pieces.CompareTo(a.Pieces), Compare(a.SignedBy.By, b.SignedBy.By), string.CompareOrdinal(a.Decision, b.Decision)),
                Compare(a.Witness, b.Witness),
                string.CompareOrdinal(a.SignedBy.Role.Value, b.SignedBy.Role.Value)));
        seals = new(sheet.Seals, asOf, static entry => entry.Kit, static entry => entry.At, static (a, b) =>
            First(a.InventoriedAt.CompareTo(b.InventoriedAt), string.CompareOrdinal(a.Number, b.Number), Compare(a.By, b.By)));
        sealChecks = new(sheet.SealChecks, asOf, static entry => entry.Kit, static entry => entry.At, static (a, b) =>
            First(a.IsIntact.CompareTo(b.IsIntact), string.CompareOrdinal(a.NumberRead, b.NumberRead), Compare(a.By, b.By)));
        substitutions = new(sheet.Substitutions, asOf, static entry => (entry.Kit, entry.LineNumber), static entry => entry.At, static (a, b) =>
            First(string.CompareOrdinal(a.InPlace.Value, b.InPlace.Value), Compare(a.By, b.By), string.CompareOrdinal(a.Reason, b.Reason)));
        joinings = new(sheet.Joinings, asOf, static entry => (entry.Kit, entry.LineNumber), static entry => entry.At, static (a, b) =>
            First(a.Wholes.CompareTo(b.Wholes), a.Parts.CompareTo(b.Parts), Compare(a.By, b.By)));
    }

    public bool HasSubstitutions => !substitutions.IsEmpty;

    public IReadOnlyList<SealRecord> SealsOf(KitId kit) => seals.Of(kit);

    public IReadOnlyList<SealCheck> SealChecksOf(KitId kit) => sealChecks.Of(kit);

    public IReadOnlyList<Substitution> SubstitutionsOf(KitId kit, int line) => substitutions.Of((kit, line));

    public static PeopleIndex Of(InventorySheet sheet, DateTimeOffset asOf) => sheet.IsEmpty ? Nothing : new PeopleIndex(sheet, asOf);

    public bool HasAnnotations => !annotations.IsEmpty;

    public bool HasSightings => !sightings.IsEmpty;

    public IReadOnlyList<Sighting> SightingsOf(ToolId tool) => sightings.Of(tool);

    /// <summary>The sightings that read a mark, whatever tool they were taken for.</summary>
    public IReadOnlyList<Sighting> SightingsByMark(string mark) => sightingsByMark.Of(ValueTuple.Create(mark));

    public IReadOnlyList<Sighting> SightingsIn(KitId kit) => sightingsInKit.Of(kit);

    public IReadOnlyList<LineCount> CountsOf(KitId kit, int line) => counts.Of((kit, line));

    public IReadOnlyList<PieceCount> PiecesOf(ToolId tool) => pieces.Of(tool);

    public IReadOnlyList<KitOpening> OpeningsOf(KitId kit) => openings.Of(kit);

    public IReadOnlyList<Annotation> AnnotationsOf(KitId kit, int line) => annotations.Of((kit, line));

    public IReadOnlyList<ConsumableUse> UsesOf(KitId kit, int line) => uses.Of((kit, line));

    public IReadOnlyList<Breakage> BreakagesOf(ToolId tool) => breakages.Of(tool);

    public IReadOnlyList<Reconstruction> ReconstructionsOf(ToolId tool) => reconstructions.Of(tool);

    public IReadOnlyList<JoiningStatement> JoiningsOf(KitId kit, int line) => joinings.Of((kit, line));

    private static int CompareSightings(Sighting a, Sighting b) => First(
        string.CompareOrdinal(a.MarkRead, b.MarkRead),
        Compare(a.By, b.By),
        First(
            string.CompareOrdinal(a.InKit.Value, b.InKit.Value),
            Compare(a.Witness, b.Witness),
            First(string.CompareOrdinal(a.Where.Value, b.Where.Value), string.CompareOrdinal(a.AlsoIdentifiedBy, b.AlsoIdentifiedBy), 0)));

    private static int CompareCounts(LineCount a, LineCount b) => First(
        a.Quantity.Amount.CompareTo(b.Quantity.Amount),
        Compare(a.By, b.By),
        First(b.Parts.CompareTo(a.Parts), Compare(a.Witness, b.Witness), string.CompareOrdinal(a.Quantity.Unit.Value, b.Quantity.Unit.Value)));

    /// <summary>Of two annotations of one instant the one that leaves more expected decides.</summary>
    private static int CompareAnnotations(Annotation a, Annotation b) => First(
        RankOf(a.Kind).CompareTo(RankOf(b.Kind)),
        a.ShortBy.Amount.CompareTo(b.ShortBy.Amount),
        First((a.Until ?? DateTimeOffset.MaxValue).CompareTo(b.Until ?? DateTimeOffset.MaxValue), Compare(a.SignedBy.By, b.SignedBy.By), string.CompareOrdinal(a.Reason, b.Reason)));

    private static int RankOf(AnnotationKind kind) => kind switch
    {
        AnnotationKind.Restored => 0,
        AnnotationKind.Shortage => 1,
        _ => 2,
    };

    /// <summary>Of two records of one instant the one that explains less decides.</summary>
    private static int CompareUses(ConsumableUse a, ConsumableUse b) => First(
        (a.Used + a.Scrapped).CompareTo(b.Used + b.Scrapped),
        a.Used.CompareTo(b.Used),
        First(Compare(a.By, b.By), string.CompareOrdinal(a.Job, b.Job), string.CompareOrdinal(a.Unit.Value, b.Unit.Value)));

    private static int Compare(PersonId a, PersonId b) => string.CompareOrdinal(a.Value, b.Value);

    private static int First(int first, int second, int third) => first != 0 ? first : second != 0 ? second : third;
}
