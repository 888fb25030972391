using System;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>Which evidence counts: in time, in the right unit, of the right kit, and by a rule that may only withhold.</summary>
public sealed class EvidenceUseTests
{
    [Fact]
    public void A_session_older_than_the_policy_allows_settles_nothing_and_says_so()
    {
        World world = new World().ReadAllBut().CountAll();
        world.AsOf = World.End + world.Policy.Sessions.SessionAgeMax + TimeSpan.FromSeconds(1);
        ReconciliationResult result = world.Reconcile();

        Assert.Equal(KitState.NoValidRead, result.Kit.State);
        Assert.Contains(result.Findings, finding => finding.Code == ReconciliationReasons.SessionTooOld.Code);
        Assert.All(result.Reads, read => Assert.True(read.ReadCount > 0));
    }

    [Fact]
    public void A_session_that_ends_after_the_as_of_instant_is_not_looked_at()
    {
        World world = new World().ReadAllBut();
        world.AsOf = World.End.AddSeconds(-1);

        Assert.Contains(world.Reconcile().Findings, finding => finding.Code == ReconciliationReasons.SessionAfterAsOf.Code);
    }

    [Fact]
    public void A_count_older_than_the_policy_allows_is_shown_and_not_used()
    {
        World world = new World().ReadAllBut().CountAll();
        world.Counts.RemoveAll(count => count.LineNumber == 15);
        LineConclusion rags = world.Count(15, 6, "each", World.End - world.Policy.Inventory.EvidenceAgeMax - TimeSpan.FromHours(1)).Reconcile().Lines[14];

        Assert.Equal(LineState.NotAssessed, rags.State);
        Assert.Contains(rags.Reasons, reason => reason.Code == ReconciliationReasons.TooOld.Code);
    }

    [Fact]
    public void S49_A_count_in_another_unit_is_no_count()
    {
        World world = new World().ReadAllBut().CountAll();
        world.Counts.RemoveAll(count => count.LineNumber == 14);
        LineConclusion wire = world.Count(14, 10, "m").Reconcile().Lines[13];

        Assert.Equal(LineState.NotAssessed, wire.State);
        Assert.Contains(wire.Reasons, reason => reason.Code == ReconciliationReasons.OtherUnit.Code);
    }

    [Theory]
    [InlineData(0, LineState.Partial)]
    [InlineData(2, LineState.Conflict)]
    public void A_count_of_a_marked_tool_identifies_nothing_and_still_contradicts_its_reads(int counted, LineState expected)
    {
        ReconciliationResult result = new World().ReadAllBut().CountAll().Count(7, counted, "each").Reconcile();

        Assert.Equal(expected, result.Lines[6].State);
        Assert.Equal(KitState.Discrepant, result.Kit.State);
    }

    [Theory]
    [InlineData(0, LineState.Partial)]
    [InlineData(1, LineState.Accounted)]
    [InlineData(2, LineState.Conflict)]
    public void A_tool_without_mark_and_tag_is_accounted_for_by_a_count_of_one_only(int counted, LineState expected)
    {
        var world = new World { IsT9Marked = false };
        world.Bindings.RemoveAll(binding => binding.Tool.Value == "T9");
        world.ReadAllBut("T9").CountAll().Count(9, counted, "each");

        Assert.Equal(expected, world.Reconcile().Lines[8].State);
    }

    [Fact]
    public void A_later_session_that_does_not_hear_the_tool_takes_the_earlier_reads_their_force()
    {
        World world = new World().ReadAllBut();
        DateTimeOffset later = World.Start.AddMinutes(10);
        world.AsOf = later.AddMinutes(2);
        ReadSession first = world.Session("S1");
        ReadSession silent = world.Session("S2", [World.K1], [.. world.ControlReads().Select(read => new TagRead(read.Tag, read.Antenna, read.FirstSeen.AddMinutes(10)))], later);
        ReadSession dead = world.Session("S3", [World.K1], [], later);

        Assert.True(world.Reconcile(first).Lines[0].IsAccounted);
        foreach (ReadSession second in new[] { silent, dead })
        {
            LineConclusion line = world.Reconcile(first, second).Lines[0];
            Assert.Equal(LineState.Weak, line.State);
            Assert.Contains(line.Reasons, reason => reason.Code == ReconciliationReasons.LaterSilent.Code);
        }
    }

