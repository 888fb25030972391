using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>A line of the manifest that is not expected now, and why: removed by a signed annotation, or not counted by local rule. It has no conclusion.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class LineNotExpected
{
    /// <summary>The line.</summary>
    public required ManifestLine Line { get; init; }

    /// <summary>Why it is not expected.</summary>
    public required Reason Reason { get; init; }

    /// <summary>The annotation that removed it; null where the policy asks for no count.</summary>
    public Annotation? Annotation { get; init; }
}
