using System.Collections.Generic;
using System.Linq;
using System.Text;
using ToolLedger.Presence;
using ToolLedger.Reconciliation;
using ToolLedger.Records;

namespace ToolLedger.Reports;

/// <summary>The models of station and mounting by which the reads of a kit were weighed, as a table.</summary>
internal sealed class HtmlModels(ReportVoice voice, HtmlPage page, ReconciliationResult result, StatedRiskPolicy policy)
{
    private const int RowsShown = 50;
    private const int LinesShown = 20;

    internal void Put()
    {
        IReadOnlyList<ModelUse> used = ModelUse.Of(result);
        int others = used.Count(static use => use.Number > 0);
        page.Paragraph(Say(
            PageSentences.RuleModels,
            ("absent", HtmlRule.Percent(policy.AbsentShare)),
            ("count", ReportVoice.Text(policy.Models.Count)),
            ("used", ReportVoice.Text(others))));

        // The policy's own stands first also where it weighed nothing: it is what the others are exceptions from.
        List<ModelUse> rows = [.. used is [{ Number: 0 }, ..] ? used : used.Prepend(new ModelUse(0, []))];
        PutTable([.. rows.Take(RowsShown)], hasLines: rows.Count > 1);
        if (rows.Count > RowsShown)
        {
            page.Paragraph(Say(PageSentences.ModelsMore, ("count", ReportVoice.Text(rows.Count - RowsShown))));
        }
    }

    private void PutTable(IReadOnlyList<ModelUse> rows, bool hasLines)
    {
        StringBuilder body = page.Body;
        body.Append("<table class=\"models\"><caption>").Put(Say(PageSentences.Models, ("kit", result.Manifest.Id.Value))).Append("</caption>\n<thead><tr>");
        ReasonKind[] names = [PageSentences.ModelName, PageSentences.ModelFor, PageSentences.ModelThere, PageSentences.ModelStrays, PageSentences.ModelLines];
        foreach (ReasonKind name in hasLines ? names : names[..^1])
        {
            body.Append("<th scope=\"col\">").Put(Say(name)).Append("</th>");
        }

        body.Append("</tr></thead>\n<tbody>\n");
        foreach (ModelUse row in rows)
        {
            DetectionModel model = policy.ModelOf(row.Number);
            body.Append("<tr><th scope=\"row\">").Put(Say(PageSentences.ModelNumber, ("model", ReportVoice.Text(row.Number))));
            PutCell(body, "</th><td>", TagsOf(row.Number));
            PutCell(body, "</td><td>", Say(
                PageSentences.ModelThereAs, ("obscured", HtmlRule.Percent(model.ObscuredShare)), ("a", HtmlRule.Figure(model.Present.A)), ("b", HtmlRule.Figure(model.Present.B))));
            PutCell(body, "</td><td>", Say(
                PageSentences.ModelStraysAs, ("stray", HtmlRule.Percent(model.StrayShare)), ("a", HtmlRule.Figure(model.Stray.A)), ("b", HtmlRule.Figure(model.Stray.B))));
            if (hasLines)
            {
                PutCell(body, "</td><td>", LinesOf(row));
            }

            body.Append("</td></tr>\n");
        }

        body.Append("</tbody></table>\n");
    }

    private static void PutCell(StringBuilder body, string between, string text) => body.Append(between).Put(text);

    private string TagsOf(int number)
    {
        if (number == 0)
        {
            return Say(PageSentences.ModelForOthers);
        }

        StationModel of = policy.Models[number - 1];
        return of.Mounting is { } mounting
            ? Say(PageSentences.ModelForMounting, ("station", of.Station.Value), ("mounting", mounting))
            : Say(PageSentences.ModelForNoMounting, ("station", of.Station.Value));
    }

    private string LinesOf(ModelUse use) => use.Lines.Count == 0 ? Say(PageSentences.ModelNoLine) : Say(
        PageSentences.ModelLinesOf, ("count", ReportVoice.Text(use.Lines.Count)), ("lines", voice.List(use.Lines, use.Lines.Count, LinesShown)));

    private string Say(ReasonKind kind, params System.ReadOnlySpan<(string Name, string Value)> values) => voice.Say(kind, values);
}
