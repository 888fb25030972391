using System.Collections.Generic;
using System.Text;

namespace ToolLedger.Reports;

/// <summary>A report as Markdown with tables in pipe form; every text is escaped, so that no name can make a link, a heading or a row.</summary>
internal sealed class MarkdownPage : IReportPage
{
    private readonly StringBuilder page = new();

    public void Title(string text) => page.Append("# ").Append(MarkdownText.Escape(text)).Append('\n');

    public void Heading(int level, string text) => page.Append('\n').Append('#', level).Append(' ').Append(MarkdownText.Escape(text)).Append('\n');

    public void Paragraph(string text) => page.Append('\n').Append(MarkdownText.Escape(text)).Append('\n');

    public void Rows(string keyName, string wordName, string textName, IReadOnlyList<ReportRow> rows)
    {
        page.Append('\n');
        Row(keyName, wordName, textName);
        page.Append("| --- | --- | --- |\n");
        foreach (ReportRow row in rows)
        {
            Row(row.Key, row.Word, row.Text);
        }
    }

    public void Items(IReadOnlyList<string> texts)
    {
        page.Append('\n');
        foreach (string text in texts)
        {
            page.Append("- ").Append(MarkdownText.Escape(text)).Append('\n');
        }
    }

    public string Finish() => page.ToString();

    private void Row(string key, string word, string text) => page
        .Append("| ").Append(MarkdownText.Escape(key))
        .Append(" | ").Append(MarkdownText.Escape(word))
        .Append(" | ").Append(MarkdownText.Escape(text)).Append(" |\n");
}
