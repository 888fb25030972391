using ToolLedger.Identifiers;
using ToolLedger.Kits;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Simulation;

/// <summary>A tag of the scenario, before chance.</summary>
internal sealed class SimulatedTag
{
    public required TagId Tag { get; init; }

    public required TagPlacement Placement { get; init; }

    public Tid Tid { get; init; }

    public ToolId? Tool { get; init; }

    public KitId? Kit { get; init; }

    public bool IsObscured { get; init; }
}
