using System;
using System.Linq;
using ToolLedger.Custody;
using ToolLedger.Holds;
using ToolLedger.Ledger;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Tests.Holds;
using ToolLedger.Tests.Reconciliation;
using ToolLedger.Tools;
using Xunit;
using static ToolLedger.Tests.Custody.CustodyScene;
using static ToolLedger.Tests.Ledger.LedgerScene;

namespace ToolLedger.Tests.Ledger;

/// <summary>What the ledger takes, refuses and remembers; scenarios of the trade's tables that gain history, by id.</summary>
public sealed class LedgerBookTests
{
    [Fact]
    public void The_same_fact_twice_is_an_answer_and_another_under_its_id_is_refused()
    {
        LedgerBook book = Book();

        Assert.Equal(AppendOutcome.Appended, Append(book, Issue("I1", At(8))).Outcome);
        Assert.Equal(AppendOutcome.AlreadyThere, Append(book, Issue("I1", At(8)), At(9)).Outcome);
        (AppendOutcome outcome, string[] codes) = Append(book, Issue("I1", At(8), user: "Q"));
        Assert.Equal((AppendOutcome.SameIdOtherContent, "ledger.same-id-other-content"), (outcome, Assert.Single(codes)));
        Assert.Equal(1, book.Count);
        Assert.Equal(At(8), book.Find(new EntryId("I1"))!.RecordedAt);
    }

    [Fact]
    public void What_custody_refuses_is_not_in_the_record_and_the_refusal_can_be()
    {
        LedgerBook book = Book(Issue("I1", At(8)));

        Assert.Equal((AppendOutcome.Refused, "custody.already-issued"), (Append(book, Issue("I2", At(9), user: "Q")).Outcome, Append(book, Issue("I2", At(9), user: "Q")).Codes[0]));
        Assert.Equal(1, book.Count);
        var refusal = new EntryRefusal { Id = new EntryId("F1"), At = At(9), By = new PersonId("C"), Refused = new EntryId("I2"), RefusedKind = "kit-issue", Codes = ["custody.already-issued"] };
        Assert.Equal(AppendOutcome.Appended, Append(book, refusal).Outcome);
        Assert.Equal(new PersonId("P"), book.Now.Custody.HolderOf(K1, At(10)).Person);
    }

    // S89 in spirit: what is dated tomorrow is refused today.
    [Fact]
    public void A_fact_is_not_recorded_before_it_happens() =>
        Assert.Equal(["ledger.recorded-before"], Append(Book(), Issue("I1", At(8)), At(7, 59)).Codes);

    // S32: a binding entered at 16:30 for a tag read at 15:55 changes nothing signed; one that is corrected to an earlier time makes an amendment, and the signed bytes stay.
    [Fact]
    public void S32_Later_knowledge_makes_an_amendment_and_never_another_signed_result()
    {
        World world = new World().CountAll();
        world.Bindings.RemoveAll(binding => binding.Tool.Value == "T7");
        ReconciliationResult before = world.ReadAllBut().Reconcile();
        Assert.Equal(LineState.NotAssessed, before.Lines[6].State);
        SignedReconciliation signed = SignedReconciliation.Of(new EntryId("S1"), before, Signed("Q", world.AsOf));
        LedgerBook book = Book(signed);
        byte[] bytes = signed.Result.ToArray();

        // Entered with the effective time 16:30: the answer about 16:00 is the same, and so there is nothing to amend but the digest of the register.
        world.Bindings.Add(new TagBinding { Tag = World.TagOf("T7"), Tool = new ToolId("T7"), From = world.AsOf.AddMinutes(30), BoundBy = World.Q });
        Assert.Equal(LineState.NotAssessed, world.Reconcile().Lines[6].State);
        world.Bindings[^1] = new TagBinding { Tag = World.TagOf("T7"), Tool = new ToolId("T7"), From = World.Start.AddHours(-1), BoundBy = World.Q };
        Amendment amendment = Amendment.Of(new EntryId("A1"), signed, world.Reconcile(), Signed("S", world.AsOf.AddHours(1)), "the tag was bound at 14:55, two persons signed the correction")!;

        Assert.Equal(AppendOutcome.Appended, Append(book, amendment).Outcome);
        Assert.Equal(bytes, ((SignedReconciliation)book.Find(new EntryId("S1"))!.Content).Result);
        Assert.Contains(amendment.Differences, difference => difference.Contains("line 7 (tool 7) was signed as \"not assessed\" and would now be \"accounted for, read\"", StringComparison.Ordinal));
        Assert.Same(amendment, Assert.Single(book.Now.AmendmentsOf(new EntryId("S1"))));
        Assert.Equal(["ledger.no-such-entry"], Append(Book(), amendment).Codes);
    }

