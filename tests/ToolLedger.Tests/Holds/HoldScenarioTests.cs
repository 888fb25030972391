using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Custody;
using ToolLedger.Holds;
using ToolLedger.Kits;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Tests.Reconciliation;
using ToolLedger.Tools;
using Xunit;
using static ToolLedger.Tests.Custody.CustodyScene;
using static ToolLedger.Tests.Holds.HoldScene;

namespace ToolLedger.Tests.Holds;

/// <summary>Holds: scenarios of the trade's tables by id, and the steps of a lost-tool event (US Air Force Instruction 21-101, 8.9.2). Persons and aircraft are invented.</summary>
public sealed class HoldScenarioTests
{
    private static readonly HoldPolicy P0 = HoldPolicy.Default;
    private static readonly EntryId M1 = new("M1");

    // S62: the hold is on B and C and the places between, from the declaration on, without anybody having to list them.
    [Fact]
    public void S62_A_declaration_holds_everything_that_is_exposed()
    {
        HoldStatus hold = Assert.Single(HoldScene.Register(Map(Afternoon(), Accounted("T7", At(10, 5))), Missing("M1", At(15, 55))).HeldAt(At(16)));

        Assert.Equal(["B", "C"], hold.Affected.Select(thing => thing.Equipment.Value));
        Assert.Equal((TimeSpan.FromMinutes(5), new TimeSpan(5, 55, 0)), (hold.SinceDeclaration, hold.SinceAccounting));

        // The texts for people name everything that is affected, and what is still to be done.
        Assert.StartsWith("M1 tool 7, declared missing by P at ", hold.ToString(), StringComparison.Ordinal);
        Assert.EndsWith($": held; affected: {string.Join("; ", hold.Affected)}; not found; to be released by a person who may", hold.ToString(), StringComparison.Ordinal);
        Assert.Equal($"since {RecordTime.ToText(At(10, 5))}: {string.Join("; ", hold.Exposure.Items)}", hold.Exposure.ToString());
    }

    [Fact]
    public void The_text_of_a_hold_says_how_far_it_has_come()
    {
        HoldPolicy policy = P0 with { NotificationsNeeded = ["shift lead"], SearchStepsNeeded = ["bay"] };
        HoldStatus found = Assert.Single(Try(policy, Found("F1", At(16)), Missing("M1", At(15, 55))).Register.HeldAt(At(16)));
        HoldStatus released = Try(P0, Release("R1", At(16, 10)), Missing("M1", At(15, 55)), Found("F1", At(16))).Register.Find(M1, At(17))!;

        Assert.EndsWith($"; found by Q at {RecordTime.ToText(At(16))}; to be told: shift lead; to be searched: bay; to be released by a person who may", found.ToString(), StringComparison.Ordinal);
        Assert.EndsWith($": released by S at {RecordTime.ToText(At(16, 10))}", released.ToString(), StringComparison.Ordinal);
    }

    // S64: T9 declared missing at 16:20, hold on; at 16:42 twelve reads arrive, stamped inside the window. The signed result is unchanged, what is new is told beside it, and the hold stays.
    [Fact]
    public void S64_A_late_read_changes_no_signed_result_and_lifts_no_hold()
    {
        World world = new World().ReadAllBut("T9").CountAll();
        ReconciliationResult atSignOff = world.Reconcile();
        SignedReconciliation signed = SignedReconciliation.Of(new EntryId("S-1"), atSignOff, new Signature { By = World.Q, At = world.AsOf });
        byte[] bytes = signed.Result.ToArray();
        var book = new HoldBook(P0, Roster, new ExposureMap(world.Input().Custody, signed.Accountings));
        book.Record(new MissingDeclaration { Id = M1, At = world.AsOf.AddMinutes(20), By = World.P, Description = "tool 9", Tool = new ToolId("T9"), Kit = World.K1 }, out _);

        ReconciliationResult late = world.ReadWell("T9").Reconcile();

        Assert.Equal((LineState.NotRead, LineState.Accounted), (atSignOff.Lines[8].State, late.Lines[8].State));
        Assert.Contains(signed.DifferencesTo(late), reason => reason.Code == "signed.other-line");
        Assert.Equal(bytes, signed.Result);
        Assert.Single(book.Live.HeldAt(world.AsOf.AddHours(5)));
        Assert.Equal(RecordAnswer.Refused, book.Record(Release("R1", world.AsOf.AddMinutes(50)), out IReadOnlyList<RecordIssue> issues));
        Assert.Equal(["hold.not-found"], Codes(issues));
    }

