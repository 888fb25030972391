using System;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>One tool, listed or in place of another, satisfies one line of one kit; and no record excuses what was known when it was written.</summary>
public sealed class ClaimScenarioTests
{
    private static readonly DateTimeOffset Before = World.Start.AddHours(-1);

    [Fact]
    public void S38_One_alternate_in_place_on_a_line_of_the_bag_and_on_one_inside_its_sub_kit_is_a_conflict_on_both()
    {
        SubKitWorld shift = InBagAndSubKit();
        Swap(shift, World.K2, 1, Before);
        Swap(shift, World.K9, 1, Before);
        ReconciliationResult result = shift.ReadWell("U5").Reconcile(World.K2);

        foreach (LineConclusion line in (LineConclusion[])[result.Lines[0], result.Lines[1].Inner[0]])
        {
            Assert.Equal(LineState.Conflict, line.State);
            Assert.Contains(line.Reasons, static reason => reason.Kind == ReconciliationReasons.CreditedToTwoLines);
        }

        Assert.Equal(KitState.Discrepant, result.Kit.State);
    }

    [Fact]
    public void S38_One_alternate_in_place_on_one_line_accounts_for_it()
    {
        SubKitWorld shift = InBagAndSubKit();
        Swap(shift, World.K2, 1, Before);
        Assert.Equal(KitState.Complete, shift.ReadWell("U5", "U2").Reconcile(World.K2).Kit.State);
    }

    [Fact]
    public void S38_One_alternate_in_place_in_two_kits_presented_together_is_a_conflict_in_each()
    {
        SubKitWorld shift = InTwoKits().ReadWell("U5");
        foreach (KitId kit in (KitId[])[World.K2, World.K9])
        {
            ReconciliationResult result = shift.Reconcile(kit, shift.World.Session("S1", [World.K2, World.K9]));
            Assert.Equal(LineState.Conflict, result.Lines[0].State);
            Assert.Contains(result.Lines[0].Reasons, static reason => reason.Kind == ReconciliationReasons.CreditedToTwoKits);
        }
    }

    [Fact]
    public void S38_A_tool_listed_in_one_kit_and_in_place_in_another_is_a_conflict_in_each_until_it_is_sighted_in_one()
    {
        var shift = new SubKitWorld();
        shift.Others.Add(SubKitWorld.Manifest(World.K2, 1, Alternated(1, "U1", "U5")));
        shift.Others.Add(SubKitWorld.Manifest(World.K9, 1, SubKitWorld.Line(1, "U5")));
        Swap(shift, World.K2, 1, Before);
        shift.ReadWell("U5");
        Assert.Equal([LineState.Conflict, LineState.Conflict], States(shift));

        shift.World.Sight("U5", "mark U5");
        Assert.Equal([LineState.Conflict, LineState.Conflict], States(shift));

        shift.World.Sight("U5", "mark U5", World.K2, World.End.AddMinutes(1.5));
        Assert.Equal([LineState.Accounted, LineState.Conflict], States(shift));

        static LineState[] States(SubKitWorld shift) =>
        [
            .. ((KitId[])[World.K2, World.K9]).Select(kit => shift.Reconcile(kit, shift.World.Session("S1", [World.K2, World.K9])).Lines[0].State),
        ];
    }

    [Theory]
    [InlineData(-60, KitState.Complete)]
    [InlineData(60, KitState.Open)]
    public void A_substitution_recorded_after_the_kit_was_presented_counts_for_nothing_and_is_shown(int seconds, KitState state)
    {
        var shift = new SubKitWorld();
        shift.Others.Add(SubKitWorld.Manifest(World.K2, 1, Alternated(1, "U1", "U5"), SubKitWorld.Line(2, "U2")));
        Swap(shift, World.K2, 1, World.Start.AddSeconds(seconds));
        ReconciliationResult result = shift.ReadWell("U2", "U5").Reconcile(World.K2);

        Assert.Equal(state, result.Kit.State);
        Assert.Equal(
            state == KitState.Open,
            result.Findings.Any(static finding => finding.ToString().Contains("recorded after the kit was presented", StringComparison.Ordinal)));
    }

