using System;
using System.Collections.Generic;
using System.Linq;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ToolLedger.Custody;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>Models by station and mounting class: learned from what people confirmed, and used by the reconciler. The kit, its reads and all models are invented.</summary>
public sealed class StationModelLearnerTests
{
    private static readonly DetectionModel FewReads = new(0.05m, new BetaRate(4, 60), 0.02m, new BetaRate(0.2m, 60));
    private static readonly DetectionModel Poor = new(0.2m, new BetaRate(2, 60), 0.05m, new BetaRate(0.2m, 60));

    [Fact]
    public void A_line_is_weighed_by_the_model_of_its_tags_mounting_at_the_station_of_the_pass()
    {
        World world = Checked(all: false);
        world.Policy = Policy(new StatedRiskPolicy { Model = FewReads, Models = [new StationModel(new StationId("R1"), "in a recess", Poor)] });
        PresenceRisk plain = world.Reconcile().Lines[4].Evidence.Risk!;
        Mount(world, "T5", "in a recess");
        PresenceRisk recessed = world.Reconcile().Lines[4].Evidence.Risk!;

        Assert.All(plain.Terms, static term => Assert.Equal(0, term.Model));
        PresenceTerm pass = Assert.Single(recessed.Terms, static term => term.Kind == PresenceTermKind.ReadPass);
        Assert.Equal((1, 0.4), (pass.Model, pass.ObscuredShare));
        Assert.Equal(0.1, recessed.StrayShare, 12);
        Assert.Equal(
            new StatedRiskPolicy { Model = Poor }.Decide([new PassLooks(120, pass.Reads)], plain.LineCount).Risk,
            recessed.Decision.Risk);
    }

    [Fact]
    public void A_session_that_people_confirmed_as_a_whole_teaches_every_class_of_its_station()
    {
        World world = Checked(all: true);
        Mount(world, "T5", "in a recess");
        StationLessons lessons = Learn(world, world.Reconcile());

        Assert.Equal((1, 0), (lessons.SessionsLearned, lessons.SessionsLeftOut));
        Assert.Equal([null, "in a recess"], lessons.Stations.Select(static station => station.Mounting));
        Assert.Equal([12, 1], lessons.Stations.Select(static station => station.Learned.PassesThere));
        Assert.Equal([12, 1], lessons.Stations.Select(static station => station.Learned.PassesRead));
        Assert.Equal(["R1", "R1"], lessons.Models.Select(static model => model.Station.Value));

        // Straight into the policy.
        Assert.Equal(2, new StatedRiskPolicy { Models = lessons.Models }.Models.Count);
    }

    // Reads alone confirm nothing, and where only the silent tools were looked for, tags would seem worse than they are.
    [Fact]
    public void Reads_alone_and_a_search_for_some_tools_teach_nothing()
    {
        World unconfirmed = Checked(all: false);
        Assert.Equal(KitState.Complete, unconfirmed.Reconcile().Kit.State);
        Assert.Equal((0, 1), Counted(Learn(unconfirmed, unconfirmed.Reconcile())));

        World some = Checked(all: false, "T7").Sight("T7", "K1-7");
        Assert.Equal((0, 1), Counted(Learn(some, some.Reconcile())));
    }

    [Fact]
    public void Degraded_sessions_and_abnormal_days_teach_nothing()
    {
        World degraded = Checked(all: true);
        degraded.ControlOnA2 = false;
        degraded.Reads.RemoveAll(static read => read.Antenna == World.A2);
        Assert.Equal(SessionState.Degraded, degraded.Reconcile().Sessions[0].Session.Health.State);
        Assert.Equal((0, 1), Counted(Learn(degraded, degraded.Reconcile())));

        World silent = Checked(all: true, [.. World.AllTools()]);
        Assert.Equal((0, 1), Counted(Learn(silent, silent.Reconcile())));
        World surplus = Checked(all: true).Count(15, 7, "each", World.End.AddSeconds(1));
        Assert.Equal((0, 1), Counted(Learn(surplus, surplus.Reconcile())));
    }

    [Fact]
    public void A_tool_that_somebody_signed_for_elsewhere_teaches_of_strays_read_or_not()
    {
        World silent = Checked(all: true, "T8");
        World near = Checked(all: true, "T8").Read("T8", World.A1, 9);
        foreach (World world in (World[])[silent, near])
        {
            world.Sightings.RemoveAll(static sighting => sighting.Tool.Value == "T8");
            world.Custody.Add(Loan());
        }

        Assert.Equal((12, 1, 0), There(Learn(silent, silent.Reconcile())));
        Assert.Equal((12, 1, 1), There(Learn(near, near.Reconcile())));
    }

