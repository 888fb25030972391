using System;
using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Inventory;

/// <summary>What people said, one list a kind of entry; what an <see cref="InventorySheet"/> is made of.</summary>
/// <remarks>
/// Every list is empty until it is set, and is copied when a sheet is made. Two of them are equal only if they hold the same list objects;
/// compare sheets by <see cref="InventorySheet.Digest"/>. Immutable and thread-safe as far as the lists handed in are left alone.
/// </remarks>
public sealed record InventoryEntries
{
    /// <summary>Tools that were seen.</summary>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    public IReadOnlyList<Sighting> Sightings { get; init => field = NotNull(value); } = [];

    /// <summary>Lines that were counted.</summary>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    public IReadOnlyList<LineCount> Counts { get; init => field = NotNull(value); } = [];

    /// <summary>Tools whose pieces were counted.</summary>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    public IReadOnlyList<PieceCount> PieceCounts { get; init => field = NotNull(value); } = [];

    /// <summary>Kits that were opened.</summary>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    public IReadOnlyList<KitOpening> Openings { get; init => field = NotNull(value); } = [];

    /// <summary>Known shortages: lines removed, short or restored.</summary>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    public IReadOnlyList<Annotation> Annotations { get; init => field = NotNull(value); } = [];

    /// <summary>Job records of consumables.</summary>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    public IReadOnlyList<ConsumableUse> Uses { get; init => field = NotNull(value); } = [];

    /// <summary>Tools that broke.</summary>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    public IReadOnlyList<Breakage> Breakages { get; init => field = NotNull(value); } = [];

    /// <summary>Decisions on the number of pieces of broken tools.</summary>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    public IReadOnlyList<Reconstruction> Reconstructions { get; init => field = NotNull(value); } = [];

    /// <summary>Statements that parts make whole items.</summary>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    public IReadOnlyList<JoiningStatement> Joinings { get; init => field = NotNull(value); } = [];

    /// <summary>Reports of things gone that stand on no list.</summary>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    public IReadOnlyList<UnlistedItemReport> UnlistedItems { get; init => field = NotNull(value); } = [];

    /// <summary>Seals that were put on kits.</summary>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    public IReadOnlyList<SealRecord> Seals { get; init => field = NotNull(value); } = [];

    /// <summary>Looks at the seals of kits.</summary>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    public IReadOnlyList<SealCheck> SealChecks { get; init => field = NotNull(value); } = [];

    /// <summary>Alternates put in the place of tools.</summary>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    public IReadOnlyList<Substitution> Substitutions { get; init => field = NotNull(value); } = [];

    /// <summary>Who signed the sheet.</summary>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    public IReadOnlyList<Signature> Signatures { get; init => field = NotNull(value); } = [];

    private static IReadOnlyList<T> NotNull<T>(IReadOnlyList<T> list) => list ?? throw new ArgumentNullException(nameof(list));

    /// <summary>How many there are of each kind of which there are any.</summary>
    /// <returns>One line of English text.</returns>
    public override string ToString()
    {
        ReadOnlySpan<(int Count, string One, string? Many)> kinds =
        [
            (Sightings.Count, "sighting", null), (Counts.Count, "count", null), (PieceCounts.Count, "count of pieces", "counts of pieces"), (Openings.Count, "opening", null),
            (Annotations.Count, "annotation", null), (Uses.Count, "job record", null), (Breakages.Count, "breakage", null), (Reconstructions.Count, "reconstruction", null),
            (Joinings.Count, "joining", null), (UnlistedItems.Count, "report of an unlisted item", "reports of unlisted items"), (Seals.Count, "seal", null),
            (SealChecks.Count, "look at a seal", "looks at seals"), (Substitutions.Count, "substitution", null), (Signatures.Count, "signature", null),
        ];
        var said = new List<string>();
        foreach ((int count, string one, string? many) in kinds)
        {
            if (count > 0)
            {
                said.Add(CountText.Of(count, one, many));
            }
        }

        return said.Count == 0 ? "nothing said" : string.Join(", ", said);
    }
}
