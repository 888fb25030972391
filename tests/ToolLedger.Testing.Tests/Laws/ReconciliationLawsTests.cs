using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Testing.Cases;
using ToolLedger.Testing.Generators;
using ToolLedger.Testing.Laws;
using Xunit;

namespace ToolLedger.Testing.Tests.Laws;

/// <summary>Each bad rule and each bad host is caught, and by the law it breaks.</summary>
public sealed class ReconciliationLawsTests
{
    private static readonly LawSettings Some = new() { CaseCount = 250, Seed = 11 };

    [Fact]
    public void A_rule_that_only_asks_for_more_holds() => AssertBreaks([], Check("sight-everything", static (in facts)
        => facts.Sighting is null && facts.Bases.Count > 0 ? Withhold("site.not-sighted", "it was not sighted") : Verdict.NoObjection));

    [Fact]
    public void A_rule_that_objects_to_more_evidence_is_caught()
    {
        LawReport report = Check("suspects-eager-tags", static (in facts)
            => facts.BestEvidence is { LookCount: > 5 } ? Withhold("site.too-eager", "its tag answers suspiciously often") : Verdict.NoObjection);

        AssertBreaks([ReconciliationLaw.EvidenceHelps, ReconciliationLaw.DoubtIsMonotone], report);
    }

    [Fact]
    public void A_rule_that_objects_to_what_a_person_saw_is_caught()
        => AssertBreaks([ReconciliationLaw.DoubtIsMonotone], Check("trusts-no-eyes", static (in facts)
            => facts.Sighting is not null ? Withhold("site.seen", "people see what they expect") : Verdict.NoObjection));

    [Fact]
    public void A_rule_that_remembers_former_calls_is_caught()
    {
        int calls = 0;
        Assert.Contains(ReconciliationLaw.Determinism, Check("every-seventh", (in _)
            => ++calls % 7 == 0 ? Withhold("site.sample", "drawn as a sample") : Verdict.NoObjection).Broken);
    }

    [Fact]
    public void A_rule_that_reads_the_culture_of_the_host_is_caught()
        => AssertBreaks([ReconciliationLaw.Determinism], Check("local-numbers", static (in _)
            => Withhold("site.share", "only " + 0.5.ToString(CultureInfo.CurrentCulture) + " of it was seen")));

    [Fact]
    public void A_rule_that_says_what_only_people_may_say_is_caught()
        => AssertBreaks([ReconciliationLaw.NoInvention], Check("declares", static (in facts)
            => facts.Bases.Count == 0 ? Withhold("site.declared", "the tool is missing") : Verdict.NoObjection));

    [Fact]
    public void A_rule_whose_settings_change_under_the_hand_is_caught()
    {
        int asked = 0;
        var rule = new RuleOf("moody", static (in _) => Verdict.NoObjection, () => (++asked).ToString(CultureInfo.InvariantCulture));

        AssertBreaks([ReconciliationLaw.RulesOnlyWithhold], ReconciliationLaws.Check(rule, Some));
    }

    public static TheoryData<ReconciliationLaw> Hosts =>
    [
        ReconciliationLaw.Partition, ReconciliationLaw.SafeDefault, ReconciliationLaw.OrderAndRepetition, ReconciliationLaw.SurplusMatters,
        ReconciliationLaw.AsOf, ReconciliationLaw.TwoAnswers, ReconciliationLaw.OtherWords,
    ];

    [Theory]
    [MemberData(nameof(Hosts))]
    public void A_host_that_breaks_a_law_is_caught_by_it(ReconciliationLaw law)
    {
        Func<ReconciliationInput, ReconciliationResult> host = law switch
        {
            ReconciliationLaw.Partition => BadHosts.AnswersForAnotherKit,
            ReconciliationLaw.SafeDefault => BadHosts.RemembersComplete(),
            ReconciliationLaw.OrderAndRepetition => BadHosts.TakesTheFirstSession,
            ReconciliationLaw.SurplusMatters => BadHosts.CorrectsCounts,
            ReconciliationLaw.AsOf => BadHosts.LooksAhead,
            ReconciliationLaw.TwoAnswers => BadHosts.DoubtsOverdueTools,
            _ => BadHosts.LearnsTags,
        };

        LawReport report = ReconciliationLaws.Check(host, Some with { Laws = [law] });

        Assert.Equal([law], report.Broken);
        Assert.True(ReconciliationLaws.Check(BadHosts.Plain, Some with { Laws = [law] }).Holds);
    }

