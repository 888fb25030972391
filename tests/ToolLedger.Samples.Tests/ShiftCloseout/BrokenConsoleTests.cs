using System;
using System.IO;
using System.Threading.Tasks;
using ShiftCloseout;
using Xunit;

namespace ToolLedger.Samples.Tests.ShiftCloseout;

/// <summary>A standard output or error that cannot be written ends the run with an exit code and a message, never with a crash.</summary>
public sealed class BrokenConsoleTests
{
    [Theory]
    [InlineData("\"$@\" >/dev/full", 64, "No space left")]
    [InlineData("\"$@\" >&-", 64, "Standard output cannot be written")]
    [InlineData("\"$@\" --help >/dev/full", 64, "No space left")]
    [InlineData("\"$@\" --manifest nope 2>/dev/full", 64, "")]
    [InlineData("\"$@\" --manifest nope 2>&-", 64, "")]
    [InlineData("\"$@\" >/dev/full 2>/dev/full", 64, "")]
    [InlineData("\"$@\" | head -1", 0, "")]
    public async Task A_process_ends_with_its_code_and_without_a_stack_trace(string script, int exitCode, string said)
    {
        (int code, string output, string error) = await HostProcess.Shell(script);

        Assert.Equal(exitCode, code);
        Assert.Contains(said, error, StringComparison.Ordinal);
        Assert.DoesNotContain("Unhandled exception", output + error, StringComparison.Ordinal);
        Assert.InRange(error.Split('\n').Length, 1, 2);
    }

    [Fact]
    public async Task A_report_that_cannot_be_printed_returns_64_whatever_it_concludes()
    {
        using var folder = new DemoFolder();
        using var error = new StringWriter();
        HostConsole console = HostRun.Console(new FullWriter(), error);

        int code = await CloseoutCommand.RunAsync(folder.Args(["manifest-hub-bag.json"]), console, TestContext.Current.CancellationToken);

        Assert.Equal(64, code);
        Assert.Contains("Standard output cannot be written, so the report is not complete: full", error.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_standard_error_that_fails_changes_no_exit_code()
    {
        using var folder = new DemoFolder();
        using var output = new StringWriter();
        string report = Path.Combine(folder.Root, "report.txt");
        HostConsole console = HostRun.Console(output, new FullWriter());

        int good = await CloseoutCommand.RunAsync(folder.Args(["manifest-hub-bag.json"], "--out", report), console, TestContext.Current.CancellationToken);
        int refused = await CloseoutCommand.RunAsync(["--manifest", "nope"], console, TestContext.Current.CancellationToken);

        Assert.Equal((0, 64), (good, refused));
        Assert.True(File.Exists(report));
    }

    [Fact]
    public void The_first_stop_lets_the_run_end_itself_and_the_second_does_not_wait()
    {
        using var stop = new StopSignal();

        Assert.False(stop.Token.IsCancellationRequested);
        Assert.True(stop.Press());
        Assert.True(stop.Token.IsCancellationRequested);
        Assert.False(stop.Press());
        Assert.False(stop.Press());
    }
}
