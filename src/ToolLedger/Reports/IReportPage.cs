using System.Collections.Generic;
using System.Linq;

namespace ToolLedger.Reports;

/// <summary>Where a report is set down: plain text, Markdown or HTML. Every text handed in is escaped there.</summary>
internal interface IReportPage
{
    /// <summary>Whether the page shows the reads of each line and the terms of its risk by itself, so that its sentences leave them out.</summary>
    bool ShowsEvidence => false;

    void Title(string text);

    void Heading(int level, string text);

    /// <summary>A heading of what closes the report.</summary>
    void Footing(string text);

    void Paragraph(string text);

    /// <summary>A paragraph that holds a status word, which a page may set apart.</summary>
    void Paragraph(string text, string status) => Paragraph(text);

    /// <summary>What a conclusion means, if anything, and that nothing may be done on the strength of it, if so; a page may set the second apart.</summary>
    void Meaning(string means, string stop) => Paragraph($"{means} {stop}".Trim());

    /// <summary>Sets rows under each other; the words name the three columns where the form wants a header.</summary>
    void Rows(string keyName, string wordName, string textName, IReadOnlyList<ReportRow> rows);

    void Items(IReadOnlyList<string> texts);

    /// <summary>Room for signatures: a line with gaps of underscores, so many times.</summary>
    void SignHere(string text, int count) => Items([.. Enumerable.Repeat(text, count)]);

    string Finish();
}