    [Fact]
    public void A_breach_is_small_and_comes_again_from_its_seed()
    {
        var rule = new RuleOf("declares", static (in _) => Withhold("site.declared", "the tool is missing"));
        LawReport report = ReconciliationLaws.Check(rule, Some), again = ReconciliationLaws.Check(rule, Some);

        LawBreach breach = Assert.IsType<LawBreach>(report.Of(ReconciliationLaw.NoInvention).Breach);
        Assert.Equal(report.ToString(), again.ToString());
        Assert.Equal(1, breach.CaseNumber);
        Assert.Single(breach.Case.Manifests);
        Assert.Single(breach.Case.Manifest!.Lines);
        Assert.Empty(breach.Case.Sessions);
        ReconciliationPolicy policy = Some.Policy;
        var reconciler = new Reconciler(policy, [rule]);
        Assert.Contains("site.declared", Codes(reconciler, breach.Case, policy));
        Assert.Contains("site.declared", Codes(reconciler, AnyReconciliationCase.FromSeed(breach.CaseSeed), policy));
        Assert.Contains("the tool is missing", report.ToString(), StringComparison.Ordinal);
        Assert.Contains("manifest K1 revision 2", breach.ToString(), StringComparison.Ordinal);
    }

    // A failed assertion prints the breach: it must say which law and line, what changed there, and how to see it again, and not fill a screen.
    [Fact]
    public void A_breach_says_in_a_few_lines_what_changed_at_the_line_that_broke_it_and_how_to_repeat_it()
    {
        var rule = new RuleOf("suspects-eager-tags", static (in facts) => facts.BestEvidence is { LookCount: > 5 } ? Withhold("site.too-eager", "its tag answers suspiciously often") : Verdict.NoObjection);
        LawReport report = ReconciliationLaws.Check(rule, Some with { Laws = [ReconciliationLaw.EvidenceHelps, ReconciliationLaw.DoubtIsMonotone] });

        Assert.Equal(2, report.Broken.Count);
        Assert.All(report.Broken, law =>
        {
            LawBreach breach = report.Of(law).Breach!;
            string[] lines = breach.ToString().Split('\n');
            string line = breach.Before[..(breach.Before.IndexOf(':', StringComparison.Ordinal) + 1)];

            Assert.NotEmpty(line);
            Assert.StartsWith(line, breach.Found, StringComparison.Ordinal);
            Assert.NotEqual(breach.Before, breach.Found);
            Assert.InRange(lines.Length, 5, 20);
            Assert.All(lines, static one => Assert.InRange(one.Length, 1, 400));
            Assert.Contains(lines, static one => one.StartsWith("before: line ", StringComparison.Ordinal));
            Assert.Contains(lines, static one => one.StartsWith("found: line ", StringComparison.Ordinal));
            Assert.Contains(FormattableString.Invariant($"{{ Seed = {Some.Seed}, CaseCount = {breach.CaseNumber}, Laws = [ReconciliationLaw.{law}] }}"), lines[^1], StringComparison.Ordinal);
            Assert.EndsWith(FormattableString.Invariant($"FromSeed({breach.CaseSeed})"), lines[^1], StringComparison.Ordinal);

            // And so it does come again.
            LawReport again = ReconciliationLaws.Check(rule, Some with { Seed = breach.CheckSeed, CaseCount = breach.CaseNumber, Laws = [law] });
            Assert.Equal(breach.ToString(), again.Of(law).Breach?.ToString());
        });
    }

