using System;
using System.Collections.Generic;
using System.Linq;
using System.Text;
using System.Text.Json;
using FsCheck.Xunit;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Reports;
using ToolLedger.Testing.Cases;
using ToolLedger.Testing.Generators;
using ToolLedger.Tests.Reconciliation;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Reports;

/// <summary>The risk as numbers in the JSON report: whole steps that add up, probabilities that follow from them, and the published schema. Kits and models are invented.</summary>
public sealed class RiskJsonTests
{
    private static readonly DetectionModel FewReads = new(0.05m, new BetaRate(4, 60), 0.02m, new BetaRate(0.2m, 60));

    [Property(Arbitrary = [typeof(AnyReconciliationCase)], MaxTest = 80)]
    public void Whatever_a_shift_was_like_the_schema_holds_and_the_numbers_follow_from_the_steps(ReconciliationCase facts, bool loose)
    {
        var policy = new ReconciliationPolicy { Presence = loose ? new StatedRiskPolicy { Model = FewReads, KitRiskLimit = 0.1m, LineRiskMax = 0.5m } : new StatedRiskPolicy() };
        byte[] json = ReportOf(new Reconciler(policy).Reconcile(facts.ToInput(policy.Sessions)));

        StoredSchema.AssertAccepts("shift-report", json);
        using JsonDocument document = JsonDocument.Parse(json);
        JsonElement kit = document.RootElement.GetProperty("kits")[0];
        double sound = 1;
        foreach (JsonElement line in kit.GetProperty("lines").EnumerateArray().SelectMany(WithInner))
        {
            if (line.GetProperty("evidence").TryGetProperty("risk", out JsonElement risk))
            {
                AssertAddsUp(risk);
                sound *= line.GetProperty("basis").GetString() == "read" ? 1 - risk.GetProperty("risk").GetDouble() : 1;
            }
        }

        Assert.Equal(1 - sound, kit.GetProperty("risk").GetProperty("joint").GetDouble(), 1e-10);
    }

    [Fact]
    public void A_line_tells_its_terms_its_prior_and_what_settles_it_as_numbers()
    {
        World world = new World { Policy = new ReconciliationPolicy { Presence = new StatedRiskPolicy { Models = [new StationModel(new StationId("R1"), "in a recess", FewReads)] } } };
        world.PassStarts.Add(World.Start.AddSeconds(15));
        world.Bindings.RemoveAll(static binding => binding.Tool.Value == "T3");
        world.Bindings.Add(new TagBinding { Tag = World.TagOf("T3"), Tool = new ToolId("T3"), From = World.Start.AddYears(-1), TagModel = "in a recess" });
        world.Read("T3", World.A1, 3, 5, 7).Read("T5", World.A1, 3, 20);
        ReconciliationResult result = world.Reconcile();
        byte[] json = ReportOf(result);
        using JsonDocument document = JsonDocument.Parse(json);
        JsonElement[] lines = [.. document.RootElement.GetProperty("kits")[0].GetProperty("lines").EnumerateArray().Select(static line => line.GetProperty("evidence").TryGetProperty("risk", out JsonElement risk) ? risk : default)];

        StoredSchema.AssertAccepts("shift-report", json);
        JsonElement[] terms = [.. lines[2].GetProperty("terms").EnumerateArray()];
        Assert.Equal(["prior", "read", "read-pass", "silent-pass"], terms.Select(static term => term.GetProperty("kind").GetString()));
        Assert.Equal((1, "S1", 1, 60, 3), (terms[2].GetProperty("model").GetInt32(), terms[2].GetProperty("session").GetString(), terms[2].GetProperty("pass").GetInt32(), terms[2].GetProperty("looks").GetInt32(), terms[2].GetProperty("reads").GetInt32()));
        Assert.Equal(["prior", "silence"], lines[0].GetProperty("terms").EnumerateArray().Select(static term => term.GetProperty("kind").GetString()));
        Assert.Equal(0.01m, lines[0].GetProperty("absentShare").GetDecimal());
        Assert.False(lines[0].TryGetProperty("absentShareReason", out _));
        Assert.Equal(99, terms[0].GetProperty("factor").GetDouble(), 0.4);
        Assert.False(lines[2].TryGetProperty("advice", out _));
        Assert.Contains(lines[4].GetProperty("advice").GetProperty("kind").GetString(), (string[])["new-passes", "more-looks", "sighting"]);
        Assert.Equal(json, ReportOf(world.Reconcile()));
    }

    [Fact]
    public void Tiny_and_huge_odds_are_written_without_losing_the_steps()
    {
        // A pass of very many looks, read in each or in none.
        var policy = new StatedRiskPolicy { Model = new DetectionModel(0, new BetaRate(900, 1), 0.000001m, new BetaRate(0.001m, 900)) };
        World world = new World { Policy = new ReconciliationPolicy { Presence = policy } };
        world.Read("T3", World.A1, [.. Enumerable.Range(1, 55).Select(static i => i / 2.0)]).Read("T3", World.A2, [.. Enumerable.Range(1, 55).Select(static i => i / 2.0)]);
        byte[] json = ReportOf(world.Reconcile());
        using JsonDocument document = JsonDocument.Parse(json);
        JsonElement[] lines = [.. document.RootElement.GetProperty("kits")[0].GetProperty("lines").EnumerateArray()];

        StoredSchema.AssertAccepts("shift-report", json);
        AssertAddsUp(lines[2].GetProperty("evidence").GetProperty("risk"));
        AssertAddsUp(lines[3].GetProperty("evidence").GetProperty("risk"));
        Assert.True(lines[2].GetProperty("evidence").GetProperty("risk").GetProperty("steps").GetInt32() > 64 * 256);
        Assert.Equal(1e-12, lines[2].GetProperty("evidence").GetProperty("risk").GetProperty("risk").GetDouble());
    }

    [Fact]
    public void A_counting_policy_writes_no_risk()
    {
        byte[] json = ReportOf(new World().ReadAllBut("T7").Reconcile());

        Assert.DoesNotContain("\"risk\"", Encoding.UTF8.GetString(json), StringComparison.Ordinal);
    }

    private static void AssertAddsUp(JsonElement risk)
    {
        int steps = risk.GetProperty("steps").GetInt32();
        Assert.Equal(steps, risk.GetProperty("terms").EnumerateArray().Sum(static term => term.GetProperty("steps").GetInt32()));
        Assert.Equal(1 / (1 + Math.Exp(steps / 256.0)), risk.GetProperty("risk").GetDouble(), 1e-11);
        foreach (JsonElement term in risk.GetProperty("terms").EnumerateArray())
        {
            double factor = Math.Exp(term.GetProperty("steps").GetInt32() / 256.0);
            Assert.Equal(factor, term.GetProperty("factor").GetDouble(), Math.Max(factor * 1e-5, 1e-28));
        }

        bool isReachable = risk.TryGetProperty("cutSteps", out JsonElement cut);
        Assert.Equal(isReachable ? 1 / (1 + Math.Exp(cut.GetInt32() / 256.0)) : 0, risk.GetProperty("cut").GetDouble(), 1e-11);
    }

    private static IEnumerable<JsonElement> WithInner(JsonElement line)
        => line.TryGetProperty("inner", out JsonElement inner) ? inner.EnumerateArray().SelectMany(WithInner).Prepend(line) : [line];

    private static byte[] ReportOf(ReconciliationResult result) => new ShiftReport(new ShiftReportInput { Results = [result], MadeAt = result.AsOf }).ToJson();
}
