using System;
using System.Linq;
using AngleSharp.Dom;
using FsCheck.Xunit;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Reports;
using ToolLedger.Tests.Reconciliation;
using Xunit;

namespace ToolLedger.Tests.Reports;

/// <summary>
/// A name written from right to left, or a control of direction, moves nothing beside it: by the bidirectional algorithm (UAX #9, rules W2 to N2) a number behind a Hebrew or Arabic word would be shown in
/// front of it, so that "6 of 15" could be read as another count. Names are invented.
/// </summary>
public sealed class DirectionTests
{
    // "Torque wrench" and "box" in Hebrew, "wrench" in Arabic, and Hebrew with points and with a number inside.
    private static readonly string[] Names =
        ["\u05de\u05e4\u05ea\u05d7 \u05de\u05d5\u05de\u05e0\u05d8", "\u05d0\u05e8\u05d2\u05d6 12", "\u0645\u0641\u062a\u0627\u062d", "\u05e9\u05b8\u05c1\u05dc\u05d5\u05b9\u05dd", "\u05de\u05e4\u05ea\u05d7 13 \u05de\u05de"];

    // The hazard is real only where a strong right-to-left character shares a run with something of the sentence.
    [Fact]
    public void Every_right_to_left_word_of_the_page_is_isolated_and_takes_nothing_of_the_sentence_with_it()
    {
        TurbineShift shift = Shift();
        using IDocument page = Html.Parse(shift.Report().ToHtml());

        INode[] texts = [.. page.Body!.Descendants<IText>().Where(static text => text.Data.Any(IsRightToLeft))];
        Assert.True(texts.Length > 20, "The names do not stand on the page.");
        Assert.All(texts, static text => Assert.Equal("bdi", text.ParentElement!.LocalName));
        Assert.All(page.QuerySelectorAll("bdi"), static one =>
        {
            Assert.Empty(one.Attributes);
            Assert.True(IsRightToLeft(one.TextContent[0]), one.TextContent);
            Assert.DoesNotContain(one.TextContent, static c => char.IsAsciiLetter(c) || c is ',' or ':' or '.' or '[' or ']' or '(' or ')');
            Assert.False(char.IsAsciiDigit(one.TextContent[^1]), "The last number may be a count of the sentence.");
        });
    }

    [Fact]
    public void Isolation_adds_no_character_to_the_text_of_the_page_and_none_in_the_report_as_text()
    {
        ShiftReport report = Shift().Report();
        using IDocument page = Html.Parse(report.ToHtml());

        foreach (string name in Names)
        {
            Assert.Contains(name, page.Body!.TextContent, StringComparison.Ordinal);
            Assert.Contains(name, report.ToText(ShiftReport.MaxWidth), StringComparison.Ordinal);
        }

        Assert.DoesNotContain(page.Body!.TextContent, static c => c is '\u2068' or '\u2069');
    }

    // A title, an attribute and a string of the style sheet can hold no element; there the characters of UAX #9 do it.
    [Fact]
    public void Where_no_element_can_stand_a_name_is_between_isolating_characters()
    {
        using IDocument page = Html.Parse(Shift().Report().ToHtml());
        string style = page.QuerySelector("style")!.TextContent;

        string head = style[style.IndexOf("@page kit-1{", StringComparison.Ordinal)..];
        Assert.StartsWith("@page kit-1{@top-left{content:\"Kit \\2068 \\5d0 \\5e8 \\5d2 \\5d6 \\2069  12,", head, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\u202a")]
    [InlineData("\u202b")]
    [InlineData("\u202d")]
    [InlineData("\u202e")]
    [InlineData("\u202c")]
    [InlineData("\u2066")]
    [InlineData("\u2067")]
    [InlineData("\u2068")]
    [InlineData("\u2069")]
    [InlineData("\u200e")]
    [InlineData("\u200f")]
    [InlineData("\u061c")]
    [InlineData("\u200b")]
    [InlineData("\u2060")]
    [InlineData("\ufeff")]
    public void A_control_of_direction_or_without_width_is_shown_by_its_number_in_every_form_for_people(string control)
    {
        string source = $"reads{control}gnp.jsonl";
        ShiftReport report = new(new ShiftReportInput { Results = [new TurbineShift().Reconcile()], MadeAt = World.End, Sources = [new SourceDigest(source, Digest.Of("s"u8))] });
        string shown = $"reads\\u{{{(int)control[0]:X4}}}gnp.jsonl";

        string text = report.ToText(ShiftReport.MaxWidth), markdown = report.ToMarkdown(), html = report.ToHtml();

        Assert.Contains(shown, text, StringComparison.Ordinal);
        Assert.Contains(shown, html, StringComparison.Ordinal);
        Assert.Contains(shown.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("{", "\\{", StringComparison.Ordinal).Replace("}", "\\}", StringComparison.Ordinal), markdown, StringComparison.Ordinal);
        Assert.All(new[] { text, markdown, html }, form => Assert.DoesNotContain(control, form, StringComparison.Ordinal));
    }

    // Names from any script: each isolated run starts and ends in a strong character of a right-to-left script, and all of them are found.
    [Property(MaxTest = 200)]
    public void Nothing_from_right_to_left_is_left_outside_an_isolate(byte[]? draws)
    {
        string[] parts = ["\u05d0", "\u0628", "\u05b8", "\u0301", "\u0663", "\U0001E900", "\U00010900", "a", "7", " ", "-", ",", ".", "(", "\u202e", "\u4e00"];
        string name = string.Concat((draws ?? []).Select(draw => parts[draw % parts.Length]));
        ShiftReport report = new(new ShiftReportInput { Results = [new TurbineShift().Reconcile()], MadeAt = World.End, Sources = [new SourceDigest(name, Digest.Of("s"u8))] });
        using IDocument page = Html.Parse(report.ToHtml());

        IElement row = page.QuerySelectorAll("table.digests th")[^1];
        Assert.Equal("File " + name.Replace("\u202e", "\\u{202E}", StringComparison.Ordinal), row.TextContent);
        Assert.All(row.Descendants<IText>(), static text => Assert.Equal(IsRightToLeft(text.Data[0]) || text.Data.Contains('\ud83a') || text.Data.Contains('\ud802'), text.ParentElement!.LocalName == "bdi"));
    }

    private static TurbineShift Shift() => new()
    {
        Kit = new KitId(Names[1]),
        Title = Names[2],
        Names = [.. Enumerable.Range(0, new TurbineShift().Names.Length).Select(static number => Names[number % Names.Length])],
    };

    private static bool IsRightToLeft(char c) => c is (>= '\u0590' and <= '\u08ff') or (>= '\ufb1d' and <= '\ufdff') or (>= '\ufe70' and <= '\ufefe');
}
