using System;
using System.Linq;
using AngleSharp.Dom;
using ToolLedger.Presence;
using ToolLedger.Reconciliation;
using ToolLedger.Reports;
using ToolLedger.Tests.Reconciliation;
using Xunit;
using static ToolLedger.Tests.Reports.Printed;

namespace ToolLedger.Tests.Reports;

/// <summary>A report under a policy that states a risk: each figure once, the joint risk with the lines it is of, and looks that are set aside named as such. All invented.</summary>
public sealed class StatedRiskReportTests
{
    private static readonly ReconciliationPolicy Policy = new()
    {
        Presence = new StatedRiskPolicy { Model = new DetectionModel(0.05m, new BetaRate(4, 60), 0.02m, new BetaRate(0.2m, 60)), KitRiskLimit = 0.1m },
    };

    // The policy's sentence says looks and passes already; antennas and the last look it does not.
    [Fact]
    public void A_settled_line_tells_its_looks_and_passes_once()
    {
        ReconciliationResult result = new World { Policy = Policy }.ReadAllBut().CountAll().Reconcile();
        LineConclusion line = result.Lines[0];
        string text = Between(Report(result).ToText(400), "2. Settled", "3. Open");
        string row = text.Split('\n').Single(static one => one.Contains("tool 1 [K1-1]", StringComparison.Ordinal));

        Assert.Equal(AccountingBasis.Read, line.Basis);
        Assert.Equal(4, line.Evidence.LookCount);
        Assert.Contains("read in 4 of 120 looks, in 1 of 1 pass", row, StringComparison.Ordinal);
        Assert.Equal(1, Count(row, "looks"));
        Assert.EndsWith("; 2 antennas, last 14:55:11+00:00", row.TrimEnd(), StringComparison.Ordinal);
    }

    // Fifteen lines are listed and one is not expected: the limit is shared by fifteen, the heading says fourteen, and the page says why.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Another_number_of_lines_beside_a_limit_is_explained_where_there_is_one(bool isOneNotExpected)
    {
        World world = new World { Policy = Policy }.ReadAllBut("T12").CountAll();
        ReconciliationResult result = (isOneNotExpected ? world.AnnotateRemoved(12, World.Start.AddHours(-1)) : world).Reconcile();
        string text = Unwrapped(Report(result).ToText());

        Assert.Equal(isOneNotExpected ? 14 : 15, result.Kit.LineCount);
        Assert.Equal(15, result.Lines[0].Evidence.Risk!.LineCount);
        Assert.Equal(isOneNotExpected, text.Contains("\"One of so many lines\" counts every line listed, those not expected too", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(null)]
    [InlineData("T7")]
    public void The_risk_of_the_kit_stands_with_the_settled_lines_and_not_among_the_open_ones(string? silent)
    {
        World world = new World { Policy = Policy }.CountAll();
        ReconciliationResult result = (silent is null ? world.ReadAllBut() : world.ReadAllBut(silent)).Reconcile();
        const string stated = "accounted for by reads alone is not there is";
        foreach (string text in new[] { Unwrapped(Report(result).ToText()), Unwrapped(Report(result).ToMarkdown()).Replace("\\", "", StringComparison.Ordinal) })
        {
            Assert.Contains(stated, Between(text, "2. Settled", "3. Open"), StringComparison.Ordinal);
            Assert.Equal(1, Count(text, stated));
        }
    }

    // Kit K2 stood near in the first pass only. What was heard of line 3 was heard then and not after, so it does not count for it.
    [Fact]
    public void Looks_that_are_set_aside_are_named_where_the_terms_count_them_as_silence()
    {
        World world = new World { Policy = Policy }.StandsNearby(World.K2, -60, 14);
        world.PassStarts.Add(World.Start.AddSeconds(15));
        world.Read("T3", World.A1, 3, 5, 7, 9);
        ReconciliationResult result = world.Reconcile();
        LineEvidence evidence = result.Lines[2].Evidence;
        using IDocument page = Html.Parse(Report(result).ToHtml());
        IElement[] details = [.. page.QuerySelectorAll("details.ev")];
        const string said = "4 looks at its tag are set aside, since another kit stood near, and count as silence here.";

        Assert.Equal(4, evidence.LooksNotCounted);
        Assert.NotNull(evidence.Risk);
        Assert.All(evidence.Risk.Terms, static term => Assert.Equal(0, term.Reads));
        Assert.All(details, one => Assert.Equal(Html.TextOf(one).StartsWith("Reads of line 3:", StringComparison.Ordinal), Html.TextOf(one).Contains(said, StringComparison.Ordinal)));
    }

    private static ShiftReport Report(ReconciliationResult result) => new(new ShiftReportInput { Results = [result], MadeAt = result.AsOf });
}
