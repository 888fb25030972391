using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Identifiers;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Testing.Cases;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>
/// Evidence against accounting keeps its force when the session that gave it turns out unusable (property P05 of the trade's list): each test is told once with a good session and once
/// with the same session whose clock nobody checked, and the line is open both times.
/// </summary>
public sealed class UnusableSessionTests
{
    private static readonly TagId Former = World.TagOf("Z3");
    private static readonly ToolId T3 = new("T3");
    private static readonly Tid ChipA = Tid.Parse("E28011050000000A");
    private static readonly Tid ChipB = Tid.Parse("E28011050000000B");
    private static readonly DateTimeOffset Again = World.Start.AddMinutes(10);

    public static TheoryData<string, string> Doubts => new()
    {
        { "another chip number", ReconciliationReasons.WrongChip.Code },
        { "two chip numbers", ReconciliationReasons.TwoChips.Code },
        { "its retired tag", ReconciliationReasons.RetiredTagRead.Code },
        { "its identity in other bits", ReconciliationReasons.Reencoded.Code },
        { "its tag while it was being bound", ReconciliationReasons.BindingChanged.Code },
        { "its tag, which is a control tag", ReconciliationReasons.BoundControlTag.Code },
        { "its former tag, which is in quarantine", ReconciliationReasons.Quarantined.Code },
        { "it together with the other kit that lists it", ReconciliationReasons.CreditedToTwoKits.Code },
        { "it with the other kit that lists it", ReconciliationReasons.CreditedToTwoKits.Code },
    };

    [Theory]
    [MemberData(nameof(Doubts))]
    public void P05_What_a_session_heard_against_a_tool_stands_when_the_session_cannot_be_used(string heard, string code)
    {
        foreach (bool isUsable in (bool[])[true, false])
        {
            // Given: T3 read well at 16:05; at 15:55 a session heard something of it that no tool of this kit should say.
            World world = new World { AsOf = Again.AddMinutes(5) }.ReadAllBut().CountAll();
            ReadSession last = Last(world);
            ReadSession first = First(world, heard, isUsable);
            if (heard == "two chip numbers")
            {
                last = Last(world, ChipB);
            }

            // When, must conclude: with the later session alone it is accounted for; with the earlier one beside it a person looks.
            Assert.True(world.Reconcile(last).Lines[2].IsAccounted);
            ReconciliationResult result = world.Reconcile(first, last);
            LineConclusion line = result.Lines[2];
            Assert.Equal(isUsable ? LineState.Conflict : LineState.Weak, line.State);
            Assert.Equal(isUsable ? KitState.Discrepant : KitState.Open, result.Kit.State);
            Assert.Contains(line.Reasons, reason => reason.Code == code);
            Assert.Equal(!isUsable, line.Reasons.Any(static reason => reason.Kind == ReconciliationReasons.SaidByUnusable));
            Assert.Equal(NextStepKind.SettleIdentity, line.Next?.Kind);

            // A person's word ends it: the tool's own mark, read in the kit since.
            Assert.True(world.Sight("T3", "K1-3", World.K1, Again.AddMinutes(2)).Reconcile(first, last).Lines[2].IsAccounted);
        }
    }