    // What differs in two long lines stands at their end as often as not.
    [Fact]
    public void A_long_text_is_cut_around_what_differs()
    {
        string same = new('x', 500);
        int asked = 0;
        var rule = new RuleOf("counts-its-calls", (in _) => Withhold("site.forgetful", FormattableString.Invariant($"{same} asked {++asked} times {same}")));
        LawBreach breach = ReconciliationLaws.Check(rule, Some with { Laws = [ReconciliationLaw.Determinism] }).Of(ReconciliationLaw.Determinism).Breach!;
        string[] lines = breach.ToString().Split('\n');

        string before = Assert.Single(lines, static line => line.StartsWith("before: line ", StringComparison.Ordinal)), found = Assert.Single(lines, static line => line.StartsWith("found: line ", StringComparison.Ordinal));
        Assert.Matches("^before: line .{20,80} [.]{3} x+ asked [0-9]+ times x+ [.]{3} [(][0-9]+ characters[)]$", before);
        Assert.Matches("^found: line .{20,80} [.]{3} x+ asked [0-9]+ times x+ [.]{3} [(][0-9]+ characters[)]$", found);
        Assert.NotEqual(before["before".Length..], found["found".Length..]);
        Assert.All(lines, static line => Assert.InRange(line.Length, 1, 400));
        Assert.Contains(same, breach.Found, StringComparison.Ordinal);
    }

    [Fact]
    public void A_report_names_the_rule_says_where_it_stopped_and_has_no_holes()
    {
        LawReport report = Check("suspects-eager-tags", static (in facts)
            => facts.BestEvidence is { LookCount: > 5 } ? Withhold("site.too-eager", "its tag answers suspiciously often") : Verdict.NoObjection);
        LawBreach breach = report.Of(ReconciliationLaw.DoubtIsMonotone).Breach!;
        string text = report.ToString();

        Assert.StartsWith("rule suspects-eager-tags, seed 11\n", text, StringComparison.Ordinal);
        Assert.Contains(
            string.Create(CultureInfo.InvariantCulture, $"DoubtIsMonotone: broken by case {breach.CaseNumber}, the first that breaks it; no further case was tried\n"), text, StringComparison.Ordinal);
        Assert.Null(ReconciliationLaws.Check(BadHosts.Plain, Some with { CaseCount = 1 }).Rule);

        // Two words with nothing between them are seen in the text of an answer, which an order law shows.
        string shown = ReconciliationLaws.Check(BadHosts.TakesTheFirstSession, Some with { Laws = [ReconciliationLaw.OrderAndRepetition] }).ToString();
        Assert.Contains("looks ", shown, StringComparison.Ordinal);
        foreach (string hole in (string[])["also ,", "  ", "strongest last", "counted by", "by at", "at witness", "witness persons", "next ;"])
        {
            Assert.DoesNotContain(hole, string.Join('\n', shown.Split('\n').Where(static line => line.StartsWith("expected:", StringComparison.Ordinal) || line.StartsWith("found:", StringComparison.Ordinal))), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Only_the_laws_asked_for_are_checked_and_the_report_says_in_how_many_cases_each_applied()
    {
        LawReport report = ReconciliationLaws.Check(BadHosts.Plain, Some with { CaseCount = 20, Laws = [ReconciliationLaw.Reasons, ReconciliationLaw.RulesOnlyWithhold] });

        Assert.Equal("seed 11\nReasons: holds; it had something to say in 20 of 20 cases\nRulesOnlyWithhold: not tried, it had nothing to say in any of 20 cases", report.ToString());
        Assert.Throws<ArgumentException>(() => report.Of(ReconciliationLaw.AsOf));
    }

    [Fact]
    public void Settings_have_limits()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Some with { CaseCount = 0 });
        Assert.Throws<ArgumentOutOfRangeException>(() => Some with { CaseCount = 100_000_001 });
        Assert.Throws<ArgumentOutOfRangeException>(() => Some with { ShrinkLimit = -1 });
        Assert.Throws<ArgumentNullException>(() => Some with { Policy = null! });
    }

    private static IEnumerable<string> Codes(Reconciler reconciler, ReconciliationCase facts, ReconciliationPolicy policy)
        => reconciler.Reconcile(facts.ToInput(policy.Sessions)).Lines.SelectMany(line => line.Reasons).Select(reason => reason.Code);

    private static LawReport Check(string name, RuleOf.Judgement judgement) => ReconciliationLaws.Check(new RuleOf(name, judgement), Some);

    private static Verdict Withhold(string code, string sentence)
        => Verdict.Withhold(LineState.Weak, new Reason(new ReasonKind(code, sentence)), new NextStep(NextStepKind.SightTool, new Reason(ReconciliationReasons.StepSightTool, ("mark", "any"))));

    private static void AssertBreaks(IEnumerable<ReconciliationLaw> laws, LawReport report)
    {
        Assert.True(laws.SequenceEqual(report.Broken), report.ToString());
    }
}
