using System;
using System.Linq;
using FsCheck.Xunit;
using ToolLedger.Presence;
using Xunit;

namespace ToolLedger.Tests.Presence.Proof;

/// <summary>What a decision costs is bounded whatever the looks of a pass, and the bound never makes an answer bolder.</summary>
public sealed class BoundedWorkTests
{
    private static readonly PassLooks[] Largest = [.. Enumerable.Range(0, 6).Select(static i => new PassLooks(DetectionModel.MaxLooks - i, 0) { Surroundings = i % 2 })];

    // P(accounted | not there) is the exact tail at the cut. A cut made by the bounded spread keeps it within the chance that was asked for.
    [Property(Arbitrary = [typeof(ModelDraws)], MaxTest = 150)]
    public void A_cut_by_rounded_sums_is_never_lower_than_the_exact_claim_allows(DetectionModel model, byte first, byte second, byte third, bool changed, byte bits)
    {
        var box = new RiskBox(model, [], 2);
        var key = PassKey.Of([new((first % 50) + 1, 0), new(second % 40, 0) { Surroundings = changed ? 1 : 0 }, new(third % 30, 0)]);
        ScoreSpread exact = ScoreSpread.Of(box, key, mostWork: long.MaxValue), bounded = ScoreSpread.Of(box, key, mostWork: 1L << (bits % 20));
        foreach (double chance in (double[])[1e-9, 1e-6, 1e-4, 1e-3, 0.005, 0.01, 0.02, 0.05, 0.1, 0.3])
        {
            int cut = bounded.Threshold(chance);

            // Sums in another order differ in their last bits.
            Assert.True(exact.AtLeast(cut) <= chance * (1 + 1e-12), $"{exact.AtLeast(cut)} over {chance}");
        }

        for (int score = -40_000; score <= 40_000; score += 171)
        {
            Assert.True(exact.AtLeast(score) <= bounded.AtLeast(score) + 1e-12, $"{score}");
        }
    }

    [Property(Arbitrary = [typeof(ModelDraws)], MaxTest = 100)]
    public void What_a_plan_promises_of_a_tag_that_is_there_is_never_more_than_the_exact_chance(DetectionModel model, byte first, byte second, byte bits)
    {
        var box = new RiskBox(model, [], 2);
        var key = PassKey.Of([new((first % 50) + 1, 0), new((second % 40) + 1, 0)]);
        ScoreSpread exact = ScoreSpread.Of(box, key, isThere: true, long.MaxValue), bounded = ScoreSpread.Of(box, key, isThere: true, 1L << (bits % 20));
        for (int score = -40_000; score <= 40_000; score += 171)
        {
            Assert.True(bounded.AtLeast(score) <= exact.AtLeast(score) + 1e-12, $"{score}");
        }
    }

    [Theory]
    [InlineData(6, 60_000)]
    [InlineData(6, DetectionModel.MaxLooks)]
    [InlineData(3, 2_400)]
    [InlineData(6, 1_000)]
    public void No_spread_takes_more_steps_than_stated(int passes, int looks)
    {
        foreach (decimal weight in (decimal[])[0.001m, 1, 1_000, 1_000_000])
        {
            var box = new RiskBox(new DetectionModel(0.05m, new BetaRate(weight, weight), 0.05m, new BetaRate(0.001m, 1_000_000)), [], 2);
            PassLooks[] shape = [.. Enumerable.Range(0, passes).Select(i => new PassLooks(looks - i, 0) { Surroundings = i })];

            Assert.InRange(SpreadWork.Of(box, PassKey.Of(shape), ScoreSpread.MostWork).Steps, 1, ScoreSpread.MostWork);
        }
    }

    // What chapters and the demo show is exact.
    [Theory]
    [InlineData(2, 2_400)]
    [InlineData(3, 600)]
    [InlineData(6, 100)]
    public void Usual_passes_are_summed_exactly(int passes, int looks)
    {
        var key = PassKey.Of([.. Enumerable.Repeat(new PassLooks(looks, 0), passes)]);

        Assert.Equal(0, SpreadWork.Of(new RiskBox(DetectionModel.Example, [], 2), key, ScoreSpread.MostWork).CellBits);
    }

