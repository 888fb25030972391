using System.Collections.Generic;

namespace ToolLedger.Reconciliation;

/// <summary>A line's conclusion with what the kit-level search still needs.</summary>
internal sealed record JudgedLine(LineConclusion Conclusion, ToolReads Reads, IReadOnlyList<Finding> Findings);
