using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using Xunit;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>A rule of a host that fails is named, with the kit and the line it was asked about, and takes nothing with it.</summary>
public sealed class FailingRuleTests
{
    private static readonly ReasonKind Seen = new("site.seen", "seen by the site's rule");

    // Given a rule that divides by zero at line 3, when a kit is reconciled, the exception says which rule, which kit and which line, and holds what was thrown.
    [Fact]
    public void A_rule_that_throws_is_named_with_the_kit_and_the_line()
    {
        var world = new World { Rules = [new Rule(static facts => facts.Line.Number == 3 ? throw new DivideByZeroException("by\u202e zero") : Verdict.NoObjection)] };

        RuleException failed = Assert.Throws<RuleException>(() => world.Reconcile(world.Session("S1", [World.K1])));

        Assert.Equal(("site-rule", "7", typeof(Rule).FullName, World.K1, "3"), (failed.RuleName, failed.RuleVersion, failed.RuleType, failed.Kit, failed.LineLabel));
        Assert.True(failed.Revision > 0);
        Assert.IsType<DivideByZeroException>(failed.InnerException);
        Assert.Contains("Rule \"site-rule\" version \"7\"", failed.Message, StringComparison.Ordinal);
        Assert.Contains("threw System.DivideByZeroException (by\\u{202E} zero), asked about line 3 of kit \"K1\" revision", failed.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_rule_without_a_verdict_or_with_a_finding_that_is_null_is_named()
    {
        RuleException none = Assert.Throws<RuleException>(() => Ask(static _ => null!));
        RuleException empty = Assert.Throws<RuleException>(() => Ask(static _ => Verdict.NoObjection.WithFindings([null!])));

        Assert.Contains("gave no verdict, asked about line 1 of kit \"K1\"", none.Message, StringComparison.Ordinal);
        Assert.Null(none.InnerException);
        Assert.Contains("gave a finding that is null", empty.Message, StringComparison.Ordinal);
    }

    // A line of another kit would be printed as a line of this one.
    [Fact]
    public void A_rule_that_speaks_of_a_line_of_another_kit_is_named()
    {
        RuleException byNumber = Assert.Throws<RuleException>(() => Ask(static _ => Verdict.NoObjection.WithFindings(new Finding(FindingLevel.Line, new Reason(Seen)) { LineNumbers = [4711] })));
        RuleException byLabel = Assert.Throws<RuleException>(() => Ask(static _ => Verdict.NoObjection.WithFindings(new Finding(FindingLevel.Line, new Reason(Seen)) { LineLabels = ["7.3"] })));

        Assert.Contains("gave a finding on line 4711, which kit \"K1\" does not have", byNumber.Message, StringComparison.Ordinal);
        Assert.Contains("gave a finding on line 7.3, which is none that it was asked about", byLabel.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Cancellation_by_a_rule_is_passed_on_as_it_is()
        => Assert.Throws<OperationCanceledException>(() => Ask(static _ => throw new OperationCanceledException()));

    // Given many kits, when the rule fails at the second, the first result stands, and the same inputs without the rule answer for all.
    [Fact]
    public void What_was_answered_before_stands_and_the_inputs_stay_as_they_are()
    {
        var world = new World();
        world.ReadWell("T1");
        ReconciliationInput input = world.Input(world.Session("S1", [World.K1, World.K2]));
        KitId[] kits = [World.K1, World.K2];
        string[] before = [.. new Reconciler(world.Policy).ReconcileAll(input, kits).Select(Text)];
        var failing = new Reconciler(world.Policy, [new Rule(static facts => facts.Manifest.Id == World.K2 ? throw new FormatException() : Verdict.NoObjection)]);
        var answered = new List<ReconciliationResult>();

        RuleException failed = Assert.Throws<RuleException>(() => Collect(failing.ReconcileAll(input, kits), answered));

        Assert.Equal(World.K2, failed.Kit);
        Assert.Equal([before[0]], answered.Select(Text));
        Assert.Equal(before, new Reconciler(world.Policy).ReconcileAll(input, kits).Select(Text));
    }

    // Given a box K1a on line 7 of K1, a rule that remarks on line 3 of the box remarks on line 7.3 of the kit, and not on line 3.
    [Fact]
    public void A_finding_on_a_line_inside_a_sub_kit_carries_the_number_of_its_place_in_the_kit()
    {
        var world = new SubKitWorld();
        world.World.Rules =
        [
            new Rule(static facts => facts.Line.Tool?.Id.Value == "A3"
                ? Verdict.NoObjection.WithFindings(new Finding(FindingLevel.Line, new Reason(Seen)) { LineNumbers = [facts.Line.Number] })
                : Verdict.NoObjection),
        ];

        Finding finding = Assert.Single(world.Reconcile().Findings, static finding => finding.Reason.Kind == Seen);

        Assert.Equal([7], finding.LineNumbers);
        Assert.Equal(["7.3"], finding.LineLabels);
    }

    [Fact]
    public void A_rule_that_throws_on_a_line_inside_a_sub_kit_is_named_with_its_place_in_the_kit()
    {
        var world = new SubKitWorld();
        world.World.Rules = [new Rule(static facts => facts.Line.Tool?.Id.Value == "A3" ? throw new FormatException() : Verdict.NoObjection)];

        RuleException failed = Assert.Throws<RuleException>(() => world.Reconcile());

        Assert.Equal((World.K1, "7.3"), (failed.Kit, failed.LineLabel));
    }

    private static ReconciliationResult Ask(Judgement judge)
    {
        var world = new World { Rules = [new Rule(judge)] };
        return world.Reconcile(world.Session("S1", [World.K1]));
    }

    private static string Text(ReconciliationResult result) => $"{result.Manifest.Id} {result.Kit} {string.Join("; ", result.Lines)} {string.Join("; ", result.Findings)}";

    private static void Collect(IEnumerable<ReconciliationResult> results, List<ReconciliationResult> answered)
    {
        foreach (ReconciliationResult result in results)
        {
            answered.Add(result);
        }
    }

    private delegate Verdict Judgement(LineFacts facts);

    private sealed class Rule(Judgement judge) : IReconciliationRule
    {
        public string Name => "site-rule";

        public string Version => "7";

        public string Settings => "";

        public Verdict Judge(in LineFacts facts) => judge(facts);
    }
}
