using System.Collections.Generic;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>A line's conclusion with what the kit-level search still needs.</summary>
internal sealed record JudgedLine(KitManifest Manifest, LineConclusion Conclusion, ToolReads Reads, IReadOnlyList<Finding> Findings, IReadOnlyList<JudgedLine> Inner)
{
    /// <summary>A finding about the line.</summary>
    public Finding FindingOf(FindingLevel level, Reason reason) => new(level, reason)
    {
        LineNumbers = [Conclusion.OuterNumber],
        LineLabels = [Conclusion.Label],
    };

    /// <summary>This line and, behind it, all lines inside.</summary>
    public IEnumerable<JudgedLine> WithInner() => Inner.Count == 0 ? [this] : Inner.SelectMany(static inner => inner.WithInner()).Prepend(this);
}