    // S64: the ledger keeps the signed result, takes the amendment, and the hold stands until the authority releases it.
    [Fact]
    public void S64_An_amendment_lifts_no_hold()
    {
        World world = new World().ReadAllBut("T7").CountAll();
        SignedReconciliation signed = SignedReconciliation.Of(new EntryId("S1"), world.Reconcile(), Signed("Q", world.AsOf));
        DateTimeOffset later = world.AsOf.AddMinutes(40);
        MissingDeclaration missing = new() { Id = new EntryId("M1"), At = world.AsOf.AddMinutes(20), By = new PersonId("P"), Description = "tool 7", Tool = new ToolId("T7"), Kit = K1 };
        LedgerBook book = Book(signed, missing);

        Assert.Equal(AppendOutcome.Appended, Append(book, Amendment.Of(new EntryId("A1"), signed, world.ReadWell("T7").Reconcile(), Signed("S", later), "late reads")!).Outcome);
        Assert.Equal((AppendOutcome.Refused, "hold.not-found"), (Append(book, HoldScene.Release("R1", later)).Outcome, Append(book, HoldScene.Release("R1", later)).Codes[0]));
        Assert.True(Assert.Single(book.Now.Holds.StatusAt(later.AddDays(1))).IsHeld);
    }

    [Fact]
    public void A_correction_needs_two_persons_and_something_that_can_be_corrected()
    {
        static EntryCorrection Correct(string id, string witness) => new()
        {
            Id = new EntryId("C-" + id),
            At = At(12),
            By = new PersonId("C"),
            Witness = new PersonId(witness),
            Corrects = new EntryId(id),
            Reason = "the other bag",
        };
        LedgerBook book = Book(Issue("I1", At(8)), Visit("V1", At(8), At(9), "A"), HoldScene.Missing("M1", At(10)));

        Assert.Equal(["ledger.correction-not-witnessed"], Append(book, Correct("I1", "c")).Codes);
        Assert.Equal(["ledger.no-such-entry"], Append(book, Correct("I9", "W")).Codes);
        Assert.Equal(["ledger.not-correctable"], Append(book, Correct("V1", "W")).Codes);
        Assert.Equal(["ledger.not-correctable"], Append(book, Correct("M1", "W")).Codes);
        Assert.Equal(AppendOutcome.Appended, Append(book, Correct("I1", "W")).Outcome);
        Assert.False(book.Now.Custody.HolderOf(K1, At(9)).IsPerson);
        Assert.True(book.AsKnownAt(At(11)).Custody.HolderOf(K1, At(9)).IsPerson);
        Assert.Equal(4, book.Count);
    }

    // Two stations without a line between them: one issues K1 to P, the other to Q. Both entries are kept, the earlier holds, the other is a finding.
    [Fact]
    public void Two_stations_merge_and_what_cannot_both_be_is_a_finding()
    {
        LedgerBook one = Book(Issue("I1", At(8, 5))), other = Book(Issue("I2", At(8), user: "Q"));

        LedgerBook merged = one.Merge(other);

        Assert.Equal(2, merged.Count);
        Assert.Equal(new PersonId("Q"), merged.Now.Custody.HolderOf(K1, At(9)).Person);
        LedgerFinding finding = Assert.Single(merged.Now.Findings);
        Assert.Equal((new EntryId("I1"), "ledger.no-effect"), (finding.Entry, finding.Reason.Code));
    }

