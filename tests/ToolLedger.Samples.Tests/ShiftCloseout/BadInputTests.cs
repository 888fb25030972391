using System;
using System.IO;
using System.Linq;
using System.Text;
using System.Threading.Tasks;
using Xunit;

namespace ToolLedger.Samples.Tests.ShiftCloseout;

/// <summary>A file whose content is refused returns 65, and standard error names file, place and rule.</summary>
public sealed class BadInputTests
{
    private const string Hub = "manifest-hub-bag.json";

    public static TheoryData<string, byte[]> BrokenJson { get; } = new()
    {
        { "empty", [] },
        { "truncated", Encoding.UTF8.GetBytes("""{"schema":"toolledger/kit-manifest/1","kit":"K""") },
        { "1,000 deep", Encoding.UTF8.GetBytes(new string('[', 1000) + new string(']', 1000)) },
        { "UTF-16", Encoding.Unicode.GetBytes("""{"schema":"toolledger/kit-manifest/1"}""") },
        { "not UTF-8", [0x7B, 0x22, 0xFF, 0xFE, 0x22, 0x3A, 0x31, 0x7D] },
        { "another schema", Encoding.UTF8.GetBytes("""{"schema":"toolledger/kit-manifest/2"}""") },
        { "NaN", Encoding.UTF8.GetBytes("""{"schema":"toolledger/kit-manifest/1","revision":NaN}""") },
        { "10 MB line", Encoding.UTF8.GetBytes("{\"schema\":\"" + new string('a', 10_000_000) + "\"}") },
        { "array", "[]"u8.ToArray() },
    };

    [Theory]
    [MemberData(nameof(BrokenJson))]
    public async Task Broken_JSON_is_refused_in_every_file(string what, byte[] content)
    {
        foreach (string option in (string[])["--manifest", "--other-manifest", "--bindings", "--session", "--counts", "--calibration", "--history", "--policy"])
        {
            using var folder = new DemoFolder();
            string broken = folder.Write("broken.json", content);
            string[] args = folder.Args([Hub]);
            args[Array.IndexOf(args, option) + 1] = broken;

            HostRun run = await HostRun.Of(args);

            Assert.True(run.ExitCode == 65, $"{what} as {option}: {run.ExitCode} {run.Error}");
            Assert.StartsWith(broken + ": ", run.Error, StringComparison.Ordinal);
            Assert.InRange(run.Error.Length, 1, 4000);
            Assert.Equal("", run.Output);
        }
    }

    [Fact]
    public async Task The_sheet_of_a_further_session_is_held_to_the_same_rules()
    {
        using var folder = new DemoFolder();
        string broken = folder.Write("presentation-2.json", "{"u8.ToArray());

        HostRun run = await HostRun.Of(folder.Args([Hub]));

        Assert.Equal(65, run.ExitCode);
        Assert.StartsWith(broken + ": ", run.Error, StringComparison.Ordinal);
        Assert.Equal("", run.Output);
    }

