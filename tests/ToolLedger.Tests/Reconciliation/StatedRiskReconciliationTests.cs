using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;
using ToolLedger.Policies;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Testing.Laws;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>A kit judged at a stated risk: lines, the whole kit, the common causes of silence. Models are invented; the laws are those of every policy.</summary>
public sealed class StatedRiskReconciliationTests
{
    // Tags are heard in a few of many looks; strays hardly ever.
    private static readonly DetectionModel FewReads = new(0.05m, new BetaRate(4, 60), 0.02m, new BetaRate(0.2m, 60));

    [Fact]
    public void The_laws_hold_and_many_lines_are_settled_by_reads()
    {
        var policy = new ReconciliationPolicy
        {
            Presence = new StatedRiskPolicy { Model = new DetectionModel(0.05m, new BetaRate(1, 30), 0.01m, new BetaRate(0.02m, 60)), KitRiskLimit = 0.05m, LineRiskMax = 0.2m },
        };
        LawReport report = ReconciliationLaws.Check(new Reconciler(policy).Reconcile, new LawSettings { Policy = policy, CaseCount = 400, Seed = 8 });

        Assert.True(report.Holds, report.ToString());
        Assert.True(report.Of(ReconciliationLaw.EvidenceHelps).AppliedCount > 100, report.ToString());
        Assert.True(report.Of(ReconciliationLaw.DoubtIsMonotone).AppliedCount > 100, report.ToString());
    }

    // With models by station, and people who change the surroundings: whatever is drawn, a read more helps and a doubt more does not.
    [Fact]
    public void The_laws_hold_with_models_by_station_and_changed_surroundings()
    {
        var strayless = new DetectionModel(0.05m, new BetaRate(1, 30), 0.01m, new BetaRate(0.02m, 60));
        var other = new DetectionModel(0.2m, new BetaRate(2, 25), 0.02m, new BetaRate(0.02m, 60));
        var policy = new ReconciliationPolicy
        {
            Presence = new StatedRiskPolicy
            {
                Model = strayless,
                Models = [new StationModel(new StationId("R1"), null, other), new StationModel(new StationId("R2"), null, strayless)],
                KitRiskLimit = 0.05m,
                LineRiskMax = 0.2m,
            },
        };
        LawReport report = ReconciliationLaws.Check(new Reconciler(policy).Reconcile, new LawSettings { Policy = policy, CaseCount = 400, Seed = 88 });

        Assert.True(report.Holds, report.ToString());
        Assert.True(report.Of(ReconciliationLaw.EvidenceHelps).AppliedCount > 100, report.ToString());
        Assert.True(report.Of(ReconciliationLaw.DoubtIsMonotone).AppliedCount > 100, report.ToString());
    }

    [Fact]
    public void A_kit_read_well_is_complete_and_says_at_what_risk()
    {
        World world = Well();

        ReconciliationResult result = world.Reconcile();

        Assert.Equal(KitState.Complete, result.Kit.State);
        Assert.True(result.Kit.Risk is { IsWithinLimit: true, LineCount: 12, Joint: > 0 });
        Assert.Contains(result.Findings, static finding => finding.Reason.Kind == RiskReasons.RiskStated);
        Assert.Equal(1 - result.Lines.Where(static line => line.Basis == AccountingBasis.Read).Aggregate(1.0, static (all, line) => all * (1 - line.Evidence.Risk!.Decision.Risk)), result.Kit.Risk.Joint, 1e-12);
        Assert.Equal(1, Enumerable.Range(0, 13).Sum(result.Kit.Risk.ChanceOf), 1e-12);
    }

