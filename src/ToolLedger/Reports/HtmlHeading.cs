namespace ToolLedger.Reports;

/// <summary>A heading of an HTML page, to be listed in its contents.</summary>
internal sealed record HtmlHeading(int Level, string Id, string Text);
