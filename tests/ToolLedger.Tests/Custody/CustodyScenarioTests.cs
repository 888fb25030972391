using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Custody;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;
using Xunit;
using static ToolLedger.Tests.Custody.CustodyScene;

namespace ToolLedger.Tests.Custody;

/// <summary>Scenarios of the trade's tables about custody alone, by id. The expected answers are those of the tables; kits and persons are invented.</summary>
public sealed class CustodyScenarioTests
{
    private static readonly CustodyPolicy P0 = CustodyPolicy.Default;

    // Given T6 on the manifests of K1 and K2; when K2 is about to be issued; then refuse until the manifests agree.
    [Fact]
    public void S39_A_kit_whose_tool_is_on_another_manifest_is_not_issued()
    {
        KitRegister kits = new([Manifest("K1", "T", 8), Manifest("K2", "T", 1)]);
        var book = new CustodyBook(P0, kits);

        RecordAnswer answer = book.Record(Issue("I1", At(8), kit: "K2"), out IReadOnlyList<RecordIssue> issues);

        Assert.Equal(RecordAnswer.Refused, answer);
        Assert.Equal(["custody.tool-in-two-kits"], Codes(issues));
        Assert.False(book.Live.HolderOf(K2, At(9)).IsPerson);
    }

    // Given K1 with P; when it is handed to the next shift on one signature; then refuse, and custody stays with the signer.
    [Fact]
    public void S58_A_transfer_with_one_signature_is_refused_and_custody_stays()
    {
        KitTransfer oneSided = new()
        {
            Id = new EntryId("X1"),
            At = At(12),
            By = new PersonId("P"),
            Kit = K1,
            InventoriedAt = At(11, 55),
        };
        (RecordAnswer answer, string[] codes, CustodyRegister register) = Try(P0, oneSided, Issue("I1", At(8)));

        Assert.Equal((RecordAnswer.Refused, "custody.not-received"), (answer, Assert.Single(codes)));
        Assert.Equal(new PersonId("P"), register.HolderOf(K1, At(13)).Person);
    }

    [Fact]
    public void S58_A_transfer_without_a_joint_inventory_is_refused()
    {
        KitTransfer blind = new()
        {
            Id = new EntryId("X1"),
            At = At(12),
            By = new PersonId("P"),
            Kit = K1,
            ReceivedBy = Signed("Q", At(12)),
        };

        Assert.Equal(["custody.no-joint-inventory"], Try(P0, blind, Issue("I1", At(8))).Codes);
        Assert.Equal(RecordAnswer.Recorded, Try(P0 with { JointInventoryNeeded = false }, blind, Issue("I1", At(8))).Answer);
    }

    // Given a joint inventory with T7 open; when K1 is transferred; then only with both acknowledging the open line.
    [Fact]
    public void S59_An_open_line_goes_over_only_if_both_acknowledge_it()
    {
        static KitTransfer With(int[] giver, int[] receiver) => new()
        {
            Id = new EntryId("X1"),
            At = At(12),
            By = new PersonId("P"),
            Kit = K1,
            ReceivedBy = Signed("Q", At(12)),
            InventoriedAt = At(11, 50),
            OpenLines = [7],
            GiverAcknowledges = giver,
            ReceiverAcknowledges = receiver,
        };

        Assert.Equal(["custody.open-line-not-acknowledged", "custody.open-line-not-acknowledged"], Try(P0, With([], []), Issue("I1", At(8))).Codes);
        Assert.Equal(["custody.open-line-not-acknowledged"], Try(P0, With([7], []), Issue("I1", At(8))).Codes);
        (RecordAnswer answer, _, CustodyRegister register) = Try(P0, With([7], [7]), Issue("I1", At(8)));
        Assert.Equal(RecordAnswer.Recorded, answer);
        Assert.Equal(new PersonId("Q"), register.HolderOf(K1, At(12)).Person);
    }

