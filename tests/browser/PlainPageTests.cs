using System;
using System.Linq;
using System.Threading.Tasks;
using Microsoft.Playwright;
using Xunit;

namespace ToolLedger.Browser.Tests;

/// <summary>Without its style sheet the page still reads from the conclusion to the digests, and on the first screen stands what a supervisor acts on.</summary>
public sealed class PlainPageTests(Chromium chromium)
{
    private static readonly string[] InOrder =
    [
        "Shift report, made", "Conclusions, the ones to act on first", "DISCREPANT", "NOT SATISFIED", "operate, close up or release nothing", "Next: stop, search", "COMPLETE", "Cautions", "Record-keeping aid", "Contents",
        "1. Is the read any good?", "2. Settled: 9 of 14 lines", "3. Open: 5 of 14 lines", "silent in this pass", "not counted: another kit stood near", "4. What no reader can see", "5. Which equipment is exposed", "6. Who may sign",
        "7. Calibration on", "8. What changed after sign-off?", "By which rule, and at what stated risk?", "Kit WT-BAG-08", "9. What was read that is not of the kit", "Annex: what this rests on", "sha256:",
    ];

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task The_text_comes_in_the_order_of_the_report_with_and_without_the_style_sheet(bool hasStyle)
    {
        await using View view = await chromium.OpenAsync(await ReportFiles.FileAsync("counting"));
        await view.Page.EvaluateAsync("document.querySelectorAll('details').forEach(part => { part.open = true; })");
        if (!hasStyle)
        {
            await view.Page.EvaluateAsync("document.querySelector('style').remove()");
        }

        string text = string.Join(' ', (await view.Page.InnerTextAsync("body")).Split([' ', '\n', '\t'], StringSplitOptions.RemoveEmptyEntries));
        int at = 0;
        foreach (string part in InOrder)
        {
            int found = text.IndexOf(part, at, StringComparison.Ordinal);
            Assert.True(found >= 0, $"\"{part}\" is not found after position {at}:\n{text}");
            at = found;
        }
    }

    [Fact]
    public async Task On_the_first_screen_stand_the_conclusions_the_next_step_and_the_cautions()
    {
        await using View view = await chromium.OpenAsync(await ReportFiles.FileAsync("counting"), 1280, 800);

        foreach (string text in new[] { "DISCREPANT", "2. Settled: 9 of 14 lines, by what and by whom", "3. Open: 5 of 14 lines, in the order to chase them", "COMPLETE", "Next: stop, search", "Times carry their offset" })
        {
            ILocator first = view.Page.GetByText(text).First;
            LocatorBoundingBoxResult? box = await first.BoundingBoxAsync();
            Assert.True(box is not null && box.Y >= 0 && box.Y + box.Height <= 800, $"\"{text}\" is not on the first screen.");
        }
    }

    // A status is a word with a shape of its own beside it: four shapes, and no two states of different weight share one.
    [Fact]
    public async Task A_status_is_told_by_a_word_and_a_shape_and_not_by_its_colour()
    {
        await using View view = await chromium.OpenAsync(await ReportFiles.FileAsync("counting"));
        string[] seen = await view.Page.EvaluateAsync<string[]>("[...new Set([...document.querySelectorAll('.st')].map(one => one.querySelector('use').getAttribute('href') + ' ' + one.textContent))]");

        Assert.Contains("#mark-act DISCREPANT", seen);
        Assert.Contains("#mark-ok COMPLETE", seen);
        Assert.Contains("#mark-look NOT READ", seen);
        Assert.Contains("#mark-note JOB", seen);
        Assert.All(seen, static one => Assert.True(one.Split(' ', 2)[1].Length > 0));
        Assert.Equal(seen.Length, seen.Select(static one => one.Split(' ', 2)[1]).Distinct().Count());
    }
}
