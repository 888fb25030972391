using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;
using ToolLedger.Reconciliation;
using ToolLedger.Records;

namespace ToolLedger.Reports;

/// <summary>Sets a report down as one HTML page: the conclusions and the cautions first, then the contents, the supervisor's questions in their order with the reads they rest on, and the digests.</summary>
internal sealed class HtmlComposer(ShiftReportInput input, IReadOnlyList<SessionTally> sessions, IReadOnlyList<Reads.ReadSession> foreign)
{
    // More kits than this have a row of a table instead of a card, so that all of them stand on the first screen or near it.
    private const int CardsShown = 3;

    // More kits than this have no list of their questions in the contents.
    private const int QuestionsListed = 8;

    private readonly ReportVoice voice = new(input.Wording, input.Calendar);
    private readonly HtmlPage sections = new("s");
    private readonly DrawingRoom room = new();
    private readonly List<HtmlKit> kits = [];

    private bool HasCards => input.Results.Count <= CardsShown;

    internal string Compose(string language)
    {
        string title = voice.Say(ReportSentences.Title, ("at", voice.Time(input.MadeAt)), ("site", input.Calendar.Name));
        var page = new StringBuilder(64 * 1024);

        // The sections come after the cards and the contents, which point into them, so they are made first.
        PutSections();
        HtmlDocument.PutStart(page, language, title, new HtmlPrint(voice).Rules(kits));
        page.Append("<a class=\"skip\" href=\"#main\">").Put(voice.Say(PageSentences.Skip)).Append("</a>\n<header><h1>").Put(title).Append("</h1>\n");
        if (input.IsPolicyDefault)
        {
            page.Append("<p>").Put(voice.Say(ReportSentences.DefaultPolicy, ("site", input.Calendar.Name))).Append("</p>\n");
        }

        page.Append("</header>\n<main id=\"main\" tabindex=\"-1\">\n<div class=\"top\">\n");
        PutConclusions(page);
        PutCautions(page);
        page.Append("</div>\n");
        PutContents(page);
        page.Append(sections.Body).Append("</main>\n");
        HtmlDocument.PutEnd(page);
        return page.ToString();
    }

    private void PutSections()
    {
        var composer = new ReportComposer(input, sessions, foreign, sections);
        sections.Lift = 1;
        Open("reads");
        composer.PutSessions("1. ");
        Close();
        sections.Lift = 0;
        foreach (ReconciliationResult result in input.Results)
        {
            var kit = new HtmlKit(voice, sections, result, composer.GateOf(result), input.Ledger, room);
            kits.Add(kit);
            Open(string.Create(CultureInfo.InvariantCulture, $"kit kit-{kits.Count}"));
            sections.Heading(2, composer.KitTitle(result));
            kit.Put(HasCards);
            Close();
        }

        sections.Lift = 1;
        Open("also");
        composer.PutAlsoRead("9. ");
        Close();
        sections.Lift = 0;
        Open("annex");
        PutDigests();
        Close();
    }

    private void Open(string name) => sections.Body.Append("<section class=\"").Append(name).Append("\">\n");

    private void Close() => sections.Body.Append("</section>\n");

    private void PutConclusions(StringBuilder page)
    {
        string heading = HasCards ? voice.Say(PageSentences.Conclusions) : voice.Say(ReportSentences.Summary, ("count", ReportVoice.Text(kits.Count)));
        page.Append("<section class=\"first\" aria-labelledby=\"conclusions\"><h2 id=\"conclusions\">").Put(heading).Append("</h2>\n")
            .Append(HasCards ? "<div class=\"cards\">\n" : "<table class=\"rows summary\"><caption class=\"vh\">");
        if (!HasCards)
        {
            page.Put(heading).Append("</caption><thead><tr><th scope=\"col\">state</th><th scope=\"col\">kit</th></tr></thead><tbody>\n");
        }

        var composer = new ReportComposer(input, sessions, foreign, sections);
        foreach (HtmlKit kit in kits.OrderBy(static kit => ReportComposer.Urgency(kit.Result.Kit.State)))
        {
            if (HasCards)
            {
                kit.PutCard(page);
            }
            else
            {
                kit.PutRow(page, composer.Summary(kit.Result));
            }
        }

        page.Append(HasCards ? "</div></section>\n" : "</tbody></table></section>\n");
    }

    private void PutCautions(StringBuilder page)
    {
        page.Append("<section class=\"cautions\" aria-labelledby=\"cautions\"><h2 id=\"cautions\">").Put(voice.Say(ReportSentences.Cautions)).Append("</h2>\n<ul>\n");
        foreach (ReasonKind caution in ReportCautions.All)
        {
            page.Append("<li>").Put(voice.Say(caution)).Append("</li>\n");
        }

        page.Append("</ul></section>\n");
    }

    private void PutContents(StringBuilder page)
    {
        page.Append("<nav aria-labelledby=\"contents\"><h2 id=\"contents\">").Put(voice.Say(PageSentences.Contents)).Append("</h2>\n<ul>\n");
        bool isInner = false;
        bool listsQuestions = input.Results.Count <= QuestionsListed;
        foreach (HtmlHeading heading in sections.Headings.Where(heading => heading.Level <= (listsQuestions ? 3 : 2)))
        {
            if (heading.Level == 3 != isInner)
            {
                isInner = !isInner;
                page.Append(isInner ? "\n<ul>\n" : "</li></ul>\n");
            }

            page.Append(page[^1] == '>' ? "</li>\n<li>" : "<li>").Append("<a href=\"#").Append(heading.Id).Append("\">").Put(heading.Text).Append("</a>");
        }

        page.Append(isInner ? "</li></ul>" : "").Append("</li></ul></nav>\n");
    }

    private string PolicyWithRules(ReconciliationResult result)
    {
        string rules = PolicyRules.Say(input, result.PolicyDigest, voice);
        string policy = voice.Say(PageSentences.PolicyWithRules, ("version", result.LibraryVersion));
        return rules.Length == 0 ? policy : $"{policy}. {rules}";
    }

    private void PutDigests()
    {
        sections.Footing(voice.Say(PageSentences.RestsOn));
        var rows = new List<(string Name, Digest Digest)>();
        rows.AddRange(kits.Select(kit => (voice.Say(PageSentences.ResultDigest, ("kit", kit.Result.Manifest.Id.Value)), kit.Digest)));
        if (!input.PolicyDigest.IsEmpty)
        {
            rows.Add((voice.Say(PageSentences.SitePolicy, ("name", input.PolicyName ?? "-")), input.PolicyDigest));
        }

        rows.AddRange(input.Results.Select(result => (PolicyWithRules(result), result.PolicyDigest)));
        rows.AddRange(input.Results.SelectMany(static result => result.Inputs).Select(pair => (voice.Say(PageSentences.Input, ("name", pair.Name)), pair.Digest)));
        rows.AddRange(input.Sources.Select(source => (voice.Say(PageSentences.File, ("name", source.Name)), source.Digest)));
        StringBuilder page = sections.Body;
        page.Append("<table class=\"digests\"><caption class=\"vh\">").Put(voice.Say(PageSentences.RestsOn)).Append("</caption><tbody>\n");
        foreach ((string name, Digest digest) in rows.Distinct())
        {
            page.Append("<tr><th scope=\"row\">").Put(name).Append("</th><td><code>").Put(digest.ToString()).Append("</code></td></tr>\n");
        }

        page.Append("</tbody></table>\n");
    }
}
