using System.Threading.Tasks;
using Microsoft.Playwright;
using Xunit;

namespace ToolLedger.Browser.Tests;

/// <summary>WCAG 2.2, 1.4.10 and 1.4.4: at 320 CSS pixels, and at twice the size of text, nothing scrolls sideways but the timelines in their own regions.</summary>
public sealed class ReflowTests(Chromium chromium)
{
    public static TheoryData<string, int> Cases()
    {
        var cases = new TheoryData<string, int>();
        foreach (string report in ReportFiles.Names)
        {
            foreach (int width in new[] { 320, 640, 1280 })
            {
                cases.Add(report, width);
            }
        }

        return cases;
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public async Task The_page_never_scrolls_sideways(string report, int width)
    {
        await using View view = await chromium.OpenAsync(await ReportFiles.FileAsync(report), width);
        await view.Page.EvaluateAsync("document.querySelectorAll('details').forEach(part => { part.open = true; })");

        Assert.Equal(width, await view.Page.EvaluateAsync<int>("document.documentElement.scrollWidth"));

        // Nor is anything cut off: what reaches beyond the window lies in a region that scrolls by itself.
        string beyond = await view.Page.EvaluateAsync<string>("""
            (() => {
                const outside = element => element.getBoundingClientRect().right > innerWidth + 0.5 && !element.closest('.scroll, .vh, .skip, .rows > thead');
                return [...document.querySelectorAll('main *, header *')].filter(outside).slice(0, 5).map(element => element.outerHTML.slice(0, 120)).join('\n');
            })()
            """);
        Assert.Equal("", beyond);
    }

    public static TheoryData<string, int> Phones()
    {
        var cases = new TheoryData<string, int>();
        foreach (string report in ReportFiles.Names)
        {
            cases.Add(report, 390);
            cases.Add(report, 320);
        }

        return cases;
    }

    // A caption in a column of its own, one letter wide, scrolls nothing sideways and still cannot be read. Words of more than 24 letters may be broken.
    [Theory]
    [MemberData(nameof(Phones))]
    public async Task No_text_stands_in_a_column_narrower_than_its_words(string report, int width)
    {
        await using View view = await chromium.OpenAsync(await ReportFiles.FileAsync(report), width);
        await view.Page.EvaluateAsync("document.querySelectorAll('details').forEach(part => { part.open = true; })");

        string narrow = await view.Page.EvaluateAsync<string>("""
            (() => {
                const ruler = document.createElement('canvas').getContext('2d');
                const hidden = '.vh, .skip, .rows > thead, .models > thead, .gap, style, svg';
                const tooNarrow = element => {
                    const text = [...element.childNodes].filter(node => node.nodeType === Node.TEXT_NODE).map(node => node.data).join(' ').trim();
                    if (text === '' || element.closest(hidden) || !element.checkVisibility()) { return false; }
                    const block = getComputedStyle(element).display === 'inline' ? element.parentElement : element;
                    const style = getComputedStyle(element), box = getComputedStyle(block);
                    ruler.font = `${style.fontStyle} ${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
                    const words = text.split(/[\s-]+/).filter(word => word.length <= 24);
                    const room = block.clientWidth - parseFloat(box.paddingLeft) - parseFloat(box.paddingRight);
                    const lines = room > 0 ? ruler.measureText(text).width / room : Infinity;
                    return Math.max(0, ...words.map(word => ruler.measureText(word).width)) > room + 1 || (lines > 4 && room < 120);
                };
                return [...document.querySelectorAll('header *, main *')].filter(tooNarrow).slice(0, 5).map(element => `${element.clientWidth}: ${element.outerHTML.slice(0, 160)}`).join('\n');
            })()
            """);
        Assert.Equal("", narrow);
    }

    [Theory]
    [InlineData("counting")]
    [InlineData("hostile")]
    public async Task Text_of_twice_the_size_still_fits(string report)
    {
        await using View view = await chromium.OpenAsync(await ReportFiles.FileAsync(report), width: 640);
        await view.Page.EvaluateAsync("document.documentElement.style.setProperty('font-size', '200%')");

        Assert.Equal(640, await view.Page.EvaluateAsync<int>("document.documentElement.scrollWidth"));
    }

    [Fact]
    public async Task A_wide_timeline_scrolls_in_a_region_of_its_own_that_has_a_name_and_takes_the_focus()
    {
        await using View view = await chromium.OpenAsync(await ReportFiles.FileAsync("long"), width: 390);
        ILocator region = view.Page.GetByRole(AriaRole.Region, new() { NameString = "Timeline of line 3, scrolls sideways" });
        await view.Page.EvaluateAsync("document.querySelectorAll('details').forEach(part => { part.open = true; })");

        Assert.True(await region.EvaluateAsync<bool>("element => element.scrollWidth > element.clientWidth && element.tabIndex === 0"));
        await region.FocusAsync();
        await view.Page.Keyboard.PressAsync("ArrowRight");
        await Assertions.Expect(region).ToBeFocusedAsync();
        await view.WaitUntilAsync("document.activeElement.scrollLeft > 0");
    }
}
