using System;
using System.Linq;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>Scenarios about what stood around the station and when reads were made, by id.</summary>
public sealed class SessionScenarioTests
{
    [Fact]
    public void S09_A_wet_kit_is_reported_as_measured_with_one_hint()
    {
        // Given: the tools were rinsed; 5 of 12 are silent, 4 weak, the rest read, all 12 dB below their own baselines.
        World world = new World().WithHistory();
        foreach (string tool in new[] { "T1", "T2", "T3", "H13" })
        {
            world.ReadAt(World.TagOf(tool), World.A1, World.Baseline - 12, 5, 7).ReadAt(World.TagOf(tool), World.A2, World.Baseline - 12, 9);
        }

        foreach (string tool in new[] { "T4", "T5", "T6", "T7" })
        {
            world.ReadAt(World.TagOf(tool), World.A1, World.Baseline - 14, 8);
        }

        ReconciliationResult result = world.Reconcile();

        Assert.Equal((5, 4, 3), (result.Kit.CountOf(LineState.NotRead), result.Kit.CountOf(LineState.Weak), result.Kit.CountOf(LineState.Accounted)));
        Finding hint = Assert.Single(result.Findings, finding => finding.Level == FindingLevel.Kit);
        Assert.Equal(ReconciliationReasons.Attenuated.Code, hint.Code);
        Assert.Contains("wet", hint.ToString(), StringComparison.Ordinal);
        Assert.Equal([4, 5, 6, 7, 8, 9, 10, 11, 12], hint.LineNumbers);
        Assert.DoesNotContain(result.Findings, finding => finding.Code == ReconciliationReasons.BrieflyHeard.Code);
    }

