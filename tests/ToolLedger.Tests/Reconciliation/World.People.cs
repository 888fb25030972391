using System;
using System.Collections.Generic;
using ToolLedger.Inventory;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>What people say in the scenarios, by kind of entry.</summary>
internal sealed partial class World
{
    public List<KitOpening> Openings { get; } = [];

    public InventorySheet Sheet() => new(new InventoryEntries
    {
        Sightings = Sightings,
        Counts = Counts,
        PieceCounts = Pieces,
        Openings = Openings,
        Signatures = Signatures,
    });

    public World Open(DateTimeOffset at)
    {
        Openings.Add(new KitOpening { Kit = K1, By = P, At = at });
        return this;
    }
}
