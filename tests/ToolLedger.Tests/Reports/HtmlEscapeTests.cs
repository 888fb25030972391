using System;
using System.Linq;
using System.Text;
using AngleSharp.Dom;
using FsCheck.Xunit;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Reports;
using ToolLedger.Tests.Reconciliation;
using Xunit;

namespace ToolLedger.Tests.Reports;

/// <summary>Whatever text comes in goes out as text: a parser of HTML finds the same elements as with plain names.</summary>
public sealed class HtmlEscapeTests
{
    private static readonly string[] Nasty =
    [
        "<script>alert(1)</script>", "\"><img src=x onerror=alert(1)>", "' onmouseover='x", "</style><b>", "</title></svg><p>", "<!--", "-->", "]]>", "&lt;&#60;&amp;&", "\\3c b\\3e ", "\";}*{display:none}", "a\u001b[2J",
        "\u202emi\u202c", "\ud800", "\0", "\r\n\t", "{at}", "javascript:alert(1)",
    ];

    [Property(MaxTest = 60)]
    public void Any_text_comes_out_escaped_and_makes_no_element_and_no_attribute(string? one, string? two, string? three, byte nasty)
    {
        string policy = one + Nasty[nasty % Nasty.Length], source = Nasty[(nasty / 2) % Nasty.Length] + two, refused = three + Nasty[(nasty / 3) % Nasty.Length];
        string html = Report(policy, source, refused).ToHtml();
        using IDocument page = Html.Parse(html), plain = Html.Parse(Report("P", "s", "r").ToHtml());

        Assert.Equal(Shape(plain), Shape(page));
        string text = page.Body!.TextContent;
        Assert.Contains(Escaped(policy), text, StringComparison.Ordinal);
        Assert.Contains(Escaped(source), text, StringComparison.Ordinal);
        Assert.Contains(Escaped(refused), text, StringComparison.Ordinal);
        Assert.DoesNotContain(html, static c => (char.IsControl(c) && c != '\n') || c is '\u202e' or '\u202c' || char.GetUnicodeCategory(c) == System.Globalization.UnicodeCategory.Format);
    }

    // What a manifest accepts is printable, and may be markup all the same: in headings, in cells, in the contents and in the heads of printed pages.
    [Fact]
    public void Names_of_a_manifest_that_are_markup_stay_names()
    {
        string[] nasty = [.. Nasty.Where(static text => text.All(static c => c is >= ' ' and < '\u007f') && text.Trim().Length == text.Length)];
        var plainShift = new TurbineShift();
        foreach (string name in nasty)
        {
            var shift = new TurbineShift { Title = name, Kit = new KitId(name), Names = [.. plainShift.Names.Select(_ => name)] };
            using IDocument page = Html.Parse(shift.Report().ToHtml()), plain = Html.Parse(plainShift.Report().ToHtml());

            Assert.Equal(Shape(plain), Shape(page));
            Assert.Contains(name, page.QuerySelector("main h2[id^=s]:not(:empty) ~ h3, section.kit h2")!.TextContent, StringComparison.Ordinal);
            Assert.Equal(plain.QuerySelectorAll("style").Length, page.QuerySelectorAll("style").Length);
        }
    }

    // Every rule of the style sheet is still there behind a name in the head of a printed page.
    [Fact]
    public void A_name_cannot_end_a_string_of_the_style_sheet()
    {
        foreach (string name in new[] { "\";}*{display:none}", "</style>", "\\", "\\\"", "a\\" })
        {
            using IDocument page = Html.Parse(new TurbineShift { Kit = new KitId(name) }.Report().ToHtml());
            string style = page.QuerySelector("style")!.TextContent;
            string rule = style[style.IndexOf("@page kit-1{", StringComparison.Ordinal)..];

            string content = rule["@page kit-1{@top-left{content:".Length..rule.IndexOf("}}\n", StringComparison.Ordinal)];
            Assert.Equal(2, content.Count(static c => c == '"'));
            Assert.StartsWith("\"Kit ", content, StringComparison.Ordinal);
            Assert.EndsWith("\"", content, StringComparison.Ordinal);
            Assert.DoesNotContain('<', content);

            // CSS Syntax Level 3, 4.3.7: a backslash, the number in hexadecimal digits, and a space that ends it.
            Assert.Matches(@"^""(?:[A-Za-z0-9 .,:+()\-]|\\[0-9a-f]{1,6} )*""$", content);
        }
    }

    [Fact]
    public void A_name_of_ten_thousand_characters_is_shown_whole()
    {
        string name = string.Concat(Enumerable.Repeat("0123456789", 1_000));
        using IDocument page = Html.Parse(Report(name, name, name).ToHtml());

        Assert.Contains(name, page.Body!.TextContent, StringComparison.Ordinal);
    }

    private static ShiftReport Report(string policy, string source, string refused) => new(new ShiftReportInput
    {
        Results = [new TurbineShift().Reconcile()],
        MadeAt = World.End,
        PolicyName = policy,
        PolicyDigest = Digest.Of("p"u8),
        Sources = [new SourceDigest(source, Digest.Of("s"u8))],
        Refused = [new RefusedRows { Source = refused, Count = 1, First = [new RefusedRow(3, new Reason(RecordRules.BadTime, ("found", refused)))] }],
    });

    /// <summary>Every element in order with the names of its attributes, but for the bare ones that isolate words written from right to left (DirectionTests hold those).</summary>
    private static string Shape(IDocument page) => string.Join('\n', page.All.Where(static element => element.LocalName != "bdi" || element.Attributes.Length > 0).Select(static element => $"{element.LocalName} {string.Join(' ', element.Attributes.Select(static attribute => attribute.Name))}"));

    /// <summary>The text as it is to be shown: what is not printable by its number, written independently of the library.</summary>
    private static string Escaped(string text)
    {
        var shown = new StringBuilder();
        for (int index = 0; index < text.Length;)
        {
            bool isWhole = Rune.TryGetRuneAt(text, index, out Rune rune);
            int value = isWhole ? rune.Value : text[index];
            bool isPlain = isWhole && SafeToShow(rune);
            shown.Append(isPlain ? rune.ToString() : FormattableString.Invariant($"\\u{{{value:X4}}}"));
            index += isWhole ? rune.Utf16SequenceLength : 1;
        }

        return shown.ToString();
    }

    private static bool SafeToShow(Rune rune) => RecordText(rune.ToString());

    private static bool RecordText(string one)
    {
        // A record accepts exactly the characters that are shown as they are; a space alone is refused for standing at an end.
        try
        {
            _ = new PersonId("a" + one + "a");
            return true;
        }
        catch (ArgumentException)
        {
            return false;
        }
    }
}
