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
    public async Task No_message_names_the_file_that_is_written_first()
    {
        using var folder = new DemoFolder();
        string tooLong = Path.Combine(folder.Root, new string('a', 256));

        foreach (string path in (string[])[Path.Combine(folder.Root, "nowhere", "report.txt"), tooLong, folder.Root + "/"])
        {
            HostRun run = await HostRun.Of(folder.Args([Hub], "--out", path));

            Assert.Equal(64, run.ExitCode);
            Assert.DoesNotContain(".draft", run.Error, StringComparison.Ordinal);
            Assert.StartsWith(path + ": the report cannot be written: ", run.Error, StringComparison.Ordinal);
        }
    }

    // A name of a file holds 255 bytes at most on common file systems (from memory); the name that is written first is no longer than that.
    [Theory]
    [InlineData(244)]
    [InlineData(245)]
    [InlineData(255)]
    public async Task A_name_as_long_as_a_name_can_be_is_written(int length)
    {
        using var folder = new DemoFolder();
        string report = Path.Combine(folder.Root, new string('a', length)), page = Path.Combine(folder.Root, new string('b', length));

        HostRun run = await HostRun.Of(folder.Args([Hub], "--out", report, "--html", page));

        Assert.Equal(0, run.ExitCode);
        Assert.StartsWith("Shift report", File.ReadAllText(report), StringComparison.Ordinal);
        Assert.StartsWith("<!DOCTYPE html>", File.ReadAllText(page), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--out")]
    [InlineData("--html")]
    [InlineData("--ledger")]
    public async Task A_hyphen_is_no_file(string option)
    {
        using var folder = new DemoFolder();

        HostRun run = await HostRun.Of(folder.Args([Hub], option, "-"));

        Assert.Equal(64, run.ExitCode);
        Assert.Contains($"{option} needs the path of a file", run.Error, StringComparison.Ordinal);
        Assert.False(File.Exists("-"));
    }

    [Fact]
    public async Task A_link_is_not_replaced_and_nor_is_what_it_points_to()
    {
        using var folder = new DemoFolder();
        string path = folder.Write("report.out", "an older report"u8.ToArray());
        string link = Path.Combine(folder.Root, "link.out");
        string dangling = Path.Combine(folder.Root, "dangling.out");
        File.CreateSymbolicLink(link, path);
        File.CreateSymbolicLink(dangling, Path.Combine(folder.Root, "nothing"));

        HostRun toFile = await HostRun.Of(folder.Args([Hub], "--out", link));
        HostRun toNothing = await HostRun.Of(folder.Args([Hub], "--out", dangling));

        Assert.Equal((64, 64), (toFile.ExitCode, toNothing.ExitCode));
        Assert.Contains("it is a link", toFile.Error, StringComparison.Ordinal);
        Assert.Contains("it is a link", toNothing.Error, StringComparison.Ordinal);
        Assert.Equal("an older report", File.ReadAllText(path));
        Assert.Equal(path, new FileInfo(link).LinkTarget);
    }

    [Fact]
    public async Task A_pipe_is_not_replaced()
    {
        using var folder = new DemoFolder();
        string pipe = Path.Combine(folder.Root, "pipe");
        await HostProcess.MakePipe(pipe);

        HostRun real = await HostRun.Of(folder.Args([Hub], "--out", pipe));
        HostRun demo = await HostRun.Of("--out", pipe);

        Assert.Equal((64, 64), (real.ExitCode, demo.ExitCode));
        Assert.Contains("it is a pipe or a device", real.Error, StringComparison.Ordinal);
        Assert.False(global::ShiftCloseout.FileKind.IsRegularFile(pipe)); // still there
    }

    [Theory]
    [InlineData("--manifest", Hub)]
    [InlineData("--other-manifest", "manifest-yaw-bag.json")]
    [InlineData("--bindings", "bindings.json")]
    [InlineData("--session", "presentation.json")]
    [InlineData("--reads", "reads.jsonl")]
    [InlineData("--counts", "counts.json")]
    [InlineData("--calibration", "calibration.json")]
    [InlineData("--policy", "policy.json")]
    public async Task An_input_is_never_replaced_by_the_report(string option, string name)
    {
        using var folder = new DemoFolder();
        byte[] before = File.ReadAllBytes(folder[name]);
        string around = Path.Combine(folder.Root, "around");
        Directory.CreateSymbolicLink(around, folder.Root);
        string[] ways = [folder[name], Path.Combine(folder.Root, ".", "x", "..", name), Path.Combine(around, name)];

        foreach (string way in ways)
        {
            HostRun run = await HostRun.Of(folder.Args([Hub], "--out", way));

            Assert.Equal(64, run.ExitCode);
            Assert.True(run.Error.Contains("one of the files to read", StringComparison.Ordinal), $"{option}: {run.Error}");
            Assert.Equal(before, File.ReadAllBytes(folder[name]));
        }
    }

    [Fact]
    public async Task An_empty_file_is_a_file_and_is_replaced()
    {
        using var folder = new DemoFolder();
        string path = folder.Write("report.out", []);

        Assert.Equal(0, (await HostRun.Of(folder.Args([Hub], "--out", path))).ExitCode);
        Assert.NotEmpty(File.ReadAllBytes(path));
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
