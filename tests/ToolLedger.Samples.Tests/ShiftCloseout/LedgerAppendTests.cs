using System;
using System.IO;
using System.Linq;
using System.Threading.Tasks;
using ShiftCloseout;
using Xunit;

namespace ToolLedger.Samples.Tests.ShiftCloseout;

/// <summary>Report and ledger belong together: a report whose entries could not be added is not left behind, and of entries no part is.</summary>
public sealed class LedgerAppendTests
{
    private const string Hub = "manifest-hub-bag.json";
    private static readonly byte[] Before = "{\"one\":1}\n"u8.ToArray(), Lines = "{\"two\":2}\n{\"three\":3}\n"u8.ToArray();

    [Fact]
    public void With_room_the_lines_stand_behind_those_before()
    {
        using var stream = new FullStream(Before, room: Lines.Length);

        using LedgerAppend added = LedgerAppend.Add(stream, "L", Before.Length, Lines);

        Assert.Equal([.. Before, .. Lines], stream.Content);
        Assert.True(added.TryUndo());
        Assert.Equal(Before, stream.Content);
    }

    // A half line would make the whole ledger unreadable for the next run.
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(12)]
    [InlineData(20)]
    public void Where_the_disk_is_full_what_was_taken_is_given_back_and_the_message_says_so(int room)
    {
        using var stream = new FullStream(Before, room);

        HostException failed = Assert.Throws<HostException>(() => LedgerAppend.Add(stream, "L", Before.Length, Lines));

        Assert.Equal(Before, stream.Content);
        Assert.Equal(64, failed.ExitCode);
        Assert.Equal(["--ledger L: cannot be written: No space left on device", "Nothing was added to it, and no report was written."], failed.Lines);
    }

    [Fact]
    public void Where_not_even_that_can_be_taken_back_the_message_says_that()
    {
        using var stream = new FullStream(Before, room: 12, canShrink: false);

        HostException failed = Assert.Throws<HostException>(() => LedgerAppend.Add(stream, "L", Before.Length, Lines));

        Assert.StartsWith("A part of what was to be added may stand at its end", failed.Lines[1], StringComparison.Ordinal);
    }

    // Given a ledger that cannot be opened any more when it is its turn, when the run ends, then no report and no page stand anywhere, and the ledger is as it was.
    [Fact]
    public async Task Where_the_ledger_cannot_be_added_to_no_report_is_left_behind()
    {
        using var folder = new DemoFolder();
        string ledger = folder.Write("ledger.jsonl", []);
        string[] args = folder.Args([Hub], "--ledger", ledger, "--out", folder["report.txt"], "--html", folder["page.html"]);

        FileStream? held = null;
        (int code, string error) = await Run(args, () => held ??= new FileStream(ledger, FileMode.Open, FileAccess.ReadWrite, FileShare.None));
        held!.Dispose();

        Assert.Equal(64, code);
        Assert.Contains("Nothing was added to it, and no report was written.", error, StringComparison.Ordinal);
        Assert.Empty(File.ReadAllBytes(ledger));
        Assert.DoesNotContain(Directory.EnumerateFiles(folder.Root).Select(Path.GetFileName), static name => name is "report.txt" or "page.html" || name!.EndsWith(".draft", StringComparison.Ordinal));

        // Nothing of it stands in the way of the next run.
        Assert.Equal(0, (await HostRun.Of(args)).ExitCode);
        Assert.NotEmpty(File.ReadAllBytes(ledger));
        Assert.True(File.Exists(folder["report.txt"]) && File.Exists(folder["page.html"]));
    }

    [Fact]
    public async Task What_somebody_else_adds_meanwhile_is_not_written_over()
    {
        using var folder = new DemoFolder();
        string ledger = folder.Write("ledger.jsonl", []);

        bool isChanged = false;
        (int code, string error) = await Run(folder.Args([Hub], "--ledger", ledger, "--out", folder["report.txt"]), () =>
        {
            if (!isChanged)
            {
                isChanged = true;
                File.WriteAllText(ledger, "by another\n");
            }
        });

        Assert.Equal(64, code);
        Assert.Contains("was changed while this run went on", error, StringComparison.Ordinal);
        Assert.Equal("by another\n", File.ReadAllText(ledger));
        Assert.False(File.Exists(folder["report.txt"]));
    }

    // Given a report that cannot be put in its place, the entries are taken back, and the same run later gives both.
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Where_only_the_report_fails_the_entries_are_taken_back(bool isThere)
    {
        using var folder = new DemoFolder();
        string ledger = folder["ledger.jsonl"];
        if (isThere)
        {
            folder.Write("ledger.jsonl", []);
        }

        var error = new StringWriter { NewLine = "\n" };
        int code = await CloseoutCommand.RunAsync(folder.Args([Hub], "--ledger", ledger), HostRun.Console(new FullWriter(), error), TestContext.Current.CancellationToken);

        Assert.Equal(64, code);
        Assert.Contains($"Nothing was added to {ledger}.", error.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("entries added", error.ToString(), StringComparison.Ordinal);
        Assert.Equal(isThere, File.Exists(ledger));
        Assert.True(!isThere || new FileInfo(ledger).Length == 0);
        Assert.Contains("3 entries added", (await HostRun.Of(folder.Args([Hub], "--ledger", ledger))).Error, StringComparison.Ordinal);
    }

    /// <summary>A run in which something happens between the reading of the ledger and the writing: whenever the clock is asked while the ledger is there to be read.</summary>
    private static async Task<(int Code, string Error)> Run(string[] args, Action meanwhile)
    {
        var error = new StringWriter { NewLine = "\n" };
        var usual = HostRun.Console(new StringWriter { NewLine = "\n" }, error);
        int code = await CloseoutCommand.RunAsync(args, new HostConsole { Out = usual.Out, Error = usual.Error, Clock = new Meanwhile(usual.Clock, meanwhile), IsColourful = false, Width = 100 }, TestContext.Current.CancellationToken);
        return (code, error.ToString());
    }

    /// <summary>The command asks the clock once before any file is read, and once behind it.</summary>
    private sealed class Meanwhile(TimeProvider usual, Action then) : TimeProvider
    {
        private int asked;

        public override DateTimeOffset GetUtcNow()
        {
            if (++asked == 2)
            {
                then();
            }

            return usual.GetUtcNow();
        }
    }
}
