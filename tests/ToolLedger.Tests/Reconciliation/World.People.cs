using System;
using System.Collections.Generic;
using ToolLedger.Inventory;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>What people say in the scenarios, by kind of entry.</summary>
internal sealed partial class World
{
    public List<KitOpening> Openings { get; } = [];

    public List<Annotation> Annotations { get; } = [];

    public List<ConsumableUse> Uses { get; } = [];

    public List<Breakage> Breakages { get; } = [];

    public List<Reconstruction> Reconstructions { get; } = [];

    public List<JoiningStatement> Joinings { get; } = [];

    public List<UnlistedItemReport> UnlistedItems { get; } = [];

    public InventorySheet Sheet() => new(new InventoryEntries
    {
        Sightings = Sightings,
        Counts = Counts,
        PieceCounts = Pieces,
        Openings = Openings,
        Annotations = Annotations,
        Uses = Uses,
        Breakages = Breakages,
        Reconstructions = Reconstructions,
        Joinings = Joinings,
        UnlistedItems = UnlistedItems,
        Signatures = Signatures,
    });

    public World Open(DateTimeOffset at)
    {
        Openings.Add(new KitOpening { Kit = K1, By = P, At = at });
        return this;
    }
}
