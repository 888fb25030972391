using System;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ToolLedger.Presence;
using ToolLedger.Reads;
using Xunit;

namespace ToolLedger.Tests.Presence;

/// <summary>Passes weighed by models of different stations and mounting classes, and lines with priors of their own. All models are invented; the claim is checked by plain enumeration.</summary>
public sealed class MixedModelTests
{
    private const int Lines = 20;

    [Property(Arbitrary = [typeof(MixedModelTests)], MaxTest = 200)]
    public void Models_that_are_equal_decide_as_one_does(DetectionModel model, PassLooks[] passes)
    {
        var one = new StatedRiskPolicy { Model = model, RobustnessFactor = 1, LineRiskMax = 0.5m };
        StatedRiskPolicy three = Policy(model, model, model, factor: 1);
        PassLooks[] mixed = Mixed(passes);

        Assert.Equal(one.Decide(passes, Lines).Evidence.Least, three.Decide(mixed, Lines).Evidence.Least);
        Assert.Equal(one.Decide(passes, Lines).Threshold, three.Decide(mixed, Lines).Threshold);
        Assert.Equal(one.Decide(passes, Lines).State, three.Decide(mixed, Lines).State);
    }

    [Property(Arbitrary = [typeof(MixedModelTests)], MaxTest = 200)]
    public void The_odds_that_decide_are_the_least_over_every_corner(DetectionModel first, DetectionModel second, DetectionModel third, PassLooks[] passes)
    {
        PassLooks[] good = [.. Mixed(passes).Select(static pass => pass with { IsDegraded = false })];
        double decided = Policy(first, second, third, factor: 2).Decide(good, Lines).LogOdds, least = double.MaxValue;
        for (int corner = 0; corner < 8; corner++)
        {
            DetectionModel[] at = [.. new[] { first, second, third }.Select((model, index) => AtCorner(model, (corner >> index & 1) != 0, 2))];
            least = Math.Min(least, LogOdds(at, good));
        }

        if (Math.Abs(least) < 50)
        {
            Assert.InRange(decided, least - ((3.0 + (2 * good.Length)) / 256) - 1e-9, least + 1e-9);
        }
    }

    [Property(Arbitrary = [typeof(MixedModelTests)], MaxTest = 200)]
    public void Another_read_never_lowers_the_answer_and_the_terms_add_up(DetectionModel first, DetectionModel second, DetectionModel third, PassLooks[] passes, int draw)
    {
        StatedRiskPolicy policy = Policy(first, second, third, factor: 2);
        PassLooks[] mixed = Mixed(passes);
        PresenceDecision before = policy.Decide(mixed, Lines);
        if (ModelDraws.WithOneMoreRead(mixed, draw) is { } more)
        {
            PresenceDecision after = policy.Decide(more, Lines);
            Assert.True(after.State >= before.State && after.Cut == before.Cut);
            Assert.True(after.Risk <= before.Risk || !mixed.Any(static pass => pass is { Reads: > 0, IsDegraded: false }), $"{before.Risk} to {after.Risk}");
        }

        PresenceRisk risk = policy.Judge(Evidence(mixed)).Risk!;
        Assert.Equal(risk.Decision.LogOdds, risk.Terms.Sum(static term => term.LogOdds));
        Assert.Equal(before.LogOdds, risk.Decision.LogOdds);
        Assert.InRange(risk.ExactRisk, 0, 1);
    }

    // So a word of custody that makes absence likelier, whatever it is, settles no line.
    [Property(Arbitrary = [typeof(MixedModelTests)], MaxTest = 200)]
    public void A_tool_that_was_likelier_absent_is_never_accounted_for_more_easily(DetectionModel first, DetectionModel second, PassLooks[] passes, int share, int more)
    {
        StatedRiskPolicy policy = Policy(first, second, first, factor: 2);
        PassLooks[] mixed = Mixed(passes);
        decimal less = ((Math.Abs((long)share) % 400_000) + 1) / 1_000_000m, larger = less + ((Math.Abs((long)more) % 400_000) / 1_000_000m);
        PresenceDecision likely = policy.Decide(mixed, Lines, less), unlikely = policy.Decide(mixed, Lines, larger);

        Assert.True(unlikely.State <= likely.State);
        Assert.True(unlikely.Risk >= likely.Risk);
        Assert.True(policy.ChanceAccountedWhenAbsent(mixed, Lines, larger) <= policy.ChanceAccountedWhenAbsent(mixed, Lines, less));
    }

