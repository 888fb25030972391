using System;
using System.Collections.Generic;
using System.Text;
using ToolLedger.Records;

namespace ToolLedger.Reports;

/// <summary>A report as plain text for a terminal or a fixed-pitch print: no colour, no control character but the line feed.</summary>
internal sealed class TextPage(int width) : IReportPage
{
    private const int NarrowIndent = 6;
    private readonly StringBuilder page = new();

    public void Title(string text)
    {
        Put("", text);
        page.Append('=', width).Append('\n');
    }

    public void Heading(int level, string text)
    {
        page.Append('\n');
        int start = page.Length;
        Put("", text);
        if (level < 3)
        {
            page.Append('-', Math.Min(width, page.Length - start - 1)).Append('\n');
        }
    }

    public void Footing(string text) => Heading(3, text);

    public void Paragraph(string text) => Put("  ", text);

    public void Rows(string keyName, string wordName, string textName, IReadOnlyList<ReportRow> rows)
    {
        int keyWidth = 0, wordWidth = 0;
        foreach (ReportRow row in rows)
        {
            keyWidth = Math.Max(keyWidth, TextColumns.Width(row.Key));
            wordWidth = Math.Max(wordWidth, TextColumns.Width(row.Word));
        }

        foreach (ReportRow row in rows)
        {
            var lead = new StringBuilder("  ");
            if (keyWidth > 0)
            {
                lead.Append(' ', keyWidth - TextColumns.Width(row.Key)).Append(row.Key).Append("  ");
            }

            if (wordWidth > 0)
            {
                lead.Append(row.Word).Append(' ', wordWidth - TextColumns.Width(row.Word)).Append("  ");
            }

            Put(lead.ToString(), row.Text);
        }
    }

    public void Items(IReadOnlyList<string> texts)
    {
        foreach (string text in texts)
        {
            Put("  - ", text);
        }
    }

    public string Finish() => page.ToString();

    /// <summary>The text with the words of a status bound together: "SATISFIED" at the start of a line must not be the rest of "NOT SATISFIED".</summary>
    private static string Bound(string text)
    {
        foreach (string phrase in StatusWords.Phrases)
        {
            text = text.Replace(phrase, phrase.Replace(' ', TextColumns.BoundSpace), StringComparison.Ordinal);
        }

        return text;
    }

    /// <summary>Puts a text behind a lead; further lines are indented under the text.</summary>
    private void Put(string lead, string text)
    {
        int indent = TextColumns.Width(lead);
        if (indent > width / 2)
        {
            // A narrow page: the lead gets a line of its own, so that the text has room.
            page.Append(lead.TrimEnd()).Append('\n');
            indent = NarrowIndent;
            lead = new string(' ', indent);
        }

        string next = lead;
        bool isEmpty = true;
        foreach (string line in TextColumns.Wrap(Bound(SafeText.Escape(text)), width - indent))
        {
            page.Append(next).Append(line).Append('\n');
            next = new string(' ', indent);
            isEmpty = false;
        }

        if (isEmpty)
        {
            page.Append(lead.TrimEnd()).Append('\n');
        }
    }
}