    // Given K1 signed out by P; when P tries to sign it in; then refuse: another person is needed.
    [Theory]
    [InlineData("P")]
    [InlineData("p.")]
    public void S60_Who_signed_it_out_may_not_sign_it_in_however_the_id_is_typed(string accepts)
    {
        (RecordAnswer answer, string[] codes, CustodyRegister register) = Try(P0, TurnIn("R1", At(16), acceptedBy: accepts, by: "Q"), Issue("I1", At(8)));

        Assert.Equal((RecordAnswer.Refused, "custody.signed-it-out"), (answer, Assert.Single(codes)));
        Assert.Equal(new PersonId("P"), register.HolderOf(K1, At(17)).Person);
    }

    // A shift of one needs a procedure with a second party; the site says whether it has one.
    [Fact]
    public void S60_A_shift_of_one_may_take_back_with_a_witness_where_the_policy_says_so()
    {
        KitTurnIn alone = new() { Id = new EntryId("R1"), At = At(16), By = new PersonId("P"), Witness = new PersonId("Q"), Kit = K1, AcceptedBy = Signed("P", At(16)) };

        Assert.Equal(RecordAnswer.Refused, Try(P0, alone, Issue("I1", At(8))).Answer);
        Assert.Equal(RecordAnswer.Recorded, Try(P0 with { SinglePersonWithWitness = true }, alone, Issue("I1", At(8))).Answer);
    }

    // Given T2 logged into zone Z at 09:00 without an exit, and read in K1 at 15:55; when Z is to be closed; then Z is open by one.
    [Fact]
    public void S71_A_zone_balances_by_its_own_log_and_no_kit_closes_it()
    {
        var closing = new ZoneClosing { Id = new EntryId("Z9"), At = At(16), By = new PersonId("M"), Zone = new Place("Z") };
        (RecordAnswer answer, string[] codes, CustodyRegister register) = Try(P0, closing, Issue("I1", At(8)), Carry("Z1", At(9), CarriedDirection.In));

        Assert.Equal((RecordAnswer.Refused, "custody.zone-not-balanced"), (answer, Assert.Single(codes)));
        Assert.Equal(1, Assert.Single(register.BalanceOf(new Place("Z"), At(16))).Open);
        Assert.Equal(RecordAnswer.Recorded, Try(P0, closing, Carry("Z1", At(9), CarriedDirection.In), Carry("Z2", At(15), CarriedDirection.Out)).Answer);
    }

    [Fact]
    public void S71_More_out_than_in_keeps_a_zone_open_too()
    {
        var closing = new ZoneClosing { Id = new EntryId("Z9"), At = At(16), By = new PersonId("M"), Zone = new Place("Z") };

        Assert.Equal(["custody.zone-not-balanced"], Try(P0, closing, Carry("Z1", At(9), CarriedDirection.Out)).Codes);
    }

    // Given K1 in the tool room, last looked into yesterday; when the shifts change; then the kit is present, and that is all that is said.
    [Fact]
    public void S72_The_tool_room_inventory_says_where_the_box_is()
    {
        var inventory = new ToolRoomInventory
        {
            Id = new EntryId("TR1"),
            At = At(7),
            By = new PersonId("S1"),
            IncomingBy = Signed("S2", At(7)),
            Present = [K1],
        };
        CustodyRegister register = Register(inventory, Issue("I1", At(8)));

        Assert.Equal([KitPresenceState.Present, KitPresenceState.Unexplained], register.PresenceAt(At(7, 30)).Select(kit => kit.State));
        Assert.Equal([KitPresenceState.Out, KitPresenceState.Unexplained], register.PresenceAt(At(9)).Select(kit => kit.State));
        ToolRoomInventory alone = new() { Id = new EntryId("TR2"), At = At(7), By = new PersonId("S1"), Present = [K1] };
        Assert.Equal(["custody.not-received"], Try(P0, alone).Codes);
    }

    [Fact]
    public void S72_A_kit_that_is_here_although_somebody_signed_for_it_is_a_contradiction()
    {
        var inventory = new ToolRoomInventory { Id = new EntryId("TR1"), At = At(15), By = new PersonId("S1"), IncomingBy = Signed("S2", At(15)), Present = [K1] };

        KitPresence kit = Register(Issue("I1", At(8)), inventory).PresenceAt(At(15, 30))[0];

        Assert.Equal((KitPresenceState.Contradicted, new PersonId("P")), (kit.State, kit.Holder.Person));
    }