    [Theory]
    [InlineData(420, KitState.Open)]
    [InlineData(2_592_000, KitState.NoValidRead)]
    public void S68_A_constant_offset_is_corrected_and_said_but_not_one_that_could_revive_an_old_file(int seconds, KitState expected)
    {
        var ahead = TimeSpan.FromSeconds(seconds);
        World world = new World { ClockBefore = ahead, ClockAfter = ahead }.ReadAllBut();
        TagRead[] stamped = [.. world.ControlReads().Concat(world.Reads).Select(read => new TagRead(read.Tag, read.Antenna, read.FirstSeen + ahead))];
        ReadSession session = world.Session(reads: stamped);

        ReconciliationResult result = world.Reconcile(session);
        Assert.Equal(expected, result.Kit.State);
        Assert.Equal(expected == KitState.Open ? 12 : 0, result.Lines.Count(line => line.Basis == AccountingBasis.Read));
        Assert.Contains(session.Health.Reasons, reason => reason.Code == SessionReasons.ClockCorrected.Code);
    }

    [Fact]
    public void A_session_built_under_another_policy_is_not_used_and_says_so()
    {
        World world = new World().ReadAllBut();
        ReadSession loose = world.Session();
        world.Policy = new ReconciliationPolicy { Sessions = new SessionPolicy { SlotLength = TimeSpan.FromSeconds(1) } };

        ReconciliationResult result = world.Reconcile(loose);
        Assert.Equal(KitState.NoValidRead, result.Kit.State);
        Assert.Contains(result.Findings, finding => finding.Code == ReconciliationReasons.SessionOfOtherPolicy.Code);
    }

    [Fact]
    public void Entries_that_match_nothing_are_findings_and_not_swallowed()
    {
        World world = new World().ReadAllBut().CountAll().Count(77, 1, "each").Count(15, 6, "each", World.End.AddHours(1)).Sight("NOBODY-1", "X1");
        world.Counts.Add(new LineCount { Kit = new KitId("K77"), LineNumber = 1, Quantity = new Quantity(1, Unit.Each), By = World.P, At = World.End });
        world.Signatures.Add(new Signature { By = World.Q, At = World.Start });

        Assert.Equal(5, world.Reconcile().Findings.Count(finding => finding.Code == ReconciliationReasons.EntryNotUsed.Code));
    }

    [Theory]
    [InlineData("p", true)]
    [InlineData("P-", true)]
    [InlineData("Q2", false)]
    public void A_variant_of_the_same_id_is_no_second_person(string witness, bool same)
    {
        World world = new World().ReadAllBut();
        foreach ((int line, decimal amount, string unit) in new[] { (13, 10m, "each"), (14, 1m, "spool"), (15, 6m, "each") })
        {
            world.Counts.Add(new LineCount
            {
                Kit = World.K1,
                LineNumber = line,
                Quantity = new Quantity(amount, new Unit(unit)),
                By = World.P,
                Witness = new PersonId(witness),
                At = World.End,
            });
        }

        Assert.Equal(same ? KitState.Open : KitState.Complete, world.Reconcile().Kit.State);
    }

    [Fact]
    public void A_signature_made_before_the_last_count_adds_no_person()
    {
        World world = new World().ReadAllBut().CountAll();
        LineCount[] alone = [.. world.Counts.Select(count => new LineCount { Kit = count.Kit, LineNumber = count.LineNumber, Quantity = count.Quantity, By = World.P, At = count.At })];
        world.Counts.Clear();
        world.Counts.AddRange(alone);
        world.Signatures.Add(new Signature { By = World.Q, At = World.End.AddSeconds(-1) });
        Assert.Equal(KitState.Open, world.Reconcile().Kit.State);

        world.Signatures.Add(new Signature { By = World.Q, At = World.End.AddSeconds(1) });
        Assert.Equal(KitState.Complete, world.Reconcile().Kit.State);
    }

    [Fact]
    public void A_tag_last_heard_longer_ago_than_the_age_allowed_settles_nothing_even_in_a_session_that_goes_on()
    {
        var world = new World { Policy = new ReconciliationPolicy { Sessions = new SessionPolicy { SessionAgeMax = TimeSpan.FromSeconds(20) } } };
        world.AsOf = World.End;
        world.ReadAllBut("T7").Read("T7", World.A1, 1, 2).Read("T7", World.A2, 3);
        world.ReadAllBut("T7", "T8").Read("T8", World.A1, 12, 13).Read("T8", World.A2, 14);
        ReconciliationResult result = world.Reconcile();

        Assert.False(result.Lines[6].IsAccounted);
        Assert.True(result.Lines[7].IsAccounted);
    }

    [Fact]
    public void A_count_of_one_does_not_identify_a_marked_tool()
    {
        LineConclusion t7 = new World().ReadAllBut("T7").Count(7, 1, "each").Reconcile().Lines[6];

        Assert.Equal(LineState.NotRead, t7.State);
        Assert.Contains(t7.Reasons, reason => reason.Code == ReconciliationReasons.CountNotIdentity.Code);
    }

