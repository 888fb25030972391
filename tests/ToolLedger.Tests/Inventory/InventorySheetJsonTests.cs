using System;
using System.Collections.Generic;
using System.Linq;
using System.Text;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ToolLedger.Inventory;
using ToolLedger.Records;
using ToolLedger.Testing.Generators;
using ToolLedger.Tests.Records;
using ToolLedger.Tests.Reports;
using Xunit;

namespace ToolLedger.Tests.Inventory;

public sealed class InventorySheetJsonTests
{
    private const string SchemaName = "inventory-sheet";

    private const string Example = """
        {
          "schema": "toolledger/inventory-sheet/1",
          "sightings": [
            { "tool": "T9", "markRead": "K1-09", "by": "Q", "at": "2026-03-01T15:49:10+01:00", "where": "bay 2" }
          ],
          "counts": [
            { "kit": "K1", "line": 13, "quantity": 10, "unit": "each", "by": "P", "at": "2026-03-01T15:50:00+01:00", "witness": "Q" },
            { "kit": "K1", "line": 15, "quantity": 0, "unit": "each", "by": "P", "at": "2026-03-01T15:50:30+01:00" }
          ],
          "pieceCounts": [
            { "tool": "T10", "pieces": 3, "by": "P", "at": "2026-03-01T15:51:00+01:00" },
            { "tool": "T11", "pieces": null, "by": "P", "at": "2026-03-01T15:51:00+01:00" }
          ],
          "signatures": [
            { "person": "S", "at": "2026-03-01T15:58:00+01:00", "role": "supervisor" }
          ]
        }
        """;

    [Fact]
    public void A_stored_sheet_is_read_as_written()
    {
        StoredSchema.AssertAccepts(SchemaName, Utf8(Example));

        InventorySheet sheet = InventorySheet.Parse(Utf8(Example));

        Assert.Equal("K1-09", Assert.Single(sheet.Sightings).MarkRead);
        Assert.Equal(["10 each", "0 each"], sheet.Counts.Select(count => count.Quantity.ToString()), StringComparer.Ordinal);
        Assert.Equal([3, null], sheet.PieceCounts.Select(count => count.Pieces));
        Assert.Equal("S (supervisor) at 2026-03-01T15:58:00+01:00", Assert.Single(sheet.Signatures).ToString());
    }

    [Property(Arbitrary = [typeof(InventoryGenerators)])]
    public void What_is_written_is_read_again_with_the_same_digest_and_keeps_the_schema(InventorySheet sheet)
    {
        byte[] json = sheet.ToJson();

        StoredSchema.AssertAccepts(SchemaName, json);
        InventorySheet read = InventorySheet.Parse(json);
        Assert.Equal(json, read.ToJson());
        Assert.Equal(sheet.Digest, read.Digest);
    }

    [Property(Arbitrary = [typeof(InventoryGenerators)])]
    public void Another_entry_gives_another_digest(InventorySheet sheet, Sighting sighting) => Assert.NotEqual(
        sheet.Digest,
        new InventorySheet(sheet.Entries with { Sightings = [.. sheet.Sightings, sighting] }).Digest);

    // Bytes changed at random are refused or read, and never raise anything but a refusal.
    [Property(Arbitrary = [typeof(InventoryGenerators)])]
    public Property TryParse_never_throws(InventorySheet sheet, PositiveInt[] places, byte[] values) =>
        DamagedRecord.IsReadOrRefused<InventorySheet>(sheet.ToJson(), places, values, InventorySheet.TryParse);

    [Fact]
    public void S19_every_fault_of_a_stored_sheet_is_told_in_one_go()
    {
        byte[] json = Utf8("""
            {
              "schema": "toolledger/inventory-sheet/1",
              "sightings": [ { "tool": "T9" }, null ],
              "counts": [
                { "kit": "K1", "line": 0, "quantity": 6, "by": "P", "at": "2026-03-01T15:50:00" },
                { "kit": "K1", "line": 15, "quantity": -1, "unit": "each", "by": "P", "at": "2026-03-01T15:50:00Z" },
                { "kit": "K1", "line": 15, "quantity": 6, "unit": "each", "by": "P", "at": "2026-03-01T15:50:00Z", "remark": "two halves" }
              ],
              "pieceCounts": [ { "tool": "T10", "by": "", "at": "2026-03-01T15:50:00Z" }, { "tool": "T10", "pieces": 1.5, "by": "P", "at": "2026-03-01T15:50:00Z" } ],
              "signatures": [ { "at": "2026-03-01T15:50:00Z" } ],
              "colour": "red"
            }
            """);

        Assert.False(StoredSchema.Accepts(SchemaName, json));
        Assert.False(InventorySheet.TryParse(json, out _, out IReadOnlyList<RecordIssue> issues));
        Assert.Equal(
            [
                "$ record.unknown-member",
                "$.sightings[0].markRead inventory.sighting-without-mark",
                "$.sightings[0].by inventory.sighting-not-signed",
                "$.sightings[0].at inventory.sighting-without-time",
                "$.sightings[0].where inventory.sighting-without-place",
                "$.sightings[1] record.wrong-type",
                "$.counts[0].line record.out-of-range",
                "$.counts[0].unit inventory.count-without-unit",
                "$.counts[0].at record.time-without-offset",
                "$.counts[1].quantity inventory.count-out-of-range",
                "$.counts[2] record.unknown-member",
                "$.pieceCounts[0].pieces inventory.piece-count-without-number",
                "$.pieceCounts[0].by inventory.piece-count-not-signed",
                "$.pieceCounts[1].pieces inventory.piece-count-out-of-range",
                "$.signatures[0] record.missing-member",
            ],
            issues.Select(issue => $"{issue.Place} {issue.Rule}"),
            StringComparer.Ordinal);
    }

