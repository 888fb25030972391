using System;
using System.IO;
using System.Linq;
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
    [InlineData("--manifest", "m.json", "--session", "s.json", "--session", "t.json", "--reads", "r.csv", "as many of the one as of the other (1 and 2)")]
    [InlineData("--manifest", "m.json", "--session", "s.json", "--reads", "r.csv", "--reads", "q.csv", "as many of the one as of the other (2 and 1)")]
    [InlineData("--manifest", "m.json", "--session", "s.json", "--reads", "r.csv", "--session", "", "--reads", "q.csv", "--session needs the path of a file")]
    [InlineData("--history", "h.json", "Without --manifest")]
    [InlineData("--manifest", "m.json", "--history", " ", "--history needs the path of a file")]
    [InlineData("--manifest", "m.json", "--gate", "perhaps", "perhaps")]
    [InlineData("--manifest", "m.json", "--as-of", "2026-10-14T16:00:00", "with its offset")]
    [InlineData("--manifest", "m.json", "--as-of", "tomorrow", "with its offset")]
    [InlineData("--format", "pdf", "--format wants text, markdown or json, and got 'pdf'.\nSee --help.\n")]
    [InlineData("--format", "1", "--format wants text, markdown or json, and got '1'.\nSee --help.\n")]
    [InlineData("--reads-format", "xls", "--reads-format wants auto, csv or jsonl, and got 'xls'.\nSee --help.\n")]
    [InlineData("surplus", "surplus")]
    [InlineData("--manifest", "--manifest")]
    [InlineData("--manifest", "m.json", "--as-of", "--as-of")]
    [InlineData("--manifest", "", "--manifest needs the path of a file")]
    [InlineData("--manifest", "m.json", "--counts", " ", "--counts needs the path of a file")]
    [InlineData("--out", "", "--out needs the path of a file")]
    [InlineData("--manifest", "m.json", "--as-of", "2026-10-14T16:10:01+02:00", "is later than now")]
    public async Task A_wrong_command_line_returns_64(params string[] argsThenMessage)
    {
        HostRun run = await HostRun.Of(argsThenMessage[..^1]);

        Assert.Contains(argsThenMessage[^1], run.Error, StringComparison.Ordinal);
        Assert.Equal("", run.Output);
        Assert.Equal(64, run.ExitCode);
    }

    [Fact]
    public async Task More_sessions_than_the_limit_are_refused_before_any_file_is_opened()
    {
        string[] pairs = [.. Enumerable.Range(0, 1_001).SelectMany(number => new[] { "--session", $"s{number}.json", "--reads", $"r{number}.csv" })];

        HostRun run = await HostRun.Of(["--manifest", "no-such-file.json", .. pairs]);

        Assert.Contains("--session can be repeated 1000 times at most", run.Error, StringComparison.Ordinal);
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

    [Theory]
    [InlineData("40")]
    [InlineData("72")]
    [InlineData("400")]
    public async Task A_report_that_goes_to_a_pipe_has_the_width_that_was_asked(string width)
    {
        HostRun run = await HostRun.Of("--width", width);
        HostRun plain = await HostRun.Of();

        Assert.Equal(0, run.ExitCode);
        int columns = int.Parse(width, System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(columns, run.Output.Split('\n').Where(static line => line.Length > 0 && line.All(static c => c == '=')).Max(static line => line.Length));
        Assert.Equal(100, plain.Output.Split('\n').Where(static line => line.Length > 0 && line.All(static c => c == '=')).Max(static line => line.Length));
    }

    [Theory]
    [InlineData("39")]
    [InlineData("401")]
    [InlineData("wide")]
    [InlineData("-80")]
    public async Task A_width_out_of_range_is_refused(string width)
    {
        HostRun run = await HostRun.Of("--width", width);
        Assert.Equal(64, run.ExitCode);
        Assert.Contains("from 40 to 400", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Help_teaches_the_files_the_words_and_the_exit_codes()
    {
        HostRun run = await HostRun.Of("--help");

        Assert.Equal(0, run.ExitCode);
        Assert.All(
            ["--manifest", "--reads-format", "--history", "--gate", "presentation-2.json", "the process returns the highest", "NOT READ", "PARTIAL", "not \"missing\"", "64", "65", "samples/ShiftCloseout/demo"],
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

    [Fact]
    public async Task The_instant_may_be_ahead_of_the_clock_by_five_minutes_and_no_more()
    {
        using var folder = new DemoFolder();
        string[] args = folder.Args(["manifest-hub-bag.json"]);
        int asOf = Array.IndexOf(args, "--as-of") + 1;
        string[] atTheEdge = [.. args[..asOf], "2026-10-14T16:10:00+02:00", .. args[(asOf + 1)..]]; // the run's clock stands at 16:05
        string[] beyond = [.. args[..asOf], "2026-10-14T16:10:00.001+02:00", .. args[(asOf + 1)..]];

        Assert.InRange((await HostRun.Of(atTheEdge)).ExitCode, 0, 2);
        Assert.Equal(64, (await HostRun.Of(beyond)).ExitCode);
    }

    [Fact]
    public async Task The_demo_may_be_concluded_for_any_instant() =>
        Assert.Equal(0, (await HostRun.Of("--as-of", "2026-10-15T16:00:00+02:00")).ExitCode);

    [Theory]
    [InlineData("--manifest")]
    [InlineData("--other-manifest")]
    [InlineData("--reads")]
    [InlineData("--counts")]
    [InlineData("--history")]
    public async Task A_pipe_is_refused_as_an_input_and_not_waited_for(string option)
    {
        using var folder = new DemoFolder();
        string pipe = Path.Combine(folder.Root, "pipe.jsonl");
        string link = Path.Combine(folder.Root, "link.jsonl");
        await HostProcess.MakePipe(pipe);
        File.CreateSymbolicLink(link, pipe);

        foreach (string path in (string[])[pipe, link])
        {
            string[] args = folder.Args(["manifest-hub-bag.json"]);
            args[Array.IndexOf(args, option) + 1] = path;

            HostRun run = await HostRun.Of(args);

            Assert.Contains(path + ": cannot be read: it is a pipe or a device", run.Error, StringComparison.Ordinal);
            Assert.Equal(64, run.ExitCode);
        }
    }

    [Fact]
    public async Task A_link_to_a_file_is_read()
    {
        using var folder = new DemoFolder();
        string link = Path.Combine(folder.Root, "link.json");
        File.CreateSymbolicLink(link, folder["counts.json"]);
        string[] args = folder.Args(["manifest-hub-bag.json"]);
        args[Array.IndexOf(args, "--counts") + 1] = link;

        Assert.Equal(0, (await HostRun.Of(args)).ExitCode);
    }

    [Fact]
    public async Task A_line_feed_in_an_argument_starts_no_line_of_its_own()
    {
        using var folder = new DemoFolder();
        HostRun missing = await HostRun.Of("--manifest", "no\nmanifest.json: fine.json");
        HostRun unknown = await HostRun.Of("--format", "pdf\nfine");
        HostRun refused = await HostRun.Of("--manifest", folder.Write("a\nb.json", "{"u8.ToArray()));

        Assert.Contains("no\\u000Amanifest.json", missing.Error, StringComparison.Ordinal);
        Assert.Contains("a\\u000Ab.json: ", refused.Error, StringComparison.Ordinal);
        Assert.Equal(2, missing.Error.Split('\n').Length);
        Assert.DoesNotContain("\nfine", unknown.Error, StringComparison.Ordinal);
        Assert.Equal((64, 64, 65), (missing.ExitCode, unknown.ExitCode, refused.ExitCode));
    }

    [Fact]
    public async Task A_line_feed_in_the_name_of_a_file_that_is_read_starts_no_line_of_the_report()
    {
        using var folder = new DemoFolder();
        string odd = folder.Write("a\nCOMPLETE.json", File.ReadAllBytes(folder["counts.json"]));
        string[] args = folder.Args(["manifest-hub-bag.json"]);
        args[Array.IndexOf(args, "--counts") + 1] = odd;

        HostRun run = await HostRun.Of(args);

        Assert.Equal(0, run.ExitCode);
        Assert.DoesNotContain("\nCOMPLETE.json", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_that_is_too_large_is_refused_with_its_name_and_the_rule()
    {
        using var folder = new DemoFolder();
        string large = folder.Write("large.json", []);
        using (FileStream stream = File.OpenWrite(large))
        {
            stream.SetLength((64L * 1024 * 1024) + 1); // sparse where the file system can
        }

        HostRun run = await HostRun.Of("--manifest", large);

        Assert.StartsWith(large + ": ", run.Error, StringComparison.Ordinal);
        Assert.Contains("(record.too-large)", run.Error, StringComparison.Ordinal);
        Assert.Equal(65, run.ExitCode);
    }
}
