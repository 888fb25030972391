using System;
using System.Linq;
using System.Text;
using System.Text.RegularExpressions;
using System.Threading.Tasks;
using Microsoft.Playwright;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using Xunit;

namespace ToolLedger.Browser.Tests;

/// <summary>On paper everything is there: closed parts are open, nothing reaches beyond a page, and every page of a kit says of which kit it is. Read back with a general-purpose reader of PDF.</summary>
public sealed partial class PrintTests(Chromium chromium)
{
    // Points of a page: ISO 216 A4, 210 by 297 mm, and 8.5 by 11 inches.
    [Theory]
    [InlineData("counting", "A4", 595, 842)]
    [InlineData("counting", "Letter", 612, 792)]
    [InlineData("stated-risk", "A4", 595, 842)]
    [InlineData("hostile", "A4", 595, 842)]
    [InlineData("long", "Letter", 612, 792)]
    public async Task Every_page_is_whole_and_says_what_it_belongs_to(string report, string format, int width, int height)
    {
        await using View view = await chromium.OpenAsync(await ReportFiles.FileAsync(report));
        byte[] printed = await view.Page.PdfAsync(new PagePdfOptions { Format = format, PreferCSSPageSize = false });
        using PdfDocument document = PdfDocument.Open(printed);
        Page[] pages = [.. document.GetPages()];

        Assert.InRange(pages.Length, 4, 300);
        Assert.All(pages, page => Assert.InRange(page.Width, width - 1, width + 1));
        Assert.All(pages, page => Assert.InRange(page.Height, height - 1, height + 1));
        Assert.All(pages, page => Assert.Contains($"Page {page.Number} of {pages.Length}", TextOf(page), StringComparison.Ordinal));

        // No letter is cut: the margins at the sides are 14 mm, about 40 points.
        Assert.All(pages.SelectMany(static page => page.Letters), letter => Assert.InRange(letter.BoundingBox.Right, 39, width - 36));
        Assert.All(pages.SelectMany(static page => page.Letters), letter => Assert.InRange(letter.BoundingBox.Bottom, 0, height));

        string[] texts = [.. pages.Select(TextOf)];
        int reads = Array.FindIndex(texts, static text => text.Contains("1. Is the read any good?", StringComparison.Ordinal));
        int first = Array.FindIndex(texts, reads + 1, static text => text.Contains("2. Settled:", StringComparison.Ordinal));
        int last = Array.FindLastIndex(texts, static text => text.Contains("By which rule,", StringComparison.Ordinal));
        Assert.InRange(first, 1, last);
        foreach (string text in texts[first..(last + 1)])
        {
            Assert.True(Head().IsMatch(text), text);
        }
    }

    // A heading at the foot of a page, or the head of a table without a row, belongs on the next one.
    [Theory]
    [InlineData("counting", "Letter")]
    [InlineData("counting", "A4")]
    [InlineData("stated-risk", "Letter")]
    [InlineData("stated-risk", "A4")]
    public async Task No_page_ends_with_a_heading_or_the_head_of_a_table(string report, string format)
    {
        await using View view = await chromium.OpenAsync(await ReportFiles.FileAsync(report));
        string[] heads = await view.Page.EvaluateAsync<string[]>("[...document.querySelectorAll('h2, h3, thead')].map(element => element.innerText.split(/\\s+/).join(' ').trim())");
        using PdfDocument document = PdfDocument.Open(await view.Page.PdfAsync(new PagePdfOptions { Format = format }));
        string[] last = [.. document.GetPages().Select(LastLineOf)];

        Assert.Contains("health session", heads);
        Assert.DoesNotContain("", last);
        Assert.Empty(last.Intersect(heads, StringComparer.Ordinal));
    }

    [Fact]
    public async Task Closed_parts_are_open_on_paper_and_there_is_room_to_sign()
    {
        await using View view = await chromium.OpenAsync(await ReportFiles.FileAsync("counting"));
        int closed = await view.Page.Locator("details:not([open])").CountAsync();
        Assert.InRange(closed, 10, 50);
        byte[] printed = await view.Page.PdfAsync(new PagePdfOptions { Format = "A4" });
        using PdfDocument document = PdfDocument.Open(printed);
        string text = string.Join(' ', document.GetPages().Select(TextOf));

        int timelines = await view.Page.Locator("table.tl").CountAsync();
        Assert.Equal(timelines, text.Split("Looks at tag").Length - 1);
        await view.Page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print });

        // 14 mm at 96 pixels an inch.
        Assert.InRange(await view.Page.Locator(".gap").First.EvaluateAsync<double>("element => element.getBoundingClientRect().height"), 52, 54);
        await Assertions.Expect(view.Page.Locator("nav")).ToBeHiddenAsync();
    }

    /// <summary>The lowest line above the margin at the foot: 16 mm, about 45 points.</summary>
    private static string LastLineOf(Page page)
    {
        Word[] words = [.. page.GetWords().Where(static word => word.BoundingBox.Bottom > 44)];
        double lowest = words.Min(static word => word.BoundingBox.Bottom);
        return string.Join(' ', words.Where(word => word.BoundingBox.Bottom < lowest + 4).OrderBy(static word => word.BoundingBox.Left).Select(static word => word.Text)).Normalize(NormalizationForm.FormKC);
    }

    [GeneratedRegex(@"Kit \S+, revision \d+\. As of [^.]+\. Result [0-9a-f]{12}", RegexOptions.None, 1_000)]
    private static partial Regex Head();

    /// <summary>The words of a page, where a font may have joined two letters to one sign.</summary>
    private static string TextOf(Page page) => string.Join(' ', page.GetWords().Select(static word => word.Text)).Normalize(NormalizationForm.FormKC);
}
