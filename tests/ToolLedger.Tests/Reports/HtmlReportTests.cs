using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Security.Cryptography;
using System.Text;
using AngleSharp.Dom;
using ToolLedger.Kits;
using ToolLedger.Policies;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Reports;
using ToolLedger.Tests.Reconciliation;
using Xunit;
using static ToolLedger.Tests.Reports.Printed;

namespace ToolLedger.Tests.Reports;

public sealed class HtmlReportTests
{
    // A reader without a style sheet, or with a screen reader, gets the page in the order of its text.
    [Fact]
    public void The_page_gives_conclusion_next_step_and_cautions_first_and_then_the_questions_in_order()
    {
        using IDocument page = Html.Parse(new TurbineShift().Report().ToHtml());
        string text = Html.TextOf(page.Body!);

        string[] inOrder =
        [
            "Skip to the conclusions", "Shift report, made 2026-03-02 15:58:30+01:00", "Conclusions, the ones to act on first", "Kit B-07, revision 3", "OPEN Of 15 lines: 13 accounted for, 1 weak, 1 not read.",
            "operate, close up or release nothing", "2. Settled: 13 of 15 lines", "3. Open: 2 of 15 lines", "First NOT READ", "line 7 Deep socket 24 mm [B07-07]", "Next: open the bag", "Cautions", "Record-keeping aid",
            "Contents", "1. Is the read any good?", "VALID", "2 rows of reads.jsonl could not be used", "Kit B-07, revision 3", "2. Settled: 13 of 15 lines", "READ, EPC only", "Reads of line 1: 5 looks, in 1 of 1 pass",
            "3. Open: 2 of 15 lines", "line 7 Deep socket 24 mm [B07-07]", "silent in this pass", "line 11 Inspection mirror", "4. What no reader can see", "5. Which equipment is exposed", "6. Who may sign", "Name or number",
            "7. Calibration on 2026-03-02", "8. What changed after sign-off?", "By which rule, and at what stated risk?", "it states no risk", "9. What was read that is not of the kit", "UNKNOWN", "Annex: what this rests on",
            "Result of kit B-07", "Policy P0, as stored", "File reads.jsonl",
        ];
        int at = 0;
        foreach (string part in inOrder)
        {
            int found = text.IndexOf(part, at, StringComparison.Ordinal);
            Assert.True(found >= 0, $"\"{part}\" is not found after position {at}:\n{text}");
            at = found;
        }
    }

    // The page is the report of the text form, and not a second account of the same shift.
    [Fact]
    public void Every_sentence_of_the_text_stands_on_the_page_in_the_same_words()
    {
        ShiftReport report = new TurbineShift { OpenedAt = World.End.AddSeconds(110) }.Report();
        string text = report.ToText(ShiftReport.MaxWidth);
        using IDocument parsed = Html.Parse(report.ToHtml());
        string page = Html.TextOf(parsed.Body!);

        // The open lines stand in three parts, and the annex has the digests in full: both are held by tests of their own.
        string[] lines = [.. (text[..text.IndexOf("3. Open:", StringComparison.Ordinal)] + Between(text, "4. What", "\nAnnex")).Split('\n')
            .Select(static line => line.TrimStart(' ', '-').Split("  ", StringSplitOptions.RemoveEmptyEntries)).Where(static parts => parts.Length > 0)
            .Select(static parts => parts[^1].Trim()).Where(static line => line.Length > 0 && line.Trim('=', '-').Length > 0 && !line.Contains("____", StringComparison.Ordinal))];

        Assert.InRange(lines.Length, 50, 200);
        Assert.All(lines, line => Assert.Contains(line.StartsWith("OPEN. ", StringComparison.Ordinal) ? line[6..] : line, page, StringComparison.Ordinal));
    }

