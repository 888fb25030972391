using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;

namespace ToolLedger.Reports;

/// <summary>Shows below a line what it rests on: its looks over time, in marks and in words, and the figures of a stated risk.</summary>
internal sealed class HtmlEvidence(ReportVoice plain, ReconciliationResult result, DrawingRoom room)
{
    // Rows of more lines, and pages of many open lines, are closed at first: a reader opens what is needed.
    private const int OpenedOfRow = 2;
    private const int OpenedOfKit = 8;

    private readonly ReportVoice voice = plain.On(result.AsOf);
    private readonly bool hasModels = ModelUse.Of(result).Count > 1;
    private int opened;

    /// <summary>Appends the evidence of a line; nothing where it has no live tag or no session was used.</summary>
    internal void Put(StringBuilder page, LineConclusion line, int sharing)
    {
        if (ReadTimeline.Of(line, result) is not { } timeline)
        {
            return;
        }

        bool isOpened = !line.IsAccounted && sharing <= OpenedOfRow && opened < OpenedOfKit;
        opened += isOpened ? 1 : 0;
        string reads = Say(
            PageSentences.Reads,
            ("line", line.Label),
            ("looks", ReportVoice.Text(timeline.LookCount)),
            ("heard", ReportVoice.Text(timeline.HeardPassCount)),
            ("passes", ReportVoice.Text(timeline.Passes.Count)));
        page.Append(isOpened ? "<details class=\"ev\" open><summary>" : "<details class=\"ev\"><summary>")
            .Put(line.Evidence.Risk is null ? reads : Say(PageSentences.ReadsAndRisk, ("reads", reads)))
            .Append("</summary>\n");
        PutTimeline(page, line, timeline);
        if (line.Evidence.Risk is { } stated)
        {
            PutRisk(page, line, stated);
        }

        page.Append("</details>");
    }

    private void PutTimeline(StringBuilder page, LineConclusion line, ReadTimeline timeline)
    {
        int skipped = Math.Max(0, timeline.Passes.Count - DrawingRoom.PassLimit);
        TimelinePass[] shown = [.. timeline.Passes.Skip(skipped)];
        int looks = shown.Sum(static pass => pass.Rows.Sum(static row => Math.Min(row.Looks.Count, DrawingRoom.RowLimit)));
        if (!room.TryTake(!line.IsAccounted, shown.Sum(static pass => pass.Rows.Count), looks))
        {
            page.Append("<p>").Put(Say(PageSentences.NotDrawn, ("limit", ReportVoice.Text(DrawingRoom.LookLimit)))).Append("</p>");
            return;
        }

        bool isWide = shown.Any(static pass => HtmlStrip.IsWide(pass.SlotCount));
        if (isWide)
        {
            page.Append("<div class=\"scroll\" role=\"region\" tabindex=\"0\" aria-label=\"").PutAttribute(Say(PageSentences.Scrolls, ("line", line.Label))).Append("\">");
        }

        string of = line.Evidence.LiveTagCount > 1 ? Say(PageSentences.BestOf, ("tags", ReportVoice.Text(line.Evidence.LiveTagCount))) : "";
        page.Append("<table class=\"tl\"><caption>").Put(Say(PageSentences.Timeline, ("tag", timeline.Tag.ToString()), ("of", of))).Append("</caption>\n");
        bool isCounted = line.Evidence.LooksNotCounted == 0;
        foreach (TimelinePass pass in shown)
        {
            PutPass(page, pass, isCounted);
        }

        page.Append("</table>").Append(isWide ? "</div>\n" : "\n");
        if (skipped > 0)
        {
            page.Append("<p>").Put(Say(
                PageSentences.PassesNotDrawn,
                ("count", ReportVoice.Text(skipped)),
                ("looks", ReportVoice.Text(timeline.Passes.Take(skipped).Sum(static pass => pass.LookCount))),
                ("heard", ReportVoice.Text(timeline.Passes.Take(skipped).Count(static pass => pass.LookCount > 0))))).Append("</p>\n");
        }
    }

    private void PutPass(StringBuilder page, TimelinePass pass, bool isCounted)
    {
        page.Append("<tbody><tr><th colspan=\"2\" scope=\"rowgroup\">").Put(Say(
            PageSentences.Pass,
            ("session", pass.Session.Id.Value),
            ("health", StatusWords.Code(pass.Session.Health.State)),
            ("pass", ReportVoice.Text(pass.Pass.Number)),
            ("from", voice.Time(pass.Pass.From)),
            ("to", voice.Time(pass.Pass.To)),
            ("looks", ReportVoice.Text(pass.LookCount)),
            ("limit", ReportVoice.Text(pass.Pass.LookLimit)))).Append("</th></tr>\n");
        if (pass.IsPlainlySilent)
        {
            PutRow(page, pass, Say(PageSentences.AllAntennas), [], Say(PageSentences.PassSilent), isCounted);
        }
        else
        {
            foreach (TimelineRow row in pass.Rows)
            {
                string name = row.Antenna.IsKnown ? Say(PageSentences.Antenna, ("antenna", ReportVoice.Text(row.Antenna.Number))) : Say(PageSentences.AntennaNotNamed);
                PutRow(page, pass, name, row.Looks, WordsOf(pass, row, isCounted), isCounted);
            }
        }

        page.Append("</tbody>\n");
    }

