using System;
using System.IO;
using System.Linq;
using System.Text;
using System.Text.Json.Nodes;
using System.Threading.Tasks;
using ToolLedger.Custody;
using ToolLedger.Interchange;
using ToolLedger.Kits;
using ToolLedger.Ledger;
using ToolLedger.Policies;
using ToolLedger.Records;
using Xunit;

namespace ToolLedger.Samples.Tests.ShiftCloseout;

/// <summary>--ledger: what is signed on the sheet is added to a file that is only ever added to, and what changed since the last sign-off is told.</summary>
public sealed class LedgerTests
{
    private const string Hub = "manifest-hub-bag.json";

    [Fact]
    public async Task What_is_signed_is_added_once_and_the_file_opens_by_itself()
    {
        using var folder = new DemoFolder();
        string ledger = folder["ledger.jsonl"];

        HostRun first = await HostRun.Of(folder.Args([Hub], "--ledger", ledger));
        byte[] lines = File.ReadAllBytes(ledger);
        HostRun second = await HostRun.Of(folder.Args([Hub], "--ledger", ledger));

        Assert.Contains("no sign-off before this one", first.Error, StringComparison.Ordinal);
        Assert.Contains("3 entries added", first.Error, StringComparison.Ordinal);
        Assert.Contains("nothing changed since sign-off", second.Error, StringComparison.Ordinal);
        LedgerState state = SiteLedger.Open(LedgerFile.JsonLines(File.ReadAllBytes(ledger))).Now;
        Assert.Empty(state.Findings);
        Assert.Equal("complete", state.SignOffs[0].State);
        Assert.True(File.ReadAllBytes(ledger).AsSpan().StartsWith(lines));
    }

    // The hub bag's own ledger says that one of its tools is lent: the kit is open for that, the change is told, the first sign-off stays.
    [Fact]
    public async Task What_the_ledger_says_of_custody_counts_in_the_conclusion_and_changes_are_told()
    {
        using var folder = new DemoFolder();
        string ledger = folder["ledger.jsonl"];
        await HostRun.Of(folder.Args([Hub], "--ledger", ledger));
        KitManifest hub = KitManifest.Parse(File.ReadAllBytes(folder[Hub]));
        DateTimeOffset at = new(2026, 10, 14, 15, 59, 0, TimeSpan.FromHours(2));
        var loan = new ToolLoan
        {
            Id = new EntryId("L-1"),
            At = at,
            By = new PersonId("P-001"),
            Tool = hub.Lines.OfType<ToolLine>().First().Tool.Id,
            Kit = hub.Id,
            ReceivedBy = new Signature { By = new PersonId("P-090"), At = at },
            Due = at.AddHours(3),
        };
        File.AppendAllText(ledger, Encoding.UTF8.GetString(LedgerFile.ToJsonLines([new LedgerEntry(loan, at)])));

        HostRun run = await HostRun.Of(folder.Args([Hub], "--ledger", ledger));

        Assert.Equal(1, run.ExitCode);
        Assert.Contains("RECORD", run.Output, StringComparison.Ordinal);
        Assert.Contains("the kit was signed as complete and would now be open", run.Error, StringComparison.Ordinal);
        Assert.Equal(2, SiteLedger.Open(LedgerFile.JsonLines(File.ReadAllBytes(ledger))).Now.SignOffs.Count);
    }

    [Fact]
    public async Task Where_nobody_signed_nothing_is_added()
    {
        using var folder = new DemoFolder();
        JsonObject sheet = JsonNode.Parse(File.ReadAllBytes(folder["counts.json"]))!.AsObject();
        Assert.True(sheet.Remove("signatures"));
        folder.Write("counts.json", Encoding.UTF8.GetBytes(sheet.ToJsonString()));

        HostRun run = await HostRun.Of(folder.Args([Hub], "--ledger", folder["ledger.jsonl"]));

        Assert.Contains("nobody has signed the sheet, so nothing is added", run.Error, StringComparison.Ordinal);
        Assert.Empty(File.ReadAllBytes(folder["ledger.jsonl"]));
    }

    [Theory]
    [InlineData("half a line", "{\"content\":", "the last line is not ended")]
    [InlineData("no entry", "{\"content\":1}\n", "record.missing-member")]
    public async Task A_damaged_ledger_is_refused_and_left_as_it_is(string why, string content, string told)
    {
        using var folder = new DemoFolder();
        string ledger = folder.Write("ledger.jsonl", Encoding.UTF8.GetBytes(content));

        HostRun run = await HostRun.Of(folder.Args([Hub], "--ledger", ledger));

        Assert.True(run.ExitCode == 65 && run.Error.Contains(told, StringComparison.Ordinal), why + ": " + run.Error);
        Assert.Equal(content, File.ReadAllText(ledger));
    }

    [Fact]
    public async Task The_ledger_is_no_other_file_of_the_run()
    {
        using var folder = new DemoFolder();

        Assert.Equal(64, (await HostRun.Of(folder.Args([Hub], "--ledger", folder["counts.json"]))).ExitCode);
    }
}