    // A kit of lines with priors and models of their own: the expected number of accounted tools that are not there, by plain enumeration over all that strays may show, is within the limit.
    [Property(Arbitrary = [typeof(MixedModelTests)], MaxTest = 100)]
    public void The_limit_of_the_kit_holds_for_lines_of_different_priors_and_models(DetectionModel first, DetectionModel second, DetectionModel third, byte looks, int[] shares)
    {
        StatedRiskPolicy policy = Policy(first, second, third, factor: 2);
        int lines = Math.Clamp(shares.Length, 1, 8);
        double sum = 0;
        for (int line = 0; line < lines; line++)
        {
            decimal prior = line < shares.Length ? ((Math.Abs((long)shares[line]) % 500_000) + 1) / 1_000_000m : 0.01m;
            PassLooks[] passes = [new((looks % 9) + 1, 0) { Model = line % 3 }, new((looks / 9 % 7) + 1, 0) { Model = line / 3 % 3, Surroundings = line % 2 }];
            double chance = ChanceAccounted(policy, passes, lines, prior);
            Assert.True(chance <= policy.ChanceAccountedWhenAbsent(passes, lines, prior) * (1 + 1e-9) + 1e-15);
            sum += (double)prior * chance;
        }

        Assert.True(sum <= (double)policy.KitRiskLimit * (1 + 1e-9), $"{sum} is over the limit");
    }

    [Fact]
    public void The_station_and_the_mounting_say_which_model_weighs_a_pass()
    {
        var models = new[] { new StationModel(new StationId("R2"), null, Poor), new StationModel(new StationId("R1"), "recess", Poor), new StationModel(new StationId("R1"), "flat", Good) };
        var policy = new StatedRiskPolicy { Models = models };

        Assert.Equal(["R1 flat", "R1 recess", "R2 "], policy.Models.Select(static model => $"{model.Station} {model.Mounting}"));
        Assert.Equal(1, Number(policy, "R1", "flat"));
        Assert.Equal(2, Number(policy, "R1", "recess"));
        Assert.Equal(3, Number(policy, "R2", null));

        // Nobody learned these: they are weighed by the policy's own model, never by that of another class.
        Assert.Equal(0, Number(policy, "R1", null));
        Assert.Equal(0, Number(policy, "R2", "flat"));
        Assert.Equal(0, Number(policy, "R3", "flat"));
    }

    [Fact]
    public void Too_many_models_and_two_for_the_same_tags_are_refused()
    {
        StationModel[] many = [.. Enumerable.Range(0, 1001).Select(static i => new StationModel(new StationId($"R{i}"), null, Good))];

        Assert.Equal(1000, new StatedRiskPolicy { Models = many[..1000] }.Models.Count);
        Assert.Throws<ArgumentException>(() => new StatedRiskPolicy { Models = many });
        ArgumentException twice = Assert.Throws<ArgumentException>(() => new StatedRiskPolicy { Models = [many[0], new StationModel(many[0].Station, null, Poor)] });
        Assert.Contains("Station R0 has two models", twice.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => new StationModel(default, null, Good));
        Assert.Throws<ArgumentOutOfRangeException>(() => new StatedRiskPolicy().Decide([new PassLooks(5, 1) { Model = 1 }], Lines));
    }

    [Fact]
    public void Lines_of_different_classes_in_turn_allocate_nothing_once_their_shapes_are_known()
    {
        StatedRiskPolicy policy = Policy(DetectionModel.Example, Good, Poor, factor: 2);
        PassLooks[][] kit = [.. Enumerable.Range(0, 3).Select(static model => new PassLooks[] { new(40, 25) { Model = model }, new(40, 22) { Model = model } })];
        int accounted = Decide(policy, kit);
        long before = GC.GetAllocatedBytesForCurrentThread();
        accounted += Decide(policy, kit);
        long bytes = GC.GetAllocatedBytesForCurrentThread() - before;

        Assert.True(accounted > 0);
        Assert.Equal(0, bytes);
    }

    public static Arbitrary<DetectionModel> Models() => ModelDraws.Models();

    public static Arbitrary<PassLooks[]> Passes() => ModelDraws.Passes();

    private static DetectionModel Good { get; } = new(0.02m, new BetaRate(8, 2), 0.05m, new BetaRate(0.6m, 8));

    private static DetectionModel Poor { get; } = new(0.15m, new BetaRate(1.2m, 3.5m), 0.08m, new BetaRate(0.6m, 8));

    private static int Decide(StatedRiskPolicy policy, PassLooks[][] kit)
    {
        int accounted = 0;
        for (int round = 0; round < 50; round++)
        {
            foreach (PassLooks[] passes in kit)
            {
                accounted += policy.Decide(passes, Lines, 0.02m).State == PresenceState.Accounted ? 1 : 0;
            }
        }

        return accounted;
    }

