using System.Collections.Generic;
using System.Linq;
using System.Text;
using ToolLedger.Ledger;
using ToolLedger.Reconciliation;
using ToolLedger.Records;

namespace ToolLedger.Reports;

/// <summary>One kit of an HTML page: its card on the first screen, and its questions.</summary>
internal sealed class HtmlKit(ReportVoice plain, HtmlPage sections, ReconciliationResult result, GateAnswer? gate, LedgerState? ledger, DrawingRoom room)
{
    // Most open lines that a card names.
    private const int LinesOnCard = 8;

    private HtmlHeading? title;
    private HtmlHeading? settled;
    private HtmlHeading? open;

    internal ReconciliationResult Result => result;

    /// <summary>The digest of the result's canonical JSON.</summary>
    internal Digest Digest { get; } = Digest.Of(result.ToJson());

    /// <summary>The title as the kit's own section has it.</summary>
    internal string Title => title?.Text ?? "";

    /// <summary>Puts the answers to the kit's questions behind its heading.</summary>
    /// <param name="isOnCard">Whether a card says the whole conclusion already.</param>
    internal void Put(bool isOnCard)
    {
        title = sections.Headings[^1];
        var kit = new KitSections(plain, sections, result, gate, ledger);
        var evidence = new HtmlEvidence(plain, result, room);
        if (isOnCard)
        {
            kit.PutState();
        }
        else
        {
            kit.PutConclusion();
        }

        sections.Evidence = evidence.Put;
        kit.PutSettled("2. ");
        settled = sections.Headings[^1];
        kit.PutOpen("3. ");
        open = sections.Headings[^1];
        sections.Evidence = null;
        kit.PutUnseen("4. ");
        kit.PutExposure("5. ");
        kit.PutSigning("6. ");
        kit.PutCalibration("7. ");
        kit.PutChanges("8. ");
        new HtmlRule(plain.On(result.AsOf), sections, result).Put();
    }

    /// <summary>Puts what a supervisor has to know first: the conclusion in words, how many lines are settled and open, and the fastest next step.</summary>
    internal void PutCard(StringBuilder page)
    {
        var card = new HtmlPage("unused");
        var kit = new KitSections(plain, card, result, gate, ledger);

        // A complete kit that may not be operated with is nothing to feel easy about.
        string tone = gate is { IsSatisfied: false } ? "act" : StatusMark.ClassOf(StatusWords.Print(result.Kit.State));
        page.Append("<article class=\"card ").Append(tone).Append("\">\n<h3><a href=\"#").Append(title!.Id).Append("\">").Put(Title).Append("</a></h3>\n");
        kit.PutConclusion();
        page.Append(card.Body).Append("<ul class=\"counts\"><li><a href=\"#").Append(settled!.Id).Append("\">").Put(settled.Text)
            .Append("</a></li><li><a href=\"#").Append(open!.Id).Append("\">").Put(open.Text).Append("</a></li></ul>\n");
        PutOpenLines(page, kit);

        string risk = new HtmlRule(plain.On(result.AsOf), card, result).Stated();
        if (risk.Length > 0)
        {
            page.Append("<p>").Put(risk).Append("</p>\n");
        }

        page.Append("</article>\n");
    }

    /// <summary>Puts the kit as a row of a summary, where there are too many for a card each.</summary>
    internal void PutRow(StringBuilder page, ReportRow summary)
    {
        page.Append("<tr><th scope=\"row\" class=\"word\">").PutStatus(summary.Word).Append("</th><td><a href=\"#").Append(title!.Id).Append("\">").Put(Title).Append("</a><p>").Put(summary.Text).Append("</p>\n");
        PutFirst(page, new KitSections(plain, new HtmlPage("unused"), result, gate, ledger).FirstOpen());
        page.Append("</td></tr>\n");
    }

    /// <summary>Every open line by its state and name, in the order to chase them, and of the first its next step.</summary>
    private void PutOpenLines(StringBuilder page, KitSections kit)
    {
        IReadOnlyList<ReportRow> rows = kit.OpenOneByOne(LinesOnCard);
        PutFirst(page, rows.Count > 0 ? rows[0] : null);
        if (rows.Count > 1)
        {
            page.Append("<p class=\"lead\">").Put(plain.Say(PageSentences.Then)).Append("</p>\n<ol class=\"then\" start=\"2\">\n");
            foreach (ReportRow row in rows.Skip(1))
            {
                page.Append("<li>").PutStatus(row.Word).Append(' ').Put(row.Parts!.Lines[0]).Append("</li>\n");
            }

            page.Append("</ol>\n");
        }

        int more = result.ChaseList.Count - rows.Count;
        if (more > 0)
        {
            page.Append("<p><a href=\"#").Append(open!.Id).Append("\">").Put(plain.Say(ReportSentences.AndMore, ("count", ReportVoice.Text(more)))).Append("</a></p>\n");
        }
    }

    private void PutFirst(StringBuilder page, ReportRow? first)
    {
        if (first is { Parts: { } parts })
        {
            page.Append("<div class=\"do\"><p class=\"lead\">").Put(plain.Say(PageSentences.First)).Append(' ').PutStatus(first.Word).Append("</p>\n");
            HtmlPage.PutParts(page, parts);
            page.Append("</div>\n");
        }
    }
}
