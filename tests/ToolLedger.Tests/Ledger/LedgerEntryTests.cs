using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text;
using System.Text.Json;
using System.Threading.Tasks;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ToolLedger.Interchange;
using ToolLedger.Ledger;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Tests.Custody;
using ToolLedger.Tests.Interchange;
using ToolLedger.Tests.Reconciliation;
using ToolLedger.Tests.Records;
using ToolLedger.Tests.Reports;
using Xunit;
using static ToolLedger.Tests.Custody.CustodyScene;
using static ToolLedger.Tests.Ledger.LedgerScene;

namespace ToolLedger.Tests.Ledger;

public sealed class LedgerEntryTests
{
    private static readonly LedgerEntry[] All = [.. CustodyLogJsonTests.OneOfEach().Concat<RecordEntry>(OneOfEach()).Select(content => Entry(content, content.At.AddMinutes(1)))];

    [Fact]
    public void Every_kind_of_fact_is_in_the_example() => Assert.Equal(
        typeof(RecordEntry).Assembly.GetTypes().Where(type => type.IsSubclassOf(typeof(RecordEntry)) && !type.IsAbstract).Select(type => type.Name).Order(StringComparer.Ordinal),
        All.Select(entry => entry.Content.GetType().Name).Order(StringComparer.Ordinal),
        StringComparer.Ordinal);

    [Fact]
    public void Every_kind_of_fact_keeps_the_schema_and_comes_back_byte_for_byte() => Assert.All(All, entry =>
    {
        byte[] json = entry.ToJson();

        StoredSchema.AssertAccepts("ledger-entry", json);
        Assert.Equal(CanonicalJson.Canonicalize(json), json);
        LedgerEntry read = LedgerEntry.Parse(json);
        Assert.Equal(json, read.ToJson());
        Assert.Equal((entry.Digest, entry.ContentDigest, entry.Content.GetType()), (read.Digest, read.ContentDigest, read.Content.GetType()));
    });

    // Every member that is set above must show in the stored form, or it would be lost in silence.
    [Fact]
    public void No_member_is_forgotten()
    {
        string[] derived = ["Result", "Record", "RecordSchema"];
        foreach (RecordEntry content in OneOfEach())
        {
            using JsonDocument document = JsonDocument.Parse(content.ToJson());
            foreach (string name in content.GetType().GetProperties()
                .Where(property => property.CanWrite && property.DeclaringType != typeof(RecordEntry) && !derived.Contains(property.Name, StringComparer.Ordinal))
                .Select(property => JsonNamingPolicy.CamelCase.ConvertName(property.Name)))
            {
                Assert.True(document.RootElement.TryGetProperty(name, out _), $"{content.Kind} lacks {name}");
            }
        }
    }

    [Fact]
    public void An_entry_names_persons_by_id_and_says_when_it_happened_and_when_it_was_recorded()
    {
        LedgerEntry entry = Entry(Issue("I1", At(8)), At(8, 5));

        Assert.Equal((new EntryId("I1"), "kit-issue", new PersonId("C"), At(8), At(8, 5)), (entry.Id, entry.Kind, entry.Actor, entry.OccurredAt, entry.RecordedAt));
        Assert.StartsWith("{\"content\":{\"at\":\"2026-03-02T08:00:00+01:00\",\"by\":\"C\"", Encoding.UTF8.GetString(entry.ToJson()), StringComparison.Ordinal);
    }

    [Property(MaxTest = 300)]
    public Property TryParse_never_throws(PositiveInt which, PositiveInt[] places, byte[] values) =>
        DamagedRecord.IsReadOrRefused<LedgerEntry>(All[which.Get % All.Length].ToJson(), places, values, LedgerEntry.TryParse);

    [Fact]
    public void A_ledger_file_is_one_canonical_entry_a_line()
    {
        byte[] file = LedgerFile.ToJsonLines(All);

        Assert.Equal(All.Length, file.Count(one => one == (byte)'\n'));
        Assert.Equal(All.Select(entry => entry.Digest), LedgerFile.JsonLines(file).Select(entry => entry.Digest));
    }

