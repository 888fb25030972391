using System;
using System.IO;
using System.Linq;
using System.Threading.Tasks;
using ShiftCloseout;
using Xunit;

namespace ToolLedger.Samples.Tests.ShiftCloseout;

/// <summary>--html writes the page beside the report, with the care that --out takes.</summary>
public sealed class HtmlFileTests
{
    private const string Hub = "manifest-hub-bag.json";
    private const string Nacelle = "manifest-nacelle-bag.json";

    [Fact]
    public async Task The_page_is_written_beside_the_same_report_and_nothing_else_is_left()
    {
        using var folder = new DemoFolder();
        string path = folder.Write("page.html", "an older page"u8.ToArray());
        string[] args = folder.Args([Nacelle, Hub], "--gate");
        int before = Directory.GetFiles(folder.Root).Length;

        HostRun plain = await HostRun.Of(args);
        HostRun both = await HostRun.Of([.. args, "--html", path]);
        string page = File.ReadAllText(path);

        Assert.Equal(plain.Output, both.Output);
        Assert.Equal(plain.ExitCode, both.ExitCode);
        Assert.Equal(before, Directory.GetFiles(folder.Root).Length);
        Assert.Contains($"The page is in {path}.", both.Error, StringComparison.Ordinal);
        Assert.StartsWith("<!DOCTYPE html>\n<html lang=\"en\">", page, StringComparison.Ordinal);
        Assert.EndsWith("</html>\n", page, StringComparison.Ordinal);
    }

