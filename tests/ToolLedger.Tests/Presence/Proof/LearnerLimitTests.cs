using System;
using System.Linq;
using FsCheck.Xunit;
using ToolLedger.Presence;
using Xunit;

namespace ToolLedger.Tests.Presence.Proof;

/// <summary>Whatever sessions and whatever model of the class are handed in, learning ends with a model or a reason.</summary>
public sealed class LearnerLimitTests
{
    private static readonly decimal[] Weights = [0.001m, 0.01m, 0.2m, 0.6m, 1, 2.5m, 8, 60, 1_000, 999_999.999999999m, 1_000_000];
    private static readonly decimal[] ObscuredShares = [0, 0.000000001m, 0.05m, 0.9m];
    private static readonly decimal[] StrayShares = [0.000001m, 0.05m, 0.999999999m, 1];
    private static readonly int[] LookCounts = [0, 1, 3, 20, 200, 2_000];

    [Property(MaxTest = 300)]
    public void Learning_ends_with_a_model_or_a_reason(uint seed, bool isShrunk, byte passes)
    {
        var draw = new Random((int)(seed % int.MaxValue));
        DetectionModel? shrinkTo = isShrunk ? Model(draw) : null;
        var learner = new DetectionLearner();
        for (int i = draw.Next(8); i > 0; i--)
        {
            learner.AddThere(Passes(draw, 0.5));
        }

        for (int i = draw.Next(8); i > 0; i--)
        {
            learner.AddAbsent(Passes(draw, draw.Next(2) * 0.3));
        }

        LearnedDetection learned = learner.Learn(shrinkTo, passes % 4 == 0 ? 1_000_000 : passes);

        Assert.Equal(learned.Model is null, learned.Refused is not null);
    }

    // 0 / 0: nothing is obscured in the model of the class, and the likelihood of silence in so many looks is below the smallest number; and the same where all are strays.
    [Fact]
    public void Silence_in_very_many_looks_is_no_error_where_a_share_is_none_or_all()
    {
        var steady = new BetaRate(1_000_000, 1_000);
        var learner = new DetectionLearner();
        learner.AddThere([new PassLooks(60_000, 0)]);
        learner.AddAbsent([new PassLooks(60_000, 0)]);
        learner.AddAbsent([new PassLooks(60, 3)]);

        Assert.NotNull(learner.Learn(new DetectionModel(0, steady, 1, steady), 1_000_000).Model);
        Assert.NotNull(learner.Learn(new DetectionModel(0, steady, 1, steady), 1).Model);
    }

    [Fact]
    public void Learning_that_ends_on_its_limit_says_so_and_accounts_for_nothing_by_reads()
    {
        var learner = new DetectionLearner();
        for (int i = 0; i < 6; i++)
        {
            learner.AddAbsent([new PassLooks(65_000 + i, 0)]);
            learner.AddAbsent([new PassLooks(60_000 + i, 1 + (9_000 * i))]);
            learner.AddThere([new PassLooks(64_000 + i, 10_000 * i)]);
        }

        LearnedDetection cut = learner.Learn(shrinkTo: null, shrinkPasses: 0, mostWork: 1_000_000);
        var policy = new StatedRiskPolicy { Model = cut.Model! };

        Assert.True(cut.IsCutShort);
        Assert.Equal(1, cut.Model!.StrayShare);
        Assert.Equal(cut.Model.Present, cut.Model.Stray);
        Assert.NotEqual(PresenceState.Accounted, policy.Decide([new PassLooks(20, 20), new PassLooks(20, 20)], 20).State);
    }

    private static PassLooks[] Passes(Random draw, double readShare) => [.. Enumerable.Range(0, draw.Next(1, 4)).Select(_ => LookCounts[draw.Next(LookCounts.Length)]).Select(
        looks => new PassLooks(looks, draw.NextDouble() < readShare ? draw.Next(looks + 1) : 0))];

    private static DetectionModel Model(Random draw)
    {
        decimal[] a = [Pick(draw, Weights), Pick(draw, Weights)], b = [Pick(draw, Weights), Pick(draw, Weights)];
        return new DetectionModel(Pick(draw, ObscuredShares), new BetaRate(a.Max(), b.Min()), Pick(draw, StrayShares), new BetaRate(a.Min(), b.Max()));
    }

    private static decimal Pick(Random draw, decimal[] values) => values[draw.Next(values.Length)];
}
