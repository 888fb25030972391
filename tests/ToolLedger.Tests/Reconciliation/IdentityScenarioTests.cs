using System;
using System.Linq;
using ToolLedger.Identifiers;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>Scenarios of identity, by id: tags that were retired, copied, re-encoded, moved.</summary>
public sealed class IdentityScenarioTests
{
    private static readonly TagId Second = World.TagOf("T2b");
    private static readonly Tid ChipA = Tid.Parse("E28011052000A001");
    private static readonly Tid ChipB = Tid.Parse("E28011052000A002");

    [Fact]
    public void S23_Two_live_tags_on_a_tool_account_for_it_once()
    {
        World world = new World().ReadAllBut();
        world.Bindings.Add(World.Binding(Second, new ToolId("T2")));
        ReconciliationResult result = world.ReadAt(Second, World.A1, -55, 5, 6).ReadAt(Second, World.A2, -55, 7).Reconcile();

        Assert.True(result.Lines[1].IsAccounted);
        Assert.Equal(15, result.Lines.Count);
        Assert.Single(result.Lines, line => line.Line.Tool?.Id == new ToolId("T2"));
        Assert.Equal(12, result.Kit.CountOf(LineState.Accounted));
        Assert.Equal(2, result.Lines[1].Evidence.LiveTagCount);
    }

    [Fact]
    public void S24_One_good_tag_of_two_suffices_and_the_silent_one_is_noted()
    {
        World world = new World().ReadAllBut();
        world.Bindings.Add(World.Binding(Second, new ToolId("T2")));
        ReconciliationResult result = world.Reconcile();

        Assert.Equal(AccountingBasis.Read, result.Lines[1].Basis);
        Assert.Contains(result.Findings, finding => finding.Code == ReconciliationReasons.SecondTagSilent.Code && finding.LineNumbers.SequenceEqual([2]));
    }

    [Fact]
    public void S25_A_retired_tag_that_speaks_is_a_conflict_until_the_tool_is_sighted_by_its_mark()
    {
        World world = new World().ReadAllBut("T2").CountAll();
        world.Bindings.Add(Retired(Second, "T2", World.Start.AddDays(-10)));
        world.ReadAt(Second, World.A1, -55, 5, 6).ReadAt(Second, World.A2, -55, 7);

        ReconciliationResult result = world.Reconcile();
        Assert.Equal(LineState.Conflict, result.Lines[1].State);
        Assert.Equal(NextStepKind.SettleIdentity, result.Lines[1].Next?.Kind);
        Assert.Equal(KitState.Discrepant, result.Kit.State);

        ReconciliationResult sighted = world.Sight("T2", "K1-2").Reconcile();
        Assert.Equal(AccountingBasis.Sighted, sighted.Lines[1].Basis);
        Assert.Contains(sighted.Lines[1].Reasons, reason => reason.Code == ReconciliationReasons.IdentitySettled.Code);
    }

    [Fact]
    public void S25_A_sighting_made_before_the_doubtful_read_settles_nothing()
    {
        World world = new World().ReadAllBut("T2").CountAll();
        world.Bindings.Add(Retired(Second, "T2", World.Start.AddDays(-10)));
        world.ReadAt(Second, World.A1, -55, 5, 6).Sight("T2", "K1-2", at: World.Start.AddSeconds(2));

        Assert.Equal(LineState.Conflict, world.Reconcile().Lines[1].State);
    }

    [Fact]
    public void S28_One_EPC_with_two_chip_numbers_is_a_conflict_that_names_both()
    {
        World world = new World().ReadAllBut("T3");
        foreach ((Tid chip, double second) in new[] { (ChipA, 5.0), (ChipB, 6.0), (ChipA, 7.0), (ChipB, 8.0) })
        {
            world.Reads.Add(new TagRead(World.TagOf("T3"), World.A1, World.Start.AddSeconds(second)) { Tid = chip });
            world.Reads.Add(new TagRead(World.TagOf("T3"), World.A2, World.Start.AddSeconds(second + 5)) { Tid = chip });
        }

        LineConclusion t3 = world.Reconcile().Lines[2];
        Assert.Equal(LineState.Conflict, t3.State);
        Assert.Contains(ChipA.ToString(), string.Join(" ", t3.Reasons), StringComparison.Ordinal);
        Assert.Contains(ChipB.ToString(), string.Join(" ", t3.Reasons), StringComparison.Ordinal);
    }

    [Fact]
    public void S28_Two_chip_numbers_in_two_sessions_are_two_tags_as_well()
    {
        World world = new World().ReadAllBut("T3");
        TagRead[] a = [.. world.ControlReads(), .. world.Reads, .. Chip(ChipA)], b = [.. world.ControlReads(), .. world.Reads, .. Chip(ChipB)];

        Assert.Equal(LineState.Conflict, world.Reconcile(world.Session("S1", reads: a), world.Session("S2", reads: b)).Lines[2].State);

        static TagRead[] Chip(Tid chip) =>
        [
            new TagRead(World.TagOf("T3"), World.A1, World.Start.AddSeconds(5)) { Tid = chip },
            new TagRead(World.TagOf("T3"), World.A2, World.Start.AddSeconds(6)) { Tid = chip },
        ];
    }

