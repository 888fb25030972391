using System.Collections.Generic;
using System.Linq;
using System.Text;

namespace ToolLedger.Reports;

/// <summary>A report as Markdown with tables in pipe form; every text is escaped, so that no name can make a link, a heading or a row.</summary>
internal sealed class MarkdownPage : IReportPage
{
    private readonly StringBuilder page = new();

    public void Title(string text) => page.Append("# ").Append(MarkdownText.Escape(text)).Append('\n');

    public void Heading(int level, string text) => page.Append('\n').Append('#', level).Append(' ').Append(MarkdownText.Escape(text)).Append('\n');

    public void Footing(string text) => Heading(2, text);

    public void Paragraph(string text) => page.Append('\n').Append(MarkdownText.Escape(text)).Append('\n');

    public void Rows(string keyName, string wordName, string textName, IReadOnlyList<ReportRow> rows)
    {
        if (rows.Count == 0)
        {
            return;
        }

        bool hasKeys = rows.Any(static row => row.Key.Length > 0);
        page.Append('\n');
        Row(hasKeys, keyName, wordName, textName);
        page.Append(hasKeys ? "| --- | --- | --- |\n" : "| --- | --- |\n");
        foreach (ReportRow row in rows)
        {
            Row(hasKeys, row.Key, row.Word, row.Text);
        }
    }

    public void Items(IReadOnlyList<string> texts)
    {
        page.Append(texts.Count > 0 ? "\n" : "");
        foreach (string text in texts)
        {
            page.Append("- ").Append(MarkdownText.Escape(text)).Append('\n');
        }
    }

    public string Finish() => page.ToString();

    private void Row(bool hasKeys, string key, string word, string text) => page
        .Append(hasKeys ? "| " + MarkdownText.Escape(key) + " | " : "| ")
        .Append(MarkdownText.Escape(word))
        .Append(" | ").Append(MarkdownText.Escape(text)).Append(" |\n");
}
