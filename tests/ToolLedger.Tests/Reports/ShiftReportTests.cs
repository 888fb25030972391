using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Reports;
using ToolLedger.Tests.Reconciliation;
using Xunit;
using static ToolLedger.Tests.Reports.Printed;

namespace ToolLedger.Tests.Reports;

public sealed class ShiftReportTests
{
    private static readonly string[] HardNames =
    [
        "扭矩扳手 20–100 N·m", "مفتاح ربط ١٣ مم", "Ключ рожковый 24 мм", "רֶנֶץ' 10 מ\"מ", "スパナ17ミリ絶縁型超ロングタイプ特別仕様品番未定工具箱三段目右奥", "e\u0301tau à main",
        "a|b|c*d_e`f`<g>[h](i)#j", "1. first", "- dash", "Ratchet with " + new string('x', 180), "ไขควงปากแบน", "\U0001F527\U0001F527 wrench",
    ];

    // What a supervisor reads first must be at the top, and the questions in their order.
    [Fact]
    public void The_text_answers_the_supervisors_questions_in_order()
    {
        string text = new TurbineShift().Report().ToText();

        string[] inOrder =
        [
            "Shift report, made 2026-03-02 15:58:30+01:00", "Kit B-07, revision 3", "OPEN. Of 15 lines: 13 accounted for, 1 weak, 1 not read.",
            "1. Is the read any good?", "VALID", "The reader's clock was 1.5 s ahead", "2 rows of reads.jsonl could not be used; line 118",
            "2. Settled: 13 of 15 lines", "READ, EPC only  Combination spanner 13 mm [B07-01]", "COUNTED         Wiping cloths: counted 6",
            "3. Open: 2 of 15 lines", "NOT READ  line 7 Deep socket 24 mm [B07-07]", "Next: open the bag", "WEAK      line 11 Inspection mirror",
            "4. What no reader can see", "by P-118, witness P-204",
            "5. Which equipment is exposed, and since when?", "OPEN     line 7: not accounted for in anything handed in.", "15:55:07+01:00, which", "SETTLED",
            "6. Who may sign, and have two people signed?", "No: 1 person has signed.", "P-118, P-204", "any role",
            "7. Calibration on 2026-03-02", "OVERDUE  Torque wrench", "CURRENT  Feeler gauge", "No ledger was given",
            "8. What changed after sign-off?", "Nothing handed in is later than the first signature, 15:57:10",
            "9. What was read that is not of the kit", "UNEXPECTED", "kit B-09", "Strap wrench", "C-2 (custodian) signed its manifest", "UNKNOWN",
            "Cautions", "Annex: what this rests on", "Policy P0", "library version",
        ];
        int at = 0;
        foreach (string part in inOrder)
        {
            int found = text.IndexOf(part, at, StringComparison.Ordinal);
            Assert.True(found >= 0, $"\"{part}\" is not found after position {at}:\n{text}");
            at = found;
        }
    }

    [Fact]
    public void A_settled_kit_of_fifteen_lines_prints_on_one_page_with_the_annex_behind_it()
    {
        string text = new TurbineShift { NotRead = [], Weak = [], Strays = [] }.Report().ToText();
        string[] lines = text[..text.IndexOf("\nAnnex: ", StringComparison.Ordinal)].TrimEnd('\n').Split('\n');

        // A4 in a fixed-pitch face of 9 points holds about 77 lines of 100 columns.
        Assert.InRange(lines.Length, 1, 77);
    }

    [Fact]
    public void A_status_of_several_words_stands_on_one_line_at_any_width()
    {
        ReconciliationResult opened = new TurbineShift { OpenedAt = World.End.AddSeconds(110) }.Reconcile();
        var report = new ShiftReport(new ShiftReportInput { Results = [opened], Gates = [Gate.Ask(opened, opened.AsOf)], MadeAt = opened.AsOf });

        for (int width = ShiftReport.MinWidth; width <= 140; width++)
        {
            string text = report.ToText(width);

            Assert.Contains("NOT SATISFIED", text, StringComparison.Ordinal);
            Assert.DoesNotContain("NOT\n", text, StringComparison.Ordinal);
            Assert.All(text.Split('\n'), line => Assert.InRange(line.Length, 0, width));
        }
    }

    // S92 in print: accounted for and overdue stand in two sections, and neither changes the other.
    [Fact]
    public void S92_a_tool_that_is_back_and_overdue_is_settled_in_one_section_and_overdue_in_another()
    {
        string text = new TurbineShift().Report().ToText();
        string settled = Between(text, "2. Settled", "3. Open"), open = Between(text, "3. Open", "4. What"), calibration = Between(text, "7. Calibration", "8. What");

        Assert.Contains("Torque wrench 20-100 N.m", settled, StringComparison.Ordinal);
        Assert.DoesNotContain("OVERDUE", settled, StringComparison.Ordinal);
        Assert.DoesNotContain("Torque wrench", open, StringComparison.Ordinal);
        Assert.Contains("OVERDUE  Torque wrench 20-100 N.m", calibration, StringComparison.Ordinal);
    }