    [Theory]
    [InlineData("another chip number")]
    [InlineData("its retired tag")]
    [InlineData("its identity in other bits")]
    public void S05_A_session_that_cannot_be_used_raises_no_conflict_by_itself(string heard)
    {
        World world = new World { AsOf = Again.AddMinutes(5) }.ReadAllBut().CountAll();
        ReconciliationResult result = world.Reconcile(First(world, heard, isUsable: false));

        Assert.Equal(LineState.NotAssessed, result.Lines[2].State);
        Assert.Equal(KitState.NoValidRead, result.Kit.State);
        Assert.DoesNotContain(result.Lines, static line => line.IsPositiveDifference);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void P05_A_former_tag_that_another_kits_session_explains_better_is_explained_by_it_whether_or_not_our_own_session_can_be_used(bool isUsable)
    {
        // Given: T3 was retagged at 16:00. At 15:55 K1 and K2 overlap at one station, and only K2's session heard the former tag. At 16:05 K1 alone, the new tag read well.
        World world = Retagged(World.Start.AddMinutes(5));
        ReadSession own = Made(world, isUsable, () => world.Session("S1", [World.K1], world.ControlReads()));
        DateTimeOffset meanwhile = World.Start.AddSeconds(15);
        ReadSession other = world.Session("S2", [World.K2], [new TagRead(Former, World.A1, meanwhile.AddSeconds(10))], meanwhile);

        // When, must conclude: weak, and why.
        LineConclusion line = world.Reconcile(own, other, Last(world)).Lines[2];
        Assert.Equal(LineState.Weak, line.State);
        Assert.Contains(line.Reasons, static reason => reason.Kind == ReconciliationReasons.BetterElsewhere);
    }

    [Theory]
    [InlineData(true, true)]
    [InlineData(false, true)]
    [InlineData(true, false)]
    public void P05_When_a_kit_left_is_a_note_of_a_person_and_stands_whatever_the_reader_did(bool isUsable, bool isHeard)
    {
        // Given: K2 stood by at 15:55 and was noted to leave, was away at 16:00, and was back at 16:05. T3 was heard only while it stood there.
        World world = new World { AsOf = Again.AddMinutes(5) }.ReadAllBut().CountAll().StandsNearby(World.K2, -60, 29);
        TagRead[] first = [.. world.ControlReads(), .. world.Reads.Where(read => isHeard || read.Tag != World.TagOf("T3"))];
        ReadSession before = Made(world, isUsable, () => world.Session("S1", [World.K1], first));
        world.Nearby.Clear();
        ReadSession clear = world.Session("S2", [World.K1], World.Later(world, 5, static read => read.Tag != World.TagOf("T3")), World.Start.AddMinutes(5));
        world.StandsNearby(World.K2, 540, null);

        // When, must conclude: neither a doubt about the session at 15:55 nor its silence makes K2 a worse explanation.
        LineConclusion line = world.Reconcile(before, clear, Last(world)).Lines[2];
        Assert.Equal(LineState.NotRead, line.State);
        Assert.Contains(line.Reasons, static reason => reason.Kind == ReconciliationReasons.OnlyWhileNearby);
    }

    [Theory]
    [InlineData("valid", SessionState.Valid)]
    [InlineData("one antenna not proved", SessionState.Degraded)]
    [InlineData("clock not checked", SessionState.Invalid)]
    public void P05_A_tool_read_later_with_another_kit_was_there_however_good_that_session_was(string how, SessionState state)
    {
        // Given: T3 has five looks at 15:55 with K1 and three on both antennas at 16:05 with K2, which is enough for the policy.
        World world = new World { AsOf = Again.AddMinutes(5) }.ReadAllBut().CountAll();
        ReadSession own = world.Session();
        world.ControlOnA2 = how != "one antenna not proved";
        TagRead[] there =
        [
            .. world.ControlReads().Select(static read => new TagRead(read.Tag, read.Antenna, read.FirstSeen.AddMinutes(10))),
            new(World.TagOf("T3"), World.A1, Again.AddSeconds(5)), new(World.TagOf("T3"), World.A2, Again.AddSeconds(7)), new(World.TagOf("T3"), World.A2, Again.AddSeconds(9)),
        ];
        ReadSession other = Made(world, how != "clock not checked", () => world.Session("S2", [World.K2], there, Again));
        Assert.Equal(state, other.Health.State);

        // When, must conclude: the earlier reads have lost their force.
        LineConclusion line = world.Reconcile(own, other).Lines[2];
        Assert.Equal(LineState.Weak, line.State);
        Assert.Contains(line.Reasons, static reason => reason.Kind == ReconciliationReasons.ReadLaterElsewhere);
    }

    [Theory]
    [InlineData("valid", SessionState.Valid)]
    [InlineData("one antenna not proved", SessionState.Degraded)]
    [InlineData("clock not checked", SessionState.Invalid)]
    public void P05_At_a_stated_risk_a_later_session_has_to_suffice_by_itself_however_good_it_was(string how, SessionState state)
    {
        // Given: T3 heard well at 15:55 and not at 16:00. It was heard again in a session that overlaps the second, whose clock nobody checked.
        World world = new World
        {
            AsOf = Again.AddMinutes(5),
            Policy = new ReconciliationPolicy { Presence = new StatedRiskPolicy { Model = new DetectionModel(0.05m, new BetaRate(1, 30), 0.01m, new BetaRate(0.02m, 60)), KitRiskLimit = 0.05m, LineRiskMax = 0.2m } },
        }.ReadAllBut().CountAll();
        ReadSession first = world.Session();
        ReadSession last = Made(world, isUsable: false, () => world.Session("S3", [World.K1], [Read(World.TagOf("T3"), second: 320)], World.Start.AddSeconds(315)));
        Assert.True(world.Reconcile(first).Lines[2].IsAccounted);
        world.ControlOnA2 = how != "one antenna not proved";
        ReadSession second = Made(world, how != "clock not checked", () => world.Session("S2", [World.K1], World.Later(world, 5, static read => read.Tag != World.TagOf("T3")), World.Start.AddMinutes(5)));
        Assert.Equal(state, second.Health.State);

        // When, must conclude: it may have been taken out before the second session, and a person looks.
        LineConclusion line = world.Reconcile(first, second, last).Lines[2];
        Assert.True(line.State == LineState.Weak, line.ToString());
        Assert.Contains(line.Reasons, static reason => reason.Kind == PresenceReasons.EarlierSetAside);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void P05_A_sighting_settles_no_doubt_that_arose_after_it(bool isUsable)
    {
        // Given: T3, which K2 lists too, read with K1 at 15:55, sighted in K1 at 16:00, and read again at 16:05 where both kits were presented.
        World world = new World { AsOf = Again.AddMinutes(5) }.ReadAllBut().CountAll().Sight("T3", "K1-3", World.K1, World.Start.AddMinutes(5));
        world.LaterRevisions.Add(AlsoInK2());
        ReadSession both = Made(world, isUsable, () => world.Session("S2", [World.K1, World.K2], World.Later(world, 10), Again));

        // When, must conclude: what the sighting said is older than the doubt.
        LineConclusion line = world.Reconcile(world.Session(), both).Lines[2];
        Assert.False(line.IsAccounted);
        Assert.Contains(line.Reasons, static reason => reason.Kind == ReconciliationReasons.CreditedToTwoKits);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void P05_A_seal_stands_for_no_tool_whose_former_tag_was_read_elsewhere_since(bool isUsable)
    {
        // Given: A3 lies under the seal of K1a. It was retagged at 16:00; its former tag was read with K9 an hour before, after the inventory that the seal closes.
        SubKitWorld shift = new SubKitWorld().ReadWell("T1", "T2", "CASE");
        World world = shift.World;
        world.AsOf = Again.AddMinutes(5);
        world.Policy = new ReconciliationPolicy { Inventory = new InventoryPolicy { SealsAccepted = true, SealAgeMax = TimeSpan.FromDays(30) } };
        world.Seals.Add(new SealRecord { Kit = SubKitWorld.K1a, Number = "N-77", InventoriedAt = World.Start.AddDays(-3), By = World.P, At = World.Start.AddDays(-3).AddMinutes(2), Witness = World.Q });
        world.SealChecks.Add(new SealCheck { Kit = SubKitWorld.K1a, NumberRead = "N-77", IsIntact = true, By = World.Q, At = World.End });
        world.Bindings.RemoveAll(static binding => binding.Tool.Value == "A3");
        world.Bindings.AddRange(Bindings(new ToolId("A3"), World.Start.AddMinutes(5)));
        ReadSession elsewhere = world.Session("S0", [World.K9], [new TagRead(Former, World.A1, World.Start.AddMinutes(-59.9))], World.Start.AddHours(-1));
        ReadSession own = Made(world, isUsable, () => world.Session("S1", [World.K1]));

        // When, must conclude: the seal holds for the others, and not for A3.
        LineConclusion[] inner = [.. shift.Reconcile(World.K1, elsewhere, own, Last(world)).Lines[2].Inner];
        Assert.Equal(LineState.NotAssessed, inner[2].State);
        Assert.Contains(inner[2].Reasons, static reason => reason.Kind == SealReasons.ReadElsewhere);
        Assert.All(inner.Where(static line => line.Line.Number != 3), static line => Assert.True(line.IsAccounted));
    }

    /// <summary>What was read at 15:55, read again ten minutes later in a session that nobody doubts.</summary>

    // Given: a session from 15:55 on in which T3's chip was another one right at the start; as of a little over an hour later the session is recent still, that instant is not.
    // When, must conclude: the doubt is as old as its session, so that a good session afterwards does not settle the line.
    [Theory]
    [InlineData(60, true)]
    [InlineData(61, false)]
    public void P05_A_doubt_grows_old_with_its_session_and_not_before(int minutesAfterTheSession, bool isDoubted)
    {
        World world = new World { AsOf = World.End.AddMinutes(minutesAfterTheSession) }.ReadAllBut().CountAll();
        world.Bindings.RemoveAll(static binding => binding.Tool == T3);
        world.Bindings.Add(World.Binding(World.TagOf("T3"), T3, ChipA));
        ReadSession first = world.Session("S1", [World.K1], [.. world.ControlReads(), Read(World.TagOf("T3"), ChipB, second: 1)]);
        ReadSession last = world.Session("S9", [World.K1], World.Later(world, 40), World.Start.AddMinutes(40));

        LineConclusion line = world.Reconcile(first, last).Lines[2];
        Assert.Equal(isDoubted, line.Reasons.Any(static reason => reason.Kind == ReconciliationReasons.WrongChip));
        Assert.Equal(!isDoubted, line.IsAccounted);
    }

    // Given: later the other kit's session at another station heard T3 as well, each report under a number that another tag's report had just before.
    // When, must conclude: whichever came first, T3 was read later elsewhere.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void S94_What_was_heard_elsewhere_does_not_hang_on_the_order_of_reports_with_one_number(bool isOtherFirst)
    {
        World world = new World { AsOf = Again.AddMinutes(5) }.ReadAllBut();
        ReadSession own = world.Session("S1", [World.K1], [.. world.ControlReads(), .. world.Reads]);
        TagRead[] theirs = [.. World.Later(world, 10, static read => read.Tag == World.TagOf("T3")).SelectMany((read, i) =>
        {
            TagRead[] two = [read with { ReportId = i }, new TagRead(Former, read.Antenna, read.FirstSeen.AddMilliseconds(1)) { ReportId = i }];
            return isOtherFirst ? two.Reverse() : two;
        })];
        ReadSession elsewhere = world.Session("S2", [World.K2], theirs, Again);

        LineConclusion line = world.Reconcile(own, elsewhere).Lines[2];
        Assert.False(line.IsAccounted);
        Assert.Contains(line.Reasons, static reason => reason.Kind == ReconciliationReasons.ReadLaterElsewhere);
    }

    private static ReadSession Last(World world, Tid chip = default) => world.Session(
        "S9", [World.K1], [.. World.Later(world, 10).Select(read => read.Tag == World.TagOf("T3") ? new TagRead(read.Tag, read.Antenna, read.FirstSeen) { Strength = read.Strength, Tid = chip } : read)], Again);

    private static ReadSession First(World world, string heard, bool isUsable)
    {
        IEnumerable<TagRead> reads = world.ControlReads().Concat(world.Reads.Where(static read => read.Tag != World.TagOf("T3")));
        KitId[] kits = [World.K1];
        switch (heard)
        {
            case "another chip number":
                world.Bindings.RemoveAll(static binding => binding.Tool == T3);
                world.Bindings.Add(World.Binding(World.TagOf("T3"), T3, ChipA));
                reads = reads.Append(Read(World.TagOf("T3"), ChipB));
                break;
            case "two chip numbers":
                reads = reads.Append(Read(World.TagOf("T3"), ChipA));
                break;
            case "its retired tag":
                world.Bindings.Add(new TagBinding { Tag = Former, Tool = T3, From = World.Start.AddYears(-2), Until = World.Start.AddDays(-10), BoundBy = World.Q });
                reads = reads.Append(Read(Former));
                break;
            case "its identity in other bits":
                string bits = World.TagOf("T3").Epc.ToString();
                reads = reads.Append(Read(TagId.FromEpc(Epc.Parse(string.Concat(bits.AsSpan(0, 2), "2", bits.AsSpan(3))))));
                break;
            case "its tag while it was being bound":
                world.Bindings.RemoveAll(static binding => binding.Tool == T3);
                world.Bindings.Add(new TagBinding { Tag = World.TagOf("T3"), Tool = T3, From = World.Start.AddSeconds(8), BoundBy = World.Q });
                reads = reads.Concat([Read(World.TagOf("T3"), second: 7), Read(World.TagOf("T3"), second: 9)]);
                break;
            case "its tag, which is a control tag":
                return Controlled(isUsable, world.Policy.Sessions);
            case "its former tag, which is in quarantine":
                world.Bindings.RemoveAll(static binding => binding.Tool == T3);
                world.Bindings.AddRange(Bindings(T3, World.Start.AddMinutes(5), World.TagOf("T3")));
                world.Quarantines.Add(new BindingQuarantine { Tag = Former, Tool = T3, From = World.Start.AddMinutes(-5), By = World.Q, Reason = "mark and tag differ" });
                break;
            case "it together with the other kit that lists it":
                world.LaterRevisions.Add(AlsoInK2());
                kits = [World.K1, World.K2];
                reads = reads.Append(Read(World.TagOf("T3")));
                break;
            default:
                world.LaterRevisions.Add(AlsoInK2());
                kits = [World.K2];
                reads = reads.Append(Read(World.TagOf("T3")));
                break;
        }

        return Made(world, isUsable, () => world.Session("S1", kits, reads));
    }

    /// <summary>A session whose clock was checked or not.</summary>
    private static ReadSession Made(World world, bool isUsable, Func<ReadSession> make)
    {
        world.ClockBefore = world.ClockAfter = isUsable ? TimeSpan.Zero : null;
        ReadSession session = make();
        world.ClockBefore = world.ClockAfter = TimeSpan.Zero;
        Assert.Equal(isUsable, session.IsUsable);
        return session;
    }

    private static TagRead Read(TagId tag, Tid chip = default, double second = 6) => new(tag, World.A1, World.Start.AddSeconds(second)) { Tid = chip };

    /// <summary>At another station, of which the tag of T3 is a control tag.</summary>
    private static ReadSession Controlled(bool isUsable, SessionPolicy policy)
    {
        ReadSession session = new SessionCase
        {
            Id = new SessionId("S1"),
            Station = new ReadStation { Id = new StationId("R2"), Antennas = [World.A1], ControlTags = [new ControlTag(World.TagOf("T3"), World.A1)] },
            Kits = [World.K1],
            From = World.Start,
            To = World.End,
            ClockOffset = isUsable ? TimeSpan.Zero : null,
        }.WithControlReads(TimeSpan.FromSeconds(1)).Close(policy);
        Assert.Equal(isUsable, session.IsUsable);
        return session;
    }

    private static KitManifest AlsoInK2() => new(World.K2, 2, "also lists T3", World.Start.AddDays(-10), new Signature { By = new PersonId("S"), At = World.Start.AddDays(-10) },
        [new ToolLine { Number = 1, Tool = new Tool { Id = T3, Description = "tool 3", Mark = "K1-3" } }]);

    /// <summary>T3 wore its former tag until an instant and its own from then on; its own is read well.</summary>
    private static World Retagged(DateTimeOffset at)
    {
        World world = new World { AsOf = Again.AddMinutes(5) }.ReadAllBut().CountAll();
        world.Bindings.RemoveAll(static binding => binding.Tool == T3);
        world.Bindings.AddRange(Bindings(T3, at, World.TagOf("T3")));
        return world;
    }

    private static TagBinding[] Bindings(ToolId tool, DateTimeOffset at, TagId? tag = null) =>
    [
        new() { Tag = Former, Tool = tool, From = World.Start.AddYears(-1), Until = at, BoundBy = World.Q },
        new() { Tag = tag ?? World.TagOf(tool.Value), Tool = tool, From = at, BoundBy = World.Q },
    ];
}