    [Fact]
    public void A_kit_settled_by_one_person_alone_stays_open_and_by_two_is_complete_without_a_read()
    {
        var world = new World();
        for (int i = 1; i <= 12; i++)
        {
            world.Sight($"T{i}", $"K1-{i}");
        }

        foreach ((int line, decimal amount, string unit) in new[] { (13, 10m, "each"), (14, 1m, "spool"), (15, 6m, "each") })
        {
            world.Counts.Add(new LineCount { Kit = World.K1, LineNumber = line, Quantity = new Quantity(amount, new Unit(unit)), By = World.Q, At = World.End });
        }

        ReconciliationResult alone = world.Reconcile([]);
        Assert.Equal(KitState.Open, alone.Kit.State);
        Assert.Contains(alone.Kit.Reasons, reason => reason.Code == ReconciliationReasons.KitMorePersons.Code);

        world.Signatures.Add(new Signature { By = World.P, At = World.End.AddSeconds(90) });
        ReconciliationResult two = world.Reconcile([]);
        Assert.Equal(KitState.Complete, two.Kit.State);
        Assert.True(two.NoReadUsed);
    }

    [Fact]
    public void S11_A_read_in_another_kits_session_is_a_hint_and_no_evidence()
    {
        World world = new World().ReadAllBut("T3");
        ReadSession own = world.Session();
        ReadSession other = new World().Read("T3", World.A1, 5, 6).Session("S-K2", World.K2);
        ReconciliationResult result = world.Reconcile(own, other);

        Assert.Equal(LineState.NotRead, result.Lines[2].State);
        Assert.Contains(result.Findings, finding => finding.Code == ReconciliationReasons.Proximity.Code && finding.LineNumbers.SequenceEqual([3]));
    }

    [Fact]
    public void Reads_that_another_kits_session_at_the_same_time_and_station_explains_better_are_weak()
    {
        World world = new World().ReadAllBut();
        ReadSession own = world.Session();
        World neighbour = new World();
        neighbour.Read("T3", World.A1, 5, 6, 7, 8, 9, 10, 11);
        ReconciliationResult result = world.Reconcile(own, neighbour.Session("S-K2", World.K2));

        Assert.Equal(LineState.Weak, result.Lines[2].State);
        Assert.Contains(result.Lines[2].Reasons, reason => reason.Code == ReconciliationReasons.BetterElsewhere.Code);
        Assert.True(result.Lines[3].IsAccounted);
    }

    [Fact]
    public void The_same_reads_handed_in_as_two_sessions_make_no_second_pass()
    {
        World world = new World().ReadAllBut("T7").Read("T7", World.A1, 5, 6, 7);
        ReconciliationResult result = world.Reconcile(world.Session("S1"), world.Session("S1-copy"));

        Assert.Equal(LineState.Weak, result.Lines[6].State);
        Assert.Equal((3, 1), (result.Lines[6].Evidence.LookCount, result.Lines[6].Evidence.PassCount));
    }

    [Fact]
    public void A_pass_of_an_instant_is_no_second_view()
    {
        World world = new World().ReadAllBut("T7").Read("T7", World.A1, 5, 6, 7.0005);
        world.PassStarts.AddRange([World.Start.AddSeconds(7), World.Start.AddSeconds(7.001)]);

        Assert.Equal(LineState.Weak, world.Reconcile().Lines[6].State);

        world.PassStarts.Clear();
        world.PassStarts.Add(World.Start.AddSeconds(27));
        world.Read("T7", World.A1, 28);
        Assert.Equal(LineState.Weak, world.Reconcile().Lines[6].State);

        world.PassStarts[0] = World.Start.AddSeconds(20);
        Assert.Equal(LineState.Accounted, world.Reconcile().Lines[6].State);
    }

