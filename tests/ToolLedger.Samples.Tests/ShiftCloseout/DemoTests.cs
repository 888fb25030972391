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
