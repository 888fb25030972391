using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Presence;
using ToolLedger.Statistics;
using Xunit;

namespace ToolLedger.Tests.Presence.Proof;

/// <summary>Learning against truth: models are invented, sessions drawn from them with fixed seeds, so that what is learned can be held against what is so.</summary>
public sealed class LearnerProofTests
{
    private static readonly DetectionModel[] Truths =
    [
        new(0.08m, new BetaRate(3, 2), 0.2m, new BetaRate(0.6m, 8)), new(0.02m, new BetaRate(8, 2), 0.1m, new BetaRate(0.4m, 12)), new(0.15m, new BetaRate(1.5m, 3), 0.3m, new BetaRate(0.8m, 6)),
    ];

    // A consistent estimate has a third of the error, in the mean, from nine times as many sessions; two thirds are asked for, and at most 10 % error of each mean at the end.
    [Fact]
    public void More_sessions_bring_what_is_learned_closer_to_the_truth()
    {
        foreach (DetectionModel truth in Truths)
        {
            double few = 0, many = 0;
            for (ulong seed = 1; seed <= 6; seed++)
            {
                few += Error(truth, Learned(Sessions(truth, 800, seed)).Model!);
                double last = Error(truth, Learned(Sessions(truth, 7200, 100 + seed)).Model!);
                Assert.InRange(last, 0, 0.4);
                many += last;
            }

            Assert.True(many < few * 2 / 3, $"{truth}: {few / 6:0.000} to {many / 6:0.000}");
        }
    }

    // The likelihood is summed by the model's own probabilities, not by the learner; its priors may cost a unit or two of it. Strays stand at the upper end of what is believed of them (1.36 units, half the 90 % quantile
    // of chi-square with one degree of freedom), so that only better ones must not be likelier.
    [Fact]
    public void No_model_nearby_is_clearly_likelier_than_the_learned_one()
    {
        foreach (DetectionModel truth in Truths)
        {
            Session[] sessions = Sessions(truth, 1000, seed: 11);
            DetectionModel model = Learned(sessions).Model!;
            double found = LogLikelihood(model, sessions);
            Assert.True(found >= LogLikelihood(truth, sessions) - 1, "The truth is likelier.");
            foreach (decimal factor in (decimal[])[0.85m, 1.15m])
            {
                Assert.True(found > LogLikelihood(new DetectionModel(Cut(model.ObscuredShare * factor), model.Present, model.StrayShare, model.Stray), sessions) - 0.5);
                Assert.True(found > LogLikelihood(new DetectionModel(model.ObscuredShare, model.Present, Cut(model.StrayShare * factor), model.Stray), sessions) - 1.9);
                Assert.True(found > LogLikelihood(new DetectionModel(model.ObscuredShare, new BetaRate(Cut(model.Present.A * factor), model.Present.B), model.StrayShare, model.Stray), sessions) - 0.5);
                Assert.True(found > LogLikelihood(new DetectionModel(model.ObscuredShare, model.Present, model.StrayShare, new BetaRate(model.Stray.A, Cut(model.Stray.B * factor))), sessions) - (factor < 1 ? 0.5 : 1.9));
            }
        }
    }

    // The usual case of a site: hundreds of tools were sighted elsewhere, and none was ever read. Nothing says how a stray answers, so it is
    // taken to answer as well as a tag that is there, and to be as frequent as the bound allows.
    [Theory]
    [InlineData(20, 2.5, 2.5)]
    [InlineData(240, 3, 55)]
    public void Where_no_stray_was_ever_read_the_cautious_model_is_learned(int looks, double a, double b)
    {
        var truth = new DetectionModel(0.05m, new BetaRate((decimal)a, (decimal)b), 0.000001m, new BetaRate(0.001m, (decimal)b));
        LearnedDetection learned = Learned(Sessions(truth, 1000, seed: 3, looks: [looks, looks]));

        DetectionModel model = learned.Model!;
        Assert.Equal(0, learned.SessionsStray);
        Assert.Equal(model.Present, model.Stray);
        Assert.Equal(learned.StrayShareAtMost, (double)model.StrayShare, 1e-9);
        Assert.Equal(1, new DetectionLearner().Learn().Model!.StrayShare);
    }