    // S73: Q signs T7 as found; minutes later the mark proves it is another kit's. Then FOUND is withdrawn by a second entry, the hold stands, both are kept.
    [Fact]
    public void S73_A_withdrawn_find_leaves_the_hold_and_both_entries()
    {
        var withdrawal = new FoundWithdrawal { Id = new EntryId("W1"), At = At(16, 20), By = new PersonId("Q"), Found = new EntryId("F1"), Reason = "the mark is K2-7" };
        (RecordAnswer answer, _, HoldRegister register) = Try(P0, withdrawal, Missing("M1", At(15, 55)), Found("F1", At(16, 10)));

        Assert.Equal(RecordAnswer.Recorded, answer);
        Assert.NotNull(register.Find(M1, At(16, 15))!.Found);
        Assert.Null(register.Find(M1, At(16, 20))!.Found);
        Assert.True(register.Find(M1, At(17))!.IsHeld);
        Assert.Equal(["M1", "F1", "W1"], register.Entries.Select(entry => entry.Id.Value));
        Assert.Equal(["hold.not-found"], Try(P0, Release("R1", At(17)), Missing("M1", At(15, 55)), Found("F1", At(16, 10)), withdrawal).Codes);
    }

    // S73 after the release: the hold is placed again by the withdrawal, and what was true in between stays told.
    [Fact]
    public void S73_A_find_that_is_withdrawn_after_the_release_places_the_hold_again()
    {
        HoldRegister register = HoldScene.Register(
            Map(Afternoon()), Missing("M1", At(15, 55)), Found("F1", At(16, 10)), Release("R1", At(16, 15)),
            new FoundWithdrawal { Id = new EntryId("W1"), At = At(16, 20), By = new PersonId("Q"), Found = new EntryId("F1"), Reason = "the mark is K2-7" });

        Assert.Empty(register.Refused);
        Assert.Equal([true, false, true], ((DateTimeOffset[])[At(16, 14), At(16, 17), At(16, 20)]).Select(at => register.Find(M1, at)!.IsHeld));
    }

    // S70: found in a wheel well; mark and tag show K9; K9 was signed COMPLETE three times since. Then the three sign-offs are contradicted and the exposure of each is open again.
    [Fact]
    public void S70_A_found_tool_contradicts_every_sign_off_since_it_was_last_truly_seen()
    {
        SignedReconciliation[] signOffs = [.. Enumerable.Range(0, 4).Select(day => SignedAt(At(9).AddDays(day - 4), $"S-{day}", isSighted: day == 0))];
        ExposureMap map = Map(
            Enumerable.Range(0, 4).Select(day => Visit($"V{day}", At(10).AddDays(day - 4), At(11).AddDays(day - 4), "A" + day)),
            signOffs.SelectMany(one => one.Accountings));
        FoundDeclaration found = Found("F1", At(16), hold: "", tool: "T7");
        Assert.Equal(["A3"], Equipment(map.Of(new ToolId("T7"), At(16))));

        IReadOnlyList<ContradictedSignOff> contradicted = SignOffReview.ContradictedBy(found, signOffs.Reverse());

        Assert.Equal(["S-1", "S-2", "S-3"], contradicted.Select(one => one.SignOff.Id.Value));
        Assert.Equal(["A0", "A1", "A2", "A3"], Equipment(SignOffReview.Reopened(found, contradicted, map)));
        Assert.Equal(["S-3"], SignOffReview.ContradictedBy(new FoundDeclaration
        {
            Id = new EntryId("F2"),
            At = At(16),
            By = new PersonId("Q"),
            Tool = new ToolId("T7"),
            MarkRead = "K1-7",
            LastSeenAt = At(9).AddDays(-2),
        }, signOffs).Select(one => one.SignOff.Id.Value));
    }

    [Fact]
    public void S70_A_tool_found_in_its_own_kit_contradicts_nothing() => Assert.Empty(SignOffReview.ContradictedBy(
        new FoundDeclaration { Id = new EntryId("F1"), At = At(16), By = new PersonId("Q"), Tool = new ToolId("T7"), InKit = World.K1 }, [SignedAt(At(9), "S-1", isSighted: false)]));

