using System;
using System.Text.Json;
using System.Threading.Tasks;
using Xunit;

namespace ToolLedger.Samples.Tests.ShiftCloseout;

/// <summary>Without arguments: the bundled scenario, complete in itself.</summary>
public sealed class DemoTests
{
    [Fact]
    public async Task The_demo_returns_0_and_says_what_a_real_run_would_have_returned()
    {
        HostRun run = await HostRun.Of();

        Assert.Equal(0, run.ExitCode);
        Assert.Equal("", run.Error);
        Assert.Contains("invented", run.Output, StringComparison.Ordinal);
        Assert.Contains("would have returned exit code 1", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_demo_shows_accounted_weak_not_read_counted_partial_overdue_and_unexpected()
    {
        HostRun run = await HostRun.Of();

        Assert.All(
            ["accounted", "weak", "not read", "counted", "sighted", "partial", "overdue", "unexpected", "unknown", "complete", "discrepant"],
            word => Assert.Contains(word, run.Output, StringComparison.OrdinalIgnoreCase));
    }

    [Theory]
    [InlineData("Not expected, so in none of these counts: line 12 Cable cutter")] // a known shortage, signed
    [InlineData("issued 2 = used 1 + returned 1 + scrapped 0 + unexplained 0")]
    [InlineData("seen only while kit WT-BAG-11 stood there")]
    [InlineData("8.1 READ, EPC only Crimping tool")] // a kit inside the kit
    [InlineData("all lines inside (3) are accounted for")]
    [InlineData("COMPLETE kit WT-BAG-08: 11 of 11 lines accounted for; opened again after that; before operation NOT SATISFIED")]
    [InlineData("OPENED kit WT-BAG-08 at 15:58:00+02:00 by P-017, foot of turbine WT-04")]
    [InlineData("Torque multiplier [11-01]): tell its custodian")]
    [InlineData("its tag was read in 40 of 40 past sessions")]
    public async Task The_demo_shows_what_was_recorded_beside_the_reads(string text)
    {
        HostRun run = await HostRun.Of();

        Assert.Contains(text, string.Join(' ', run.Output.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(80)]
    [InlineData(100)]
    [InlineData(120)]
    public async Task No_line_of_the_demo_is_wider_than_the_terminal(int width)
    {
        HostRun run = await HostRun.OfWidth(width);

        Assert.All(run.Output.Split('\n'), line => Assert.InRange(line.Length, 0, width));
        Assert.DoesNotContain("(s)", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("(es)", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Plain_output_holds_no_escape_and_no_other_control_character()
    {
        HostRun run = await HostRun.Of();

        Assert.DoesNotContain(run.Output, character => char.IsControl(character) && character != '\n');
    }

    [Fact]
    public async Task Colour_adds_escapes_and_changes_no_word()
    {
        HostRun plain = await HostRun.Of();
        HostRun colourful = await HostRun.Of(isColourful: true);
        string stripped = System.Text.RegularExpressions.Regex.Replace(colourful.Output, "\u001B\\[[0-9;]*m", "", System.Text.RegularExpressions.RegexOptions.None, TimeSpan.FromSeconds(10));

        Assert.Contains('\u001B', colourful.Output);
        Assert.Equal(plain.Output, stripped);
    }

    // The good colour on the second word of "NOT SATISFIED" would say the opposite of what is written.
    [Theory]
    [InlineData(60)]
    [InlineData(72)]
    [InlineData(80)]
    [InlineData(81)]
    [InlineData(97)]
    [InlineData(100)]
    public async Task A_word_of_two_words_has_one_colour_on_one_line(int width)
    {
        HostRun run = await HostRun.OnColours(width);

        Assert.Equal(4, System.Text.RegularExpressions.Regex.Count(run.Output, "\u001B\\[[0-9;]*mNOT SATISFIED\u001B", System.Text.RegularExpressions.RegexOptions.None, TimeSpan.FromSeconds(10)));
        Assert.DoesNotContain("mSATISFIED", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void The_rest_of_a_negated_word_has_no_colour()
    {
        var output = new System.IO.StringWriter();
        var console = new global::ShiftCloseout.HostConsole { Out = output, Error = output, Clock = TimeProvider.System, IsColourful = true };

        global::ShiftCloseout.StateColours.Write("NOT\n  SATISFIED, NO\n  VALID\n  READ, SATISFIED\n", global::ShiftCloseout.ReportFormat.Text, console);

        Assert.StartsWith("NOT\n  SATISFIED, NO\n  VALID\n  READ, \u001B", output.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_demo_says_the_same_as_a_real_run_over_its_files()
    {
        using var folder = new DemoFolder();
        string[] manifests = ["manifest-nacelle-bag.json", "manifest-hub-bag.json"];

        HostRun demo = await HostRun.Of("--format", "json");
        HostRun real = await HostRun.Of(folder.Args(manifests, "--gate", "--format", "json"));
        using JsonDocument fromDemo = JsonDocument.Parse(demo.Output);
        using JsonDocument fromFiles = JsonDocument.Parse(real.Output);

        Assert.Equal(fromFiles.RootElement.GetProperty("kits").ToString(), fromDemo.RootElement.GetProperty("kits").ToString());
        Assert.Equal(1, real.ExitCode);
    }
}
