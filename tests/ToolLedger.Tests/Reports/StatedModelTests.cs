using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using AngleSharp.Dom;
using FsCheck.Xunit;
using ToolLedger.Kits;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Reports;
using ToolLedger.Testing.Cases;
using ToolLedger.Testing.Generators;
using ToolLedger.Tests.Reconciliation;
using ToolLedger.Tools;
using Xunit;
using static ToolLedger.Tests.Reports.Printed;

namespace ToolLedger.Tests.Reports;

/// <summary>By which models of station and mounting reads were weighed, as every form of the report says it. Kits, stations and models are invented.</summary>
public sealed class StatedModelTests
{
    private static readonly DetectionModel FewReads = new(0.05m, new BetaRate(4, 60), 0.02m, new BetaRate(0.2m, 60));
    private static readonly DetectionModel Recess = new(0.25m, new BetaRate(2, 25), 0.03m, new BetaRate(0.3m, 50));

    // The published terms of each pass name the model that weighed it: every one must stand in the table, with the line.
    [Property(Arbitrary = [typeof(AnyReconciliationCase)], MaxTest = 60)]
    public void Whatever_a_shift_was_like_every_model_of_a_term_stands_in_the_table_with_its_line(ReconciliationCase facts)
    {
        var presence = new StatedRiskPolicy { Model = FewReads, Models = [new StationModel(new StationId("R1"), null, Recess), new StationModel(new StationId("R2"), null, FewReads)], KitRiskLimit = 0.1m };
        var policy = new ReconciliationPolicy { Presence = presence };
        ReconciliationResult result = new Reconciler(policy).Reconcile(facts.ToInput(policy.Sessions));
        using IDocument page = Html.Parse(new ShiftReport(new ShiftReportInput { Results = [result], MadeAt = result.AsOf }).ToHtml());
        Dictionary<string, string[]> rows = RowsOf(page);

        Assert.Equal("model 0", page.Texts(".models tbody th")[0]);
        var shown =
            from line in result.AllLines
            where line.Evidence.Risk is not null
            from term in line.Evidence.Risk!.Terms
            where !term.Session.IsEmpty
            select (line.Label, term.Model);
        foreach ((string label, int model) in shown)
        {
            string[] row = rows[FormattableString.Invariant($"model {model}")];
            Assert.True(row.Length == 3 || row[3].Split(' ', ',').Contains(label) || row[3].Contains("more", StringComparison.Ordinal), $"line {label} is not among \"{row[^1]}\" of model {model}");
        }
    }