    [Theory]
    [InlineData("another schema", """{ "schema": "toolledger/inventory-sheet/2" }""")]
    [InlineData("no schema", """{ "sightings": [] }""")]
    [InlineData("a list", "[]")]
    [InlineData("nothing", "")]
    [InlineData("cut short", """{ "schema": "toolledger/inventory-sheet/1", "sightings": [""")]
    [InlineData("a member twice", """{ "schema": "toolledger/inventory-sheet/1", "counts": [], "counts": [] }""")]
    [InlineData("a comment", """{ "schema": "toolledger/inventory-sheet/1" /* x */ }""")]
    [InlineData("the counter as witness", """{ "schema": "toolledger/inventory-sheet/1", "counts": [ { "kit": "K1", "line": 15, "quantity": 6, "unit": "each", "by": "P", "at": "2026-03-01T15:50:00Z", "witness": "P" } ] }""")]
    [InlineData("a control character in a name", """{ "schema": "toolledger/inventory-sheet/1", "signatures": [ { "person": "S\u001b[31m", "at": "2026-03-01T15:50:00Z" } ] }""")]
    public void A_sheet_that_breaks_a_rule_is_refused(string why, string json)
    {
        Assert.False(InventorySheet.TryParse(Utf8(json), out InventorySheet? sheet, out IReadOnlyList<RecordIssue> issues), why);
        Assert.Null(sheet);
        Assert.NotEmpty(issues);
        Assert.DoesNotContain('\u001b', string.Concat(issues));
        Assert.Throws<RecordException>(() => InventorySheet.Parse(Utf8(json)));
    }

    [Fact]
    public void A_sheet_over_the_stated_number_of_entries_is_refused()
    {
        string entry = """{ "kit": "K1", "line": 15, "quantity": 6, "unit": "each", "by": "P", "at": "2026-03-01T15:50:00Z" }""";
        string json = $$"""{ "schema": "toolledger/inventory-sheet/1", "counts": [ {{string.Join(',', Enumerable.Repeat(entry, InventorySheet.MaxEntryCount + 1))}} ] }""";

        Assert.False(InventorySheet.TryParse(Utf8(json), out _, out IReadOnlyList<RecordIssue> issues));
        Assert.Equal("record.too-large", Assert.Single(issues).Rule);
    }

    [Fact]
    public void A_job_record_of_nothing_is_kept_as_a_correction_and_one_that_says_no_amount_is_refused()
    {
        string Sheet(string amount) => """{ "schema": "toolledger/inventory-sheet/1", "uses": [{ "kit": "K1", "line": 16, "job": "J-1", "unit": "each",AMOUNT "by": "P", "at": "2026-03-01T15:50:00+01:00" }] }"""
            .Replace("AMOUNT", amount, StringComparison.Ordinal);
        byte[] zero = Utf8(Sheet(" \"used\": 0,"));
        StoredSchema.AssertAccepts(SchemaName, zero);
        InventorySheet sheet = InventorySheet.Parse(zero);
        Assert.Equal((0, 0), (sheet.Uses[0].Used, sheet.Uses[0].Scrapped));
        Assert.Equal(sheet.Digest, InventorySheet.Parse(sheet.ToJson()).Digest);

        Assert.False(InventorySheet.TryParse(Utf8(Sheet("")), out _, out IReadOnlyList<RecordIssue> issues));
        Assert.Equal(("$.uses[0].used", InventoryRules.UseOfNothing.Code), (Assert.Single(issues).Place, issues[0].Rule));
    }

    [Theory]
    [InlineData("\"kind\": \"short\",")]
    [InlineData("\"kind\": \"removed\", \"shortBy\": 1, \"unit\": \"each\",")]
    public void A_refused_annotation_names_the_member_that_is_wanting_or_too_many(string kind)
    {
        string sheet = """{ "schema": "toolledger/inventory-sheet/1", "annotations": [{ "kit": "K1", "line": 15, KIND "reason": "torn", "signedBy": { "person": "S", "at": "2026-03-01T08:00:00+01:00" } }] }"""
            .Replace("KIND", kind, StringComparison.Ordinal);
        Assert.False(InventorySheet.TryParse(Utf8(sheet), out _, out IReadOnlyList<RecordIssue> issues));
        RecordIssue issue = Assert.Single(issues);
        Assert.Equal("$.annotations[0].shortBy", issue.Place);
        Assert.Contains("shortBy", issue.Reason.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void An_empty_sheet_is_legal_and_says_nothing()
    {
        Assert.Equal(InventorySheet.Empty.Digest, InventorySheet.Parse(Utf8("""{ "schema": "toolledger/inventory-sheet/1" }""")).Digest);
        Assert.Empty(InventorySheet.Empty.Sightings);
    }

    private static byte[] Utf8(string text) => Encoding.UTF8.GetBytes(text);
}
