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

    public void Paragraph(string text) => Element("p", text);

    public void Paragraph(string text, string status)
    {
        int at = text.IndexOf(status, StringComparison.Ordinal);
        if (at < 0)
        {
            Paragraph(text);
            return;
        }

        // A full stop behind a status that stands first would hang in the air.
        int behind = at + status.Length;
        behind += at == 0 && text.AsSpan(behind).StartsWith(". ", StringComparison.Ordinal) ? 1 : 0;
        page.Append("<p>").Put(text[..at]).PutStatus(status).Put(text[behind..]).Append("</p>\n");
    }

    public void Meaning(string means, string stop)
    {
        if (means.Length > 0)
        {
            Paragraph(means);
        }

        if (stop.Length > 0)
        {
            page.Append("<p class=\"stop\">").Put(stop).Append("</p>\n");
        }
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
        if (row.Parts is { } parts)
        {
            PutOpen(row, parts);
        }
        else
        {
            page.Put(row.Text);
            PutEvidence(row.Lines, 1);
        }

        page.Append("</td></tr>\n");
    }

    /// <summary>Sets open lines down in three parts: which, why, and what settles them. Several lines stand in a list, each with its reads.</summary>
    private void PutOpen(ReportRow row, OpenParts parts)
    {
        if (parts.Lines.Count == 1)
        {
            PutParts(page, parts);
            PutEvidence(row.Lines, 1);
            return;
        }

        PutParts(page, parts with { Lines = [] });
        page.Append("<ul class=\"alike\">\n");
        for (int index = 0; index < parts.Lines.Count; index++)
        {
            page.Append("<li>").Put(parts.Lines[index]);
            PutEvidence([row.Lines[index]], parts.Lines.Count);
            page.Append("</li>\n");
        }

        page.Append("</ul>");
    }

    private void PutEvidence(IReadOnlyList<LineConclusion> lines, int sharing)
    {
        foreach (LineConclusion line in lines)
        {
            Evidence?.Invoke(page, line, sharing);
        }
    }

    internal static void PutParts(StringBuilder page, OpenParts parts)
    {
        foreach (string line in parts.Lines)
        {
            page.Append("<p class=\"what\">").Put(line).Append("</p>");
        }

        page.Append("<p>").Put(parts.Why).Append("</p><p class=\"next\">").Put(parts.Next).Append("</p>");
    }
}
