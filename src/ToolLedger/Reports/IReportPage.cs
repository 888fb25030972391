using System.Collections.Generic;

namespace ToolLedger.Reports;

/// <summary>Where a report is set down: plain text or Markdown. Every text handed in is escaped there.</summary>
internal interface IReportPage
{
    void Title(string text);

    void Heading(int level, string text);

    /// <summary>A heading of what closes the report.</summary>
    void Footing(string text);

    void Paragraph(string text);

    /// <summary>Sets rows under each other; the words name the three columns where the form wants a header.</summary>
    void Rows(string keyName, string wordName, string textName, IReadOnlyList<ReportRow> rows);

    void Items(IReadOnlyList<string> texts);

    string Finish();
}
