using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Numerics;
using ToolLedger.Presence;
using ToolLedger.Reconciliation;
using Xunit;

namespace ToolLedger.Tests.Reconciliation;

/// <summary>The joint risk of a kit is that of every combination of its lines being wrong.</summary>
public sealed class KitRiskTests
{
    [Theory]
    [InlineData(4)]
    [InlineData(9)]
    [InlineData(12)]
    public void The_risk_of_a_kit_is_the_sum_over_every_combination_of_wrong_lines(int read)
    {
        var world = new World
        {
            Policy = new ReconciliationPolicy { Presence = new StatedRiskPolicy { Model = new DetectionModel(0.05m, new BetaRate(4, 60), 0.02m, new BetaRate(0.2m, 60)), KitRiskLimit = 0.2m, LineRiskMax = 0.2m } },
        };
        for (int tool = 1; tool <= read; tool++)
        {
            // Each tool in another number of looks, so that the risks differ.
            world.Read(string.Create(CultureInfo.InvariantCulture, $"T{tool}"), World.A1, [.. Enumerable.Range(1, 2 + tool).Select(static slot => 2.0 * slot)]);
        }

        ReconciliationResult result = world.CountAll().Reconcile();
        double[] risks = [.. result.Lines.Where(static line => line.Basis == AccountingBasis.Read).Select(static line => line.Evidence.Risk!.Decision.Risk)];
        double[] exactly = [.. EveryCombination(risks)];

        Assert.True(risks.Length == read && risks.Distinct().Count() > read / 2, $"{risks.Length} lines");
        Assert.Equal(risks.Length, result.Kit.Risk!.LineCount);
        Assert.All(Enumerable.Range(0, exactly.Length), wrong => Assert.Equal(exactly[wrong], result.Kit.Risk.ChanceOf(wrong), 1e-14));
        Assert.Equal(1 - exactly[0], result.Kit.Risk.Joint, 1e-14);
        Assert.Equal(1 - EveryCombination([.. risks.Order().SkipLast(1)]).First(), result.Kit.Risk.JointWithoutHeaviest, 1e-14);
        Assert.Equal(result.Lines.MaxBy(static line => line.Basis == AccountingBasis.Read ? line.Evidence.Risk!.Decision.Risk : 0)!.Label, result.Kit.Risk.HeaviestLine);
    }

    private static IEnumerable<double> EveryCombination(double[] risks) =>
        from which in Enumerable.Range(0, 1 << risks.Length)
        group risks.Select((risk, line) => (which >> line & 1) == 1 ? risk : 1 - risk).Aggregate(1.0, static (all, one) => all * one) by BitOperations.PopCount((uint)which) into sameCount
        orderby sameCount.Key
        select sameCount.Sum();
}
