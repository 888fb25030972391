using System;
using System.IO;
using System.Threading.Tasks;
using Xunit;

namespace ToolLedger.Samples.Tests.ShiftCloseout;

/// <summary>A wrong command line, or a file that cannot be opened or written, returns 64 and says why.</summary>
public sealed class UsageTests
{
    [Theory]
    [InlineData("--nonsense", "--nonsense")]
    [InlineData("--manifest", "no-such-file.json", "no-such-file.json: cannot be read: there is no such file.")]
    [InlineData("--bindings", "tags.json", "Without --manifest")]
    [InlineData("--manifest", "m.json", "--reads", "r.csv", "--reads and --session go together")]
    [InlineData("--manifest", "m.json", "--as-of", "2026-10-14T16:00:00", "with its offset")]
    [InlineData("--manifest", "m.json", "--as-of", "tomorrow", "with its offset")]
    [InlineData("--format", "pdf", "pdf")]
    [InlineData("surplus", "surplus")]
    [InlineData("--manifest", "--manifest")]
    [InlineData("--manifest", "m.json", "--as-of", "--as-of")]
    public async Task A_wrong_command_line_returns_64(params string[] argsThenMessage)
    {
        HostRun run = await HostRun.Of(argsThenMessage[..^1]);

        Assert.Contains(argsThenMessage[^1], run.Error, StringComparison.Ordinal);
        Assert.Equal("", run.Output);
        Assert.Equal(64, run.ExitCode);
    }

    [Fact]
    public async Task A_folder_is_no_file()
    {
        HostRun run = await HostRun.Of("--manifest", Path.GetTempPath());

        Assert.Contains("it is a folder, not a file.", run.Error, StringComparison.Ordinal);
        Assert.Equal(64, run.ExitCode);
    }

    [Fact]
    public async Task A_reads_file_whose_extension_says_nothing_needs_its_format()
    {
        using var folder = new DemoFolder();
        string reads = folder.Write("reads.log", File.ReadAllBytes(folder["reads.jsonl"]));

        HostRun run = await HostRun.Of(folder.Args(["manifest-hub-bag.json"], "--reads", reads));
        HostRun told = await HostRun.Of(folder.Args(["manifest-hub-bag.json"], "--reads", reads, "--reads-format", "jsonl"));

        Assert.Contains("--reads-format", run.Error, StringComparison.Ordinal);
        Assert.Equal(64, run.ExitCode);
        Assert.Equal(0, told.ExitCode);
    }

    [Fact]
    public async Task Help_teaches_the_files_the_words_and_the_exit_codes()
    {
        HostRun run = await HostRun.Of("--help");

        Assert.Equal(0, run.ExitCode);
        Assert.All(
            ["--manifest", "--reads-format", "NOT READ", "PARTIAL", "not \"missing\"", "64", "65", "samples/ShiftCloseout/demo"],
            text => Assert.Contains(text, run.Output, StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_name_of_a_file_reaches_the_terminal_without_its_control_characters()
    {
        HostRun run = await HostRun.Of("--manifest", "no\u001B[31mfile\u202E.json");

        Assert.Equal(64, run.ExitCode);
        Assert.Contains("no\\u001B[31mfile\\u202E.json", run.Error, StringComparison.Ordinal);
        Assert.DoesNotContain('\u001B', run.Error);
    }
}