    [Fact]
    public void Without_a_session_a_substitution_recorded_after_the_first_sighting_counts_for_nothing()
    {
        var shift = new SubKitWorld();
        shift.Others.Add(SubKitWorld.Manifest(World.K2, 1, Alternated(1, "U1", "U5"), SubKitWorld.Line(2, "U2")));
        shift.World.Sight("U2", "mark U2").Sight("U5", "mark U5", at: World.End.AddMinutes(1.2));
        Swap(shift, World.K2, 1, World.End.AddMinutes(1.1));
        Assert.Equal(new ToolId("U1"), shift.Reconcile(World.K2, shift.World.Session("S1", [World.K1])).Lines[0].Line.Tool!.Id);
    }

    [Theory]
    [InlineData(-3, KitState.Open)]
    [InlineData(-1, KitState.Complete)]
    public void A_signature_given_before_a_substitution_does_not_cover_it(int hours, KitState state)
    {
        var shift = new SubKitWorld();
        shift.Others.Add(SubKitWorld.Manifest(World.K2, 1, Alternated(1, "U1", "U5")));
        shift.World.Policy = new ReconciliationPolicy { Inventory = new InventoryPolicy { EvidenceAgeMax = TimeSpan.FromHours(6) } };
        Swap(shift, World.K2, 1, World.Start.AddHours(-2));
        shift.World.Sight("U5", "mark U5", World.K2, World.Start.AddHours(-4));
        shift.World.Signatures.Add(new Signature { By = World.P, At = World.Start.AddHours(hours) });
        Assert.Equal(state, shift.Reconcile(World.K2, shift.World.Session("S1", [World.K2], [])).Kit.State is KitState.Complete ? KitState.Complete : KitState.Open);
    }

    [Theory]
    [InlineData(-1, KitState.Complete)]
    [InlineData(4, KitState.NoValidRead)]
    public void Without_a_session_a_line_written_off_after_the_first_sighting_is_still_expected(int minutes, KitState state)
    {
        World world = new World { AsOf = World.End.AddMinutes(5) }.CountAll();
        for (int i = 1; i <= 11; i++)
        {
            world.Sight(FormattableString.Invariant($"T{i}"), FormattableString.Invariant($"K1-{i}"), World.K1);
        }

        world.Annotations.Add(new Annotation
        {
            Kit = World.K1,
            LineNumber = 12,
            Kind = AnnotationKind.Removed,
            Reason = "not there",
            SignedBy = new Signature { By = World.P, At = World.End.AddMinutes(minutes) },
        });
        ReconciliationResult result = new Reconciler(world.Policy).Reconcile(world.Input());

        Assert.Equal(state, result.Kit.State);
    }

    [Theory]
    [InlineData("nothing", KitState.Complete)]
    [InlineData("sighted", KitState.Discrepant)]
    [InlineData("counted", KitState.Discrepant)]
    public void A_tool_of_a_sub_kit_removed_on_record_that_is_inside_after_all_contradicts_the_record(string how, KitState state)
    {
        SubKitWorld shift = new SubKitWorld().ReadWell("T1", "T2");
        shift.World.AnnotateRemoved(7, World.Start.AddHours(-2));
        if (how == "sighted")
        {
            shift.World.Sight("A3", "mark A3", World.K1);
        }
        else if (how == "counted")
        {
            shift.World.Counts.Add(new LineCount { Kit = SubKitWorld.K1a, LineNumber = 3, Quantity = new Quantity(1, Unit.Each), By = World.Q, At = World.End });
        }

        Assert.Equal(state, shift.Reconcile().Kit.State);
    }

