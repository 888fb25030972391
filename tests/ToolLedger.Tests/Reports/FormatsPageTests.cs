using System;
using System.Collections.Generic;
using System.Linq;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using ToolLedger.Calibration;
using ToolLedger.Custody;
using ToolLedger.Interchange;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Ledger;
using ToolLedger.Policies;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Tests.Records;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Reports;

/// <summary>The page that shows the stored forms side by side: its blocks are read, held against the schemas and reconciled, so that the page cannot say what is not so.</summary>
public sealed class FormatsPageTests
{
    private static readonly DateTimeOffset AsOf = new(2026, 10, 14, 15, 56, 0, TimeSpan.FromHours(2));

    private static readonly Dictionary<string, string> Blocks = Regex
        .Matches(RepositoryFiles.ReadText("docs", "formats.md").ReplaceLineEndings("\n"), "<!-- json: (?<name>[a-z-]+) -->\n```json\n(?<text>.*?)\n```", RegexOptions.Singleline | RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(10))
        .ToDictionary(static match => match.Groups["name"].Value, static match => match.Groups["text"].Value, StringComparer.Ordinal);

    [Fact]
    public void Every_block_names_a_schema_and_keeps_it()
    {
        Assert.Equal(["calibration-register", "custody-log", "inventory-sheet", "kit-manifest", "ledger-entry", "presentation", "site-policy", "tag-register"], Blocks.Keys.Order(StringComparer.Ordinal));
        foreach ((string name, string text) in Blocks)
        {
            StoredSchema.AssertAccepts(name, Encoding.UTF8.GetBytes(text));
            using var document = JsonDocument.Parse(text);
            Assert.Equal($"toolledger/{name}/1", document.RootElement.GetProperty("schema").GetString());
        }
    }

    [Fact]
    public void Together_they_account_for_every_line()
    {
        ReconciliationResult result = Reconcile(Blocks["inventory-sheet"]);
        Assert.Equal(KitState.Complete, result.Kit.State);
        Assert.Equal(
            [AccountingBasis.Read, AccountingBasis.Sighted, AccountingBasis.Counted, AccountingBasis.Counted, AccountingBasis.Counted],
            result.Lines.Select(static line => line.Basis));
        Assert.Single(result.Signatures);
    }

    [Theory]
    [InlineData(", \"inKit\": \"BAG-1\"", 2, LineState.NotRead)]
    [InlineData("\"annotations\": \\[.*?\\n  \\],", 4, LineState.Partial)]
    [InlineData("\"uses\": \\[.*?\\n  \\],", 5, LineState.Partial)]
    public void Without_one_of_them_the_line_is_open_as_the_page_says(string left, int line, LineState state)
    {
        string sheet = Regex.Replace(Blocks["inventory-sheet"], left, "", RegexOptions.Singleline, TimeSpan.FromSeconds(10));
        Assert.NotEqual(Blocks["inventory-sheet"], sheet);
        Assert.Equal(state, Reconcile(sheet).Lines[line - 1].State);
    }

    [Fact]
    public void The_row_of_reads_on_the_page_is_one_that_a_reader_of_files_takes()
    {
        string row = RepositoryFiles.ReadText("docs", "formats.md").ReplaceLineEndings("\n").Split('\n').Single(static line => line.StartsWith("{\"epc\"", StringComparison.Ordinal));
        TagRead read = Assert.Single(ReadFile.JsonLines(Encoding.UTF8.GetBytes(row + "\n")).ToList());
        Assert.Equal(TagRegister.Parse(Encoding.UTF8.GetBytes(Blocks["tag-register"])).Bindings[0].Tag, read.Tag);
    }

    // The fact in the ledger is the one of the custody log: one digest, whichever file it came from.
    [Fact]
    public void The_ledger_entry_holds_the_visit_of_the_custody_log_and_both_take_effect()
    {
        LedgerEntry entry = LedgerEntry.Parse(Utf8("ledger-entry"));
        CustodyEntry visit = CustodyLog.Parse(Utf8("custody-log")).Entries.Single(static one => one is JobVisit);

        Assert.Equal(visit.Digest, entry.ContentDigest);
        Assert.DoesNotContain(Reconcile(Blocks["inventory-sheet"]).Findings, static finding => finding.Code.StartsWith("finding.custody", StringComparison.Ordinal));
    }

    private static byte[] Utf8(string block) => Encoding.UTF8.GetBytes(Blocks[block]);

    private static ReconciliationResult Reconcile(string sheet)
    {
        KitManifest manifest = KitManifest.Parse(Encoding.UTF8.GetBytes(Blocks["kit-manifest"]));
        TagRegister tags = TagRegister.Parse(Encoding.UTF8.GetBytes(Blocks["tag-register"]));
        Presentation presentation = Presentation.Parse(Encoding.UTF8.GetBytes(Blocks["presentation"]));
        ReconciliationPolicy policy = SitePolicy.Parse(Utf8("site-policy")).Reconciliation;
        var kits = new KitRegister([manifest]);
        var builder = new ReadSessionBuilder(presentation, policy.Sessions);
        foreach (AntennaPort antenna in presentation.Station.Antennas)
        {
            for (double second = 0.5; second < 30; second += 1.5)
            {
                builder.Add(new TagRead(presentation.Station.ControlTags[0].Tag, antenna, presentation.From.AddSeconds(second)));
            }

            foreach (double second in (double[])[6, 8, 10])
            {
                builder.Add(new TagRead(tags.Bindings[0].Tag, antenna, presentation.From.AddSeconds(second)));
            }
        }

        return new Reconciler(policy).Reconcile(new ReconciliationInput
        {
            Kits = kits,
            Subject = manifest.Id,
            Sessions = [builder.Close(presentation.Until!.Value, presentation.ReaderClockOffsetAfter)],
            Tags = tags,
            Inventory = InventorySheet.Parse(Encoding.UTF8.GetBytes(sheet)),
            Custody = new CustodyRegister(policy.Custody, kits, CustodyLog.Parse(Utf8("custody-log"))),
            Calibration = CalibrationRegister.Parse(Utf8("calibration-register")),
            AsOf = AsOf,
        });
    }
}
