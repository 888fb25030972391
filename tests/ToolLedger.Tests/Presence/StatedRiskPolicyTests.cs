using System;
using System.Collections.Generic;
using System.Linq;
using FsCheck.Xunit;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Presence;

/// <summary>Decisions at a stated risk. The world is that of the model's example: 20 tools, 1 % absent, 2 passes of 20 looks (invented).</summary>
public sealed class StatedRiskPolicyTests
{
    private const int Lines = 20;
    private const int Looks = 20;

    private static readonly StatedRiskPolicy Exact = new() { RobustnessFactor = 1 };

    [Property(Arbitrary = [typeof(ModelDraws)], MaxTest = 300)]
    public void Another_read_never_lowers_the_answer_nor_raises_the_risk(DetectionModel model, PassLooks[] passes, int draw, byte lines)
    {
        var policy = new StatedRiskPolicy { Model = model };
        PresenceDecision before = policy.Decide(passes, lines + 1);
        if (ModelDraws.WithOneMoreRead(passes, draw) is not { } more)
        {
            return;
        }

        PresenceDecision after = policy.Decide(more, lines + 1);
        Assert.True(after.State >= before.State);
        Assert.Equal(before.Cut, after.Cut);
        Assert.True(after.Risk <= before.Risk || !passes.Any(static pass => pass is { Reads: > 0, IsDegraded: false }), $"{before.Risk} to {after.Risk}");
    }

    [Property(Arbitrary = [typeof(ModelDraws)], MaxTest = 300)]
    public void A_degraded_session_never_gives_a_higher_answer(DetectionModel model, PassLooks[] passes, int draw)
    {
        int at = (int)((uint)draw % passes.Length);
        PassLooks[] worse = [.. passes.Select((pass, index) => pass with { IsDegraded = pass.IsDegraded || index == at })];
        var policy = new StatedRiskPolicy { Model = model };

        Assert.True(policy.Decide(worse, Lines).State <= policy.Decide(passes, Lines).State);
    }

    [Property(Arbitrary = [typeof(ModelDraws)], MaxTest = 300)]
    public void No_read_is_not_read_and_a_read_is_never_less_than_weak(DetectionModel model, PassLooks[] passes)
    {
        PresenceDecision decision = new StatedRiskPolicy { Model = model, KitRiskLimit = 0.5m, LineRiskMax = 0.5m }.Decide(passes, 1, 0.000001m);

        Assert.Equal(!ModelDraws.IsRead(passes), decision.State == PresenceState.NotRead);
    }

    [Property(Arbitrary = [typeof(ModelDraws)], MaxTest = 200)]
    public void The_claim_holds_by_plain_enumeration_and_the_cut_is_the_largest(DetectionModel model, byte firstLooks, byte secondLooks, bool changed)
    {
        var policy = new StatedRiskPolicy { Model = model, LineRiskMax = 0.5m };
        PassLooks[] passes = [new((firstLooks % 12) + 1, 0), new((secondLooks % 9) + 1, 0) { Surroundings = changed ? 1 : 0 }];
        double strays = Math.Min(1, (double)(model.StrayShare * 2));
        double accounted = 0, next = 0, cut = policy.Decide(passes, Lines).Cut;
        var open = new List<(double Risk, double Chance)>();
        for (int first = 0; first <= passes[0].Looks; first++)
        {
            for (int second = 0; second <= passes[1].Looks; second++)
            {
                double one = Math.Exp(model.LogStray(passes[0].Looks, first)), other = Math.Exp(model.LogStray(passes[1].Looks, second));
                double chance = changed
                    ? ((strays * one) + (first == 0 ? 1 - strays : 0)) * ((strays * other) + (second == 0 ? 1 - strays : 0))
                    : (strays * one * other) + (first + second == 0 ? 1 - strays : 0);
                PresenceDecision decision = policy.Decide([passes[0] with { Reads = first }, passes[1] with { Reads = second }], Lines);
                accounted += decision.State == PresenceState.Accounted ? chance : 0;
                if (decision.State == PresenceState.Weak)
                {
                    open.Add((decision.Risk, chance));
                }
            }
        }

        double limit = 0.001 / (Lines * 0.01);
        Assert.True(accounted <= limit * (1 + 1e-9), $"{accounted} over {limit}");
        Assert.True(accounted <= policy.ChanceAccountedWhenAbsent(passes, Lines) * (1 + 1e-9));
        if (!changed && open.Count > 0)
        {
            // With the lines of the next lowest risk the limit would be broken, unless the line's own limit holds them back.
            double lowest = open.Min(static line => line.Risk);
            next = open.Where(line => line.Risk == lowest).Sum(static line => line.Chance);
            Assert.True(lowest > cut);
            Assert.True(accounted + next > limit * (1 - 1e-9) || lowest > 0.5, $"{accounted} + {next} is within {limit}");
        }
    }

