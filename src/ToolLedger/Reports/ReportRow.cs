namespace ToolLedger.Reports;

/// <summary>A row of a list: a number or key, a word for the status, and free text. The free text comes last, so that no name can push a column.</summary>
internal sealed record ReportRow(string Key, string Word, string Text);
