using System;

namespace ToolLedger.Reports;

/// <summary>A report about a ledger, as text or Markdown.</summary>
/// <remarks>The same state gives the same bytes under any culture, time zone and machine. Immutable and thread-safe as far as the ledger it is about is left alone.</remarks>
public sealed class LedgerPage
{
    private readonly Action<IReportPage> put;

    internal LedgerPage(Action<IReportPage> put) => this.put = put;

    /// <summary>Writes the page as plain text: lines ended by LF, no colour, no tab, no control character.</summary>
    /// <param name="width">The most columns of a line, 40 to 400. The default is 100.</param>
    /// <returns>The text.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The width is outside the range.</exception>
    public string ToText(int width = 100) => width is >= ShiftReport.MinWidth and <= ShiftReport.MaxWidth
        ? Written(new TextPage(width))
        : throw new ArgumentOutOfRangeException(nameof(width), width, "The width of a text must be 40 to 400 columns.");

    /// <summary>Writes the page as Markdown with tables in pipe form; every text that came in is escaped.</summary>
    /// <returns>The Markdown.</returns>
    public string ToMarkdown() => Written(new MarkdownPage());

    private string Written(IReportPage page)
    {
        put(page);
        return page.Finish();
    }
}