    [Fact]
    public void Lines_that_are_each_within_the_cut_may_together_be_over_the_limit()
    {
        World world = Well();
        // The strays of so loose a model are so few that each line passes; the joint risk of this very session does not.
        world.Policy = Policy(new StatedRiskPolicy { Model = new DetectionModel(0.05m, new BetaRate(4, 60), 0.000001m, new BetaRate(3.9m, 60)), KitRiskLimit = 0.00001m, AbsentShare = 0.5m, LineRiskMax = 0.5m });
        ReconciliationResult result = world.Reconcile();

        Assert.All(result.Lines.Take(12), static line => Assert.Equal(AccountingBasis.Read, line.Basis));
        Assert.Equal(KitState.Open, result.Kit.State);
        Reason reason = Assert.Single(result.Kit.Reasons, static reason => reason.Kind == RiskReasons.KitRiskOverLimit);
        Assert.Contains($"line {result.Kit.Risk!.HeaviestLine} sighted lowers it most", reason.ToString(), StringComparison.Ordinal);
        Assert.True(result.Kit.Risk.JointWithoutHeaviest < result.Kit.Risk.Joint);
        Finding finding = Assert.Single(result.Findings, static finding => finding.Reason.Kind == RiskReasons.KitRiskOverLimit);
        Assert.Equal([result.Kit.Risk.HeaviestLine!], finding.LineLabels);
    }

    // A tool that was in the bag in the first session and is not in the second, where one look of it came from elsewhere: what the first said of it no longer counts.
    [Theory]
    [InlineData(1)]
    [InlineData(7)]
    public void What_earlier_sessions_said_does_not_outvote_the_last_one(int earlier)
    {
        var world = new World { Policy = Policy(new StatedRiskPolicy()) };
        double[] seconds = [.. Enumerable.Range(6, 48).Select(static half => half / 2.0)];
        foreach (string tool in Enumerable.Range(1, 12).Select(static i => string.Create(CultureInfo.InvariantCulture, $"T{i}")).Append("H13"))
        {
            world.Read(tool, World.A1, seconds);
        }

        world.CountAll();
        List<ReadSession> sessions = [];
        for (int i = 0; i < earlier; i++)
        {
            sessions.Add(SessionAfter(world, i, static _ => true));
        }

        TagId tag = World.TagOf("T5");
        TagRead stray = world.Reads.First(read => read.Tag == tag);
        sessions.Add(SessionAfter(world, earlier, read => read.Tag != tag || read.FirstSeen == stray.FirstSeen));
        world.AsOf = sessions[^1].To.AddMinutes(1);
        ReconciliationResult result = world.Reconcile(sessions);

        Assert.Equal(LineState.Weak, result.Lines[4].State);
        Assert.Contains(result.Lines[4].Reasons, static reason => reason.Kind == PresenceReasons.EarlierSetAside);
        Assert.NotEqual(KitState.Complete, result.Kit.State);
        Assert.All(result.Lines.Take(12).Where((_, index) => index != 4), static line => Assert.Equal(AccountingBasis.Read, line.Basis));

        // The earlier ones alone would have settled it, and so does a last one that reads it well.
        Assert.Equal(AccountingBasis.Read, world.Reconcile(sessions[..^1]).Lines[4].Basis);
        sessions[^1] = SessionAfter(world, earlier, static _ => true);
        Assert.Equal(AccountingBasis.Read, world.Reconcile(sessions).Lines[4].Basis);
    }

    private static ReadSession SessionAfter(World world, int number, Func<TagRead, bool> isRead)
        => world.Session($"S{number + 1}", [World.K1], World.Later(world, 5 * number, isRead), World.Start.AddMinutes(5 * number));

    [Fact]
    public void A_sighted_line_is_no_risk_by_reads()
    {
        World world = Well();
        world.Sight("T5", "K1-5");

        ReconciliationResult result = world.Reconcile();

        Assert.Equal(11, result.Kit.Risk!.LineCount);
        Assert.Equal(AccountingBasis.Sighted, result.Lines[4].Basis);
    }

    [Fact]
    public void An_open_line_proposes_a_way_in_numbers()
    {
        World world = Well("T7");
        world.Read("T7", World.A1, 6);
        world.Policy = Policy(new StatedRiskPolicy { Model = FewReads });

        LineConclusion line = world.Reconcile().Lines[6];

        Assert.Equal(LineState.Weak, line.State);
        Assert.Contains(line.Reasons, static reason => reason.Kind == PresenceReasons.RiskOver);
        Assert.True(line.Next!.Reason.Kind == RiskReasons.StepNewPass || line.Next.Reason.Kind == RiskReasons.StepMoreLooks, line.Next.ToString());
    }