    // Strays that answer steadily have a larger first weight than tags that are there, though they are read far less. The model is not refused: it takes strays to vary more than they do, so that
    // many reads are likelier of a stray than they are in truth.
    [Fact]
    public void Steady_strays_are_taken_to_vary_more_than_they_do()
    {
        var there = new DetectionModel(0.05m, new BetaRate(1.5m, 2), 0.2m, new BetaRate(1.5m, 2));
        var steady = new DetectionModel(0, new BetaRate(10, 90), 0.2m, new BetaRate(10, 90));
        LearnedDetection learned = Learned([.. Sessions(there, 4000, seed: 5).Where(static session => session.IsThere), .. Sessions(steady, 4000, seed: 6).Where(static session => !session.IsThere)]);

        DetectionModel model = learned.Model!;
        Assert.True(model.Stray.A <= model.Present.A && model.Stray.B >= model.Present.B && model.Stray.Mean < 0.2, model.ToString());
        for (int least = 7; least <= 20; least++)
        {
            double ofModel = Enumerable.Range(least, 21 - least).Sum(reads => Math.Exp(model.LogStray(20, reads))), inTruth = Enumerable.Range(least, 21 - least).Sum(reads => Math.Exp(steady.LogStray(20, reads)));
            Assert.True(ofModel >= inTruth, $"{least} reads and more: {ofModel} and {inTruth}");
        }
    }

    // Tags steadier than strays would make no allowed model. It is they that are taken to vary more; strays keep the rate of the class until one is heard, or nothing would speak for the claim.
    [Fact]
    public void Steady_tags_make_no_stray_weaker()
    {
        var ofClass = new DetectionModel(0.05m, new BetaRate(2, 6), 0.05m, new BetaRate(0.3m, 20));
        var steady = new DetectionModel(0.05m, new BetaRate(60, 440), 0.05m, new BetaRate(0.3m, 440));
        Session[] there = [.. Sessions(steady, 2000, seed: 7).Where(static session => session.IsThere)];
        Assert.Equal(ofClass.Stray, Learned(there, ofClass).Model!.Stray);

        DetectionModel heard = Learned([.. there, .. Sessions(ofClass, 6000, seed: 8).Where(static session => !session.IsThere)], ofClass).Model!;
        Assert.Equal(heard.Stray.B, heard.Present.B);
        for (int least = 1; least <= 20; least++)
        {
            double ofModel = Enumerable.Range(least, 21 - least).Sum(reads => Math.Exp(heard.LogStray(20, reads))), inTruth = Enumerable.Range(least, 21 - least).Sum(reads => Math.Exp(ofClass.LogStray(20, reads)));
            Assert.True(ofModel >= inTruth / 2, $"{least} reads and more: {ofModel} and {inTruth}");
        }
    }

    // A few sessions without a stray do not show that there are none: the share stays that of the class as far as the bound does not speak against it.
    [Theory]
    [InlineData(40)]
    [InlineData(2000)]
    public void Strays_are_taken_to_be_as_frequent_as_the_bound_allows(int sessions)
    {
        LearnedDetection learned = Learned(Enumerable.Repeat(new Session([new PassLooks(20, 0)], false), sessions).Append(new Session([new PassLooks(20, 9)], true)), DetectionModel.Example);
        Assert.InRange((double)learned.Model!.StrayShare, double.Min(learned.StrayShareAtMost, (double)DetectionModel.Example.StrayShare) - 1e-9, (double)DetectionModel.Example.StrayShare);
    }

    // A handful of strays may by chance be those that answer worst, and a model of them would claim too much. Drawn from known models: the bound is on the right side of the true mean as often as it says, within what chance
    // explains (200 draws each; 183 or fewer of them have a chance of less than 3 in 1,000 at 95 %, by the binomial distribution), and the model's strays never answer worse than it.
    [Theory]
    [InlineData(0, 15)]
    [InlineData(1, 60)]
    [InlineData(2, 150)]
    public void Strays_are_taken_to_answer_as_well_as_the_bound_allows(int truth, int count)
    {
        int covered = 0;
        for (ulong seed = 1; seed <= 200; seed++)
        {
            LearnedDetection learned = Learned(Sessions(Truths[truth], count, 1000 + seed));
            covered += learned.StrayRateAtMost >= Truths[truth].Stray.Mean ? 1 : 0;
            if (learned is { Model: { } model, SessionsStray: > 0 })
            {
                Assert.True(model.Stray.Mean >= double.Min(learned.StrayRateAtMost, model.Present.Mean) - 1e-6, $"{model} {learned}");
            }
        }

        Assert.True(covered > 183, $"{covered} of 200");
    }