    [Fact]
    public void S10_A_tool_in_a_pocket_is_weak_and_the_hint_names_persons()
    {
        // Given: T7 is in P's chest pocket: two reads on A2 while P stands by, none when P steps away.
        ReconciliationResult result = new World().ReadAllBut("T7").CountAll().Read("T7", World.A2, 5, 6).Reconcile();

        Assert.Equal(LineState.Weak, result.Lines[6].State);
        Assert.Equal(KitState.Open, result.Kit.State);
        Finding hint = Assert.Single(result.Findings, finding => finding.Code == ReconciliationReasons.BrieflyHeard.Code);
        Assert.Equal([7], hint.LineNumbers);
        Assert.Contains("person", hint.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void S10_A_weak_tag_that_answers_now_and_then_all_through_the_session_gets_no_such_hint()
    {
        ReconciliationResult result = new World().ReadAllBut("T7").Read("T7", World.A2, 3, 26).Reconcile();

        Assert.Equal(LineState.Weak, result.Lines[6].State);
        Assert.DoesNotContain(result.Findings, finding => finding.Code == ReconciliationReasons.BrieflyHeard.Code);
    }

    [Fact]
    public void S11_A_read_in_the_open_neighbours_session_proves_nearness_and_not_return()
    {
        // Given: K2's door stands open; in K2's session T3 of K1 gets 2 reads. When: K1 is reconciled later and T3 is absent.
        World world = new World().ReadAllBut("T3").CountAll();
        World atNeighbour = new World().ReadWell("U1", "U2").Read("T3", World.A1, 5, 6);
        ReadSession ofK2 = atNeighbour.Session("S-K2", [World.K2], [.. atNeighbour.ControlReads().Concat(atNeighbour.Reads).Select(read => Shifted(read, -600))], World.Start.AddSeconds(-600));
        ReconciliationResult result = world.Reconcile(world.Session(), ofK2);

        Assert.Equal((LineState.NotRead, KitState.Open), (result.Lines[2].State, result.Kit.State));
        Finding hint = Assert.Single(result.Findings, finding => finding.Code == ReconciliationReasons.Proximity.Code);
        Assert.Equal([3], hint.LineNumbers);
        Assert.Contains("R1", hint.ToString(), StringComparison.Ordinal);
        Assert.Contains("2026-03-02 14:45:06", hint.ToString(), StringComparison.Ordinal);
        Assert.Equal(0, result.Lines[2].Evidence.LookCount);
    }

    [Fact]
    public void S94_A_second_pass_with_the_neighbour_moved_away_separates_it_from_the_bag()
    {
        // Given: T3 lies in K2's bag, whose door stands open next to R1; in K1's session T3 gets 5 reads, all on A2.
        World world = new World().ReadAllBut("T3").CountAll().Read("T3", World.A2, 5, 6, 7, 8, 9).StandsNearby(World.K2, -60, null);
        ReconciliationResult first = world.Reconcile();
        Assert.Equal(LineState.Weak, first.Lines[2].State);
        Assert.Contains(first.Findings, finding => finding.Code == ReconciliationReasons.NeighbourNearby.Code);

        // When: a second pass, with K2 moved away, does not read T3.
        World moved = new World().ReadAllBut("T3").CountAll().Read("T3", World.A2, 5, 6, 7, 8, 9).StandsNearby(World.K2, -60, 14);
        moved.PassStarts.Add(World.Start.AddSeconds(15));
        ReadInSecondPass(moved, "T1", "T2", "T4", "T5", "T6", "T7", "T8", "T9", "T10", "T11", "T12", "H13");
        ReconciliationResult second = moved.Reconcile();

        Assert.Equal(LineState.NotRead, second.Lines[2].State);
        Assert.Single(second.ChaseList);
        Assert.Contains(second.Lines[2].Reasons, reason => reason.Code == ReconciliationReasons.OnlyWhileNearby.Code
            && reason.ToString().Contains("only while kit K2 stood there", StringComparison.Ordinal));
        Assert.DoesNotContain(second.Findings, finding => finding.Code == ReconciliationReasons.NeighbourNearby.Code);
        Assert.Equal(KitState.Open, second.Kit.State);
    }

    [Fact]
    public void S94_Looks_made_only_beside_the_neighbour_are_told_as_not_counted_and_send_the_search_there()
    {
        // Given: T3 and T5 are read in every past session; T3 is heard only beside K2, T5 not at all.
        World world = new World().ReadAllBut("T3", "T5").CountAll().Read("T3", World.A2, 5, 6, 7, 8, 9).StandsNearby(World.K2, -60, 14);
        world.PassStarts.Add(World.Start.AddSeconds(15));
        ReadInSecondPass(world, "T1", "T2", "T4", "T6", "T7", "T8", "T9", "T10", "T11", "T12", "H13");
        world.History[World.TagOf("T3")] = new TagHistory(60, 60);
        world.History[World.TagOf("T5")] = new TagHistory(40, 40);

        // When, then: the line says that it was heard, where to look, and nothing about silence.
        ReconciliationResult result = world.Reconcile();
        LineConclusion t3 = result.Lines[2];
        Assert.Equal(LineState.NotRead, t3.State);
        Assert.Equal([ReconciliationReasons.OnlyWhileNearby.Code], t3.Reasons.Select(static reason => reason.Code));
        Assert.Contains("(5 looks), not in a pass without it: not counted", t3.Reasons[0].ToString(), StringComparison.Ordinal);
        Assert.Equal((NextStepKind.LookInKit, "look in kit K2 for mark K1-3"), (t3.Next!.Kind, t3.Next.ToString()));
        Assert.Equal((0, 5, World.Start.AddSeconds(9)), (t3.Evidence.LookCount, t3.Evidence.LooksNotCounted, t3.Evidence.LastSeen));

        // T5 is silent against its history and is looked for first.
        Assert.Contains(result.Lines[4].Reasons, reason => reason.Code == PresenceReasons.GoodHistory.Code);
        Assert.Equal(["5 NotRead", "3 NotRead"], result.ChaseList.Select(static line => $"{line.Label} {line.State}"));

        // A tag that was heard needs no replacement once the tool is sighted.
        Assert.DoesNotContain(world.Sight("T3", "K1-3").Reconcile().Findings, finding => finding.Code == ReconciliationReasons.TagToReplace.Code);
    }

    [Fact]
    public void S94_Even_reads_on_both_antennas_are_the_neighbours_when_the_clear_pass_is_silent()
    {
        World world = new World().ReadAllBut("T3").ReadWell("T3").StandsNearby(World.K2, -60, 14);
        Assert.True(world.Reconcile().Lines[2].IsAccounted);

        world.PassStarts.Add(World.Start.AddSeconds(15));
        Assert.Equal(LineState.NotRead, world.Reconcile().Lines[2].State);

        // A look in the clear pass shows that the tag is in reach without K2 as well.
        Assert.True(world.Read("T3", World.A1, 20).Reconcile().Lines[2].IsAccounted);
    }

    [Fact]
    public void S94_The_clear_pass_may_be_a_session_of_its_own_and_may_have_come_first_in_the_same_session()
    {
        World world = new World().ReadAllBut("T3").Read("T3", World.A2, 5, 6, 7, 8, 9).StandsNearby(World.K2, -60, 31);
        ReadSession with = world.Session("S1");
        World cleared = new World().ReadAllBut("T3");
        ReadSession without = cleared.Session("S2", [World.K1], [.. cleared.ControlReads().Concat(cleared.Reads).Select(read => Shifted(read, 40))], World.Start.AddSeconds(40));
        Assert.Equal(LineState.NotRead, world.Reconcile(with, without).Lines[2].State);

        World arrives = new World().ReadAllBut("T3").Read("T3", World.A2, 20, 21, 22, 23).StandsNearby(World.K2, 15, null);
        arrives.PassStarts.Add(World.Start.AddSeconds(15));
        Assert.Equal(LineState.NotRead, arrives.Reconcile().Lines[2].State);
    }

    [Fact]
    public void S94_A_pass_too_short_to_be_a_view_or_at_another_time_than_noted_separates_nothing()
    {
        World world = new World().ReadAllBut("T3").Read("T3", World.A2, 5, 6, 7, 8, 9).StandsNearby(World.K2, -60, 27);
        world.PassStarts.Add(World.Start.AddSeconds(27));
        Assert.Equal(LineState.Weak, world.Reconcile().Lines[2].State);
    }

    [Fact]
    public void S12_A_foreign_tool_touches_no_line_whatever_its_number_of_reads()
    {
        World plain = new World().ReadAllBut().CountAll(), with = new World().ReadAllBut().CountAll();
        for (int i = 0; i < 40; i++)
        {
            with.Read("U5", i % 2 == 0 ? World.A1 : World.A2, 3 + (i * 0.5));
        }

        Assert.Equal(ReconciliationPropertyTests.Describe(plain.Reconcile()), ReconciliationPropertyTests.Describe(with.Reconcile()));
        ReconciliationResult seenInside = with.Sight("U5", "K2-5", World.K1).Reconcile();
        Assert.Equal(KitState.Discrepant, seenInside.Kit.State);
        Assert.All(seenInside.Lines, line => Assert.True(line.IsAccounted));
    }

    [Fact]
    public void S14_Fewer_tags_than_half_the_kit_or_over_a_longer_time_are_no_kit_passing_by()
    {
        World few = new World().ReadAllBut().Read("V1", World.A2, 12).Read("V2", World.A2, 12.6);
        Assert.Equal(ReconciliationReasons.ForeignTools.Code, Assert.Single(few.Reconcile().Findings, finding => finding.Level == FindingLevel.Session).Code);

        World slow = new World().ReadAllBut();
        for (int i = 1; i <= 6; i++)
        {
            slow.Read($"V{i}", World.A2, 2 + (i * 3));
        }

        Assert.Equal(ReconciliationReasons.ForeignTools.Code, Assert.Single(slow.Reconcile().Findings, finding => finding.Level == FindingLevel.Session).Code);
    }

    [Fact]
    public void S15_The_near_miss_is_noted_with_the_tag_it_misses_and_changes_no_conclusion()
    {
        byte[] bits = new byte[12];
        Assert.True(World.TagOf("T6").Epc.TryWriteBytes(bits, out _));
        bits[11] ^= 4;
        TagId ghost = TagId.FromEpc(Identifiers.Epc.FromBytes(bits, 96));
        World world = new World().ReadAllBut("T6").ReadAt(ghost, World.A1, World.Baseline, 8);
        ReconciliationResult result = world.Reconcile();

        Finding note = Assert.Single(result.Findings, finding => finding.Code == ReconciliationReasons.NearMiss.Code);
        Assert.Equal([ghost, World.TagOf("T6")], note.Tags);
        Assert.Equal(ReconciliationPropertyTests.Describe(new World().ReadAllBut("T6").Reconcile()), ReconciliationPropertyTests.Describe(result));

        world.Policy = new ReconciliationPolicy { Findings = new FindingPolicy { NearMissTagsMax = 0 } };
        Assert.DoesNotContain(world.Reconcile().Findings, finding => finding.Code == ReconciliationReasons.NearMiss.Code);
    }

    [Fact]
    public void Unknown_tags_beyond_the_limit_are_not_compared_and_the_result_says_so()
    {
        var world = new World { Policy = new ReconciliationPolicy { Findings = new FindingPolicy { NearMissTagsMax = 3 } } };
        world.ReadAllBut();
        for (int i = 0; i < 5; i++)
        {
            world.ReadAt(TagId.FromEpc(Identifiers.Epc.Parse($"E2{i:X2}0000000000000000AAAA")), World.A1, -60, 5);
        }

        Finding limit = Assert.Single(world.Reconcile().Findings, finding => finding.Code == ReconciliationReasons.NearMissLimit.Code);
        Assert.Contains("3", limit.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void One_tag_model_that_is_silent_where_others_are_read_is_one_finding()
    {
        World world = new World().ReadAllBut("T1", "T7", "T12");
        foreach (string tool in new[] { "T1", "T7", "T12" })
        {
            world.Bindings.RemoveAll(binding => binding.Tool.Value == tool);
            world.Bindings.Add(new TagBinding { Tag = World.TagOf(tool), Tool = new ToolId(tool), From = World.Start.AddYears(-1), TagModel = "bolt tag, recessed" });
        }

        Finding finding = Assert.Single(world.Reconcile().Findings, finding => finding.Level == FindingLevel.Kit);
        Assert.Equal(ReconciliationReasons.SharedModel.Code, finding.Code);
        Assert.Equal([1, 7, 12], finding.LineNumbers);

        // One tool with such a tag that was read well shows that the model is not the cause.
        Assert.DoesNotContain(world.ReadWell("T12").Reconcile().Findings, found => found.Code == ReconciliationReasons.SharedModel.Code);
    }

    [Fact]
    public void S65_Reads_stamped_after_the_window_are_outside_it_and_leave_a_proximity_note_only()
    {
        World world = new World().ReadAllBut("T7").CountAll();
        var log = new ProximityLog(new StationId("R1"), world.Policy.Sessions);
        var builder = new ReadSessionBuilder(
            new Presentation
            {
                Id = new SessionId("S1"),
                Station = World.Station(),
                Kits = [World.K1],
                From = World.Start,
                Until = World.End,
                ReaderClockOffset = TimeSpan.Zero,
            },
            world.Policy.Sessions);
        foreach (TagRead read in world.ControlReads().Concat(world.Reads))
        {
            builder.Add(read);
        }

        // Within the grace a host still takes what arrives late; what is stamped after the end is outside however early it comes.
        Assert.True(World.End.AddSeconds(20) < world.Policy.Sessions.AcceptsUntil(World.End));
        foreach (double second in new[] { 31.0, 32, 33 })
        {
            var late = new TagRead(World.TagOf("T7"), World.A1, World.Start.AddSeconds(second));
            Assert.Equal(ReadPlacement.OutsideWindow, builder.Add(late));
            log.Add(late, World.End.AddSeconds(20));
        }

        ReadSession session = builder.Close(World.End, TimeSpan.Zero);
        world.Notes.AddRange(log.Notes);
        ReconciliationResult result = world.Reconcile(session);

        Assert.Equal(SessionState.Valid, session.Health.State);
        Assert.Equal(LineState.NotRead, result.Lines[6].State);
        ReadExplanation outside = Assert.Single(result.Reads, read => read.Tag == World.TagOf("T7"));
        Assert.Equal((ReadExplanationKind.OutsideWindow, 3L), (outside.Kind, outside.ReadCount));
        Assert.Equal([7], Assert.Single(result.Findings, finding => finding.Code == ReconciliationReasons.Proximity.Code).LineNumbers);
    }

    [Fact]
    public void S67_A_reader_that_falls_back_to_its_epoch_makes_the_session_invalid_and_not_the_bag_empty()
    {
        // Given: the reader rebooted 10 s into the session; its later stamps begin at its epoch, and it is set right before the second clock check.
        World world = new World().ReadAllBut().CountAll();
        TagRead[] stamped = [.. world.ControlReads().Concat(world.Reads).Select(read => read.FirstSeen < World.Start.AddSeconds(10) ? read
            : new TagRead(read.Tag, read.Antenna, new DateTimeOffset(1970, 1, 1, 0, 0, 0, TimeSpan.Zero) + (read.FirstSeen - World.Start)) { Strength = read.Strength })];
        ReadSession session = world.Session(reads: stamped);
        ReconciliationResult result = world.Reconcile(session);

        Assert.Equal(SessionState.Invalid, session.Health.State);
        Assert.Contains(session.Health.Reasons, reason => reason.Code == SessionReasons.StampsFarOutside.Code);
        Assert.Equal(KitState.NoValidRead, result.Kit.State);
        Assert.All(result.Lines.Take(12), line => Assert.Equal(LineState.NotAssessed, line.State));
        Assert.DoesNotContain(result.Findings, finding => finding.Code == ReconciliationReasons.NotPresentedOrShielded.Code);

        // The same when the jump shows in the second clock check only.
        world.ClockAfter = TimeSpan.FromDays(-20_500);
        Assert.Equal(SessionState.Invalid, world.Session(reads: stamped.Where(read => read.FirstSeen.Year > 2000)).Health.State);
    }

    [Fact]
    public void S67_Arrival_times_salvage_it_only_where_the_site_accepts_them_and_then_degraded()
    {
        // When: the host places the same reads by their arrival. The policy P0 does not accept that.
        World Arrived() => new World { TimeSource = ReadTimeSource.HostArrival, ClockBefore = null, ClockAfter = null }.ReadAllBut().CountAll();
        Assert.Equal(KitState.NoValidRead, Arrived().Reconcile().Kit.State);
        Assert.Contains(Arrived().Session().Health.Reasons, reason => reason.Code == SessionReasons.ArrivalTimesNotAccepted.Code);

        World accepted = Arrived();
        accepted.Policy = new ReconciliationPolicy { Sessions = new SessionPolicy { HostArrivalAccepted = true } };
        Assert.Equal(SessionState.Degraded, accepted.Session().Health.State);
        Assert.All(accepted.Reconcile().Lines.Take(12), line => Assert.Equal(LineState.Weak, line.State));

        accepted.PassStarts.Add(World.Start.AddSeconds(8));
        Assert.All(accepted.Reconcile().Lines.Take(12), line => Assert.Equal(AccountingBasis.Read, line.Basis));
    }

    [Theory]
    [InlineData(null, 420)]
    [InlineData(420, null)]
    [InlineData(420, 300)]
    public void S68_An_offset_that_is_unknown_or_changes_gives_no_valid_read(int? before, int? after)
    {
        World world = new World
        {
            ClockBefore = before is { } a ? TimeSpan.FromSeconds(a) : null,
            ClockAfter = after is { } b ? TimeSpan.FromSeconds(b) : null,
        }.ReadAllBut();
        ReadSession session = world.Session(reads: world.ControlReads().Concat(world.Reads).Select(read => Shifted(read, 420)));

        Assert.Equal(KitState.NoValidRead, world.Reconcile(session).Kit.State);
    }

    [Fact]
    public void S32_A_quarantine_or_binding_recorded_now_for_now_leaves_the_explanation_of_the_earlier_read_as_it_was()
    {
        TagId fresh = World.TagOf("N1");
        World world = new World { AsOf = World.Start.AddMinutes(45) }.ReadAllBut().ReadAt(fresh, World.A1, -55, 5, 6, 7).ReadAt(fresh, World.A2, -55, 5, 6, 7);
        ReconciliationResult before = world.Reconcile();
        world.Bindings.Add(new TagBinding { Tag = fresh, Tool = new ToolId("T5"), From = World.Start.AddMinutes(35) });
        ReconciliationResult after = world.Reconcile();

        Assert.Equal(ReadExplanationKind.Unknown, Assert.Single(after.Reads, read => read.Tag == fresh).Kind);
        Assert.Equal(ReconciliationPropertyTests.Describe(before), ReconciliationPropertyTests.Describe(after));
    }

    [Fact]
    public void Several_kits_presented_in_one_session_are_each_judged_by_their_own_tags()
    {
        World world = new World().ReadAllBut().ReadWell("U1", "U2", "U3", "U4", "U5", "U6", "U7");
        ReadSession session = world.Session("S1", [World.K1, World.K2]);
        ReconciliationResult[] results = [.. new Reconciler(world.Policy).ReconcileAll(world.Input(session), [World.K1, World.K2, World.K9])];

        Assert.All(results[0].Lines.Take(12), line => Assert.Equal(AccountingBasis.Read, line.Basis));
        Assert.Equal([8], results[1].ChaseList.Select(line => line.Line.Number));
        Assert.DoesNotContain(results.SelectMany(result => result.Findings), finding => finding.Code == ReconciliationReasons.ForeignTools.Code);
        Assert.Equal(KitState.NoValidRead, results[2].Kit.State);
        Assert.Contains(results[2].Findings, finding => finding.Code == ReconciliationReasons.SessionOfOtherKits.Code);
    }

    [Fact]
    public void A_chip_number_read_in_one_session_does_not_vouch_for_the_looks_of_another()
    {
        var strict = new ReconciliationPolicy { Presence = new CountingPolicy { EpcOnlyAccepted = false } };
        World withChip = new World { Policy = strict }, without = new World { Policy = strict };
        withChip.Reads.Add(new TagRead(World.TagOf("T3"), World.A1, World.Start.AddSeconds(5)) { Tid = Identifiers.Tid.Parse("E28011052000A001") });
        without.ReadWell("T3");
        ReadSession first = withChip.Session("S1");
        ReadSession second = without.Session("S2", [World.K1], [.. without.ControlReads().Concat(without.Reads).Select(read => Shifted(read, 40))], World.Start.AddSeconds(40));

        LineConclusion t3 = withChip.Reconcile(first, second).Lines[2];
        Assert.Equal(LineState.Weak, t3.State);
        Assert.Contains(t3.Reasons, reason => reason.Code == PresenceReasons.EpcOnlyNotAccepted.Code);

        without.Reads.Add(new TagRead(World.TagOf("T3"), World.A1, World.Start.AddSeconds(12)) { Tid = Identifiers.Tid.Parse("E28011052000A001") });
        second = without.Session("S2", [World.K1], [.. without.ControlReads().Concat(without.Reads).Select(read => Shifted(read, 40))], World.Start.AddSeconds(40));
        Assert.True(withChip.Reconcile(first, second).Lines[2].IsAccounted);
    }

    private static void ReadInSecondPass(World world, params string[] tools)
    {
        foreach (string tool in tools)
        {
            world.Read(tool, World.A1, 20);
        }
    }

    private static TagRead Shifted(TagRead read, double seconds) =>
        new(read.Tag, read.Antenna, read.FirstSeen.AddSeconds(seconds)) { Strength = read.Strength, Tid = read.Tid };
}