    [Fact]
    public void A_dead_station_is_one_row_and_not_an_alarm_for_each_tool()
    {
        string text = new TurbineShift { IsStationAlive = false, IsCounted = false }.Report().ToText();

        Assert.Contains("NO VALID READ. Of 15 lines: 15 not assessed.", text, StringComparison.Ordinal);
        Assert.Contains("1-12.  NOT ASSESSED  line 1 Combination spanner 13 mm", text, StringComparison.Ordinal);
        Assert.Contains("NOT COUNTED", text, StringComparison.Ordinal);
        Assert.Contains("Nothing was read at all", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_form_carries_all_twelve_cautions()
    {
        ShiftReport report = new TurbineShift().Report();
        string text = Unwrapped(report.ToText()), markdown = report.ToMarkdown(), json = System.Text.Encoding.UTF8.GetString(report.ToJson());

        Assert.Equal(12, ReportCautions.All.Count);
        Assert.All(ReportCautions.All, caution =>
        {
            Assert.Contains(caution.Sentence, text, StringComparison.Ordinal);
            Assert.Contains(caution.Sentence, markdown.Replace("\\", "", StringComparison.Ordinal), StringComparison.Ordinal);
            Assert.Contains(caution.Code, json, StringComparison.Ordinal);
        });
    }

    // Missing, lost and found are said by people; the words may stand in the cautions only.
    [Fact]
    public void No_report_says_missing_lost_or_found()
    {
        foreach (TurbineShift shift in new[] { new TurbineShift(), new TurbineShift { IsStationAlive = false, IsCounted = false }, new TurbineShift { NotRead = [1, 2, 3, 4, 5] } })
        {
            string text = shift.Report().ToText();
            string body = text[..text.IndexOf("\nCautions", StringComparison.Ordinal)];

            Assert.DoesNotContain("missing", body, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("lost", body, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("found", body, StringComparison.OrdinalIgnoreCase);
        }
    }

    // A status is a word in its own right: nothing is told by colour, a symbol or place alone.
    [Fact]
    public void The_text_has_no_control_character_but_the_line_feed_and_no_trailing_white_space()
    {
        string text = new TurbineShift { Names = HardNames }.Report().ToText();

        Assert.DoesNotContain(text, static c => char.IsControl(c) && c != '\n');
        Assert.DoesNotContain(text.Split('\n'), static line => line.EndsWith(' '));
    }

    [Theory]
    [InlineData(40)]
    [InlineData(72)]
    [InlineData(100)]
    [InlineData(132)]
    public void No_line_is_wider_than_asked_whatever_the_names(int width)
    {
        string text = new TurbineShift { Names = HardNames, Title = "夜勤用の工具袋" }.Report().ToText(width);

        Assert.All(text.Split('\n'), line => Assert.InRange(Columns(line), 0, width));
    }

    [Theory]
    [InlineData(39)]
    [InlineData(401)]
    public void A_width_outside_the_range_is_refused(int width) => Assert.Throws<ArgumentOutOfRangeException>(() => new TurbineShift().Report().ToText(width));

    // No name can add a column, a row, a link or a heading: every unescaped bar of a table row is ours.
    [Fact]
    public void Names_cannot_break_the_markdown()
    {
        string markdown = new TurbineShift { Names = HardNames, Title = "# heading | bar" }.Report().ToMarkdown();

        string[] rows = markdown.Split('\n').Where(static line => line.StartsWith('|')).ToArray();
        Assert.All(rows, row => Assert.InRange(row.Replace("\\|", "", StringComparison.Ordinal).Count(static c => c == '|'), 3, 4));
        Assert.Contains(@"a\|b\|c\*d\_e\`f\`\<g\>\[h\](i)\#j", markdown, StringComparison.Ordinal);
        Assert.Contains(@"## Kit B-07, revision 3: \# heading \| bar.", markdown, StringComparison.Ordinal);
    }

    // An integrator's own reason may carry anything a reader or a file sent; it must not reach a terminal raw.
    [Fact]
    public void Control_characters_of_a_refused_row_are_escaped_in_every_form()
    {
        ReconciliationResult result = new TurbineShift().Reconcile();
        var report = new ShiftReport(new ShiftReportInput
        {
            Results = [result],
            MadeAt = World.End,
            Sources = [new SourceDigest("a\u001b[2Jb.csv", Digest.Of([]))],
            Refused = [new RefusedRows { Source = "a\u001b[2Jb.csv", Count = 1, First = [new RefusedRow(3, new Reason(RecordRules.BadTime, ("found", "\u001b[31m\u202e")))] }],
        });

        Assert.DoesNotContain('\u001b', report.ToText());
        Assert.DoesNotContain('\u202e', report.ToText());
        Assert.DoesNotContain('\u001b', report.ToMarkdown());
        Assert.DoesNotContain((byte)0x1b, report.ToJson());
        Assert.Contains("\\u{001B}[2Jb.csv", report.ToText(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("tr-TR")]
    [InlineData("ar-SA")]
    [InlineData("de-DE")]
    [InlineData("th-TH")]
    public void The_same_input_gives_the_same_bytes_under_any_culture(string name)
    {
        string text = "", markdown = "";
        byte[] json = [];
        (string plainText, string plainMarkdown, byte[] plainJson) = Forms();

        UnderCulture(name, () => (text, markdown, json) = Forms());

        Assert.Equal(plainText, text);
        Assert.Equal(plainMarkdown, markdown);
        Assert.Equal(plainJson, json);
    }

    [Fact]
    public void Several_kits_start_with_a_summary_and_the_urgent_ones_stand_first()
    {
        var open = new TurbineShift();
        var complete = new TurbineShift { Kit = new KitId("B-08"), NotRead = [], Weak = [] };
        var dead = new TurbineShift { Kit = new KitId("B-10"), IsStationAlive = false };
        string text = open.Report([complete.Reconcile(), open.Reconcile(), dead.Reconcile()]).ToText();

        string summary = Between(text, "Summary of 3 kits", "1. Is the read any good?");
        int noRead = summary.IndexOf("NO VALID READ  kit B-10", StringComparison.Ordinal);
        int openAt = summary.IndexOf("OPEN           kit B-07: 13 of 15 lines accounted for; open: line 7 Deep socket 24 mm [B07-07]", StringComparison.Ordinal);
        int done = summary.IndexOf("COMPLETE       kit B-08: 15 of 15 lines accounted for", StringComparison.Ordinal);
        Assert.True(noRead >= 0 && noRead < openAt && openAt < done, summary);
        Assert.Equal(1, Count(text, "Is the read any good?"));
        Assert.Equal(3, Count(text, "\n2. Settled: "));
        Assert.Equal(1, Count(text, "\n1. Is the read any good?"));
        Assert.Equal(1, Count(text, "\n9. What was read that is not of the kit"));
        Assert.Equal(1, Count(text, "Record-keeping aid"));
    }

    [Fact]
    public void A_question_has_the_same_number_for_one_kit_and_for_many()
    {
        var shift = new TurbineShift();
        string[] one = Questions(shift.Report().ToText());
        string[] many = Questions(shift.Report([shift.Reconcile(), new TurbineShift { Kit = new KitId("B-08") }.Reconcile()]).ToText());

        Assert.Equal(["1.", "2.", "3.", "4.", "5.", "6.", "7.", "8.", "9."], one.Select(static line => line[..2]));
        Assert.Equal([one[0], .. one[1..8], .. one[1..8], one[8]], many);

        static string[] Questions(string text) => [.. text.Split('\n').Where(static line => line.Length > 2 && char.IsAsciiDigit(line[0]) && line[1] == '.')];
    }

    // The kit is complete and signed, and was opened afterwards: the page says so three times, and the gate stays shut.
    [Fact]
    public void A_name_that_begins_with_the_date_is_not_cut()
    {
        string[] names = [.. new TurbineShift().Names];
        names[0] = "2026-03-02 15:00 spanner";

        Assert.Contains("2026-03-02 15:00 spanner [B07-01]", new TurbineShift { Names = names }.Report().ToText(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_report_without_a_result_is_refused() =>
        Assert.Throws<ArgumentException>(() => new ShiftReport(new ShiftReportInput { Results = [], MadeAt = World.End }));

    [Fact]
    public void Sentences_can_be_said_in_other_words()
    {
        ReconciliationResult result = new TurbineShift().Reconcile();
        var wording = new Wording(new Dictionary<string, string>(StringComparer.Ordinal) { [ReportSentences.IsReadGood.Code] = "Taugt die Lesung?", [ReportCautions.HoldStays.Code] = "Eine Sperre bleibt." });
        string text = new ShiftReport(new ShiftReportInput { Results = [result], MadeAt = World.End, Wording = wording }).ToText();

        Assert.Contains("1. Taugt die Lesung?", text, StringComparison.Ordinal);
        Assert.Contains("Eine Sperre bleibt.", text, StringComparison.Ordinal);
    }

    private static (string Text, string Markdown, byte[] Json) Forms()
    {
        ShiftReport report = new TurbineShift { Names = HardNames }.Report();
        return (report.ToText(), report.ToMarkdown(), report.ToJson());
    }

    private static void UnderCulture(string name, Action action)
    {
        CultureInfo before = CultureInfo.CurrentCulture, beforeUi = CultureInfo.CurrentUICulture;
        try
        {
            CultureInfo.CurrentCulture = new CultureInfo(name);
            CultureInfo.CurrentUICulture = new CultureInfo(name);
            action();
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
            CultureInfo.CurrentUICulture = beforeUi;
        }
    }

    // Counted apart from the library: a text element of a wide script is two columns, any other one.
    private static int Columns(string line)
    {
        int columns = 0;
        TextElementEnumerator elements = StringInfo.GetTextElementEnumerator(line);
        while (elements.MoveNext())
        {
            int first = char.ConvertToUtf32(elements.GetTextElement(), 0);
            columns += first is (>= 0x2E80 and <= 0xA4CF) or (>= 0xAC00 and <= 0xD7A3) or (>= 0xFF00 and <= 0xFF60) or >= 0x1F300 ? 2 : 1;
        }

        return columns;
    }
}