    [Fact]
    public void The_largest_passes_are_decided_within_the_limit_and_a_tag_read_in_every_look_is_accounted()
    {
        var policy = new StatedRiskPolicy();
        PassLooks[] full = [.. Largest.Select(static pass => pass with { Reads = pass.Looks })];

        PresenceDecision decision = policy.Decide(full, 500);
        double chance = policy.ChanceAccountedWhenAbsent(full, 500);

        Assert.Equal(PresenceState.Accounted, decision.State);
        Assert.InRange(chance * 500 * (double)policy.AbsentShare, 0, (double)policy.KitRiskLimit);
        Assert.NotEqual(PresenceState.Accounted, policy.Decide([.. Largest.Select(static pass => pass with { Reads = 1 })], 500).State);
    }

    [Fact]
    public void Shapes_beyond_those_that_are_kept_are_kept_too()
    {
        var box = new RiskBox(DetectionModel.Example, [], 2);
        for (int looks = 1; looks <= 1_200; looks++)
        {
            PassLooks[] shape = [new(looks, 0)];

            Assert.Same(box.SpreadOf(shape), box.SpreadOf(shape));
            Assert.Same(box.ScoresOf(shape[0]), box.ScoresOf(shape[0]));
        }
    }

    [Fact]
    public void A_search_for_a_plan_ends_on_its_steps_and_says_so()
    {
        var policy = new StatedRiskPolicy();
        PresencePlan whole = policy.PlanFor(0.9, 20, 6, 30)!;
        bool wasComplete = false;
        for (double steps = 1_000; steps <= 1e9; steps *= 2)
        {
            PresencePlan? plan = policy.PlanFor(0.9, 20, 6, 30, steps);
            if (plan is not null)
            {
                Assert.True(plan.ChanceSettled >= 0.9 && plan.Passes * plan.Looks >= whole.Passes * whole.Looks);
                Assert.True(!plan.IsSearchComplete || plan == whole);
            }

            Assert.True(plan is { IsSearchComplete: true } || !wasComplete);
            wasComplete = plan is { IsSearchComplete: true };
        }

        Assert.True(wasComplete);
        Assert.True(whole.IsSearchComplete);
        Assert.Null(policy.PlanFor(0.9, 20, 6, 30, 0));
        Assert.Equal(whole, policy.PlanFor(0.9, 20, 6, 30, 1e9));
    }

    [Property(MaxTest = 500)]
    public void A_decision_has_the_score_that_its_evidence_has_by_itself(uint draw, bool otherSurroundings)
    {
        int[] looks = [0, 1, 2, 5, 20];
        var passes = new PassLooks[(draw % 4) + 1];
        for (int i = 0; i < passes.Length; i++)
        {
            uint own = (draw * 2_654_435_769) >> (i * 5);
            int offered = looks[own % 5];
            passes[i] = new PassLooks(offered, (int)((own >> 3) % (uint)(offered + 1))) { IsDegraded = (own & 4) != 0, Surroundings = otherSurroundings ? i & 1 : 0 };
        }

        var policy = new StatedRiskPolicy();

        Assert.Equal(policy.Box.ScoreOf(passes, out _), policy.Decide(passes, 20).Evidence);
    }

    // Strays at both ends of their share at once: a sum over corners, of which a chance is at most 1.
    [Property(Arbitrary = [typeof(ModelDraws)], MaxTest = 200)]
    public void A_chance_is_at_most_one(DetectionModel model, PassLooks[] passes, byte factor)
    {
        var policy = new StatedRiskPolicy { Model = model, KitRiskLimit = 0.5m, LineRiskMax = 0.5m, AbsentShare = 0.000001m, RobustnessFactor = (factor % 10) + 1 };

        Assert.InRange(policy.ChanceAccountedWhenAbsent(passes, 1), 0, 1);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(0.5)]
    [InlineData(double.NegativeInfinity)]
    public void A_watch_is_not_made_for_a_mean_that_is_none(double mean) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => TagFadingWatch.For(0.02, 0.2, mean));
}
