using System.Collections.Generic;
using ToolLedger.Reconciliation;

namespace ToolLedger.Reports;

/// <summary>A row of a list: a number or key, a word for the status, and free text. The free text comes last, so that no name can push a column.</summary>
internal sealed record ReportRow(string Key, string Word, string Text)
{
    /// <summary>The lines the row is about, whose reads a page may show with it.</summary>
    internal IReadOnlyList<LineConclusion> Lines { get; init; } = [];

    /// <summary>The parts of the text of an open line, for a page that sets them apart; null for other rows.</summary>
    internal OpenParts? Parts { get; init; }
}