    [Property(Arbitrary = [typeof(ModelDraws)], MaxTest = 200)]
    public void The_terms_add_up_to_the_odds_that_decide(DetectionModel model, PassLooks[] passes)
    {
        PresenceRisk risk = new StatedRiskPolicy { Model = model }.Judge(Evidence(passes)).Risk!;

        Assert.Equal(risk.Decision.LogOdds, risk.Terms.Sum(static term => term.LogOdds));
        Assert.Equal(risk.Decision.Risk, 1 / (1 + Math.Exp(risk.Decision.LogOdds)), 1e-12);
        Assert.InRange(risk.ExactRisk, 0, 1);
    }

    [Property(Arbitrary = [typeof(ModelDraws)], MaxTest = 200)]
    public void A_wider_box_only_adds_caution(DetectionModel model, PassLooks[] passes)
    {
        PresenceDecision narrow = new StatedRiskPolicy { Model = model, RobustnessFactor = 1, LineRiskMax = 0.5m }.Decide(passes, Lines);
        PresenceDecision wide = new StatedRiskPolicy { Model = model, RobustnessFactor = 3, LineRiskMax = 0.5m }.Decide(passes, Lines);

        // Each term is rounded down by less than one step of 1/256.
        Assert.True(wide.LogOdds <= narrow.LogOdds + (2.0 * passes.Length / 256), $"{narrow.LogOdds} to {wide.LogOdds}");
    }

    [Property(Arbitrary = [typeof(ModelDraws)], MaxTest = 300)]
    public void The_decision_is_the_bounded_posterior_rounded_down_at_the_models_own_parameters(DetectionModel model, PassLooks[] passes)
    {
        PassLooks[] good = [.. passes.Select(static pass => pass with { IsDegraded = false })];
        double exact = model.LogOdds(good, 0.01, isBounded: true), decided = new StatedRiskPolicy { Model = model, RobustnessFactor = 1 }.Decide(good, Lines).LogOdds;

        // Each pass is rounded down in up to three places: reads, what a stray would show, and the step by which silence counts for less than a read.
        if (Math.Abs(exact) < 50)
        {
            Assert.InRange(decided, exact - ((3.0 + (3 * good.Length)) / 256) - 1e-9, exact + 1e-9);
        }
    }

    [Fact]
    public void An_open_line_says_its_chance_its_terms_and_what_settles_it()
    {
        PresenceJudgement judgement = Exact.Judge(Evidence([new(Looks, 1), new(Looks, 0)]));

        Assert.Equal(PresenceState.Weak, judgement.State);
        Assert.Equal(
            ["presence.risk-over", "presence.term-prior", "presence.term-read", "presence.term-read-pass", "presence.term-bounded-pass", "presence.term-sum", "presence.advice-new-passes", "presence.advice-may-be-obscured"],
            judgement.Reasons.Select(static reason => reason.Code));
        Assert.Contains("1 of 40 looks, in 1 of 2 passes", judgement.Reasons[0].ToString(), StringComparison.Ordinal);
    }

    // Trade property 6: missing is never derived; silence leaves a line not read.
    [Fact]
    public void A_silent_line_is_not_read_and_says_what_its_silence_leaves()
    {
        PresenceJudgement judgement = Exact.Judge(Evidence([new(Looks, 0)]));

        Assert.Equal(PresenceState.NotRead, judgement.State);
        Assert.Equal(["presence.no-look", "presence.silent-risk"], judgement.Reasons.Take(2).Select(static reason => reason.Code));
        Assert.DoesNotContain(judgement.Reasons, static reason => reason.ToString().Contains("missing", StringComparison.OrdinalIgnoreCase));
    }