    [Fact]
    public async Task A_sheet_without_an_end_is_refused_wherever_it_stands()
    {
        using var folder = new DemoFolder();
        string[] lines = [.. File.ReadAllLines(folder["presentation-2.json"]).Where(line => !line.Contains("\"until\"", StringComparison.Ordinal))];
        File.WriteAllLines(folder["presentation-2.json"], lines);

        HostRun run = await HostRun.Of(folder.Args([Hub]));

        Assert.Equal(65, run.ExitCode);
        Assert.StartsWith(folder["presentation-2.json"] + ": $.until: ", run.Error, StringComparison.Ordinal);
        Assert.Contains("(session.no-end)", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_session_handed_in_twice_is_refused_with_both_files()
    {
        using var folder = new DemoFolder();
        File.Copy(folder["presentation.json"], folder["presentation-2.json"], overwrite: true);

        HostRun run = await HostRun.Of(folder.Args([Hub]));

        Assert.Equal(65, run.ExitCode);
        Assert.StartsWith(folder["presentation-2.json"] + ": $.session: ", run.Error, StringComparison.Ordinal);
        Assert.Contains(folder["presentation.json"], run.Error, StringComparison.Ordinal);
        Assert.Contains("(session.same-id)", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Refused_rows_of_a_further_session_are_named_with_their_file()
    {
        using var folder = new DemoFolder();
        File.AppendAllText(folder["reads-2.jsonl"], "nonsense\n");

        HostRun run = await HostRun.Of(folder.Args([Hub]));

        Assert.Contains("reads-2.jsonl: 1 row refused in all", run.Error, StringComparison.Ordinal);
        Assert.Contains("DEGRADED", run.Output, StringComparison.Ordinal);
        Assert.Contains("1 row of ", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_issue_of_a_manifest_is_listed_with_place_and_rule()
    {
        using var folder = new DemoFolder();
        string text = File.ReadAllText(folder[Hub]).Replace("\"line\": 2,", "\"line\": 1,", StringComparison.Ordinal)
            .Replace("\"id\": \"WT-08-05\"", "\"id\": \"WT-08-04\"", StringComparison.Ordinal);
        folder.Write(Hub, Encoding.UTF8.GetBytes(text));

        HostRun run = await HostRun.Of(folder.Args([Hub]));

        Assert.Equal(65, run.ExitCode);
        Assert.Contains("$.lines[1]", run.Error, StringComparison.Ordinal);
        Assert.Contains("(manifest.duplicate-line-number)", run.Error, StringComparison.Ordinal);
        Assert.Contains("(manifest.same-tool-twice)", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_name_with_control_characters_is_refused_and_shown_without_them()
    {
        using var folder = new DemoFolder();
        string text = File.ReadAllText(folder[Hub]).Replace("Hub bag", "Hub\\u001B[2J bag", StringComparison.Ordinal);
        folder.Write(Hub, Encoding.UTF8.GetBytes(text));

        HostRun run = await HostRun.Of(folder.Args([Hub]));

        Assert.Equal(65, run.ExitCode);
        Assert.DoesNotContain('\u001B', run.Error);
    }

    [Fact]
    public async Task Refused_rows_are_named_and_counted_and_do_not_stop_the_rest()
    {
        using var folder = new DemoFolder();
        string[] lines = [.. File.ReadAllLines(folder["reads.jsonl"]).Prepend("{\"epc\":\"3414\",\"antenna\":1,\"time\":\"2026-10-14T13:40:01\"}"), .. Enumerable.Repeat("nonsense", 30)];
        File.WriteAllLines(folder["reads.jsonl"], lines);

        HostRun run = await HostRun.Of(folder.Args([Hub]));

        Assert.Contains("reads.jsonl: line 1: refused:", run.Error, StringComparison.Ordinal);
        Assert.Contains("(read-file.time-without-offset)", run.Error, StringComparison.Ordinal);
        Assert.Contains("31 rows refused in all", run.Error, StringComparison.Ordinal);
        Assert.Equal(12, run.Error.Split('\n').Length); // ten rows, the sum, the end
        Assert.InRange(run.ExitCode, 0, 1);
        Assert.NotEqual("", run.Output);
    }

    [Fact]
    public async Task A_CSV_without_the_columns_needed_is_refused_with_line_and_rule()
    {
        using var folder = new DemoFolder();
        string reads = folder.Write("reads.csv", "tag,when\n"u8.ToArray());

        HostRun run = await HostRun.Of(folder.Args([Hub], "--reads", reads));

        Assert.Equal(65, run.ExitCode);
        Assert.Contains("reads.csv: line 1:", run.Error, StringComparison.Ordinal);
        Assert.Contains("(read-file.missing-column)", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_manifest_that_takes_effect_later_is_refused()
    {
        using var folder = new DemoFolder();
        string[] args = folder.Args([Hub]);
        args[Array.IndexOf(args, "--as-of") + 1] = "2026-08-01T00:00:00Z";

        HostRun run = await HostRun.Of(args);

        Assert.Equal(65, run.ExitCode);
        Assert.StartsWith(folder[Hub] + ": ", run.Error, StringComparison.Ordinal);
        Assert.Contains("(manifest.not-yet-effective)", run.Error, StringComparison.Ordinal);
    }
}