    [Fact]
    public void Every_open_line_of_the_text_stands_on_the_page_with_its_reasons_and_its_next_step()
    {
        var shift = new TurbineShift();
        ReconciliationResult result = shift.Reconcile();
        using IDocument page = Html.Parse(shift.Report().ToHtml());
        string open = Html.TextOf(page.Body!);

        Assert.All(result.ChaseList, line =>
        {
            Assert.All(line.Reasons, reason => Assert.Contains(reason.ToString().TrimEnd('.'), open, StringComparison.OrdinalIgnoreCase));
            Assert.Contains($"Next: {line.Next!.Reason.ToString().TrimEnd('.')}.", open, StringComparison.Ordinal);
        });
    }

    [Fact]
    public void A_timeline_draws_one_mark_for_each_look_and_says_the_same_in_words()
    {
        var shift = new TurbineShift();
        ReconciliationResult result = shift.Reconcile();
        using IDocument page = Html.Parse(shift.Report().ToHtml());
        IElement[] drawn = [.. page.QuerySelectorAll("details.ev")];

        LineConclusion[] tagged = [.. result.AllLines.Where(static line => line.Evidence.LiveTagCount > 0)];
        Assert.Equal(tagged.Length, drawn.Length);
        foreach (LineConclusion line in tagged)
        {
            IElement one = drawn.Single(details => Html.TextOf(details.QuerySelector("summary")!).StartsWith($"Reads of line {line.Label}: {line.Evidence.LookCount} look", StringComparison.Ordinal));
            string words = string.Join(' ', one.Texts(".tl td span"));

            Assert.Equal(line.Evidence.LookCount, Html.MarksOf(one));
            Assert.Equal(line.Evidence.LookCount, Words(words));
            Assert.Equal(line.Evidence.LookCount == 0, words.Contains("silent in this pass", StringComparison.Ordinal));
            Assert.True(one.HasAttribute("open") == !line.IsAccounted);
        }

        static int Words(string text) => text.Split(' ').Zip(text.Split(' ').Skip(1)).Where(static pair => pair.Second is "look," or "looks,").Sum(static pair => int.Parse(pair.First, CultureInfo.InvariantCulture));
    }

    [Fact]
    public void A_timeline_says_when_only_the_first_looks_were_kept()
    {
        var shift = new TurbineShift { Policy = new SitePolicy { Calendar = TurbineShift.Yard, Sessions = new SessionPolicy { LooksKept = 2 } } };
        using IDocument page = Html.Parse(shift.Report().ToHtml());

        Assert.Contains(page.Texts(".tl td span"), static words => words.EndsWith("; only the first 2 are kept, so there may have been more", StringComparison.Ordinal));
    }

    [Fact]
    public void The_counting_rule_is_told_with_its_numbers_and_as_one_that_states_no_risk()
    {
        using IDocument page = Html.Parse(new TurbineShift().Report().ToHtml());

        Assert.Contains("Counting: a read line needs 3 looks, and 2 antennas or 2 passes; in a degraded session 2 passes. This is a rule of thumb: it states no risk.", Html.TextOf(page.Body!), StringComparison.Ordinal);
        Assert.Empty(page.QuerySelectorAll(".risk, .terms"));
    }

