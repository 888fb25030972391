using System;
using System.Linq;
using FsCheck.Xunit;
using ToolLedger.Presence;
using ToolLedger.Tests.Presence.Proof;
using ToolLedger.Tests.Statistics;
using Xunit;

namespace ToolLedger.Tests.Presence;

/// <summary>Learning from sessions drawn from a known model, watching for fading tags, and planning.</summary>
public sealed class DetectionLearnerTests
{
    private static readonly VectorFile Vectors = new("tests", "ToolLedger.Tests", "Statistics", "Data", "statistics.json");

    [Fact]
    public void A_model_is_found_again_from_sessions_drawn_from_it()
    {
        var truth = new DetectionModel(0.08m, new BetaRate(3, 2), 0.2m, new BetaRate(0.6m, 8));
        LearnedDetection learned = Drawn(truth, sessions: 40_000, seed: 3).Learn();

        DetectionModel model = learned.Model!;
        Assert.InRange(model.ObscuredShare, 0.072m, 0.088m);
        Assert.InRange(model.Present.A, 2.8m, 3.2m);
        Assert.InRange(model.Present.B, 1.85m, 2.15m);
        Assert.InRange(model.StrayShare, 0.17m, 0.23m);
        Assert.InRange(model.Stray.A, 0.48m, 0.75m);
        Assert.InRange(model.Stray.B, 6.5m, 9.8m);
        Assert.True(learned.ReadShareAtLeast < (double)learned.PassesRead / learned.PassesThere);
        Assert.True(learned.StrayShareAtMost > (double)learned.SessionsStray / learned.SessionsAbsent);
    }

    [Fact]
    public void A_tag_of_little_history_is_shrunk_to_its_class_and_one_of_much_is_not()
    {
        DetectionModel group = DetectionModel.Example;
        var truth = new DetectionModel(0.3m, new BetaRate(2.5m, 2.5m), 0.05m, new BetaRate(0.6m, 8));

        decimal none = new DetectionLearner().Learn(group).Model!.ObscuredShare;
        decimal few = Drawn(truth, sessions: 10, seed: 5).Learn(group).Model!.ObscuredShare;
        decimal many = Drawn(truth, sessions: 5000, seed: 5).Learn(group).Model!.ObscuredShare;

        Assert.InRange(none, 0.03m, 0.12m);
        Assert.True(none < few && few < many, $"{none} {few} {many}");
        Assert.InRange(many, 0.28m, 0.32m);
    }

    [Fact]
    public void Degraded_sessions_are_not_learned_from()
    {
        DetectionLearner learner = Drawn(DetectionModel.Example, sessions: 500, seed: 9);
        LearnedDetection before = learner.Learn();
        learner.AddThere([new PassLooks(20, 0), new PassLooks(20, 0) { IsDegraded = true }]);
        learner.AddAbsent([new PassLooks(20, 20) { IsDegraded = true }]);

        Assert.Equal(before with { SessionsLeftOut = 2 }, learner.Learn());
    }

    [Property(Arbitrary = [typeof(ModelDraws)], MaxTest = 60)]
    public void Whatever_was_counted_there_is_a_model_or_a_reason(PassLooks[] there, PassLooks[] absent, bool shrink)
    {
        var learner = new DetectionLearner();
        learner.AddThere(there);
        learner.AddAbsent(absent);
        LearnedDetection learned = learner.Learn(shrink ? DetectionModel.Example : null);

        Assert.True(learned.Model is null != learned.Refused is null);
        Assert.InRange(learned.ReadShareAtLeast, 0, 1);
        Assert.InRange(learned.StrayShareAtMost, 0, 1);
    }

    [Fact]
    public void The_reference_value_of_a_fading_watch() => Assert.All(Vectors.Of("bernoulli_cusum_reference"), static vector =>
        VectorFile.Close(vector, TagFadingWatch.Reference(VectorFile.Number(vector, "p0"), VectorFile.Number(vector, "p1")), "gamma"));

    [Fact]
    public void The_exact_mean_run_lengths_of_a_fading_watch() => Assert.All(Vectors.Of("bernoulli_cusum_anos"), static vector =>
        VectorFile.Close(vector, new TagFadingWatch((int)VectorFile.Number(vector, "m") - 1, (int)VectorFile.Number(vector, "h_units")).MeanPassesToSignal(VectorFile.Number(vector, "p_miss"))));

    [Fact]
    public void A_watch_is_made_for_a_stated_rate_of_false_alarms()
    {
        var watch = TagFadingWatch.For(0.05, 0.15, falseAlarmMean: 900);

        Assert.Equal(10, watch.Up);
        Assert.True(watch.MeanPassesToSignal(0.05) >= 900);
        Assert.True(new TagFadingWatch(10, watch.Limit - 1).MeanPassesToSignal(0.05) < 900);
        Assert.True(watch.MeanPassesToSignal(0.15) < 50);
    }

    [Property]
    public void A_fading_watch_counts_misses_and_forgets_by_reads(bool[] reads)
    {
        var watch = new TagFadingWatch(10, 33);
        int sum = reads.Aggregate(0, watch.Next);

        Assert.InRange(sum, 0, 33);
        Assert.False(watch.IsFading(reads.TakeLast(3).All(static read => !read) && reads.Length >= 3 ? 0 : watch.Next(0, isRead: false)));
        Assert.True(watch.IsFading(new[] { false, false, false, false }.Aggregate(sum, watch.Next)));
    }

    // The first figure is that of StatedRiskPolicyTests, worked out apart from this library: 4.1 % open.
    [Fact]
    public void A_plan_says_what_passes_reach()
    {
        var policy = new StatedRiskPolicy { RobustnessFactor = 1 };
        PresencePlan plan = policy.Plan(passes: 2, looks: 20, lineCount: 20);

        Assert.InRange(1 - plan.ChanceSettled, 0.041, 0.0425);
        Assert.Equal(Math.Pow(plan.ChanceSettled, 20), plan.ChanceKitSettled, 1e-9);
        Assert.True(plan.ChanceAccountedWhenAbsent * 20 * 0.01 <= 0.001);
        Assert.InRange(plan.LeastRisk, 0, 1e-6);
        PresencePlan best = policy.PlanFor(0.95, lineCount: 20, passesMax: 3, looksMax: 60)!;
        Assert.True(best.ChanceSettled >= 0.95 && policy.Plan(best.Passes, best.Looks - 1, 20).ChanceSettled < 0.95);
        Assert.Null(policy.PlanFor(0.99, lineCount: 20, passesMax: 1, looksMax: 60));
    }

    private static DetectionLearner Drawn(DetectionModel truth, int sessions, ulong seed)
    {
        var learner = new DetectionLearner();
        var draws = new ModelSampler(truth, [20, 20], seed);
        Span<PassLooks> passes = stackalloc PassLooks[2];
        for (int i = 0; i < sessions; i++)
        {
            draws.There(passes);
            learner.AddThere(passes);
            draws.Absent(passes);
            learner.AddAbsent(passes);
        }

        return learner;
    }
}