    // S51: a worker's own phone is gone; it is on no list. The event must be possible, with its exposure.
    [Fact]
    public void S51_A_thing_on_no_list_can_be_declared_missing_with_what_it_could_be_in()
    {
        var phone = new MissingDeclaration
        {
            Id = M1,
            At = At(13),
            By = new PersonId("P"),
            Description = "telephone, black",
            Owner = new PersonId("P"),
            Kit = K1,
            LastSeenAt = At(10, 5),
            TouchedSince = [new AffectedThing(new EquipmentId("D"))],
        };

        HoldStatus hold = Assert.Single(HoldScene.Register(Map(Afternoon()), phone).HeldAt(At(14)));

        Assert.Equal(["B", "C", "D"], hold.Affected.Select(thing => thing.Equipment.Value));
    }

    // S43: two of three fragments are bagged; the rules for a lost item cover the third.
    [Fact]
    public void S43_A_piece_of_a_tool_is_declared_like_a_tool()
    {
        var tip = new MissingDeclaration { Id = M1, At = At(15, 55), By = new PersonId("P"), Description = "tip of T7", Tool = new ToolId("T7"), Kit = K1, Pieces = 1 };

        Assert.Equal(["A", "B", "C"], HoldScene.Register(Map(Afternoon()), tip).HeldAt(At(16))[0].Affected.Select(thing => thing.Equipment.Value));
    }

    [Theory]
    [InlineData("by the declarer, who is entitled", "hold.declared-it")]
    [InlineData("by somebody without the role", "hold.not-entitled")]
    [InlineData("by somebody who says the role and does not hold it", "hold.not-entitled")]
    [InlineData("on a find that nobody declared", "hold.not-found")]
    [InlineData("as not found while the search goes on", "hold.search-goes-on")]
    [InlineData("as left in place, and nothing was", "hold.nothing-left-in-place")]
    [InlineData("before it was declared", "hold.not-held")]
    public void A_release_that_may_not_be_is_refused_and_the_hold_stands(string why, string code)
    {
        bool byDeclarer = why.StartsWith("by the declarer", StringComparison.Ordinal);
        List<HoldEntry> before = [Missing("M1", At(15, 55), by: byDeclarer ? "S" : "P")];
        if (why.StartsWith("by", StringComparison.Ordinal))
        {
            before.Add(Found("F1", At(16)));
        }

        HoldRelease release = why switch
        {
            "by somebody without the role" => Release("R1", At(17), by: "S", role: null),
            "by somebody who says the role and does not hold it" => Release("R1", At(17), by: "X"),
            "as not found while the search goes on" => Release("R1", At(17), ReleaseGround.NotFound),
            "as left in place, and nothing was" => Release("R1", At(17), ReleaseGround.LeftInPlace),
            "before it was declared" => Release("R1", At(15)),
            _ => Release("R1", At(17)),
        };

        (RecordAnswer answer, string[] codes, HoldRegister register) = Try(P0, release, before);

        Assert.Equal((RecordAnswer.Refused, code), (answer, Assert.Single(codes)));
        Assert.True(register.Find(M1, At(20))!.IsHeld);
    }

