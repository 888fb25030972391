using System;
using System.Globalization;
using System.Text;
using ToolLedger.Presence;
using ToolLedger.Tests.Records;
using Xunit;

namespace ToolLedger.Tests.Presence.Proof;

/// <summary>
/// The policy against counting, as curves of errors against open tools, by exact sums. The figures were worked out a second time apart from this library, with plain arithmetic (lgamma of Python 3).
/// </summary>
public sealed class CountingCurveTests
{
    private static readonly StatedRiskPolicy Unboxed = new() { RobustnessFactor = 1, LineRiskMax = 0.5m };

    // 3 reads, seen in 2 passes: 1.37e-4 of what it accounts for is not there, and 11.0 % of the tools that are there stay open.
    [Fact]
    public void The_usual_counting_rule()
    {
        CurveWorld.CurvePoint rule = CurveWorld.Counting(reads: 3, passes: 2);

        Assert.Equal(1.371e-4, rule.Error, 5e-8);
        Assert.Equal(0.1102, rule.Open, 5e-5);
    }

    [Fact]
    public void At_an_error_of_13_in_100_000_a_policy_leaves_less_than_2_percent_open()
    {
        CurveWorld.CurvePoint policy = CurveWorld.Of(new StatedRiskPolicy { RobustnessFactor = 1, KitRiskLimit = 0.00221m, LineRiskMax = 0.5m });

        Assert.True(policy.Error <= 1.3e-4 && policy.Open <= 0.02, $"{policy.Error} with {policy.Open} open");
        Assert.Equal(1.136e-4, policy.Error, 1e-7);
        Assert.Equal(0.0192, policy.Open, 5e-5);

        // The best there is: 1.56 % by whole outcomes, 1.51 % on the line between two of them.
        Assert.Equal(0.0156, CurveWorld.Within(CurveWorld.Best(), 1.3e-4).Open, 5e-5);
        Assert.Equal(0.0151, CurveWorld.OpenAt(CurveWorld.Best(), 1.3e-4), 5e-5);
        Assert.InRange(CurveWorld.OpenAt(CurveWorld.Curve(Unboxed), 1.3e-4), 0.0151, 0.016);
    }

    [Fact]
    public void The_curve_of_the_model_lies_below_every_counting_rule()
    {
        CurveWorld.CurvePoint[] curve = CurveWorld.Curve(Unboxed), best = CurveWorld.Best();
        foreach (int passes in (int[])[1, 2])
        {
            for (int reads = passes; reads <= 2 * CurveWorld.Looks; reads++)
            {
                CurveWorld.CurvePoint rule = CurveWorld.Counting(reads, passes);
                double open = CurveWorld.OpenAt(curve, rule.Error);
                Assert.True(open <= rule.Open + 1e-12, $"{reads} reads in {passes} passes: {open} over {rule.Open}");
                Assert.True(CurveWorld.OpenAt(best, rule.Error) <= open + 1e-12, $"{reads} reads in {passes} passes");
            }
        }
    }

    // Without mixing two limits: a policy has the points of its curve only. By themselves they lie on or below every rule that asks for two passes and up to 18 reads, or for up to 7 in any; between two
    // points that are farther apart a rule may leave less open, by less than a hundredth, at a larger error than the point has.
    [Fact]
    public void Points_of_the_curve_by_themselves()
    {
        CurveWorld.CurvePoint[] curve = CurveWorld.Curve(Unboxed);
        foreach (int passes in (int[])[1, 2])
        {
            for (int reads = passes; reads <= CurveWorld.Looks; reads++)
            {
                CurveWorld.CurvePoint rule = CurveWorld.Counting(reads, passes), point = CurveWorld.Within(curve, rule.Error);
                double room = reads <= (passes == 2 ? 18 : 7) ? 1e-12 : 0.01;
                Assert.True(point.Open <= rule.Open + room, $"{reads} reads in {passes} passes: {point.Open} over {rule.Open}");
            }
        }
    }

    [Theory]
    [InlineData(1, 0.0415, 5.10e-5)]
    [InlineData(2, 0.0726, 2.49e-5)]
    public void What_the_default_limit_costs_in_open_lines(int factor, double open, double error)
    {
        CurveWorld.CurvePoint policy = CurveWorld.Of(new StatedRiskPolicy { RobustnessFactor = factor });

        Assert.Equal(open, policy.Open, 5e-4);
        Assert.Equal(error, policy.Error, 2e-6);
        Assert.InRange(policy.Falsely, 0, 0.001 / CurveWorld.Lines);
    }

    [Fact]
    public void The_table_of_the_document_is_this_one() => Assert.Contains(Table(), RepositoryFiles.ReadText("docs", "presence.md").ReplaceLineEndings("\n"), StringComparison.Ordinal);

    private static string Table()
    {
        CurveWorld.CurvePoint[] curve = CurveWorld.Curve(Unboxed), best = CurveWorld.Best();
        var text = new StringBuilder("| rule | not there, of what is accounted for | there and open | model, point of no larger error | model, curve at that error | best possible there |\n|---|---|---|---|---|---|\n");
        foreach ((int reads, int passes) in ((int, int)[])[(1, 1), (3, 1), (5, 1), (8, 1), (12, 1), (2, 2), (3, 2), (6, 2), (10, 2), (16, 2)])
        {
            Row(text, $"{Text(reads)} {(reads == 1 ? "read" : "reads")}{(passes == 2 ? ", seen in 2 passes" : "")}", CurveWorld.Counting(reads, passes), curve, best);
        }

        Row(text, "the policy, default limit, no box", CurveWorld.Of(new StatedRiskPolicy { RobustnessFactor = 1 }), curve, best);
        Row(text, "the policy, default limit and box", CurveWorld.Of(new StatedRiskPolicy()), curve, best);
        return text.ToString();
    }

    private static void Row(StringBuilder text, string name, CurveWorld.CurvePoint rule, CurveWorld.CurvePoint[] curve, CurveWorld.CurvePoint[] best) => text.Append(
        CultureInfo.InvariantCulture, $"| {name} | {1e6 * rule.Error:0.0} in 1,000,000 | {Percent(rule.Open)} | {Percent(CurveWorld.Within(curve, rule.Error).Open)} | {Percent(CurveWorld.OpenAt(curve, rule.Error))} | {Percent(CurveWorld.OpenAt(best, rule.Error))} |\n");

    private static string Percent(double share) => (100 * share).ToString("0.00", CultureInfo.InvariantCulture) + " %";

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