    [Fact]
    public void The_silence_of_a_whole_kit_is_one_observation_and_moves_no_line()
    {
        World world = new World { Policy = Policy(new StatedRiskPolicy { Model = FewReads }) };
        world.CountAll();

        ReconciliationResult result = world.Reconcile();

        Assert.All(result.Lines.Take(12), static line => Assert.Equal(LineState.NotRead, line.State));
        Finding finding = Assert.Single(result.Findings, static finding => finding.Reason.Kind == RiskReasons.SilenceCauses);
        Assert.Contains("the silence of 13 tools is one observation", finding.ToString(), StringComparison.Ordinal);

        // The control tags were heard, so that the reader is not down.
        Assert.Contains("reader or antennas down 0 %", finding.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Two_tags_on_a_tool_are_two_chances_to_look_as_if_it_were_there()
    {
        World world = Well();
        world.Bindings.Add(World.Binding(World.TagOf("T5b"), new ToolId("T5")));

        LineConclusion line = world.Reconcile().Lines[4];

        Assert.Equal(2 * world.Reconcile().Lines[5].Evidence.Risk!.LineCount, line.Evidence.Risk!.LineCount);
    }

    [Fact]
    public void A_stored_policy_keeps_the_schema_and_comes_back_the_same()
    {
        SitePolicy site = SitePolicy.Default with { Presence = new StatedRiskPolicy { Model = FewReads, KitRiskLimit = 0.0005m, RobustnessFactor = 3 } };

        Reports.StoredSchema.AssertAccepts("site-policy", site.ToJson());
        SitePolicy read = SitePolicy.Parse(site.ToJson());
        Assert.Equal(site.Digest, read.Digest);
        Assert.Equal(FewReads, Assert.IsType<StatedRiskPolicy>(read.Presence).Model);
    }

    [Theory]
    [InlineData("""{ "kind": "stated-risk", "kitRiskLimit": 0 }""", "$.presence.kitRiskLimit")]
    [InlineData("""{ "kind": "stated-risk", "looksNeeded": 3 }""", "$.presence")]
    [InlineData("""{ "kind": "stated-risk", "model": { "obscuredShare": 0.1, "strayShare": 0.1, "present": { "a": 1, "b": 2 } } }""", "$.presence.model")]
    [InlineData("""{ "kind": "stated-risk", "model": { "obscuredShare": 0.1, "strayShare": 0.1, "present": { "a": 1, "b": 2 }, "stray": { "a": 2, "b": 2 } } }""", "$.presence.model.stray")]
    [InlineData("""{ "kind": "guessing" }""", "$.presence.kind")]
    public void A_policy_that_is_wrong_is_refused_with_its_place(string presence, string place)
    {
        byte[] json = Encoding.UTF8.GetBytes($$"""{ "schema": "toolledger/site-policy/1", "presence": {{presence}} }""");

        Assert.False(SitePolicy.TryParse(json, out _, out var issues));
        Assert.Contains(issues, issue => issue.Place == place);
    }

    private static World Well(params string[] absent)
    {
        var world = new World { Policy = Policy(new StatedRiskPolicy { Model = FewReads, KitRiskLimit = 0.01m }) };
        foreach (string tool in Enumerable.Range(1, 12).Select(static i => string.Create(CultureInfo.InvariantCulture, $"T{i}")).Append("H13").Except(absent, StringComparer.Ordinal))
        {
            world.Read(tool, World.A1, 6, 8, 10, 12, 14, 16);
            world.Read(tool, World.A2, 7, 9, 11, 13);
        }

        return world.CountAll();
    }

    private static ReconciliationPolicy Policy(StatedRiskPolicy presence) => new() { Presence = presence };
}