    [Fact]
    public void S29_Another_chip_number_than_commissioned_is_a_conflict()
    {
        World world = new World().ReadAllBut("T3");
        world.Bindings.RemoveAll(binding => binding.Tool.Value == "T3");
        world.Bindings.Add(World.Binding(World.TagOf("T3"), new ToolId("T3"), ChipA));
        world.Reads.Add(new TagRead(World.TagOf("T3"), World.A1, World.Start.AddSeconds(5)) { Tid = ChipB });

        LineConclusion t3 = world.Reconcile().Lines[2];
        Assert.Equal(LineState.Conflict, t3.State);
        Assert.Contains(t3.Reasons, reason => reason.Code == ReconciliationReasons.WrongChip.Code);
    }

    [Fact]
    public void S30_A_tool_retagged_at_noon_is_accounted_by_its_new_tag_in_the_afternoon()
    {
        World world = Retagged();

        Assert.Equal(AccountingBasis.Read, world.Reconcile().Lines[4].Basis);
        Assert.DoesNotContain(world.Reconcile().Findings, finding => finding.LineNumbers.Contains(5));
    }

    [Fact]
    public void S31_Its_old_tag_speaking_as_well_is_a_conflict()
    {
        World world = Retagged().Read("T5", World.A1, 9);

        LineConclusion t5 = world.Reconcile().Lines[4];
        Assert.Equal((LineState.Conflict, NextStepKind.SettleIdentity), (t5.State, t5.Next!.Kind));
        Assert.Contains(t5.Reasons, reason => reason.Kind == ReconciliationReasons.RetiredTagRead);
    }

    [Fact]
    public void S32_A_binding_that_takes_effect_later_says_nothing_of_an_earlier_read()
    {
        TagId fresh = World.TagOf("N1");
        World world = new World().ReadAllBut().ReadAt(fresh, World.A1, -55, 5, 6, 7);
        Assert.Equal(ReadExplanationKind.Unknown, Assert.Single(world.Reconcile().Reads, read => read.Tag == fresh).Kind);

        world.AsOf = World.Start.AddMinutes(45);
        world.Bindings.Add(new TagBinding { Tag = fresh, Tool = new ToolId("T5"), From = World.Start.AddMinutes(35) });
        Assert.Equal(ReadExplanationKind.Unknown, Assert.Single(world.Reconcile().Reads, read => read.Tag == fresh).Kind);
    }

    [Fact]
    public void S33_A_tag_of_a_tool_retired_last_year_is_unexpected_and_raises_an_alert()
    {
        World world = new World().ReadAllBut();
        world.Bindings.Add(Retired(Second, "OLD-1", World.Start.AddDays(-200)));
        ReconciliationResult result = world.ReadAt(Second, World.A1, -55, 5).Reconcile();

        Assert.Equal(ReadExplanationKind.Unexpected, Assert.Single(result.Reads, read => read.Tag == Second).Kind);
        Assert.Contains(result.Findings, finding => finding.Code == ReconciliationReasons.RetiredTag.Code);
    }

    [Fact]
    public void S34_An_unassigned_spare_is_unexpected_and_a_shortage_nowhere()
    {
        World world = new World().ReadAllBut().CountAll();
        world.Bindings.Add(World.Binding(Second, new ToolId("SPARE-1")));
        ReconciliationResult result = world.ReadAt(Second, World.A1, -55, 5).Reconcile();

        ReadExplanation spare = Assert.Single(result.Reads, read => read.Tag == Second);
        Assert.Equal((ReadExplanationKind.Unexpected, ReconciliationReasons.ReadSpare.Code), (spare.Kind, spare.Reason.Code));
        Assert.Equal(KitState.Complete, result.Kit.State);
    }

    [Fact]
    public void P12_A_tag_with_the_tools_identity_in_other_bits_is_unexpected_and_makes_its_line_a_conflict()
    {
        // SGTIN-96 with filter 0 and with filter 1: the same pure identity (GS1 Tag Data Standard, section 6.3), other bits on the tag.
        TagId bound = TagId.FromEpc(Epc.Parse("3014257BF7194E4000001A85")), reencoded = TagId.FromEpc(Epc.Parse("3034257BF7194E4000001A85"));
        World world = new World().ReadAllBut("T2");
        world.Bindings.RemoveAll(binding => binding.Tool.Value == "T2");
        world.Bindings.Add(World.Binding(bound, new ToolId("T2")));
        ReconciliationResult result = world.ReadAt(reencoded, World.A1, -55, 5, 6).ReadAt(reencoded, World.A2, -55, 7).Reconcile();

        Assert.Equal(LineState.Conflict, result.Lines[1].State);
        ReadExplanation read = Assert.Single(result.Reads, read => read.Tag == reencoded);
        Assert.Equal((ReadExplanationKind.Unexpected, ReconciliationReasons.ReadReencoded.Code), (read.Kind, read.Reason.Code));
    }