    // A file that was cut off in its last line, with a line nobody knows in between: the rest is kept, and both are told with their number.
    [Fact]
    public void A_damaged_line_is_told_and_the_rest_is_kept()
    {
        byte[] file = LedgerFile.ToJsonLines(All.Take(3));
        byte[] damaged = [.. Encoding.UTF8.GetBytes("{\"schema\":\"toolledger/ledger-entry/9\"}\r\n"), .. file[..^20]];
        List<BadRow> bad = [];

        Assert.Equal(All.Take(2).Select(entry => entry.Id), LedgerFile.JsonLines(damaged, bad.Add).Select(entry => entry.Id));
        Assert.Equal([(1, "record.schema-version"), (4, "record.not-json")], bad.Select(row => ((int)row.LineNumber, row.Rule)));
        Assert.Throws<ReadFileException>(() => LedgerFile.JsonLines(damaged).Count());

        // One line number, that of the file, and no member called a column.
        Assert.StartsWith("line 1, at $", bad[0].ToString(), StringComparison.Ordinal);
        Assert.Matches("^line 4, column [0-9]+: ", bad[1].ToString());
    }

    [Fact]
    public async Task A_ledger_file_is_the_same_however_the_stream_is_cut()
    {
        using var target = new MemoryStream();
        await LedgerFile.WriteAsync(target, All.Take(5), TestContext.Current.CancellationToken);
        await LedgerFile.WriteAsync(target, All.Skip(5), TestContext.Current.CancellationToken);
        Assert.Equal(LedgerFile.ToJsonLines(All), target.ToArray());

        List<Digest> read = [];
        await using var pieces = new PieceStream(target.ToArray(), 7, 100);
        await foreach (LedgerEntry entry in LedgerFile.JsonLinesAsync(pieces, cancellationToken: TestContext.Current.CancellationToken))
        {
            read.Add(entry.Digest);
        }

        Assert.Equal(All.Select(entry => entry.Digest), read);
    }

    // Verify computes the result again: the same inputs give the same bytes; other inputs are told by name, and so are the lines that differ.
    [Fact]
    public void A_signed_reconciliation_is_recomputed_from_its_inputs()
    {
        World world = new World().ReadAllBut("T7").CountAll();
        ReconciliationInput input = world.Input(world.Session());
        var reconciler = new Reconciler(world.Policy);
        SignedReconciliation signed = SignedReconciliation.Of(new EntryId("S1"), reconciler.Reconcile(input), Signed("Q", world.AsOf));
        SignedReconciliation stored = (SignedReconciliation)LedgerEntry.Parse(Entry(signed).ToJson()).Content;

        Assert.Empty(stored.Verify(input, reconciler));
        world.ReadWell("T7");
        string[] differences = [.. stored.Verify(world.Input(world.Session()), reconciler).Select(reason => reason.Code)];
        Assert.Contains("signed.other-input", differences, StringComparer.Ordinal);
        Assert.Contains("signed.other-line", differences, StringComparer.Ordinal);
        Assert.Equal("signed.bytes-differ", differences[^1]);
        Assert.Contains("signed.other-policy", stored.Verify(input, new Reconciler(new ReconciliationPolicy { Findings = new FindingPolicy { NearMissTagsMax = 1 } })).Select(reason => reason.Code), StringComparer.Ordinal);
    }

    [Fact]
    public void Nobody_signs_before_the_instant_the_answer_is_for()
    {
        var world = new World();
        ReconciliationResult result = world.ReadAllBut().Reconcile();

        Assert.Throws<ArgumentException>(() => SignedReconciliation.Of(new EntryId("S1"), result, Signed("Q", world.AsOf.AddSeconds(-1))));
        Assert.Throws<ArgumentException>(() => SignedReconciliation.Of(new EntryId("S1"), result));
    }
}