    // An invented station. The sentences of the terms are those that the policy itself gives for an open line.
    [Fact]
    public void A_stated_risk_is_told_in_words_and_figures_with_the_terms_it_is_made_of()
    {
        var shift = new TurbineShift
        {
            Policy = new SitePolicy { Calendar = TurbineShift.Yard, Presence = new StatedRiskPolicy { Model = new DetectionModel(0.05m, new BetaRate(3, 60), 0.02m, new BetaRate(0.2m, 60)), KitRiskLimit = 0.1m } },
        };
        ReconciliationResult result = shift.Reconcile();
        using IDocument page = Html.Parse(shift.Report().ToHtml());

        foreach (LineConclusion line in result.AllLines.Where(static line => line.Evidence.Risk is not null))
        {
            PresenceRisk risk = line.Evidence.Risk!;
            IElement details = page.QuerySelectorAll("details.ev").Single(one => Html.TextOf(one).StartsWith($"Reads of line {line.Label}:", StringComparison.Ordinal));
            string[] terms = [.. details.Texts(".terms tbody th"), details.Texts(".terms tfoot th")[0]];
            string figures = Html.TextOf(details.QuerySelector(".risk")!);

            Assert.Equal(risk.Terms.Count + 1, terms.Length);
            string[] told = [.. line.Reasons.Where(static reason => reason.Code.StartsWith("presence.term-", StringComparison.Ordinal)).Select(static reason => reason.ToString())];
            Assert.True(line.IsAccounted || told.Length > 0 || line.Reasons.Count == 1, line.ToString());
            Assert.True(told.Length == 0 || told.SequenceEqual(terms), string.Join('\n', terms));

            // The odds after the last term are those of the decision.
            Assert.EndsWith(details.Texts(".terms tbody td")[^1], terms[^1], StringComparison.Ordinal);
            Assert.Contains("Bounded, which decides", figures, StringComparison.Ordinal);
            Assert.Contains("Exact, without bound and box", figures, StringComparison.Ordinal);
            Assert.Contains("Accepted at most", figures, StringComparison.Ordinal);
            Assert.DoesNotContain("(0 %)", figures, StringComparison.Ordinal);
        }

        string text = Html.TextOf(page.Body!);
        Assert.Contains("Stated risk: a kit with read lines may hold one that is not there with a chance of 10 % at most", text, StringComparison.Ordinal);
        Assert.Contains("What settles it: ", text, StringComparison.Ordinal);
        Assert.Contains("accounted for by reads alone is not there is", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_is_loaded_run_or_sent_and_the_policy_allows_only_the_style_sheet_itself()
    {
        string html = new TurbineShift().Report().ToHtml();
        using IDocument page = Html.Parse(html);

        Assert.Empty(page.QuerySelectorAll("script, link, img, iframe, object, embed, form, base, video, audio, [src], [style]"));
        Assert.All(page.All.SelectMany(static element => element.Attributes), static attribute => Assert.False(attribute.Name.StartsWith("on", StringComparison.Ordinal)));
        Assert.All(page.QuerySelectorAll("[href]"), static element => Assert.StartsWith("#", element.GetAttribute("href"), StringComparison.Ordinal));
        string style = page.QuerySelector("style")!.TextContent;
        Assert.DoesNotContain("url(", style, StringComparison.Ordinal);
        Assert.DoesNotContain("@import", style, StringComparison.Ordinal);
        Assert.DoesNotContain("@font-face", style, StringComparison.Ordinal);

        // Content Security Policy Level 3, 2.3.1: the hash of the element's text, in base64.
        string hash = Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(style)));
        Assert.Equal($"default-src 'none'; style-src 'sha256-{hash}'; base-uri 'none'; form-action 'none'", page.QuerySelector("meta[http-equiv]")!.GetAttribute("content"));
    }

    [Fact]
    public void The_headings_step_down_one_by_one_every_id_is_its_own_and_every_link_leads_somewhere()
    {
        var shift = new TurbineShift();
        foreach (ShiftReport report in new[] { shift.Report(), shift.Report(Kits(5)) })
        {
            using IDocument page = Html.Parse(report.ToHtml());
            int[] levels = [.. page.QuerySelectorAll("h1, h2, h3, h4").Select(static heading => heading.LocalName[1] - '0')];
            string[] ids = [.. page.QuerySelectorAll("[id]").Select(static element => element.Id!)];

            Assert.Single(levels, static level => level == 1);
            Assert.All(levels.Zip(levels.Skip(1)), static pair => Assert.True(pair.Second <= pair.First + 1));
            Assert.Equal(ids.Distinct(StringComparer.Ordinal), ids);
            Assert.All(page.QuerySelectorAll("[href]"), element => Assert.Contains(element.GetAttribute("href")![1..], ids));
            Assert.All(page.QuerySelectorAll("[aria-labelledby]"), element => Assert.Contains(element.GetAttribute("aria-labelledby")!, ids));
            Assert.All(page.QuerySelectorAll("table"), static table => Assert.NotEqual("", Html.TextOf(table.QuerySelector("caption")!)));
            Assert.All(page.QuerySelectorAll("table th"), static header => Assert.True(header.HasAttribute("scope")));
            Assert.All(page.QuerySelectorAll("svg"), static picture => Assert.Equal("true", picture.GetAttribute("aria-hidden")));
            Assert.All(page.QuerySelectorAll(".st"), static status => Assert.NotEqual("", Html.TextOf(status)));
        }
    }