    private string WordsOf(TimelinePass pass, TimelineRow row, bool isCounted)
    {
        if (row.Looks.Count == 0)
        {
            return Say(!row.IsShownAtWork ? PageSentences.NotShownAtWork : pass.LookCount == 0 ? PageSentences.PassSilent : PageSentences.RowSilent);
        }

        List<string> words =
        [
            Say(
                PageSentences.RowLooks,
                ("looks", ReportVoice.Text(row.Looks.Count)),
                ("first", ClockOf(row.Looks[0], pass)),
                ("last", ClockOf(row.Looks[^1], pass))),
        ];
        words.AddRange(isCounted ? [] : [Say(PageSentences.NotCounted)]);
        words.AddRange(row.IsSaturated ? [Say(PageSentences.Saturated, ("limit", ReportVoice.Text(pass.Session.Policy.LooksKept)))] : []);
        words.AddRange(row.Looks.Count > DrawingRoom.RowLimit ? [Say(PageSentences.Cut, ("count", ReportVoice.Text(DrawingRoom.RowLimit)))] : []);
        return string.Join("; ", words);
    }

    private static void PutRow(StringBuilder page, TimelinePass pass, string name, IReadOnlyList<Look> looks, string words, bool isCounted)
    {
        page.Append("<tr><th scope=\"row\">").Put(name).Append("</th><td>");
        HtmlStrip.Put(page, pass, looks, isCounted);
        page.Append("<span>").Put(words).Append("</span></td></tr>\n");
    }

    private void PutRisk(StringBuilder page, LineConclusion line, PresenceRisk risk)
    {
        PresenceDecision decision = risk.Decision;

        // Below what a number of 64 bits can tell from nothing, and never nothing.
        double exact = Math.Max(risk.ExactRisk, double.Epsilon);
        if (line.Evidence.LooksNotCounted > 0)
        {
            page.Append("<p>").Put(Say(PageSentences.SetAside, ("looks", ReportVoice.Text(line.Evidence.LooksNotCounted)))).Append("</p>\n");
        }

        page.Append("<table class=\"risk\"><caption>").Put(Say(PageSentences.Risk, ("line", line.Label))).Append("</caption><tbody>\n");
        PutFigure(page, PageSentences.RiskBounded, Say(
            PageSentences.RiskCorner,
            ("chance", RiskWords.Chance(decision.Risk)),
            ("percent", RiskWords.Percent(decision.Risk)),
            ("obscured", ObscuredOf(risk)),
            ("stray", RiskWords.Percent(risk.StrayShare))));
        PutFigure(page, PageSentences.RiskExact, Say(PageSentences.RiskChance, ("chance", RiskWords.Chance(exact)), ("percent", RiskWords.Percent(exact))));
        PutFigure(page, PageSentences.RiskCut, decision.Cut > 0
            ? Say(PageSentences.RiskCutOf, ("percent", RiskWords.Percent(decision.Cut)), ("lines", ReportVoice.Text(risk.LineCount)))
            : Say(PageSentences.RiskNoCut, ("lines", ReportVoice.Text(risk.LineCount))));
        page.Append("</tbody></table>\n<table class=\"terms\"><caption>").Put(Say(PageSentences.Terms)).Append("</caption><thead><tr><th scope=\"col\">").Put(Say(PageSentences.Term))
            .Append("</th><th scope=\"col\">").Put(Say(PageSentences.OddsSoFar)).Append("</th></tr></thead><tbody>\n");
        foreach ((PresenceTerm term, double sum) in RiskTable.TermsOf(risk))
        {
            page.Append("<tr><th scope=\"row\">").Put(TermOf(term)).Append("</th><td>").Put(RiskWords.Odds(sum)).Append("</td></tr>\n");
        }

        string together = Say(PresenceReasons.TermSum, ("odds", RiskWords.Odds(decision.LogOdds)));
        page.Append("</tbody><tfoot><tr><th scope=\"row\" colspan=\"2\">").Put(together).Append("</th></tr></tfoot></table>\n");
        string how = voice.Join(RiskTable.AdviceOf(line));
        if (how.Length > 0)
        {
            page.Append("<p class=\"next\">").Put(Say(PageSentences.Settles, ("how", how))).Append("</p>");
        }
    }

    /// <summary>The covered share of the corner: of several models that of each.</summary>
    private static string ObscuredOf(PresenceRisk risk)
    {
        string[] shares = [.. risk.Terms.Where(static term => !term.Session.IsEmpty).Select(static term => RiskWords.Percent(term.ObscuredShare)).Distinct(StringComparer.Ordinal)];
        return shares.Length > 1 ? string.Join(" % or ", shares) : RiskWords.Percent(risk.ObscuredShare);
    }

    private string TermOf(PresenceTerm term)
    {
        string said = voice.Say(TermSentences.Of(term));
        return hasModels && !term.Session.IsEmpty ? Say(PageSentences.TermByModel, ("term", said), ("model", ReportVoice.Text(term.Model))) : said;
    }

    private void PutFigure(StringBuilder page, ReasonKind name, string text)
        => page.Append("<tr><th scope=\"row\">").Put(Say(name)).Append("</th><td>").Put(text).Append("</td></tr>\n");

    /// <summary>The time of a look without its offset, which the head of the pass says; a shared slot begins no earlier than its pass.</summary>
    private string ClockOf(Look look, TimelinePass pass)
        => plain.Clock(look.From < pass.Pass.From ? pass.Pass.From : look.From).ToString("HH:mm:ss.f", CultureInfo.InvariantCulture);

    private string Say(ReasonKind kind, params ReadOnlySpan<(string Name, string Value)> values) => voice.Say(kind, values);
}
