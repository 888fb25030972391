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
        await view.Page.WaitForFunctionAsync("document.activeElement.scrollLeft > 0");
    }
}