    // Leaving out exactly the sessions in which a stray was strong enough to fool the policy would make strays look harmless.
    [Fact]
    public void A_stray_that_fooled_the_policy_teaches_as_a_stray_and_where_a_person_saw_the_tool_nothing_is_learned()
    {
        World fooled = Checked(all: true);
        fooled.Sightings.RemoveAll(static sighting => sighting.Tool.Value == "T8");
        fooled.Custody.Add(Loan());
        Assert.Equal(AccountingBasis.Read, fooled.Reconcile().Lines[7].Basis);
        Assert.Equal((12, 1, 1), There(Learn(fooled, fooled.Reconcile())));

        World seen = Checked(all: true);
        seen.Custody.Add(Loan());
        Assert.Equal(AccountingBasis.Sighted, seen.Reconcile().Lines[7].Basis);
        Assert.Equal((0, 1), Counted(Learn(seen, seen.Reconcile())));
    }

    // The bound is held against the exact tail of a binomial, summed here: at the one-sided 95 % limit so many reads or more have a chance of 5 %.
    [Fact]
    public void Sessions_left_out_since_tags_were_silent_count_in_the_bound_and_are_told()
    {
        World good = Checked(all: true);
        World bad = Checked(all: true, "T1", "T2", "T3", "T4", "T5", "T6", "T7", "T8");
        World invented = Checked(all: true).Count(15, 7, "each", World.End.AddSeconds(1));
        StationLessons lessons = Learn(good, good.Reconcile(good.Session("S1")), bad.Reconcile(bad.Session("S2")), invented.Reconcile(invented.Session("S3")));

        LearnedStation station = Assert.Single(lessons.Stations);
        Assert.Equal((1, 2, 1), (lessons.SessionsLearned, lessons.SessionsLeftOut, lessons.SilentSessionsLeftOut));
        Assert.Equal((1, 13, 5), (station.SilentSessionsLeftOut, station.SilentPassesThere, station.SilentPassesRead));
        Assert.Equal((13, 13), (station.Learned.PassesThere, station.Learned.PassesRead));
        Assert.Equal(0.05, AtLeast(18, 26, station.Learned.ReadShareAtLeast), 9);

        // The model is that of the good day, and the bound without a bad one is the learner's own.
        LearnedStation alone = Assert.Single(Learn(good, good.Reconcile(good.Session("S1"))).Stations);
        Assert.Equal(alone.Learned.Model, station.Learned.Model);
        Assert.Equal(0.05, AtLeast(13, 13, alone.Learned.ReadShareAtLeast), 9);
    }

    // A learned model for tags of which no mounting is stated says nothing of a tag that was mounted in two ways.
    [Fact]
    public void A_tag_that_was_mounted_anew_within_the_passes_is_weighed_by_the_policys_own_model()
    {
        var best = new DetectionModel(0.01m, new BetaRate(8, 40), 0.001m, new BetaRate(0.05m, 200));
        StationId here = new("R1");
        World world = Checked(all: false);
        world.Policy = Policy(new StatedRiskPolicy { Model = Poor, Models = [new StationModel(here, null, best), new StationModel(here, "in a recess", best), new StationModel(here, "under a guard", best)] });
        world.Bindings.RemoveAll(static binding => binding.Tool.Value is "T5" or "T6");
        world.Reads.RemoveAll(static read => read.Tag == World.TagOf("T5") || read.Tag == World.TagOf("T6"));
        world.Read("T5", World.A1, 16, 18, 20).Read("T6", World.A1, 16, 18, 20);
        DateTimeOffset between = World.Start.AddSeconds(10);
        foreach ((string tool, string? before, string? after) in ((string, string?, string?)[])[("T5", "in a recess", "under a guard"), ("T6", null, "in a recess")])
        {
            world.Bindings.Add(new TagBinding { Tag = World.TagOf(tool), Tool = new ToolId(tool), From = World.Start.AddYears(-1), Until = between, BoundBy = World.Q, TagModel = before });
            world.Bindings.Add(new TagBinding { Tag = World.TagOf(tool), Tool = new ToolId(tool), From = between, BoundBy = World.Q, TagModel = after });
        }

        ReconciliationResult result = world.Reconcile();

        Assert.All([result.Lines[4], result.Lines[5]], static line => Assert.Equal((PresenceEvidence.ManyMountings, 0), (line.Evidence.Best!.Mounting, line.Evidence.Risk!.Terms.Single(static term => term.Kind == PresenceTermKind.ReadPass).Model)));
        Assert.Equal(1, result.Lines[6].Evidence.Risk!.Terms.Single(static term => term.Kind == PresenceTermKind.ReadPass).Model);
        Assert.Throws<ArgumentException>(() => new StationModel(here, PresenceEvidence.ManyMountings, best));
    }