    [Fact]
    public void A_sighting_with_another_tools_mark_contradicts_even_a_good_read_until_the_right_mark_is_read()
    {
        World world = new World().ReadAllBut().Sight("T9", "K1-9", at: World.End).Sight("T9", "K1-8");
        LineConclusion t9 = world.Reconcile().Lines[8];

        Assert.Equal(LineState.Conflict, t9.State);
        Assert.True(world.Sight("T9", "K1-9", at: World.End.AddSeconds(90)).Reconcile().Lines[8].IsAccounted);
        Assert.Contains(t9.Reasons, reason => reason.Code == ReconciliationReasons.OtherMark.Code);
    }

    [Fact]
    public void A_tool_sighted_inside_another_kit_is_not_accounted_for_here()
    {
        LineConclusion t9 = new World().ReadAllBut().Sight("T9", "K1-9", World.K2).Reconcile().Lines[8];

        Assert.Equal(LineState.Conflict, t9.State);
        Assert.Contains(t9.Reasons, reason => reason.Code == ReconciliationReasons.SightedInOtherKit.Code);
    }

    [Fact]
    public void A_tool_read_here_after_it_was_sighted_elsewhere_has_come_back()
    {
        LineConclusion t9 = new World().ReadAllBut().Sight("T9", "K1-9", World.K2, World.Start.AddMinutes(-5)).Reconcile().Lines[8];

        Assert.Equal(AccountingBasis.Read, t9.Basis);
        Assert.Contains(t9.Reasons, reason => reason.Code == ReconciliationReasons.SightedInOtherKit.Code);
    }

    [Fact]
    public void Any_mark_on_a_tool_without_one_settles_no_doubt_and_another_tools_mark_is_none_of_its()
    {
        World world = new World { IsT9Marked = false }.ReadAllBut("T9");
        world.Bindings.Add(Retired(Second, "T9", World.Start.AddDays(-10)));
        world.ReadAt(Second, World.A1, -55, 5, 6);
        Assert.Equal(LineState.Conflict, world.Sight("T9", "?").Reconcile().Lines[8].State);

        Assert.Equal(LineState.Conflict, new World { IsT9Marked = false }.ReadAllBut().Sight("T9", "K1-2").Reconcile().Lines[8].State);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void S38_A_tool_on_two_manifests_is_a_conflict_where_it_was_credited_to_the_other_kits_session(bool presentedTogether)
    {
        World world = new World().ReadAllBut();
        var also = new KitManifest(World.K2, 2, "also lists T6", World.Start.AddDays(-10), world.K1Revision3().SignedBy,
        [
            new ToolLine { Number = 1, Tool = new Tool { Id = new ToolId("T6"), Description = "tool 6", Mark = "K1-6" } },
        ]);
        ReadSession ofK1 = world.Session("S1", [World.K1, .. presentedTogether ? new[] { World.K2 } : []]);
        ReconciliationInput plain = world.Input(ofK1);
        var input = new ReconciliationInput
        {
            Kits = new KitRegister([world.K1Revision3(), also]),
            Subject = World.K1,
            Sessions = plain.Sessions,
            Tags = plain.Tags,
            AsOf = plain.AsOf,
        };
        ReconciliationResult[] results = [.. new Reconciler(world.Policy).ReconcileAll(input, [World.K1, World.K2])];

        Assert.Equal(presentedTogether ? LineState.Conflict : LineState.Accounted, results[0].Lines[5].State);
        Assert.Equal(LineState.Conflict, results[1].Lines[0].State);
        Assert.Contains(results[1].Findings, finding => finding.Code == ReconciliationReasons.ToolInTwoKits.Code);
    }

    private static World Retagged()
    {
        World world = new World().ReadAllBut("T5");
        DateTimeOffset noon = World.Start.AddHours(-3);
        world.Bindings.RemoveAll(binding => binding.Tool.Value == "T5");
        world.Bindings.Add(Retired(World.TagOf("T5"), "T5", noon));
        world.Bindings.Add(new TagBinding { Tag = World.TagOf("T5new"), Tool = new ToolId("T5"), From = noon });
        return world.ReadAt(World.TagOf("T5new"), World.A1, -55, 5, 6).ReadAt(World.TagOf("T5new"), World.A2, -55, 7);
    }

    private static TagBinding Retired(TagId tag, string tool, DateTimeOffset until)
        => new() { Tag = tag, Tool = new ToolId(tool), From = World.Start.AddYears(-2), Until = until };
}
