using System;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;
using ReaderTap;
using Xunit;

namespace ToolLedger.Samples.Tests.ReaderTap;

/// <summary>The tap concludes the same from a file and from a connection, and concludes nothing from a stream that broke off.</summary>
public sealed class TapCommandTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("reader-tap-").FullName;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task The_demo_hears_four_of_five_tools_and_leaves_the_fifth_open()
    {
        TapRun run = await TapRun.OfAsync(Stop);
        Assert.Equal((ExitCodes.OpenOrDiscrepant, ""), (run.ExitCode, run.Error));
        Assert.Contains("OPEN. Of 5 lines: 4 accounted for, 1 not read.", run.Output, StringComparison.Ordinal);
        Assert.Contains("NOT READ  line 5 Contact-wire gauge", run.Output, StringComparison.Ordinal);
        Assert.Contains("VALID  session TR-2026-11-09-1", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_saved_stream_gives_the_report_of_the_demo()
    {
        string saved = await SaveAsync();
        TapRun demo = await TapRun.OfAsync(Stop);
        TapRun run = await TapRun.OfAsync(Stop, "--stream", saved);
        Assert.Equal(Report(demo), Report(run));
        Assert.Equal(demo.ExitCode, run.ExitCode);
    }

    [Fact]
    public async Task A_stream_heard_over_a_port_gives_the_report_of_the_demo_and_every_keep_alive_is_answered()
    {
        string saved = await SaveAsync();
        (TapRun played, TapRun heard) = await PlayAsync(saved);
        Assert.Equal((ExitCodes.Complete, ""), (played.ExitCode, played.Error));
        Assert.Contains("3 keep-alives were answered.", played.Output, StringComparison.Ordinal);
        Assert.Equal(Report(await TapRun.OfAsync(Stop)), Report(heard));
    }

    // Given a connection that breaks off before the operation has ended; then the kit has no valid read, although four tools answered.
    [Fact]
    public async Task A_connection_that_breaks_off_leaves_no_valid_read()
    {
        string saved = await SaveAsync();
        byte[] stream = await File.ReadAllBytesAsync(saved, Stop);
        await File.WriteAllBytesAsync(saved, stream[..^40], Stop);
        (_, TapRun heard) = await PlayAsync(saved);
        Assert.Equal(ExitCodes.NoValidRead, heard.ExitCode);
        Assert.Contains("connection-closed", heard.Output, StringComparison.Ordinal);
        Assert.Contains("stream-lost", heard.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_recording_cut_inside_a_message_leaves_no_valid_read()
    {
        string saved = await SaveAsync();
        byte[] stream = await File.ReadAllBytesAsync(saved, Stop);
        await File.WriteAllBytesAsync(saved, stream[..^1], Stop);
        TapRun run = await TapRun.OfAsync(Stop, "--stream", saved);
        Assert.Equal(ExitCodes.NoValidRead, run.ExitCode);
        Assert.Contains("The stream ended inside a message", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_that_is_no_stream_leaves_no_valid_read()
    {
        string file = Path.Combine(_folder, "text.llrp");
        await File.WriteAllTextAsync(file, "this is no stream of a reader", Stop);
        TapRun run = await TapRun.OfAsync(Stop, "--stream", file);
        Assert.Equal(ExitCodes.NoValidRead, run.ExitCode);
    }

    // Given a stream, whole or broken off, kept as reads and a sheet; when they are replayed, also from their own archive; then the report is the same.
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2_000)]
    public async Task What_was_kept_is_replayed_to_the_same_report(int cut)
    {
        string saved = await SaveAsync();
        byte[] stream = await File.ReadAllBytesAsync(saved, Stop);
        await File.WriteAllBytesAsync(saved, stream[..^cut], Stop);
        string kept = Path.Combine(_folder, "kept.jsonl");
        string again = Path.Combine(_folder, "again.jsonl");
        TapRun live = await TapRun.OfAsync(Stop, "--stream", saved, "--archive", kept);
        TapRun replay = await TapRun.OfAsync(Stop, "--reads", kept, "--archive", again);
        Assert.Equal("", live.Error + replay.Error);
        Assert.Equal((live.ExitCode, Conclusions(live)), (replay.ExitCode, Conclusions(replay)));
        Assert.Equal(cut > 0, Report(replay).Contains("stream-lost", StringComparison.Ordinal));
        Assert.Equal(await File.ReadAllBytesAsync(kept, Stop), await File.ReadAllBytesAsync(again, Stop));
        Assert.Equal(await File.ReadAllBytesAsync(kept + ".session.json", Stop), await File.ReadAllBytesAsync(again + ".session.json", Stop));
    }

    [Fact]
    public async Task A_damaged_row_of_an_archive_is_a_loss_and_an_archive_without_its_sheet_is_refused()
    {
        string kept = Path.Combine(_folder, "kept.jsonl");
        await TapRun.OfAsync(Stop, "--archive", kept);
        byte[] file = await File.ReadAllBytesAsync(kept, Stop);
        file[14] = (byte)'#';
        await File.WriteAllBytesAsync(kept, file, Stop);
        TapRun replay = await TapRun.OfAsync(Stop, "--reads", kept);
        Assert.Contains("not usable: line 1", replay.Output, StringComparison.Ordinal);
        Assert.Contains("rows-refused", replay.Output, StringComparison.Ordinal);
        File.Delete(kept + ".session.json");
        Assert.Equal(ExitCodes.Usage, (await TapRun.OfAsync(Stop, "--reads", kept)).ExitCode);
    }

    [Theory]
    [InlineData("There is no option --prot.", "--prot", "1")]
    [InlineData("--port needs a number from 1 to 65535.", "--port", "0")]
    [InlineData("--port needs a number from 1 to 65535.", "--port")]
    [InlineData("--play needs --port", "--play", "x")]
    [InlineData("name one", "--stream", "x", "--port", "5084")]
    [InlineData("name one", "--reads", "x", "--stream", "y")]
    [InlineData("go together", "--manifest", "x", "--reads", "y")]
    [InlineData("write over", "--archive", "x", "--reads", "x")]
    [InlineData("cannot be written", "--archive", "no-such-folder/x")]
    [InlineData("go together", "--manifest", "x", "--stream", "y")]
    [InlineData("Where do the reads come from?", "--manifest", "x", "--bindings", "x", "--session", "x")]
    [InlineData("cannot be read", "--stream", "no-such-file")]
    public async Task A_wrong_command_line_is_told_what_is_wrong(string told, params string[] arguments)
    {
        TapRun run = await TapRun.OfAsync(Stop, arguments);
        Assert.Equal((ExitCodes.Usage, ""), (run.ExitCode, run.Output));
        Assert.Contains(told, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_refused_file_and_a_silent_port_have_their_own_codes()
    {
        string bad = Path.Combine(_folder, "bad.json");
        await File.WriteAllTextAsync(bad, "{}", Stop);
        Assert.Equal(ExitCodes.BadInput, (await TapRun.OfAsync(Stop, "--manifest", bad, "--bindings", bad, "--session", bad, "--stream", bad)).ExitCode);
        Assert.Equal(ExitCodes.Unavailable, (await TapRun.OfAsync(Stop, "--port", Text(TapRun.FreePort()))).ExitCode);
    }

    [Fact]
    public async Task Help_names_every_exit_code()
    {
        TapRun run = await TapRun.OfAsync(Stop, "--help");
        Assert.Equal(ExitCodes.Complete, run.ExitCode);
        Assert.All((int[])[ExitCodes.Complete, ExitCodes.OpenOrDiscrepant, ExitCodes.NoValidRead, ExitCodes.Usage, ExitCodes.BadInput, ExitCodes.Unavailable],
            code => Assert.Contains(" " + Text(code) + " ", run.Output, StringComparison.Ordinal));
    }

    private async Task<(TapRun Played, TapRun Heard)> PlayAsync(string saved)
    {
        string port = Text(TapRun.FreePort());
        Task<TapRun> player = TapRun.OfAsync(Stop, "--play", saved, "--port", port);
        TapRun heard;
        do
        {
            // The player may not listen yet.
            await Task.Delay(20, Stop);
            heard = await TapRun.OfAsync(Stop, "--port", port);
        }
        while (heard.ExitCode == ExitCodes.Unavailable && !player.IsCompleted);
        return (await player, heard);
    }

    private async Task<string> SaveAsync()
    {
        string saved = Path.Combine(_folder, "demo.llrp");
        Assert.Equal(ExitCodes.Complete, (await TapRun.OfAsync(Stop, "--save-demo", saved)).ExitCode);
        return saved;
    }

    private static string Report(TapRun run) => string.Join('\n', run.Output.Split('\n').SkipWhile(line => !line.StartsWith("Shift report", StringComparison.Ordinal)));

    // Without the digest of the session, which covers its sheet: that of a replay says beforehand what was lost.
    private static string Conclusions(TapRun run) => string.Join('\n', Report(run).Split('\n').Where(line => !line.Contains(", session TR-2026-11-09-1 ", StringComparison.Ordinal)));

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
