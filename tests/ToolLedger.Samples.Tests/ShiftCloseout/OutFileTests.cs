using System;
using System.IO;
using System.Linq;
using System.Text.Json;
using System.Threading.Tasks;
using ToolLedger.Records;
using Xunit;

namespace ToolLedger.Samples.Tests.ShiftCloseout;

/// <summary>--out writes the report whole or not at all.</summary>
public sealed class OutFileTests
{
    private const string Hub = "manifest-hub-bag.json";

    [Theory]
    [InlineData("text")]
    [InlineData("markdown")]
    [InlineData("json")]
    public async Task The_file_holds_what_standard_output_would_have_and_nothing_else_is_left(string format)
    {
        using var folder = new DemoFolder();
        string path = folder.Write("report.out", "an older report"u8.ToArray());
        int before = Directory.GetFiles(folder.Root).Length;

        HostRun printed = await HostRun.Of(folder.Args([Hub], "--format", format));
        HostRun written = await HostRun.Of(folder.Args([Hub], "--format", format, "--out", path));

        Assert.Equal(printed.Output, File.ReadAllText(path));
        Assert.Equal("", written.Output);
        Assert.Equal(printed.ExitCode, written.ExitCode);
        Assert.Equal(before, Directory.GetFiles(folder.Root).Length);
    }

    [Fact]
    public async Task A_refused_input_leaves_the_older_report_as_it_is()
    {
        using var folder = new DemoFolder();
        string path = folder.Write("report.out", "an older report"u8.ToArray());
        folder.Write("counts.json", "{"u8.ToArray());

        Assert.Equal(65, (await HostRun.Of(folder.Args([Hub], "--out", path))).ExitCode);
        Assert.Equal("an older report", File.ReadAllText(path));
    }

    [Fact]
    public async Task A_place_that_cannot_be_written_returns_64()
    {
        using var folder = new DemoFolder();

        HostRun noFolder = await HostRun.Of(folder.Args([Hub], "--out", Path.Combine(folder.Root, "nowhere", "report.txt")));
        HostRun isFolder = await HostRun.Of(folder.Args([Hub], "--out", folder.Root));

        Assert.Equal((64, 64), (noFolder.ExitCode, isFolder.ExitCode));
        Assert.Contains("the report cannot be written", noFolder.Error, StringComparison.Ordinal);
        Assert.Contains("the report cannot be written", isFolder.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_report_names_the_digest_of_every_file_that_was_read()
    {
        using var folder = new DemoFolder();
        string[] args = folder.Args([Hub], "--format", "json");

        HostRun run = await HostRun.Of(args);
        using JsonDocument report = JsonDocument.Parse(run.Output);

        foreach (string path in args.Where(File.Exists))
        {
            Assert.Contains(Digest.Of(File.ReadAllBytes(path)).ToString(), run.Output, StringComparison.Ordinal);
        }
    }
}
