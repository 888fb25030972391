using System;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ToolLedger.Presence;
using Xunit;

namespace ToolLedger.Tests.Presence.Proof;

/// <summary>What holds for every model that is allowed, every box and every count.</summary>
public sealed class ExtremeEvidenceTests
{
    // Every number of reads in turn, at both ends of the obscured share (the stray share is one number for all reads): from a silent pass of a tag that was read elsewhere up to a read in every look.
    [Property(Arbitrary = [typeof(ExtremeDraws)], MaxTest = 40)]
    public Property From_the_first_read_on_no_read_lowers_the_odds_at_any_corner_of_any_box(DetectionModel model, ExtremeDraws.Box box) => Prop.ForAll(ExtremeDraws.Looks().ToArbitrary(), looks =>
    {
        var corners = new RiskBox(model, [], box.Factor);
        (int Low, int High) before = ScoreOf(0);
        for (int reads = 1; reads <= looks; reads++)
        {
            (int Low, int High) score = ScoreOf(reads);

            // A silent pass is less than one with a read, at each corner by itself.
            Assert.True(reads > 1 ? score.Low >= before.Low && score.High >= before.High : IsLess(before.Low, score.Low) && IsLess(before.High, score.High), $"{reads} of {looks}: {before} to {score}");
            before = score;
        }

        (int Low, int High) ScoreOf(int reads) => (corners.ScoreOf(new PassLooks(looks, reads), isHigh: false), corners.ScoreOf(new PassLooks(looks, reads), isHigh: true));
    });

    [Fact]
    public void From_the_first_read_on_no_read_lowers_the_odds_for_every_number_of_looks()
    {
        foreach (DetectionModel model in (DetectionModel[])[DetectionModel.Example, new(0.3m, new BetaRate(8, 2), 0.2m, new BetaRate(0.6m, 8)), new(0.9m, new BetaRate(0.5m, 0.5m), 1, new BetaRate(0.5m, 0.5m))])
        {
            for (int looks = 1; looks <= 400; looks++)
            {
                double before = model.LogOdds([new(looks, 0), new(5, 2)], 0.01, isBounded: true);
                for (int reads = 1; reads <= looks; reads += looks < 40 ? 1 : 7)
                {
                    double odds = model.LogOdds([new(looks, reads), new(5, 2)], 0.01, isBounded: true);
                    Assert.True(odds >= before - (1e-12 * Math.Abs(before)), $"{reads} of {looks}: {before:R} to {odds:R}");
                    before = odds;
                }
            }
        }
    }

    [Property(Arbitrary = [typeof(ExtremeDraws)], MaxTest = 16)]
    public void Terms_add_up_and_no_figure_is_no_number_whatever_the_model(DetectionModel model, ExtremeDraws.Box box, PassLooks pass, ushort lines)
    {
        var policy = new StatedRiskPolicy { Model = model, RobustnessFactor = box.Factor };
        PresenceJudgement judgement = policy.Judge(StatedRiskPolicyTests.Evidence([pass, new PassLooks(20, 0)]));
        PresenceRisk risk = judgement.Risk!;
        PresenceDecision decision = policy.Decide([pass], lines + 1);

        Assert.Equal(risk.Decision.LogOdds, risk.Terms.Sum(static term => term.LogOdds));
        Assert.All((double[])[risk.Decision.Risk, risk.Decision.Cut, risk.ExactRisk, risk.ObscuredShare, risk.StrayShare, decision.Risk, decision.Cut, risk.Advice?.Chance ?? 0], static share => Assert.InRange(share, 0, 1));
        Assert.All(judgement.Reasons, static reason => Assert.DoesNotContain("NaN", reason.ToString(), StringComparison.Ordinal));
        Assert.All(judgement.Reasons, static reason => Assert.DoesNotContain("∞", reason.ToString(), StringComparison.Ordinal));
        Assert.Equal(pass.Reads == 0, decision.State == PresenceState.NotRead);
    }

    [Property(Arbitrary = [typeof(ExtremeDraws)], MaxTest = 150)]
    public void The_exact_posterior_stands_beside_the_bounded_one_and_differs_only_where_the_bound_did_something(DetectionModel model, PassLooks first, PassLooks second)
    {
        PassLooks[] passes = [first, second];
        double exact = model.LogOdds(passes, 0.01, isBounded: false), bounded = model.LogOdds(passes, 0.01, isBounded: true);
        bool canBind = ModelDraws.IsRead(passes) && passes.Any(static pass => pass is { Looks: > 0, Reads: 0 });

        Assert.True(double.IsFinite(exact) && double.IsFinite(bounded));
        Assert.True(bounded <= exact && (canBind || bounded == exact), $"{exact:R} and {bounded:R}");
        Assert.InRange(model.Posterior(passes, 0.01, isBounded: false), 0, 1);
        if (canBind)
        {
            PassLooks silent = passes.Single(static pass => pass.Reads == 0), read = passes.Single(static pass => pass.Reads > 0);
            double with = model.LogOdds([read, silent with { Reads = 1 }], 0.01, isBounded: true);
            Assert.True(bounded <= with + (1e-9 * Math.Max(1, Math.Abs(with))), $"{bounded:R} and {with:R}");
        }
    }

    [Property(Arbitrary = [typeof(ExtremeDraws)], MaxTest = 60)]
    public void Plans_are_probabilities_whatever_the_model(DetectionModel model, ExtremeDraws.Box box)
    {
        PresencePlan plan = new StatedRiskPolicy { Model = model, RobustnessFactor = box.Factor }.Plan(passes: 2, looks: 15, lineCount: 20);

        Assert.All((double[])[plan.ChanceSettled, plan.ChanceKitSettled, plan.ChanceAccountedWhenAbsent, plan.LeastRisk], static share => Assert.InRange(share, 0, 1));
        Assert.True(plan.ChanceAccountedWhenAbsent * 20 * 0.01 <= 0.001);
    }

    // At the end of the scale all scores are one.
    private static bool IsLess(int silent, int read) => silent < read || read == -PassScores.Limit || silent == -PassScores.Limit;
}