    [Fact]
    public void Many_kits_have_a_row_each_the_urgent_ones_first_and_their_conclusions_with_their_questions()
    {
        var shift = new TurbineShift();
        ReconciliationResult dead = new TurbineShift { Kit = new KitId("B-99"), IsStationAlive = false, IsCounted = false }.Reconcile();
        using IDocument page = Html.Parse(shift.Report([.. Kits(4), dead]).ToHtml());

        IReadOnlyList<string> rows = page.Texts(".summary tbody tr");
        Assert.Equal(5, rows.Count);
        Assert.StartsWith("NO VALID READ", rows[0], StringComparison.Ordinal);
        Assert.Contains("Kit B-99, revision 3", rows[0], StringComparison.Ordinal);
        Assert.All(rows, static row => Assert.Contains("Next: ", row, StringComparison.Ordinal));
        Assert.Equal(5, Count(Html.TextOf(page.Body!), "operate, close up or release nothing"));
    }

    [Fact]
    public void A_kit_of_500_lines_over_60_passes_is_bounded_and_says_what_is_not_drawn()
    {
        ShiftReport report = LargeShift.Report(lines: 500, sessions: 60);
        string html = report.ToHtml();
        using IDocument page = Html.Parse(html);

        int marks = page.QuerySelectorAll("details.ev").Sum(Html.MarksOf);
        Assert.InRange(marks, 30_000, 200_000);
        Assert.InRange(html.Length, 0, 6_000_000);
        string text = Html.TextOf(page.Body!);
        Assert.Contains("Not drawn: 48 earlier passes, ", text, StringComparison.Ordinal);
        Assert.Contains("Not drawn: a page draws about 100000 looks at most, those of open lines first.", text, StringComparison.Ordinal);

        // The open lines are drawn, all of them.
        Assert.All(page.QuerySelectorAll(".alike details.ev, details.ev[open]"), static details => Assert.NotNull(details.QuerySelector(".tl")));
    }

    [Theory]
    [InlineData("tr-TR")]
    [InlineData("ar-SA")]
    [InlineData("de-DE")]
    public void The_same_input_gives_the_same_page_under_any_culture(string name)
    {
        string page = new TurbineShift().Report().ToHtml();
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(name);
            Assert.Equal(page, new TurbineShift().Report().ToHtml());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Theory]
    [InlineData("de")]
    [InlineData("zh-Hant-TW")]
    public void The_page_names_its_language(string language)
    {
        using IDocument page = Html.Parse(new TurbineShift().Report().ToHtml(language));
        Assert.Equal(language, page.DocumentElement.GetAttribute("lang"));
    }

    [Theory]
    [InlineData("")]
    [InlineData("e")]
    [InlineData("en\" onload=\"x")]
    [InlineData("en-")]
    [InlineData("abcdefghijklmnopqrstuvwxyzabcdefghij")]
    public void A_language_that_is_no_tag_is_refused(string language) => Assert.Throws<ArgumentException>(() => new TurbineShift().Report().ToHtml(language));

    private static ReconciliationResult[] Kits(int count) => [.. Enumerable.Range(20, count).Select(static number => new TurbineShift { Kit = new KitId(FormattableString.Invariant($"B-{number}")) }.Reconcile())];
}