    // Both stations used one id for different things: a hold stands for each, a release that names the id ends neither, and a release of a disputed name ends one.
    [Fact]
    public void Facts_that_share_an_id_widen_and_never_narrow()
    {
        LedgerBook merged = Book(HoldScene.Missing("M1", At(15))).Merge(Book(HoldScene.Missing("M1", At(15), tool: "T6", by: "Q")));
        HoldStatus[] held = [.. merged.Now.Holds.HeldAt(At(16))];

        Assert.Equal(["T6", "T7"], held.Select(status => status.Declaration.Tool.Value).Order(StringComparer.Ordinal));
        Assert.Equal("ledger.dispute", Assert.Single(merged.Now.Findings).Reason.Code);
        Assert.Equal(["hold.not-held"], Append(merged, HoldScene.Release("R1", At(17), ReleaseGround.DeclaredInError)).Codes);
        Assert.Equal(AppendOutcome.Appended, Append(merged, HoldScene.Release("R2", At(17), ReleaseGround.DeclaredInError, hold: held[0].Declaration.Id.Value)).Outcome);
        Assert.Single(merged.Now.Holds.HeldAt(At(18)));
    }

    // S70 in the ledger: the sign-offs that a find contradicts are findings as long as the find stands.
    [Fact]
    public void S70_A_found_tool_flags_the_sign_offs_it_contradicts_until_it_is_withdrawn()
    {
        World world = new World().ReadAllBut().CountAll();
        world.Signatures.Add(new Signature { By = World.Q, At = World.End });
        SignedReconciliation signed = SignedReconciliation.Of(new EntryId("S1"), world.Reconcile(), Signed("Q", world.AsOf));
        LedgerBook book = Book(signed);
        Append(book, HoldScene.Found("F1", world.AsOf.AddDays(2), hold: ""));

        Assert.Equal((new EntryId("S1"), "ledger.contradicted-sign-off"), (Assert.Single(book.Now.Findings).Entry, book.Now.Findings[0].Reason.Code));
        Append(book, new FoundWithdrawal { Id = new EntryId("W1"), At = world.AsOf.AddDays(3), By = World.Q, Found = new EntryId("F1"), Reason = "the mark is K2-7" });
        Assert.Empty(book.Now.Findings);
    }

    [Fact]
    public void A_period_is_handed_over_with_its_corrections_and_amendments()
    {
        var correction = new EntryCorrection { Id = new EntryId("C1"), At = At(30), By = new PersonId("C"), Witness = new PersonId("W"), Corrects = new EntryId("I1"), Reason = "the other bag" };
        LedgerBook book = Book(Issue("I1", At(8)), Issue("I2", At(31), kit: "K2"), correction);

        Assert.Equal(["I1", "C1"], book.Between(At(0), At(24)).Select(entry => entry.Id.Value));
        Assert.Equal(["C1", "I2"], book.Between(At(24), At(48)).Select(entry => entry.Id.Value));
    }

    [Fact]
    public void The_last_sign_off_of_a_kit_says_how_old_its_contents_are()
    {
        // S72: the box is present, its contents are as of yesterday 16:00.
        World world = new World { AsOf = World.End.AddMinutes(2) };
        SignedReconciliation signed = SignedReconciliation.Of(new EntryId("S1"), world.ReadAllBut().Reconcile(), Signed("Q", world.AsOf));

        Assert.Equal(world.AsOf, Book(signed).Now.LastSignOffOf(K1, world.AsOf.AddDays(1))!.AsOf);
        Assert.Null(Book(signed).Now.LastSignOffOf(K1, world.AsOf.AddSeconds(-1)));
    }
}