    // Steps 4 and 7 of the event: everyone told of it is told when it is found; step 9: only who may ends it.
    [Fact]
    public void Who_must_be_told_and_what_must_be_searched_is_asked_before_a_release()
    {
        HoldPolicy policy = P0 with { NotificationsNeeded = ["quality assurance"], SearchStepsNeeded = ["inaccessible areas"] };
        static HoldNotification Told(string id, DateTimeOffset at) => new() { Id = new EntryId(id), At = at, By = new PersonId("P"), Hold = M1, Told = "quality assurance" };
        var ended = new SearchDiscontinuation { Id = new EntryId("D1"), At = At(18), By = new PersonId("S"), Role = Authority, Hold = M1, Decision = "everything opened and looked at" };
        var step = new SearchStep { Id = new EntryId("ST1"), At = At(17), By = new PersonId("Q"), Hold = M1, Step = "inaccessible areas", Result = SearchResult.NotFound, Where = new Place("bay 3") };

        Assert.Equal(["hold.not-told"], Try(policy, Release("R1", At(19)), Missing("M1", At(15, 55)), Found("F1", At(16))).Codes);
        Assert.Equal(["hold.not-told-found"], Try(policy, Release("R1", At(19)), Missing("M1", At(15, 55)), Told("N1", At(15, 58)), Found("F1", At(16))).Codes);
        Assert.Equal(RecordAnswer.Recorded, Try(policy, Release("R1", At(19)), Missing("M1", At(15, 55)), Found("F1", At(16)), Told("N1", At(16, 5))).Answer);
        Assert.Equal(["hold.not-searched"], Try(policy, Release("R1", At(19), ReleaseGround.NotFound), Missing("M1", At(15, 55)), Told("N1", At(16)), ended).Codes);
        (RecordAnswer answer, _, HoldRegister register) = Try(policy, Release("R1", At(19), ReleaseGround.NotFound), Missing("M1", At(15, 55)), Told("N1", At(16)), step, ended);
        Assert.Equal(RecordAnswer.Recorded, answer);
        Assert.False(register.Find(M1, At(19))!.IsHeld);
        Assert.Equal(["quality assurance"], register.Find(M1, At(15, 57))!.NotTold);
        Assert.Equal(["inaccessible areas"], register.Find(M1, At(16, 30))!.NotSearched);
    }

    [Fact]
    public void What_is_affected_gets_less_only_by_a_named_decision_and_more_by_anybody()
    {
        static HoldNarrowing Narrow(string by, string? role) => new()
        {
            Id = new EntryId("NA1"),
            At = At(16, 30),
            By = new PersonId(by),
            Role = role is null ? default : new Role(role),
            Hold = M1,
            NotAffected = [new AffectedThing(new EquipmentId("B"))],
            Decision = "panel was closed and sealed before",
        };
        var marked = new HoldPlacement { Id = new EntryId("PL1"), At = At(16), By = new PersonId("P"), Hold = M1, Affected = [new AffectedThing(new EquipmentId("E"))] };

        Assert.Equal(["hold.not-entitled"], Try(P0, Narrow("P", null), Missing("M1", At(15, 55))).Codes);
        HoldRegister register = Try(P0, Narrow("S", "release authority"), Missing("M1", At(15, 55)), marked).Register;
        Assert.Equal(["A", "B", "C", "E"], register.Find(M1, At(16, 29))!.Affected.Select(thing => thing.Equipment.Value));
        Assert.Equal(["A", "C", "E"], register.Find(M1, At(16, 30))!.Affected.Select(thing => thing.Equipment.Value));
        Assert.Empty(register.HoldsOn(new AffectedThing(new EquipmentId("B")), At(17)));
        Assert.Single(register.HoldsOn(new AffectedThing(new EquipmentId("A")), At(17)));
    }

    [Fact]
    public void An_impoundment_is_released_by_its_own_authority()
    {
        HoldPolicy policy = P0 with { RolesThatMayReleaseImpound = [new Role("impoundment authority")] };
        var impound = new HoldPlacement { Id = new EntryId("PL1"), At = At(16), By = new PersonId("P"), Hold = M1, IsImpound = true };

        Assert.Equal(["hold.not-entitled"], Try(policy, Release("R1", At(17)), Missing("M1", At(15, 55)), Found("F1", At(15, 58)), impound).Codes);
    }

    // Steps 6 and 8: what is left where it cannot be reached is carried until it is recovered, also when the hold is released.
    [Fact]
    public void What_is_left_in_place_or_dropped_is_carried_until_it_is_recovered()
    {
        var left = new LeftInPlace
        {
            Id = new EntryId("LP1"),
            At = At(17),
            By = new PersonId("S"),
            Role = Authority,
            Hold = M1,
            Location = "behind frame 12, left",
            Equipment = new EquipmentId("B"),
            Image = Digest.Of("an image"u8),
            Decision = "no hazard",
        };
        var dropped = new DropRecord { Id = new EntryId("DR1"), At = At(14), By = new PersonId("M"), Description = "washer", Quantity = new Quantity(1, Unit.Each), Where = new Place("Z") };
        var recovered = new ItemRecovery { Id = new EntryId("IR1"), At = At(20), By = new PersonId("Q"), Item = left.Id };
        HoldRegister register = HoldScene.Register(Map(Afternoon()), Missing("M1", At(15, 55)), dropped, left, Release("R1", At(18), ReleaseGround.LeftInPlace), recovered);

        Assert.Empty(register.Refused);
        Assert.False(register.Find(M1, At(19))!.IsHeld);
        Assert.Equal(["DR1", "LP1"], register.CarriedAt(At(19)).Select(entry => entry.Id.Value));
        Assert.Equal(["DR1"], register.CarriedAt(At(20)).Select(entry => entry.Id.Value));
    }