    [Fact]
    public void A_session_counts_once_whatever_results_tell_of_it_and_words_that_differ_teach_nothing()
    {
        World world = Checked(all: true);
        ReadSession session = world.Session();
        ReconciliationResult before = Checked(all: false).Reconcile(session), after = world.Reconcile(session);
        Assert.Equal((13, 0, 0), There(Learn(world, before, after, after)));

        World other = Checked(all: true);
        other.Sightings.RemoveAll(static sighting => sighting.Tool.Value == "T8");
        other.Custody.Add(Loan());
        Assert.Equal((0, 1), Counted(Learn(world, after, other.Reconcile(session))));
    }

    [Property(MaxTest = 30)]
    public void The_order_of_results_changes_no_digit(int seed)
    {
        var random = new Random(seed);
        var results = new List<ReconciliationResult>();
        World last = Checked(all: true);
        for (int day = 0; day < 4; day++)
        {
            last = Checked(all: true, [.. World.AllTools().Where(_ => random.Next(6) == 0)]);
            results.Insert(random.Next(results.Count + 1), last.Reconcile(last.Session($"S{day}")));
        }

        StationLessons forward = Learn(last, [.. results]);
        results.Reverse();
        StationLessons backward = Learn(last, [.. results]);

        Assert.Equal(forward.Stations, backward.Stations);
        Assert.Equal(Counted(forward), Counted(backward));
    }

    private static double AtLeast(int successes, int trials, double share)
    {
        double sum = 0, ways = 1;
        for (int k = 0; k <= trials; k++)
        {
            sum += k >= successes ? ways * Math.Pow(share, k) * Math.Pow(1 - share, trials - k) : 0;
            ways *= (double)(trials - k) / (k + 1);
        }

        return sum;
    }

    private static (int Learned, int LeftOut) Counted(StationLessons lessons) => (lessons.SessionsLearned, lessons.SessionsLeftOut);

    private static (int There, int Absent, int Stray) There(StationLessons lessons)
    {
        LearnedDetection learned = Assert.Single(lessons.Stations).Learned;
        return (learned.PassesThere, learned.SessionsAbsent, learned.SessionsStray);
    }

    private static StationLessons Learn(World world, params ReconciliationResult[] results) => StationModelLearner.Learn(results, new TagRegister(world.Bindings), FewReads);

    private static void Mount(World world, string tool, string mounting)
    {
        world.Bindings.RemoveAll(binding => binding.Tool.Value == tool);
        world.Bindings.Add(new TagBinding { Tag = World.TagOf(tool), Tool = new ToolId(tool), From = World.Start.AddYears(-1), BoundBy = World.Q, TagModel = mounting });
    }

    private static World Checked(bool all, params string[] silent)
    {
        var world = new World { Policy = Policy(new StatedRiskPolicy { Model = FewReads, KitRiskLimit = 0.01m }) };
        foreach (string tool in World.AllTools().Where(static tool => tool[0] is 'T' or 'H').Except(silent, StringComparer.Ordinal))
        {
            // Different tags are heard in different numbers of looks.
            int more = tool[^1] - '0';
            world.Read(tool, World.A1, [6, 8, .. Enumerable.Range(0, 2 * more).Select(static i => 10.0 + i)]);
            world.Read(tool, World.A2, 7, 9, 11, 13);
        }

        foreach (string tool in all ? World.AllTools().Where(static tool => tool[0] == 'T') : [])
        {
            world.Sight(tool, "K1-" + tool[1..]);
        }

        return world.CountAll();
    }

    private static ToolLoan Loan() => new()
    {
        Id = new EntryId("L1"),
        At = World.Start.AddHours(-2),
        By = World.P,
        Tool = new ToolId("T8"),
        Kit = World.K1,
        ReceivedBy = new Signature { By = new PersonId("B"), At = World.Start.AddHours(-2) },
        Due = World.End.AddHours(2),
    };

    private static ReconciliationPolicy Policy(StatedRiskPolicy presence) => new() { Presence = presence };
}