    // With a class the bound holds strays below it only as far as the sessions show it.
    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(400)]
    public void Strays_answer_worse_than_those_of_the_class_only_as_far_as_the_bound_shows(int strays)
    {
        LearnedDetection learned = Learned(
            [.. Sessions(DetectionModel.Example, 200, seed: 21).Where(static session => session.IsThere), .. Enumerable.Repeat(new Session([new PassLooks(20, 0)], false), 9 * strays), .. Enumerable.Repeat(new Session([new PassLooks(60, 1)], false), strays)],
            DetectionModel.Example, 1);

        double mean = learned.Model!.Stray.Mean, ofClass = DetectionModel.Example.Stray.Mean;
        Assert.True(mean >= double.Min(learned.StrayRateAtMost, ofClass) - 1e-6, learned.ToString());
        Assert.Equal(strays == 400, mean < ofClass - 1e-6);
    }

    [Fact]
    public void A_stray_that_hardly_answers_does_not_refuse_the_model_and_without_any_nothing_bounds_the_rate()
    {
        Session[] there = [.. Sessions(Truths[0], 300, seed: 31).Where(static session => session.IsThere)];
        LearnedDetection one = Learned([.. there, new Session([new PassLooks(20, 1), new PassLooks(20, 0)], false), new Session([new PassLooks(20, 0)], false)]), none = Learned(there);

        Assert.NotNull(one.Model);
        Assert.InRange(one.StrayRateAtMost, one.Model.Stray.Mean - 1e-6, 1);
        Assert.Equal(1, none.StrayRateAtMost);
    }

    [Fact]
    public void Strays_that_answer_better_than_tags_that_are_there_give_no_model()
    {
        Session[] sessions = Sessions(Truths[0], 500, seed: 9);
        LearnedDetection swapped = Learned(sessions.Select(static session => session with { IsThere = !session.IsThere }));

        Assert.Null(swapped.Model);
        Assert.Equal(DetectionModelRules.StrayReadsBetter, swapped.Refused!.Kind);
    }

    [Fact]
    public void The_order_of_sessions_changes_no_digit()
    {
        for (ulong seed = 1; seed <= 4; seed++)
        {
            Session[] sessions = Sessions(Truths[(int)(seed % 3)], 300, seed, looks: [20, 37]);
            LearnedDetection learned = Learned(sessions), ofClass = Learned(sessions, DetectionModel.Example);
            var chance = new ModelSampler(Truths[0], [1], seed);
            Session[] shuffled = [.. sessions.OrderBy(_ => chance.Unit())];

            Assert.Equal(learned, Learned(shuffled));
            Assert.Equal(ofClass, Learned(shuffled, DetectionModel.Example));
            Assert.Equal(learned, Learned([.. sessions.Reverse()]));
        }
    }

    [Fact]
    public void The_more_the_class_counts_the_closer_a_tag_is_drawn_to_it()
    {
        Session[] sessions = Sessions(Truths[2], 40, seed: 4);
        double[] distances = [.. ((int[])[0, 10, 100, 1000, 10_000, 1_000_000]).Select(count => Error(DetectionModel.Example, Learned(sessions, DetectionModel.Example, count).Model!))];

        Assert.All(distances.Zip(distances.Skip(1)), static pair => Assert.True(pair.Second <= pair.First + 1e-9, $"{pair.First} to {pair.Second}"));
        Assert.True(distances[^1] < distances[0] / 20, $"{distances[0]} to {distances[^1]}");
    }

    // An abnormal day: all tags covered, or the reader without power. Its sessions are degraded and change no digit, however many there are.
    [Fact]
    public void Degraded_sessions_are_left_out_however_many()
    {
        Session[] sessions = Sessions(Truths[0], 300, seed: 2);
        LearnedDetection before = Learned(sessions);
        var abnormal = new Session([new PassLooks(20, 0) { IsDegraded = true }, new PassLooks(20, 0)], IsThere: true);

        Assert.Equal(before with { SessionsLeftOut = 1000 }, Learned([.. sessions, .. Enumerable.Repeat(abnormal, 1000)]));
    }

    // Clopper and Pearson never undercover: summed over everything that may be counted, the bound is on the right side with 95 % at least.
    [Fact]
    public void What_is_claimed_holds_as_often_as_it_says()
    {
        LearnedDetection learned = Learned(Sessions(Truths[0], 30, seed: 1));
        Assert.Equal(BinomialDistribution.LowerLimit(learned.PassesRead, learned.PassesThere, 0.95), learned.ReadShareAtLeast);
        Assert.Equal(BinomialDistribution.UpperLimit(learned.SessionsStray, learned.SessionsAbsent, 0.95), learned.StrayShareAtMost);
        Assert.True(learned is { PassesThere: 60, SessionsAbsent: 30 } && learned.PassesRead < 60 && learned.SessionsStray > 0, learned.ToString());

        foreach (int n in (int[])[1, 8, 30, 200])
        {
            foreach (double share in (double[])[0.001, 0.03, 0.2, 0.5, 0.9, 0.995])
            {
                int[] counts = [.. Enumerable.Range(0, n + 1)];
                Assert.True(counts.Where(k => BinomialDistribution.LowerLimit(k, n, 0.95) <= share).Sum(k => BinomialDistribution.Exactly(k, n, share)) >= 0.95 - 1e-12);
                Assert.True(counts.Where(k => BinomialDistribution.UpperLimit(k, n, 0.95) >= share).Sum(k => BinomialDistribution.Exactly(k, n, share)) >= 0.95 - 1e-12);
            }
        }
    }

    /// <summary>Sum of the relative errors of both shares and both mean rates.</summary>
    private static double Error(DetectionModel truth, DetectionModel model) =>
        Off((double)model.ObscuredShare, (double)truth.ObscuredShare) + Off((double)model.StrayShare, (double)truth.StrayShare) + Off(model.Present.Mean, truth.Present.Mean) + Off(model.Stray.Mean, truth.Stray.Mean);

    private static double Off(double value, double truth) => Math.Abs((value / truth) - 1);

    private static decimal Cut(decimal number) => decimal.Round(decimal.Min(number, 1_000_000), 9);

    private static LearnedDetection Learned(IEnumerable<Session> sessions, DetectionModel? shrinkTo = null, int count = 10)
    {
        var learner = new DetectionLearner();
        foreach (Session session in sessions)
        {
            if (session.IsThere)
            {
                learner.AddThere(session.Passes);
            }
            else
            {
                learner.AddAbsent(session.Passes);
            }
        }

        return learner.Learn(shrinkTo, count);
    }

    /// <summary>So many sessions of tags that are there, and as many of tags that are not.</summary>
    private static Session[] Sessions(DetectionModel truth, int count, ulong seed, int[]? looks = null)
    {
        int[] each = looks ?? [20, 20];
        var draws = new ModelSampler(truth, each, seed);
        var sessions = new List<Session>();
        for (int i = 0; i < count; i++)
        {
            var there = new PassLooks[each.Length];
            draws.There(there);
            var absent = new PassLooks[each.Length];
            draws.Absent(absent);
            sessions.AddRange([new Session(there, IsThere: true), new Session(absent, IsThere: false)]);
        }

        return [.. sessions];
    }

    private static double LogLikelihood(DetectionModel model, IEnumerable<Session> sessions) => sessions.Sum(session =>
    {
        if (session.IsThere)
        {
            return session.Passes.Sum(pass => model.LogPresent(pass.Looks, pass.Reads));
        }

        double stray = Math.Exp(session.Passes.Sum(pass => model.LogStray(pass.Looks, pass.Reads))) * (double)model.StrayShare;
        return Math.Log(session.Passes.All(static pass => pass.Reads == 0) ? stray + 1 - (double)model.StrayShare : stray);
    });

    private sealed record Session(PassLooks[] Passes, bool IsThere);
}
