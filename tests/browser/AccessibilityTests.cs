using System.Linq;
using System.Threading.Tasks;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Xunit;

namespace ToolLedger.Browser.Tests;

/// <summary>The rules of axe-core, which follow WCAG 2.2 A and AA and common practice: none may be broken, and the contrast rule looks at both colour schemes.</summary>
public sealed class AccessibilityTests(Chromium chromium)
{
    public static TheoryData<string, string> Cases()
    {
        var cases = new TheoryData<string, string>();
        foreach (string report in ReportFiles.Names)
        {
            // The larger pages have no other elements and colours than the demo: once is enough.
            foreach (string mode in report is "many" or "long" ? ["phone"] : new[] { "light", "dark", "phone", "print" })
            {
                cases.Add(report, mode);
            }
        }

        return cases;
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public async Task No_rule_is_broken(string report, string mode)
    {
        await using View view = await chromium.OpenAsync(
            await ReportFiles.FileAsync(report), width: mode == "phone" ? 390 : 1280, height: 844, scheme: mode == "dark" ? ColorScheme.Dark : ColorScheme.Light);
        if (mode == "print")
        {
            await view.Page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print });
        }

        // What stands in closed parts is looked at too.
        await view.Page.EvaluateAsync("document.querySelectorAll('details').forEach((part, index) => { if (index < 12) part.open = true; })");
        AxeResult result = await view.Page.RunAxe();

        Assert.Empty(result.Violations.Select(static broken => $"{broken.Id}: {broken.Help}: {string.Join(" | ", broken.Nodes.Take(3).Select(static node => node.Html))}"));
        Assert.Contains(result.Passes, static passed => passed.Id == "color-contrast");
        Assert.Contains(result.Passes, static passed => passed.Id == "html-has-lang");
    }

    [Fact]
    public async Task The_dark_scheme_is_dark_and_the_light_one_is_light()
    {
        string file = await ReportFiles.FileAsync("counting");
        await using View light = await chromium.OpenAsync(file), dark = await chromium.OpenAsync(file, scheme: ColorScheme.Dark);
        const string paper = "getComputedStyle(document.body).backgroundColor";

        Assert.Equal("rgb(255, 255, 255)", await light.Page.EvaluateAsync<string>(paper));
        Assert.Equal("rgb(21, 24, 26)", await dark.Page.EvaluateAsync<string>(paper));
    }

    [Fact]
    public async Task Nothing_glides_for_a_reader_who_wants_no_motion()
    {
        string file = await ReportFiles.FileAsync("counting");
        await using View still = await chromium.OpenAsync(file, motion: ReducedMotion.Reduce), moving = await chromium.OpenAsync(file);
        const string behaviour = "getComputedStyle(document.documentElement).scrollBehavior";

        Assert.Equal("auto", await still.Page.EvaluateAsync<string>(behaviour));
        Assert.Equal("smooth", await moving.Page.EvaluateAsync<string>(behaviour));
    }
}
