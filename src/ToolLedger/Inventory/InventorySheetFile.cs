using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Inventory;

/// <summary>An inventory sheet as stored.</summary>
internal sealed class InventorySheetFile : JsonRecordFile
{
    public IReadOnlyList<SightingEntry?>? Sightings { get; set; }

    public IReadOnlyList<LineCountEntry?>? Counts { get; set; }

    public IReadOnlyList<PieceCountEntry?>? PieceCounts { get; set; }

    public IReadOnlyList<KitOpeningEntry?>? Openings { get; set; }

    public IReadOnlyList<AnnotationEntry?>? Annotations { get; set; }

    public IReadOnlyList<ConsumableUseEntry?>? Uses { get; set; }

    public IReadOnlyList<BreakageEntry?>? Breakages { get; set; }

    public IReadOnlyList<ReconstructionEntry?>? Reconstructions { get; set; }

    public IReadOnlyList<JoiningStatementEntry?>? Joinings { get; set; }

    public IReadOnlyList<UnlistedItemReportEntry?>? UnlistedItems { get; set; }

    public IReadOnlyList<SealRecordEntry?>? Seals { get; set; }

    public IReadOnlyList<SealCheckEntry?>? SealChecks { get; set; }

    public IReadOnlyList<SubstitutionEntry?>? Substitutions { get; set; }

    public IReadOnlyList<SignatureRecord?>? Signatures { get; set; }
}