    private static int Number(StatedRiskPolicy policy, string station, string? mounting)
        => policy.Judge(Evidence([new PassLooks(20, 6)], station, mounting)).Risk!.Terms.Single(static term => term.Kind == PresenceTermKind.ReadPass).Model;

    private static StatedRiskPolicy Policy(DetectionModel first, DetectionModel second, DetectionModel third, decimal factor) => new()
    {
        Model = first,
        Models = [new StationModel(new StationId("R1"), "flat", second), new StationModel(new StationId("R2"), "flat", third)],
        RobustnessFactor = factor,
        LineRiskMax = 0.5m,
    };

    private static PassLooks[] Mixed(PassLooks[] passes) => [.. passes.Select(static (pass, index) => pass with { Model = index % 3 })];

    private static PresenceEvidence Evidence(PassLooks[] passes, string? station = null, string? mounting = "flat") => new()
    {
        Tag = default,
        Passes = [.. passes.Select((pass, index) => new PassEvidence(new SessionId("S"), index + 1, pass.IsDegraded, pass.Reads, pass.Looks)
        {
            Surroundings = pass.Surroundings,
            Station = new StationId(station ?? (pass.Model == 0 ? "R9" : $"R{pass.Model}")),
        })],
        Antennas = [],
        HasTid = true,
        Mounting = mounting,
        KitLineCount = Lines,
    };

    private static DetectionModel AtCorner(DetectionModel model, bool isHigh, decimal factor)
        => new(Math.Round(isHigh ? Math.Min(DetectionModel.MaxObscuredShare, model.ObscuredShare * factor) : model.ObscuredShare / factor, 9), model.Present, model.StrayShare, model.Stray);

    /// <summary>The bounded posterior by the formula, surroundings by surroundings: the largest doubled stray share where read, the smallest halved one where silent.</summary>
    private static double LogOdds(DetectionModel[] models, PassLooks[] passes)
    {
        bool isRead = ModelDraws.IsRead(passes);
        double odds = Math.Log(0.99 / 0.01);
        foreach (IGrouping<int, PassLooks> group in passes.Where(static pass => pass.Looks > 0).GroupBy(static pass => pass.Surroundings))
        {
            double most = group.Max(pass => Math.Min(1, 2 * (double)models[pass.Model].StrayShare)), least = group.Min(pass => (double)models[pass.Model].StrayShare / 2);
            double there = group.Sum(pass => models[pass.Model].LogPresent(pass.Looks, pass.Reads)), near = group.Sum(pass => models[pass.Model].LogStray(pass.Looks, pass.Reads));
            double bounded = -Math.Log(most) + group.Sum(pass => pass.Reads > 0 ? Ratio(models[pass.Model], pass.Looks, pass.Reads) : Math.Min(Ratio(models[pass.Model], pass.Looks, 0), Ratio(models[pass.Model], pass.Looks, 1)));
            double silent = there - Math.Log(1 - least + (least * Math.Exp(near)));
            odds += group.Any(static pass => pass.Reads > 0) ? bounded : isRead ? Math.Min(silent, bounded) : silent;
        }

        return odds;
    }

    private static double Ratio(DetectionModel model, int looks, int reads) => model.LogPresent(looks, reads) - model.LogStray(looks, reads);

    /// <summary>Strays twice as many as the models say, or none where all is silent that is half as many: for each outcome what is likelier.</summary>
    private static double ChanceAccounted(StatedRiskPolicy policy, PassLooks[] passes, int lines, decimal prior)
    {
        DetectionModel[] models = [policy.Model, .. policy.Models.Select(static model => model.Model)];
        double strays = Math.Min(1, 2 * (double)passes.Max(pass => models[pass.Model].StrayShare));
        double sum = 0;
        for (int first = 0; first <= passes[0].Looks; first++)
        {
            for (int second = 0; second <= passes[1].Looks; second++)
            {
                if (policy.Decide([passes[0] with { Reads = first }, passes[1] with { Reads = second }], lines, prior).State != PresenceState.Accounted)
                {
                    continue;
                }

                double one = Math.Exp(models[passes[0].Model].LogStray(passes[0].Looks, first)), other = Math.Exp(models[passes[1].Model].LogStray(passes[1].Looks, second));
                if (passes[0].Surroundings == passes[1].Surroundings)
                {
                    sum += strays * one * other;
                    continue;
                }

                // Two questions, each with the stray share of its own model.
                double here = Math.Min(1, 2 * (double)models[passes[0].Model].StrayShare), there = Math.Min(1, 2 * (double)models[passes[1].Model].StrayShare);
                sum += ((here * one) + (first == 0 ? 1 - here : 0)) * ((there * other) + (second == 0 ? 1 - there : 0));
            }
        }

        return sum;
    }
}
