using System.Collections.Generic;
using System.Threading.Tasks;
using Microsoft.Playwright;
using Xunit;

namespace ToolLedger.Browser.Tests;

/// <summary>WCAG 2.2, 2.1.1, 2.4.1, 2.4.3 and 2.4.7: everything is reached from the keyboard, in the order of the page, with a mark where one is.</summary>
public sealed class KeyboardTests(Chromium chromium)
{
    private const string Controls = "[...document.querySelectorAll('a[href], summary, [tabindex=\"0\"]')].filter(element => element.checkVisibility({ contentVisibilityAuto: true }) && !element.closest('details:not([open]) > :not(summary)'))";

    [Theory]
    [InlineData("counting")]
    [InlineData("stated-risk")]
    public async Task Tab_reaches_every_control_in_the_order_of_the_page_and_shows_where_it_is(string report)
    {
        await using View view = await chromium.OpenAsync(await ReportFiles.FileAsync(report));
        int count = await view.Page.EvaluateAsync<int>($"{Controls}.forEach((element, index) => element.dataset.place = index) ?? {Controls}.length");
        Assert.InRange(count, 30, 200);

        List<string?> places = [], unmarked = [];
        for (int press = 0; press < count; press++)
        {
            await view.Page.Keyboard.PressAsync("Tab");
            places.Add(await view.Page.EvaluateAsync<string?>("document.activeElement.dataset.place"));
            if (await view.Page.EvaluateAsync<bool>("(style => style.outlineStyle === 'none' || parseFloat(style.outlineWidth) < 2)(getComputedStyle(document.activeElement))"))
            {
                unmarked.Add(places[^1]);
            }
        }

        Assert.Equal(System.Linq.Enumerable.Range(0, count).ToPlaces(), places);
        Assert.Empty(unmarked);
    }

    [Fact]
    public async Task The_first_control_skips_to_the_conclusions_and_is_seen_when_it_has_the_focus()
    {
        await using View view = await chromium.OpenAsync(await ReportFiles.FileAsync("counting"));
        ILocator skip = view.Page.GetByRole(AriaRole.Link, new() { NameString = "Skip to the conclusions" });
        Assert.False(await skip.EvaluateAsync<bool>("element => element.getBoundingClientRect().bottom > 0"));

        await view.Page.Keyboard.PressAsync("Tab");
        await Assertions.Expect(skip).ToBeFocusedAsync();
        await view.WaitUntilAsync("document.activeElement.getBoundingClientRect().top >= 0");
        await view.Page.Keyboard.PressAsync("Enter");

        Assert.Equal("main", await view.Page.EvaluateAsync<string>("document.activeElement.id"));
    }

    [Fact]
    public async Task Enter_opens_and_closes_the_reads_of_a_line()
    {
        await using View view = await chromium.OpenAsync(await ReportFiles.FileAsync("counting"));
        ILocator reads = view.Page.Locator("details.ev").First, table = reads.Locator("table.tl");
        await Assertions.Expect(table).ToBeHiddenAsync();

        await reads.Locator("summary").FocusAsync();
        await view.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(table).ToBeVisibleAsync();
        await view.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(table).ToBeHiddenAsync();
    }
}
