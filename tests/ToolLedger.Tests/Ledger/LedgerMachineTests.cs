using System;
using System.Collections.Generic;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using ToolLedger.Custody;
using ToolLedger.Ledger;
using ToolLedger.Records;
using ToolLedger.Tests.Custody;
using ToolLedger.Tests.Holds;
using Xunit;
using static ToolLedger.Tests.Custody.CustodyScene;
using static ToolLedger.Tests.Ledger.LedgerScene;

namespace ToolLedger.Tests.Ledger;

/// <summary>Sequences of entries against a plain model of an append-only record, and the laws of a merge. TOOLLEDGER_SEQUENCES sets how many sequences; the default is 1,000.</summary>
public sealed class LedgerMachineTests
{
    /// <summary>Custody, a hold, a correction, and now and then a fact under the id of another.</summary>
    private static Gen<LedgerEntry[]> Entries() =>
        from commands in CustodyMachineTests.Commands()
        from delays in Gen.Choose(0, 600).ArrayOf(64)
        from extra in Gen.Choose(0, 5).ArrayOf(64)
        select Made(commands, delays, extra);

    private static LedgerEntry[] Made(CustodyCommand[] commands, int[] delays, int[] extra)
    {
        List<RecordEntry> contents = [];
        foreach (CustodyEntry entry in CustodyMachineTests.EntriesOf(commands))
        {
            contents.Add(entry);
            DateTimeOffset after = entry.At.AddSeconds(30);
            switch (extra[contents.Count % 64])
            {
                case 0:
                    contents.Add(HoldScene.Missing("M" + entry.Id, after));
                    break;
                case 1:
                    contents.Add(HoldScene.Found("F" + entry.Id, after, hold: ""));
                    break;
                case 2:
                    contents.Add(new EntryCorrection { Id = new EntryId("C" + entry.Id), At = after, By = new PersonId("C"), Witness = new PersonId("W"), Corrects = entry.Id, Reason = "wrong" });
                    break;
                case 3:
                    contents.Add(Visit(entry.Id.Value, after, null, "Z"));
                    break;
            }
        }

        return [.. contents.Select((content, index) => Entry(content, content.At.AddSeconds(delays[index % 64]), index % 2 == 0 ? "R1" : "R2"))];
    }

    // Appending one by one: what is taken, known or refused is what a dictionary of ids and digests says, and nothing taken is ever lost or changed.
    [Fact]
    public void The_ledger_keeps_like_a_dictionary_and_answers_like_a_replay() => Check.One(CustodyMachineTests.Run(), Prop.ForAll(Arb.From(Entries()), entries =>
    {
        var book = new LedgerBook(Settings);
        var kept = new Dictionary<EntryId, Digest>();
        foreach (LedgerEntry entry in entries.Concat(entries.Take(3)))
        {
            AppendOutcome outcome = book.Append(entry.Content, entry.RecordedAt, out IReadOnlyList<RecordIssue> issues, entry.Station);
            if (kept.TryGetValue(entry.Id, out Digest known))
            {
                Assert.Equal(known == entry.ContentDigest ? AppendOutcome.AlreadyThere : AppendOutcome.SameIdOtherContent, outcome);
            }
            else if (outcome == AppendOutcome.Appended)
            {
                kept.Add(entry.Id, entry.ContentDigest);
            }
            else
            {
                Assert.Equal(AppendOutcome.Refused, outcome);
            }

            Assert.Equal(outcome is AppendOutcome.Refused or AppendOutcome.SameIdOtherContent, issues.Count > 0);
        }

        Assert.Equal(kept.Count, book.Count);
        Assert.All(kept, pair => Assert.Equal(pair.Value, book.Find(pair.Key)!.ContentDigest));

        // Replay = incremental, also after a trip through the stored form.
        var replayed = new LedgerBook(Settings, book.Entries.Reverse().Select(entry => LedgerEntry.Parse(entry.ToJson())));
        Assert.Equal(Text(book), Text(replayed));
        Assert.Equal(book.Digest, replayed.Digest);
    }));

    // Merge is commutative, associative and idempotent, whatever the entries are.
    [Fact]
    public void Merging_is_commutative_associative_and_idempotent() => Check.One(CustodyMachineTests.Run(8), Prop.ForAll(Arb.From(Entries()), Arb.From(Gen.Choose(1, 6).ArrayOf(64)), (entries, dealt) =>
    {
        LedgerBook Part(int bit) => new(Settings, entries.Where((_, index) => (dealt[index % 64] & bit) != 0));
        LedgerBook a = Part(1), b = Part(2), c = Part(4);

        string all = Text(a.Merge(b).Merge(c));
        Assert.Equal(all, Text(a.Merge(b.Merge(c))));
        Assert.Equal(all, Text(c.Merge(b).Merge(a)));
        Assert.Equal(all, Text(a.Merge(b).Merge(c).Merge(b).Merge(a)));
        Assert.Equal(Text(a), Text(a.Merge(a)));
        Assert.Equal(a.Merge(b).Digest, b.Merge(a).Digest);
    }));

    // As of: the look-up by index answers like a replay of what had happened by then.
    [Fact]
    public void Looking_up_an_instant_and_replaying_to_it_agree() => Check.One(CustodyMachineTests.Run(8), Prop.ForAll(Arb.From(Entries()), entries =>
    {
        LedgerEntry[] undisputed = [.. entries.DistinctBy(entry => entry.Id).Where(entry => entry.Content is not EntryCorrection)];
        var all = new LedgerBook(Settings, undisputed);
        for (int i = 0; i < undisputed.Length; i += 5)
        {
            DateTimeOffset at = undisputed[i].OccurredAt;
            Assert.Equal(TextAt(new LedgerBook(Settings, undisputed.Where(entry => entry.OccurredAt <= at)).Now, at), TextAt(all.Now, at));
        }
    }));

    // What was known at an instant never changes by what is recorded later.
    [Fact]
    public void What_was_known_then_stays_known_then() => Check.One(CustodyMachineTests.Run(8), Prop.ForAll(Arb.From(Entries()), entries =>
    {
        if (entries.Length == 0)
        {
            return;
        }

        DateTimeOffset half = entries[entries.Length / 2].RecordedAt;
        var early = new LedgerBook(Settings, entries.Where(entry => entry.RecordedAt <= half));
        Assert.Equal(TextAt(early.Now, At(23)), TextAt(new LedgerBook(Settings, entries).AsKnownAt(half), At(23)));
    }));

    private static string Text(LedgerBook book) => string.Join('\n', book.Entries.Select(static entry => entry.Digest.ToString()).Concat(book.Now.Findings.Select(static finding => finding.ToString())).Append(TextAt(book.Now, At(23))));

    private static string TextAt(LedgerState state, DateTimeOffset at) => string.Join('\n',
        state.Custody.HistoryOf(K1, at).Concat(state.Custody.HistoryOf(K2, at)).Select(static span => span.ToString())
            .Concat(state.Custody.ReceiptsOpenAt(at).Select(static receipt => receipt.ToString()))
            .Concat(state.Holds.StatusAt(at).Select(static status => $"{status.Declaration} {status.IsHeld} {string.Join('|', status.Affected)}"))
            .Concat(state.Holds.FoundAt(at).Select(static found => found.ToString()))
            .Concat(state.Exposure.OfKit(K1, at).Items.Select(static item => item.ToString())));
}