    // Trade scenario S94: a neighbour's open bag reads in one pass; the caller says that it was moved away before the second, silent one.
    [Fact]
    public void S94_Changed_surroundings_make_the_stray_question_anew()
    {
        PassLooks[] near = [new(Looks, 5), new(Looks, 5)];
        PassLooks[] changed = [near[0], near[1] with { Surroundings = 1 }];
        PassLooks[] gone = [near[0], new PassLooks(Looks, 0) { Surroundings = 1 }];

        Assert.True(Exact.Decide(changed, Lines).Risk < Exact.Decide(near, Lines).Risk);
        Assert.NotEqual(PresenceState.Accounted, Exact.Decide(gone, Lines).State);
        Assert.True(Exact.Decide(gone, Lines).Risk > Exact.Decide([near[0], new PassLooks(Looks, 0)], Lines).Risk);
    }

    [Fact]
    public void A_poor_history_asks_for_the_tag_to_be_qualified_again()
    {
        PresenceEvidence evidence = Evidence([new(Looks, 1)], new TagHistory(sessionsPresented: 20, sessionsRead: 6));

        PresenceJudgement judgement = Exact.Judge(evidence);

        Assert.True(judgement.Risk!.Advice!.IsTagPoor);
        Assert.Contains(judgement.Reasons, static reason => reason.Kind == PresenceReasons.PoorHistory);
    }

    [Property(Arbitrary = [typeof(ModelDraws)], MaxTest = 300)]
    public void The_short_way_gives_the_score_of_the_long_one(DetectionModel model, PassLooks[] passes)
    {
        var policy = new StatedRiskPolicy { Model = model };
        PassLooks[] silent = [.. passes.Select(static pass => pass with { Reads = 0 })];

        foreach (PassLooks[] asked in (PassLooks[][])[passes, silent, passes])
        {
            Assert.Equal(policy.Box.ScoreOf(asked, out bool isRead), policy.Decide(asked, Lines).Evidence);
            Assert.True(isRead || policy.Decide(asked, Lines).State != PresenceState.Accounted);
        }
    }

    [Fact]
    public void Steady_decisions_allocate_nothing()
    {
        PassLooks[] passes = [new(40, 13), new(40, 9)];
        var policy = new StatedRiskPolicy();
        long sum = Decide(policy, passes);

        long before = GC.GetAllocatedBytesForCurrentThread();
        sum += Decide(policy, passes);
        long after = GC.GetAllocatedBytesForCurrentThread();

        Assert.True(sum > 0);
        Assert.Equal(0, after - before);
    }

    [Fact]
    public void Numbers_out_of_range_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new StatedRiskPolicy { KitRiskLimit = 0 });
        Assert.Throws<ArgumentOutOfRangeException>(() => new StatedRiskPolicy { RobustnessFactor = 0.5m });
        Assert.Throws<ArgumentOutOfRangeException>(() => new StatedRiskPolicy().Decide([new(5, 6)], 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new StatedRiskPolicy().Decide(new PassLooks[7], 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new StatedRiskPolicy().Decide([new(5, 1)], 0));
    }

    [Fact]
    public void A_pass_of_more_looks_than_are_weighed_accounts_for_nothing()
    {
        PresenceEvidence evidence = new()
        {
            Tag = default,
            Passes = [new PassEvidence(new SessionId("S"), 1, IsDegraded: false, 100, 70_000)],
            Antennas = [],
            KitLineCount = 1,
        };

        PresenceJudgement judgement = Exact.Judge(evidence);

        Assert.Equal((PresenceState.Weak, "presence.too-many-looks"), (judgement.State, judgement.Reasons[0].Code));
    }

    private static long Decide(StatedRiskPolicy policy, PassLooks[] passes)
    {
        long accounted = 0;
        for (int i = 0; i < 1000; i++)
        {
            passes[0] = passes[0] with { Reads = i % 41 };
            accounted += policy.Decide(passes, Lines).State == PresenceState.Accounted ? 1 : 0;
        }

        return accounted;
    }

    internal static PresenceEvidence Evidence(IReadOnlyList<PassLooks> passes, TagHistory? history = null) => new()
    {
        Tag = TagId.Parse("epc:3414257BF400000000000067"),
        Passes = [.. passes.Select(static (pass, index) => new PassEvidence(new SessionId("S-1"), index + 1, pass.IsDegraded, pass.Reads, pass.Looks) { Surroundings = pass.Surroundings })],
        Antennas = [],
        HasTid = true,
        History = history,
        KitLineCount = Lines,
    };
}