    // Given the whole bag gone at shift end; then one overdue kit with the person who answers, not one event a tool.
    [Fact]
    public void S69_An_absent_bag_is_one_overdue_kit_with_its_user()
    {
        CustodyRegister register = Register(Issue("I1", At(8)));

        Assert.Empty(register.KitsOverdueAt(At(16)));
        (KitId kit, CustodyHolder holder, DateTimeOffset due) = Assert.Single(register.KitsOverdueAt(At(16, 1)));
        Assert.Equal((K1, new PersonId("P"), At(16)), (kit, holder.Person, due));
    }

    // S53 where single issue from a travelling kit is banned: the loan itself is refused.
    [Fact]
    public void S53_A_loan_out_of_an_issued_kit_is_refused_where_the_policy_bans_it()
    {
        Assert.Equal(RecordAnswer.Recorded, Try(P0, Loan("L1", At(11)), Issue("I1", At(8))).Answer);
        Assert.Equal(["custody.loan-from-issued-kit"], Try(P0 with { LoanFromIssuedKitAllowed = false }, Loan("L1", At(11)), Issue("I1", At(8))).Codes);
    }

    [Fact]
    public void Every_refusal_has_a_code_and_can_be_recorded_as_a_fact()
    {
        CustodyRegister register = Register(Issue("I1", At(8)), Issue("I2", At(9), user: "Q"));

        RefusedEntry refused = Assert.Single(register.Refused);
        EntryRefusal fact = refused.ToEntry(new EntryId("F1"), At(9, 1), new PersonId("C"));

        Assert.Equal((new EntryId("I2"), "kit-issue", "custody.already-issued"), (fact.Refused, fact.RefusedKind, Assert.Single(fact.Codes)));
        Assert.Equal(refused.Entry.Digest, fact.RefusedDigest);
    }

    [Theory]
    [InlineData("the borrower did not sign", "custody.not-received")]
    [InlineData("the borrower signed later", "custody.signed-later")]
    [InlineData("lender and borrower are one", "custody.same-person")]
    [InlineData("lent by somebody who does not answer for the kit", "custody.not-holder")]
    [InlineData("not of that kit", "custody.not-in-kit")]
    [InlineData("no due time", "custody.no-expected-return")]
    [InlineData("due before it goes out", "custody.due-before")]
    [InlineData("a chit", "custody.chit-not-accepted")]
    [InlineData("on a receipt already", "custody.on-receipt")]
    public void A_loan_that_may_not_be_is_refused_with_its_rule(string why, string code)
    {
        ToolLoan good = Loan("L1", At(11));
        ToolLoan loan = new()
        {
            Id = good.Id,
            At = good.At,
            By = why.StartsWith("lent by", StringComparison.Ordinal) ? new PersonId("X") : good.By,
            Tool = why == "not of that kit" ? new ToolId("U1") : good.Tool,
            Kit = good.Kit,
            ReceivedBy = why switch
            {
                "the borrower did not sign" => null,
                "the borrower signed later" => Signed("B", At(11, 30)),
                "lender and borrower are one" => Signed("P", At(11)),
                _ => good.ReceivedBy,
            },
            Due = why switch { "no due time" => null, "due before it goes out" => At(10), _ => good.Due },
            IsChit = why == "a chit",
        };
        CustodyEntry[] before = why == "on a receipt already" ? [Issue("I1", At(8)), Loan("L0", At(10))] : [Issue("I1", At(8))];

        Assert.Equal([code], Try(P0, loan, before).Codes);
    }

    // Whoever forgot to hand in the manifests is told so, and not that the tool is in the wrong kit.
    [Fact]
    public void A_loan_out_of_a_kit_without_a_manifest_is_refused_as_such()
    {
        var book = new CustodyBook(P0, KitRegister.Empty);

        Assert.Equal(RecordAnswer.Refused, book.Record(Loan("L1", At(11)), out IReadOnlyList<RecordIssue> issues));
        Assert.Equal(["custody.unknown-kit"], Codes(issues));
    }

