using System.Threading.Tasks;
using Xunit;

namespace ToolLedger.Browser.Tests;

/// <summary>The page is closed: nothing leaves it, nothing runs in it, and the browser has nothing to complain about.</summary>
public sealed class ClosedPageTests(Chromium chromium)
{
    public static TheoryData<string> AllReports => [.. ReportFiles.Names];

    [Theory]
    [MemberData(nameof(AllReports))]
    public async Task No_request_leaves_and_the_console_stays_empty(string report)
    {
        await using View view = await chromium.OpenAsync(await ReportFiles.FileAsync(report));
        await view.Page.EvaluateAsync("document.querySelectorAll('details').forEach(part => { part.open = true; })");
        await view.Page.EmulateMediaAsync(new() { Media = Microsoft.Playwright.Media.Print });
        await view.Page.WaitForLoadStateAsync(Microsoft.Playwright.LoadState.NetworkIdle);

        Assert.Empty(view.Requests);
        Assert.Empty(view.Complaints);
        Assert.Equal(0, await view.Page.Locator("script, img, iframe, link").CountAsync());
    }

    // The style sheet is allowed by its hash: a page on which it is refused would be black on white, and would complain.
    [Fact]
    public async Task The_policy_lets_the_style_sheet_in_and_keeps_out_what_somebody_adds()
    {
        await using View view = await chromium.OpenAsync(await ReportFiles.FileAsync("counting"));
        Assert.Equal("grid", await view.Page.EvaluateAsync<string>("getComputedStyle(document.querySelector('.cards')).display"));
        Assert.Empty(view.Complaints);

        await view.Page.EvaluateAsync("{ const added = document.createElement('img'); added.src = 'https://example.invalid/x.png'; document.body.append(added); }");
        await view.Page.WaitForTimeoutAsync(200);

        Assert.Empty(view.Requests);
        Assert.Contains(view.Complaints, static complaint => complaint.Contains("Content Security Policy", System.StringComparison.Ordinal));
    }
}