    [Fact]
    public void Two_sessions_of_one_id_are_refused()
    {
        var world = new World();

        ArgumentException error = Assert.Throws<ArgumentException>(() => world.Reconcile(world.Session("S1"), world.Session("S1")));
        Assert.Contains("S1", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_tool_that_wears_a_control_tag_of_the_station_is_a_conflict_and_not_accounted_by_it()
    {
        World world = new World().ReadAllBut("T7");
        world.Bindings.RemoveAll(binding => binding.Tool.Value == "T7");
        world.Bindings.Add(World.Binding(World.C1, new ToolId("T7")));
        LineConclusion t7 = world.Reconcile().Lines[6];

        Assert.Equal(LineState.Conflict, t7.State);
        Assert.Contains(t7.Reasons, reason => reason.Code == ReconciliationReasons.BoundControlTag.Code);
    }

    [Fact]
    public void S17_The_tag_that_is_always_read_comes_first_in_the_chase_list()
    {
        World world = new World().ReadAllBut("T1", "T7", "T11").CountAll();
        world.History[World.TagOf("T11")] = new TagHistory(60, 18);
        world.History[World.TagOf("T7")] = new TagHistory(400, 400);

        ReconciliationResult result = world.Reconcile();
        Assert.Equal([7, 1, 11], result.ChaseList.Select(line => line.Line.Number));
        Assert.All(result.ChaseList, line => Assert.Equal(LineState.NotRead, line.State));
        Assert.Contains(result.Lines[6].Reasons, reason => reason.ToString() == "its tag was read in 400 of 400 past sessions: look here first");
    }

    [Fact]
    public void S16_A_poor_tag_explains_its_silence_and_accounts_for_nothing()
    {
        World world = new World().ReadAllBut("T11").CountAll();
        world.History[World.TagOf("T11")] = new TagHistory(60, 18);
        LineConclusion t11 = world.Reconcile().Lines[10];

        Assert.Equal(LineState.NotRead, t11.State);
        Assert.Contains(t11.Reasons, reason => reason.ToString() == "its tag was read in 18 of 60 past sessions: qualify the tag again");
        Assert.Equal((NextStepKind.SightTool, RiskReasons.StepQualifyTag), (t11.Next!.Kind, t11.Next.Reason.Kind));
        Assert.Equal(AccountingBasis.Sighted, world.Sight("T11", "K1-11").Reconcile().Lines[10].Basis);
    }

    [Fact]
    public void A_rule_of_the_host_can_withhold_and_is_part_of_the_policy_digest()
    {
        World plain = new World().ReadAllBut().CountAll();
        var ruled = new World { Rules = [new SightTorqueTools()] };
        ruled.ReadAllBut().CountAll();
        ReconciliationResult without = plain.Reconcile(), with = ruled.Reconcile();

        Assert.Equal(KitState.Complete, without.Kit.State);
        Assert.Equal((LineState.Weak, NextStepKind.SightTool), (with.Lines[3].State, with.Lines[3].Next!.Kind));
        Assert.NotEqual(without.PolicyDigest, with.PolicyDigest);
        Assert.Equal(KitState.Complete, ruled.Sight("T4", "K1-4").Reconcile().Kit.State);
    }

    [Fact]
    public void A_rule_that_is_null_is_refused_by_name()
    {
        Assert.Equal("rules", Assert.Throws<ArgumentNullException>(() => new Reconciler(new ReconciliationPolicy(), [null!])).ParamName);
        Assert.Equal("rules", Assert.Throws<ArgumentNullException>(() => new Reconciler(new ReconciliationPolicy(), [new SightTorqueTools(), null!])).ParamName);
    }

    /// <summary>The time is written as everywhere else, with decimals only as far as there are any.</summary>
    [Fact]
    public void A_kit_without_a_list_in_force_is_refused_with_the_time_asked_about()
    {
        var world = new World { AsOf = World.Start.AddYears(-1) };
        Assert.Contains("no manifest of kit \"K1\" effective at 2025-03-02T15:55:00+01:00.", Assert.Throws<ArgumentException>(() => world.Reconcile()).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_rule_can_never_grant()
    {
        var reason = new Reason(SightTorqueTools.Why);
        var step = new NextStep(NextStepKind.SightTool, reason);

        Assert.Throws<ArgumentOutOfRangeException>(() => Verdict.Withhold(LineState.Accounted, reason, step));
        Assert.Equal(LineState.NotRead, new World { Rules = [new SightTorqueTools()] }.ReadAllBut("T7").Reconcile().Lines[6].State);
    }

    [Fact]
    public void Asking_for_a_kit_without_a_manifest_names_the_kit()
    {
        World world = new World();
        ReconciliationInput input = world.Input();
        var unknown = new ReconciliationInput { Kits = input.Kits, Subject = new KitId("K77"), AsOf = input.AsOf };

        ArgumentException error = Assert.Throws<ArgumentException>(() => new Reconciler(world.Policy).Reconcile(unknown));
        Assert.Contains("K77", error.Message, StringComparison.Ordinal);
    }

    private sealed class SightTorqueTools : IReconciliationRule
    {
        public static ReasonKind Why { get; } = new("site.torque-tool-not-sighted", "this site wants calibrated tools sighted");

        public string Name => "sight-calibrated-tools";

        public string Version => "1";

        public string Settings => "";

        public Verdict Judge(in LineFacts facts)
            => facts.Line.Tool is { NeedsCalibration: true } && facts.Sighting is null
                ? Verdict.Withhold(LineState.Weak, new Reason(Why), new NextStep(NextStepKind.SightTool, new Reason(Why)))
                : Verdict.NoObjection;
    }
}