    [Fact]
    public void Roles_are_dated_who_held_it_then_may_sign()
    {
        CustodyPolicy policy = P0 with
        {
            RolesThatMayIssue = [new Role("custodian")],
            Roster = new RoleRoster([new RoleGrant { Person = new PersonId("C"), Role = new Role("custodian"), From = Day.AddDays(-10), Until = At(9) }]),
        };
        static KitIssue AsCustodian(DateTimeOffset at) => new()
        {
            Id = new EntryId("I1"),
            At = at,
            By = new PersonId("C"),
            Role = new Role("custodian"),
            Kit = K1,
            Revision = 1,
            ReceivedBy = Signed("P", at),
            ExpectedReturn = at.AddHours(8),
        };

        Assert.Equal(RecordAnswer.Recorded, Try(policy, AsCustodian(At(8, 59))).Answer);
        Assert.Equal(["custody.not-entitled"], Try(policy, AsCustodian(At(9))).Codes);
        Assert.Equal(["custody.not-entitled"], Try(policy, Issue("I1", At(8))).Codes);
    }

    [Fact]
    public void Tools_of_ones_own_are_a_setting_and_what_was_carried_in_is_answered_for()
    {
        static PersonalItem Knife(string id, DateTimeOffset at, CarriedDirection direction, bool registered) => new()
        {
            Id = new EntryId(id),
            At = at,
            By = new PersonId("M"),
            Item = "knife",
            Owner = new PersonId("P"),
            Quantity = new Quantity(1, Unit.Each),
            Direction = direction,
            IsTool = true,
            IsRegistered = registered,
        };

        Assert.Equal(["custody.personal-tool-not-allowed"], Try(P0, Knife("N1", At(8), CarriedDirection.In, registered: false)).Codes);
        Assert.Equal(["custody.personal-tool-not-allowed"], Try(P0 with { PersonalTools = PersonalToolRule.Forbidden }, Knife("N1", At(8), CarriedDirection.In, registered: true)).Codes);
        CustodyRegister register = Register(Knife("N1", At(8), CarriedDirection.In, registered: true), Knife("N2", At(15), CarriedDirection.Out, registered: true));
        (PersonId owner, ZoneBalance balance) = Assert.Single(register.PersonalItemsAt(At(12)));
        Assert.Equal((new PersonId("P"), 1m), (owner, balance.Open));
        Assert.Empty(register.PersonalItemsAt(At(15)));
    }

    // Where a site names who may issue, only they, or who answers for the kit, take a tool back from a receipt: a closure ends the exposure of the borrower.
    [Fact]
    public void A_receipt_is_closed_by_the_holder_of_the_kit_or_one_who_may_issue()
    {
        CustodyPolicy policy = CustodyPolicy.Default with { RolesThatMayIssue = [new Role("custodian")] };
        KitIssue plain = Issue("I1", At(7));
        KitIssue issue = new() { Id = plain.Id, At = plain.At, By = plain.By, Role = new Role("custodian"), Kit = plain.Kit, Revision = 1, ReceivedBy = plain.ReceivedBy, ExpectedReturn = plain.ExpectedReturn };
        ReceiptClosure By(string id, Signature accepted) => new() { Id = new EntryId(id), At = At(10), By = new PersonId("B"), Receipt = new EntryId("L1"), AcceptedBy = accepted };

        Assert.Equal(["custody.not-entitled"], Try(policy, By("C1", Signed("X", At(10))), issue, Loan("L1", At(9))).Codes);
        Assert.Equal(RecordAnswer.Recorded, Try(policy, By("C1", Signed("P", At(10))), issue, Loan("L1", At(9))).Answer);
        Assert.Equal(RecordAnswer.Recorded, Try(policy, By("C1", Signed("X", At(10), "custodian")), issue, Loan("L1", At(9))).Answer);
    }
}