    // One model weighed this kit, two the other: "the policy's model" would point at the wrong one.
    [Fact]
    public void The_stated_risk_says_whether_one_model_weighed_it_or_several()
    {
        ReconciliationResult two = TwoModels().Reconcile();
        var alone = new World();
        alone.Policy = new ReconciliationPolicy { Presence = new StatedRiskPolicy { Model = FewReads, KitRiskLimit = 0.1m } };
        ReconciliationResult one = alone.ReadAllBut().Reconcile();

        Assert.Contains("by the policy's models and with a limit of", StatedBy(two), StringComparison.Ordinal);
        Assert.Contains("by the policy's model and with a limit of", StatedBy(one), StringComparison.Ordinal);
        Assert.Contains("by the policy's models and with a limit of", Report(two).ToHtml().Replace("&#39;", "'", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public void The_page_shows_the_models_that_weighed_something_the_policys_own_first_and_the_lines_of_each()
    {
        ReconciliationResult result = TwoModels().Reconcile();
        using IDocument page = Html.Parse(Report(result).ToHtml());
        Dictionary<string, string[]> rows = RowsOf(page);

        Assert.Equal(["model 0", "model 1"], page.Texts(".models tbody th"));
        Assert.Equal("the policy's own: all that have no other", rows["model 0"][0]);
        Assert.Equal("lines 1, 2, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13", rows["model 0"][3]);
        Assert.Equal(
        [
            "station R1, mounting in a recess",
            "covered in 25 % of passes, else read in a share of looks from Beta(2, 25)",
            "3 % of the tools that are not there lie within reach, read in a share of looks from Beta(0.3, 50)",
            "line 3",
        ], rows["model 1"]);
        string text = Html.TextOf(page.Body!);
        Assert.Contains("The policy has 2 models of station and mounting, of which 1 weighed reads of this kit; its own stands for all other tags.", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Model: of the tools", text, StringComparison.Ordinal);

        // The terms of a pass name their model, and no other terms do.
        IElement line = page.QuerySelectorAll("details.ev").Single(static one => Html.TextOf(one).StartsWith("Reads of line 3:", StringComparison.Ordinal));
        Assert.Equal(result.Lines[2].Evidence.Risk!.Terms.Count(static term => !term.Session.IsEmpty), line.Texts(".terms tbody th").Count(static term => term.EndsWith(" (model 1)", StringComparison.Ordinal)));
    }

    [Fact]
    public void One_model_for_the_kit_needs_no_lines_and_no_number_with_the_terms()
    {
        World world = TwoModels();
        world.Policy = new ReconciliationPolicy { Presence = new StatedRiskPolicy { Model = FewReads, Models = [new StationModel(new StationId("R7"), null, Recess)] } };
        using IDocument page = Html.Parse(Report(world.Reconcile()).ToHtml());

        Assert.Equal(["Model", "For tags", "Tags that are there", "Strays"], page.Texts(".models thead th"));
        Assert.Equal(["model 0"], page.Texts(".models tbody th"));
        Assert.DoesNotContain(page.Texts(".terms tbody th"), static term => term.Contains("(model", StringComparison.Ordinal));
    }

    [Fact]
    public void Of_many_models_50_are_shown_and_the_rest_are_counted()
    {
        const int count = 60;
        World world = new();
        for (int number = 1; number <= count; number++)
        {
            string name = "X" + number.ToString(CultureInfo.InvariantCulture);
            world.MoreLines.Add(new ToolLine { Number = 15 + number, Tool = new Tool { Id = new ToolId(name), Description = "pin punch", Mark = name } });
            world.Bindings.Add(new TagBinding { Tag = World.TagOf(name), Tool = new ToolId(name), From = World.Start.AddYears(-1), TagModel = name });
        }

        world.Policy = new ReconciliationPolicy
        {
            Presence = new StatedRiskPolicy { Model = FewReads, Models = [.. Enumerable.Range(1, count).Select(static number => new StationModel(new StationId("R1"), FormattableString.Invariant($"X{number}"), Recess))] },
        };
        using IDocument page = Html.Parse(Report(world.Reconcile()).ToHtml());

        Assert.Equal(50, page.QuerySelectorAll(".models tbody tr").Length);
        Assert.Contains("11 more models weighed reads of this kit; they stand in the policy.", Html.TextOf(page.Body!), StringComparison.Ordinal);
    }

    [Fact]
    public void Text_and_markdown_say_in_one_sentence_by_how_many_models_and_where_they_stand()
    {
        ReconciliationResult two = TwoModels().Reconcile();
        World alone = TwoModels();
        alone.Policy = new ReconciliationPolicy { Presence = new StatedRiskPolicy { Model = FewReads } };
        ReconciliationResult own = alone.Reconcile(), counted = new World().ReadAllBut().Reconcile();
        string both = $"The reads were weighed by 1 model of station and mounting, and by the policy's own where it names none; it stands in the policy with digest {two.PolicyDigest.ToShortString()} (with rules).";
        string one = $"The reads were weighed by the policy's own model; it stands in the policy with digest {own.PolicyDigest.ToShortString()} (with rules).";

        Assert.Contains(both, Between(Unwrapped(Report(two).ToText()), "2. Settled", "3. Open"), StringComparison.Ordinal);
        Assert.Contains(one, Between(Unwrapped(Report(own).ToText()), "2. Settled", "3. Open"), StringComparison.Ordinal);
        Assert.Contains("The reads were weighed by 1 model of station and mounting", Report(two).ToMarkdown(), StringComparison.Ordinal);
        Assert.DoesNotContain("The reads were weighed", Report(counted).ToText(), StringComparison.Ordinal);
    }

    private static World TwoModels()
    {
        World world = new()
        {
            Policy = new ReconciliationPolicy
            {
                Presence = new StatedRiskPolicy
                {
                    Model = FewReads,
                    Models = [new StationModel(new StationId("R1"), "in a recess", Recess), new StationModel(new StationId("R2"), "in a recess", FewReads)],
                    KitRiskLimit = 0.1m,
                },
            },
        };
        world.Bindings.RemoveAll(static binding => binding.Tool.Value == "T3");
        world.Bindings.Add(new TagBinding { Tag = World.TagOf("T3"), Tool = new ToolId("T3"), From = World.Start.AddYears(-1), TagModel = "in a recess" });
        return world.ReadAllBut("T7").CountAll();
    }

    /// <summary>The cells behind the name of each model.</summary>
    private static string StatedBy(ReconciliationResult result) => result.Findings.Single(static finding => finding.Reason.Kind == RiskReasons.RiskStated).ToString();

    private static Dictionary<string, string[]> RowsOf(IDocument page) => page.QuerySelectorAll(".models tbody tr")
        .ToDictionary(static row => Html.TextOf(row.QuerySelector("th")!), static row => row.Texts("td").ToArray(), StringComparer.Ordinal);

    private static ShiftReport Report(ReconciliationResult result) => new(new ShiftReportInput { Results = [result], MadeAt = result.AsOf });
}
