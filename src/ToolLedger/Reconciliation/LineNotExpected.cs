using System.Collections.Generic;
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

    /// <summary>The numbers of the sub-kit lines it is inside, outermost first; empty (the default) for a line of the kit's own manifest.</summary>
    public IReadOnlyList<int> Within { get; init; } = [];

    /// <summary>The number as reports print it, such as 7.3 for line 3 of the sub-kit on line 7.</summary>
    public string Label => LineConclusion.LabelOf(Within, Line.Number);

    /// <summary>Why it is not expected.</summary>
    public required Reason Reason { get; init; }

    /// <summary>The annotation that removed it; null where the policy asks for no count.</summary>
    public Annotation? Annotation { get; init; }

    /// <summary>For example "line 7.3: not expected: " and why.</summary>
    /// <returns>One line of English text.</returns>
    public override string ToString() => $"line {Label}: not expected: {Reason}";
}
