using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;
using ToolLedger.Reconciliation;

namespace ToolLedger.Reports;

/// <summary>A part of a report as HTML: tables with captions, lists, paragraphs, and below a line the reads it rests on.</summary>
internal sealed class HtmlPage(string idStart) : IReportPage
{
    private readonly StringBuilder page = new();
    private readonly List<HtmlHeading> headings = [];

    public bool ShowsEvidence => true;

    /// <summary>The headings so far.</summary>
    internal IReadOnlyList<HtmlHeading> Headings => headings;

    internal StringBuilder Body => page;

    /// <summary>By how many levels headings stand higher than they are asked for.</summary>
    internal int Lift { get; set; }

    /// <summary>The word with which the next paragraph begins, if it is a status.</summary>
    internal string? StatusWord { get; set; }

    /// <summary>Shows the reads of a line; null where a page has no such lines. The second value is how many lines share the row.</summary>
    internal Action<StringBuilder, LineConclusion, int>? Evidence { get; set; }

    public void Title(string text) => Element("h1", text);

    public void Heading(int level, string text)
    {
        int shown = level - Lift;
        var heading = new HtmlHeading(shown, string.Create(CultureInfo.InvariantCulture, $"{idStart}{headings.Count + 1}"), text);
        headings.Add(heading);
        page.Append(CultureInfo.InvariantCulture, $"<h{shown} id=\"{heading.Id}\">").Put(text).Append(CultureInfo.InvariantCulture, $"</h{shown}>\n");
    }

    public void Footing(string text) => Heading(2, text);

    public void Paragraph(string text)
    {
        page.Append("<p>");
        if (StatusWord is { } word && text.StartsWith(word, StringComparison.Ordinal))
        {
            page.PutStatus(word);
            text = text[word.Length..];
        }

        StatusWord = null;
        page.Put(text).Append("</p>\n");
    }

    public void Rows(string keyName, string wordName, string textName, IReadOnlyList<ReportRow> rows)
    {
        if (rows.Count == 0)
        {
            return;
        }

        bool hasKeys = rows.Any(static row => row.Key.Length > 0);
        page.Append(hasKeys ? "<table class=\"rows keyed\">" : "<table class=\"rows\">").Append("<caption class=\"vh\">").Put(headings.Count > 0 ? headings[^1].Text : textName).Append("</caption>\n<thead><tr>");
        foreach (string name in hasKeys ? [keyName, wordName, textName] : (string[])[wordName, textName])
        {
            page.Append("<th scope=\"col\">").Put(name).Append("</th>");
        }

        page.Append("</tr></thead>\n<tbody>\n");
        foreach (ReportRow row in rows)
        {
            Row(hasKeys, row);
        }

        page.Append("</tbody></table>\n");
    }

    public void Items(IReadOnlyList<string> texts)
    {
        if (texts.Count == 0)
        {
            return;
        }

        page.Append("<ul>\n");
        foreach (string text in texts)
        {
            page.Append("<li>").Put(text).Append("</li>\n");
        }

        page.Append("</ul>\n");
    }

    public void SignHere(string text, int count)
    {
        // The words before each gap: a gap is drawn as a line with room to write on.
        string[] words = [.. text.Split(SigningSection.Room).Select(static word => word.Trim()).Where(static word => word.Length > 0)];
        for (int number = 0; number < count; number++)
        {
            page.Append("<p class=\"sign\">");
            foreach (string word in words)
            {
                page.Append("<span>").Put(word).Append(" <span class=\"gap\">").Append(SigningSection.Room).Append("</span></span> ");
            }

            page.Append("</p>\n");
        }
    }

    public string Finish() => page.ToString();

    internal void Element(string tag, string text) => page.Append('<').Append(tag).Append('>').Put(text).Append("</").Append(tag).Append(">\n");

    private void Row(bool hasKeys, ReportRow row)
    {
        page.Append("<tr>");
        if (hasKeys)
        {
            page.Append("<th scope=\"row\">").Put(row.Key).Append("</th><td class=\"word\">");
        }
        else
        {
            page.Append("<th scope=\"row\" class=\"word\">");
        }

        page.PutStatus(row.Word).Append(hasKeys ? "</td><td>" : "</th><td>");
        Cell(row);
        foreach (LineConclusion line in row.Lines)
        {
            Evidence?.Invoke(page, line, row.Lines.Count);
        }

        page.Append("</td></tr>\n");
    }

    private void Cell(ReportRow row)
    {
        if (row.Parts is not { } parts)
        {
            page.Put(row.Text);
            return;
        }

        PutOpen(page, parts);
    }

    /// <summary>Sets an open line down in three parts: which, why, and what settles it.</summary>
    internal static void PutOpen(StringBuilder page, OpenParts parts)
        => page.Append("<p class=\"what\">").Put(parts.Lines).Append("</p><p>").Put(ReportVoice.Sentence(parts.Why)).Append("</p><p class=\"next\">").Put(parts.NextSentence).Append("</p>");
}