    // Time limits are local; a directive of the sources sets none, one checklist an hour (section 2.6). Both clocks are shown.
    [Fact]
    public void Both_clocks_run_against_limits_of_the_site()
    {
        HoldPolicy policy = P0 with { HoldTimeMax = TimeSpan.FromHours(1), DeclarationTimeMax = TimeSpan.FromHours(2), NotificationsNeeded = ["operations centre"], NotificationTimeMax = TimeSpan.FromMinutes(15) };
        var register = new HoldRegister(policy, Roster, Map(Afternoon(), Accounted("T7", At(10, 5))), [Missing("M1", At(15, 55))]);

        Assert.Equal(["hold.late-declaration"], register.Find(M1, At(16))!.Late.Select(reason => reason.Code));
        Assert.Equal(["hold.late-notification", "hold.over-time", "hold.late-declaration"], register.Find(M1, At(17))!.Late.Select(reason => reason.Code));
        Assert.Contains("5 h 50 min", register.Find(M1, At(16))!.Late[0].ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("K1-8")]
    [InlineData(null)]
    public void A_tool_with_a_mark_is_found_by_that_mark(string? mark) =>
        Assert.Equal(["hold.other-mark"], Try(P0, Found("F1", At(16), mark: mark), Missing("M1", At(15, 55))).Codes);

    private static SignedReconciliation SignedAt(DateTimeOffset at, string id, bool isSighted)
    {
        KitManifest manifest = Manifest("K1", "T", 8);
        ReconciliationResult result = new Reconciler(new ReconciliationPolicy()).Reconcile(new ReconciliationInput
        {
            Kits = new KitRegister([manifest]),
            Subject = World.K1,
            AsOf = at,
            Inventory = new ToolLedger.Inventory.InventorySheet(new ToolLedger.Inventory.InventoryEntries
            {
                Sightings = [.. manifest.Lines.Where(line => isSighted || line.Number != 7).Select(line => new ToolLedger.Inventory.Sighting
                {
                    Tool = line.Tool!.Id, MarkRead = line.Tool.Mark!, By = new PersonId("P"), Witness = new PersonId("Q"), At = at, Where = new Place("bench"), InKit = World.K1,
                })],
            }),
            Sessions = isSighted ? [] : [ReadOf("T7", at)],
            Tags = new TagRegister([World.Binding(World.TagOf("T7"), new ToolId("T7"))]),
        });
        Assert.Equal(KitState.Complete, result.Kit.State);
        return SignedReconciliation.Of(new EntryId(id), result, Signed("Q", at));
    }

    private static ToolLedger.Reads.ReadSession ReadOf(string tool, DateTimeOffset at)
    {
        var world = new World();
        DateTimeOffset from = at.AddMinutes(-2);
        return world.Session("S", [World.K1], world.ReadWell(tool).ControlReads().Concat(world.Reads)
            .Select(read => new ToolLedger.Reads.TagRead(read.Tag, read.Antenna, from + (read.FirstSeen - World.Start))), from);
    }

    // A number that names no ground would be judged as none of them and written down as "not found".
    [Fact]
    public void A_ground_or_result_or_direction_that_does_not_exist_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(static () => Release("R1", At(17), (ReleaseGround)99));
        Assert.Throws<ArgumentOutOfRangeException>(static () =>
            new SearchStep { Id = new EntryId("T1"), At = At(9), By = new PersonId("Q"), Hold = new EntryId("M1"), Step = "cockpit", Result = (SearchResult)99 });
        Assert.Throws<ArgumentOutOfRangeException>(static () => Carry("Z1", At(9), (CarriedDirection)99));
        Assert.Throws<ArgumentOutOfRangeException>(static () => new PersonalItem
        {
            Id = new EntryId("I1"),
            At = At(9),
            By = new PersonId("P"),
            Item = "torch",
            Owner = new PersonId("P"),
            Quantity = new Quantity(1, Unit.Each),
            Direction = (CarriedDirection)99,
        });
    }
}