    // What the demo is about, as a supervisor sees it on the page: the spanner that is in the other bag, and the one that is silent.
    [Fact]
    public async Task The_page_of_the_demo_shows_looks_that_do_not_count_and_passes_that_were_silent()
    {
        using var folder = new DemoFolder();
        string path = folder["page.html"];

        HostRun run = await HostRun.Of("--html", path);
        string page = File.ReadAllText(path);

        Assert.Equal(0, run.ExitCode);
        Assert.Contains("Reads of line 4: 6 looks, in 1 of 2 passes", page, StringComparison.Ordinal);
        Assert.Contains("6 looks, first 15:40:01.5, last 15:40:26.5; not counted: another kit stood near", page, StringComparison.Ordinal);
        Assert.Equal(1, page.Split("mk short").Length - 1);
        Assert.Contains("Reads of line 5: 0 looks, in 0 of 2 passes", page, StringComparison.Ordinal);
        Assert.Contains("silent in this pass", page, StringComparison.Ordinal);
        Assert.Contains("NOT SATISFIED", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_demo_policy_with_a_stated_risk_shows_the_terms_of_every_line_that_was_read()
    {
        using var folder = new DemoFolder();
        string path = folder["page.html"];
        string[] args = [.. folder.Args([Nacelle], "--html", path).Select(arg => arg == folder["policy.json"] ? folder["policy-stated-risk.json"] : arg)];

        HostRun run = await HostRun.Of(args);
        string page = File.ReadAllText(path);

        Assert.Equal(1, run.ExitCode);
        Assert.Contains("odds that it is there before the session 99 to 1", page, StringComparison.Ordinal);
        Assert.Contains("at the cautious corner of the box", page, StringComparison.Ordinal);
        Assert.Contains("What settles it: ", page, StringComparison.Ordinal);
        Assert.Equal(page.Split("class=\"terms\"").Length, page.Split("Accepted at most").Length);
        Assert.Equal(12, page.Split("class=\"terms\"").Length - 1);
    }

    [Fact]
    public async Task Report_and_page_go_to_two_files()
    {
        using var folder = new DemoFolder();

        HostRun same = await HostRun.Of(folder.Args([Hub], "--out", folder["a.out"], "--html", Path.Combine(folder.Root, ".", "a.out")));
        HostRun two = await HostRun.Of(folder.Args([Hub], "--out", folder["a.out"], "--html", folder["b.html"]));

        Assert.Equal((64, 0), (same.ExitCode, two.ExitCode));
        Assert.Contains("--out and --html name the same file", same.Error, StringComparison.Ordinal);
        Assert.StartsWith("Shift report", File.ReadAllText(folder["a.out"]), StringComparison.Ordinal);
        Assert.StartsWith("<!DOCTYPE html>", File.ReadAllText(folder["b.html"]), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("counts.json", "one of the files to read")]
    [InlineData("link.html", "it is a link")]
    [InlineData("nowhere/page.html", "there is no such folder")]
    [InlineData("", "it is a folder")]
    public async Task What_must_not_be_replaced_is_not(string name, string why)
    {
        using var folder = new DemoFolder();
        File.CreateSymbolicLink(folder["link.html"], folder["counts.json"]);
        byte[] before = File.ReadAllBytes(folder["counts.json"]);

        HostRun run = await HostRun.Of(folder.Args([Hub], "--html", Path.Combine(folder.Root, name)));

        Assert.Equal(64, run.ExitCode);
        Assert.Contains(why, run.Error, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllBytes(folder["counts.json"]));
    }

    // Links on either side, to the file or to its folder, and a ledger that is there or not yet: all are one file.
    [Theory]
    [InlineData("led.jsonl", "led.jsonl")]
    [InlineData("led.jsonl", "here/led.jsonl")]
    [InlineData("here/led.jsonl", "led.jsonl")]
    [InlineData("here/led.jsonl", "here/../led.jsonl")]
    [InlineData("link.jsonl", "led.jsonl")]
    [InlineData("link.jsonl", "here/led.jsonl")]
    public async Task The_ledger_is_not_written_over(string ledger, string target)
    {
        foreach (string option in (string[])["--html", "--out"])
        {
            foreach (bool isThere in (bool[])[false, true])
            {
                using var folder = new DemoFolder();
                Directory.CreateSymbolicLink(folder["here"], folder.Root);
                File.CreateSymbolicLink(folder["link.jsonl"], "led.jsonl");
                if (isThere)
                {
                    await HostRun.Of(folder.Args([Hub], "--ledger", folder["led.jsonl"]));
                }

                byte[] before = isThere ? File.ReadAllBytes(folder["led.jsonl"]) : [];

                HostRun run = await HostRun.Of(folder.Args([Hub], "--ledger", folder[ledger], option, folder[target]));

                Assert.Equal(64, run.ExitCode);
                Assert.Contains("it is the ledger", run.Error, StringComparison.Ordinal);
                Assert.Equal(before, isThere ? File.ReadAllBytes(folder["led.jsonl"]) : []);
                Assert.Equal(isThere, File.Exists(folder["led.jsonl"]));
            }
        }
    }

    [Theory]
    [InlineData("counts.json")]
    [InlineData("here/counts.json")]
    [InlineData("link.json")]
    public async Task An_input_is_no_ledger(string ledger)
    {
        using var folder = new DemoFolder();
        Directory.CreateSymbolicLink(folder["here"], folder.Root);
        File.CreateSymbolicLink(folder["link.json"], folder["counts.json"]);
        byte[] before = File.ReadAllBytes(folder["counts.json"]);

        HostRun run = await HostRun.Of(folder.Args([Hub], "--ledger", folder[ledger]));

        Assert.Equal(64, run.ExitCode);
        Assert.Contains("another input of this run, or its report", run.Error, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllBytes(folder["counts.json"]));
    }

    [Fact]
    public async Task A_run_that_cannot_write_one_of_the_two_leaves_neither()
    {
        using var folder = new DemoFolder();
        int before = Directory.GetFiles(folder.Root).Length;
        string nowhere = Path.Combine(folder.Root, "nowhere", "report.txt"), tooLong = folder[new string('a', 256)];

        foreach ((string report, string page) in ((string, string)[])[(nowhere, folder["p.html"]), (folder["r.txt"], nowhere), (tooLong, folder["p.html"]), (folder["r.txt"], tooLong)])
        {
            HostRun run = await HostRun.Of(folder.Args([Hub], "--out", report, "--html", page));

            Assert.Equal(64, run.ExitCode);
            Assert.Equal(before, Directory.GetFiles(folder.Root).Length);
            Assert.DoesNotContain(" is in ", run.Error, StringComparison.Ordinal);
        }

        HostRun noLedger = await HostRun.Of(folder.Args([Hub], "--html", folder["p.html"], "--ledger", Path.Combine(folder.Root, "nowhere", "led.jsonl")));

        Assert.Equal(64, noLedger.ExitCode);
        Assert.Contains("cannot be written: there is no such folder", noLedger.Error, StringComparison.Ordinal);
        Assert.Equal(before, Directory.GetFiles(folder.Root).Length);

        using var error = new StringWriter();
        int full = await CloseoutCommand.RunAsync(
            folder.Args([Hub], "--html", folder["p.html"], "--ledger", folder["led.jsonl"]), HostRun.Console(new FullWriter(), error), TestContext.Current.CancellationToken);

        Assert.Equal(64, full);
        Assert.Equal(before, Directory.GetFiles(folder.Root).Length);
    }

    [Fact]
    public async Task A_refused_input_leaves_the_older_page_as_it_is()
    {
        using var folder = new DemoFolder();
        string path = folder.Write("page.html", "an older page"u8.ToArray());
        folder.Write("counts.json", "{"u8.ToArray());

        Assert.Equal(65, (await HostRun.Of(folder.Args([Hub], "--html", path))).ExitCode);
        Assert.Equal("an older page", File.ReadAllText(path));
    }
}
