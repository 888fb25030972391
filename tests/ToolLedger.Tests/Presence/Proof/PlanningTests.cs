using System;
using System.Linq;
using ToolLedger.Presence;
using ToolLedger.Statistics;
using Xunit;

namespace ToolLedger.Tests.Presence.Proof;

/// <summary>Plans against trying everything, and against simulated tags.</summary>
public sealed class PlanningTests
{
    private static readonly StatedRiskPolicy[] Policies =
    [
        new(), new() { RobustnessFactor = 1 }, new() { Model = new DetectionModel(0.05m, new BetaRate(8, 2), 0.05m, new BetaRate(0.6m, 8)) },
        new() { Model = new DetectionModel(0.02m, new BetaRate(1.2m, 3.5m), 0.02m, new BetaRate(0.3m, 12)) }, new() { Model = new DetectionModel(0.2m, new BetaRate(4, 60), 0.02m, new BetaRate(0.2m, 60)), KitRiskLimit = 0.01m },
    ];

    [Fact]
    public void The_plan_for_a_target_is_the_one_with_the_fewest_looks_of_all()
    {
        const int Passes = 3, Looks = 48;
        foreach (StatedRiskPolicy policy in Policies)
        {
            PresencePlan[] all = [.. from passes in Enumerable.Range(1, Passes) from looks in Enumerable.Range(1, Looks) select policy.Plan(passes, looks, 20)];
            foreach (double target in (double[])[0.3, 0.5, 0.8, 0.9, 0.93, 0.95, 0.97, 0.98, 0.99, 0.999])
            {
                PresencePlan? fewest = all.Where(plan => plan.ChanceSettled >= target).MinBy(static plan => (plan.Passes * plan.Looks, plan.Passes));

                Assert.Equal(fewest, policy.PlanFor(target, lineCount: 20, Passes, Looks));
            }
        }
    }

    // Bounds are Clopper and Pearson's at 99.9 % on either side.
    [Theory]
    [InlineData(1, 40, 20)]
    [InlineData(2, 20, 20)]
    [InlineData(3, 12, 60)]
    [InlineData(6, 4, 5)]
    public void Simulated_tags_are_settled_as_often_as_planned(int passes, int looks, int lines)
    {
        const int Tags = 20_000;
        for (int i = 0; i < Policies.Length; i++)
        {
            StatedRiskPolicy policy = Policies[i];
            PresencePlan plan = policy.Plan(passes, looks, lines);
            var chance = new ModelSampler(policy.Model, [.. Enumerable.Repeat(looks, passes)], seed: (ulong)(40 + i));
            PassLooks[] drawn = new PassLooks[passes];
            int settled = 0;
            for (int tag = 0; tag < Tags; tag++)
            {
                chance.There(drawn);
                settled += policy.Decide(drawn, lines).State == PresenceState.Accounted ? 1 : 0;
            }

            Assert.InRange(plan.ChanceSettled, BinomialDistribution.LowerLimit(settled, Tags, 0.999), BinomialDistribution.UpperLimit(settled, Tags, 0.999));
            Assert.Equal(Math.Pow(plan.ChanceSettled, lines), plan.ChanceKitSettled, 1e-9);
            Assert.Equal(policy.Decide([.. Enumerable.Repeat(new PassLooks(looks, looks), passes)], lines).Risk, plan.LeastRisk);
        }
    }

    [Fact]
    public void What_cannot_be_reached_has_no_plan()
    {
        // Every other pass is covered: one pass settles at most one half, however long it is.
        var policy = new StatedRiskPolicy { Model = new DetectionModel(0.5m, new BetaRate(8, 2), 0.01m, new BetaRate(0.2m, 30)) };

        Assert.Null(policy.PlanFor(0.6, lineCount: 5, passesMax: 1, looksMax: 300));
        Assert.Throws<ArgumentOutOfRangeException>(() => policy.PlanFor(1, 5, 1, 20));
        Assert.Throws<ArgumentOutOfRangeException>(() => policy.PlanFor(double.NaN, 5, 1, 20));
        Assert.Throws<ArgumentOutOfRangeException>(() => policy.PlanFor(0.5, 5, 7, 20));
        Assert.Throws<ArgumentOutOfRangeException>(() => policy.Plan(0, 5, 20));
    }
}
