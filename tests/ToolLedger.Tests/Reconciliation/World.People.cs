using System;
using System.Collections.Generic;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>What people say in the scenarios, by kind of entry.</summary>
internal sealed partial class World
{
    /// <summary>Lines beyond the fifteen of the conventions.</summary>
    public List<ManifestLine> MoreLines { get; } = [];

    /// <summary>The mark that T8 and T9 share, or null if each has its own.</summary>
    public string? SharedMark { get; set; }

    public List<KitOpening> Openings { get; } = [];

    public List<Annotation> Annotations { get; } = [];

    public List<ConsumableUse> Uses { get; } = [];

    public List<Breakage> Breakages { get; } = [];

    public List<Reconstruction> Reconstructions { get; } = [];

    public List<JoiningStatement> Joinings { get; } = [];

    public List<UnlistedItemReport> UnlistedItems { get; } = [];

    public List<SealRecord> Seals { get; } = [];

    public List<SealCheck> SealChecks { get; } = [];

    public List<Substitution> Substitutions { get; } = [];

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
        Seals = Seals,
        SealChecks = SealChecks,
        Substitutions = Substitutions,
        Signatures = Signatures,
    });

    public World AnnotateRemoved(int line, DateTimeOffset at, DateTimeOffset? until = null) => Annotate(line, AnnotationKind.Removed, at, until);

    public World Annotate(int line, AnnotationKind kind, DateTimeOffset at, DateTimeOffset? until = null, Quantity shortBy = default)
    {
        Annotations.Add(new Annotation
        {
            Kit = K1,
            LineNumber = line,
            Kind = kind,
            ShortBy = shortBy,
            Reason = "broken, no spare",
            SignedBy = new Signature { By = new PersonId("S"), At = at, Role = new Role("custodian") },
            Until = until,
        });
        return this;
    }

    public World Use(int line, string job, decimal used, string unit, DateTimeOffset at, decimal scrapped = 0)
    {
        Uses.Add(new ConsumableUse { Kit = K1, LineNumber = line, Job = job, Unit = new Unit(unit), Used = used, Scrapped = scrapped, By = P, At = at });
        return this;
    }

    public World Break(string tool, int? pieces, DateTimeOffset at)
    {
        Breakages.Add(new Breakage { Tool = new ToolId(tool), Pieces = pieces, By = P, At = at });
        return this;
    }

    public World Reconstruct(string tool, int pieces, DateTimeOffset at, PersonId witness = default)
    {
        Reconstructions.Add(new Reconstruction
        {
            Tool = new ToolId(tool),
            Pieces = pieces,
            Decision = "fragments laid out against a new one",
            SignedBy = new Signature { By = new PersonId("S"), At = at, Role = new Role("inspector") },
            Witness = witness,
        });
        return this;
    }

    public World Join(int line, int parts, int wholes, DateTimeOffset at)
    {
        Joinings.Add(new JoiningStatement { Kit = K1, LineNumber = line, Parts = parts, Wholes = wholes, By = Q, At = at });
        return this;
    }

    public World CountParts(int line, decimal whole, int parts, string unit, DateTimeOffset at)
    {
        Counts.Add(new LineCount { Kit = K1, LineNumber = line, Quantity = new Quantity(whole, new Unit(unit)), Parts = parts, By = P, Witness = Q, At = at });
        return this;
    }

    public World Open(DateTimeOffset at)
    {
        Openings.Add(new KitOpening { Kit = K1, By = P, At = at });
        return this;
    }
}