    [Fact]
    public void S50_A_tool_of_a_sub_kit_removed_on_record_that_was_read_is_shown_like_its_case()
    {
        SubKitWorld shift = new SubKitWorld().ReadWell("T1", "T2", "A3");
        shift.World.AnnotateRemoved(7, World.Start.AddHours(-2));
        Finding finding = Assert.Single(shift.Reconcile().Findings, static finding => finding.Code == PeopleReasons.FindingRemovedRead.Code);
        Assert.Contains("A3", finding.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_later_session_of_the_sub_kit_or_of_the_bag_alone_in_which_a_tool_is_silent_takes_the_force_of_its_earlier_reads(bool isBagChecked)
    {
        SubKitWorld shift = new SubKitWorld().ReadWell("T1", "T2", "CASE", "A1", "A2", "A3", "A4", "A5");
        shift.World.AsOf = World.End.AddMinutes(20);
        (KitId first, KitId later) = isBagChecked ? (World.K1, SubKitWorld.K1a) : (SubKitWorld.K1a, World.K1);
        TagRead[] again = [.. shift.World.ControlReads().Concat(shift.World.Reads)
            .Where(static read => read.Tag != World.TagOf("A3"))
            .Select(static read => new TagRead(read.Tag, read.Antenna, read.FirstSeen.AddMinutes(10)))];
        ReadSession[] sessions = [shift.World.Session("S1", [first]), shift.World.Session("S2", [later], again, World.Start.AddMinutes(10))];

        Assert.Equal(KitState.Complete, shift.Reconcile(first, sessions[0]).Kit.State);
        LineConclusion[] open = [.. shift.Reconcile(first, sessions).AllLines.Where(static line => line is { Line.Tool.Id.Value: "A3" })];
        Assert.Equal(LineState.Weak, Assert.Single(open).State);
        Assert.Contains(open[0].Reasons, static reason => reason.Kind == ReconciliationReasons.LaterSilent);
    }

    [Fact]
    public void S38_One_sighting_that_does_not_say_in_which_of_two_kits_the_tool_was_is_a_conflict_in_both()
    {
        var shift = new SubKitWorld();
        shift.Others.Add(SubKitWorld.Manifest(World.K2, 1, SubKitWorld.Line(1, "U1")));
        shift.Others.Add(SubKitWorld.Manifest(World.K9, 1, SubKitWorld.Line(1, "U1")));
        shift.World.Policy = new ReconciliationPolicy { Inventory = new InventoryPolicy { SightingsWithoutKitAccepted = true } };
        shift.World.Sight("U1", "mark U1");
        shift.World.Signatures.Add(new Signature { By = World.P, At = World.End.AddMinutes(1.5) });
        Assert.Equal([LineState.Conflict, LineState.Conflict], States());

        shift.World.Sightings.Clear();
        shift.World.Sight("U1", "mark U1", World.K2);
        Assert.Equal([LineState.Accounted, LineState.Conflict], States());

        LineState[] States() =>
        [
            .. ((KitId[])[World.K2, World.K9]).Select(kit => shift.Reconcile(kit, shift.World.Session("S1", [World.K1])).Lines[0].State),
        ];
    }

    private static ToolLine Alternated(int number, string tool, string alternate)
        => new() { Number = number, Tool = SubKitWorld.Tool(tool), Alternates = [SubKitWorld.Tool(alternate)] };

    private static SubKitWorld InBagAndSubKit()
    {
        var shift = new SubKitWorld();
        shift.Others.Add(SubKitWorld.Manifest(World.K2, 1, Alternated(1, "U1", "U5"), new SubKitLine { Number = 2, Kit = World.K9, Revision = 1 }));
        shift.Others.Add(SubKitWorld.Manifest(World.K9, 1, Alternated(1, "U2", "U5")));
        return shift;
    }

    private static SubKitWorld InTwoKits()
    {
        var shift = new SubKitWorld();
        shift.Others.Add(SubKitWorld.Manifest(World.K2, 1, Alternated(1, "U1", "U5")));
        shift.Others.Add(SubKitWorld.Manifest(World.K9, 1, Alternated(1, "V1", "U5")));
        Swap(shift, World.K2, 1, Before);
        Swap(shift, World.K9, 1, Before);
        return shift;
    }

    private static void Swap(SubKitWorld shift, KitId kit, int line, DateTimeOffset at) => shift.World.Substitutions.Add(new Substitution
    {
        Kit = kit,
        LineNumber = line,
        InPlace = new ToolId("U5"),
        Reason = "like for like",
        By = World.P,
        At = at,
    });
}
