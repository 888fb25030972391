using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.Json;
using FsCheck.Xunit;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Reports;
using ToolLedger.Testing.Cases;
using ToolLedger.Testing.Generators;
using ToolLedger.Tests.Reconciliation;
using Xunit;

namespace ToolLedger.Tests.Reports;

public sealed class ShiftReportJsonTests
{
    private const string SchemaName = "shift-report";

    public static TheoryData<string> Shifts => ["as it was", "settled", "dead station", "three kits"];

    [Theory]
    [MemberData(nameof(Shifts))]
    public void The_json_keeps_the_schema_and_its_counts_add_up(string shift)
    {
        byte[] json = ReportOf(shift).ToJson();

        StoredSchema.AssertAccepts(SchemaName, json);
        using JsonDocument document = JsonDocument.Parse(json);
        JsonElement root = document.RootElement;
        foreach (JsonElement kit in root.GetProperty("kits").EnumerateArray())
        {
            AssertKitAddsUp(kit);
        }

        foreach (JsonElement session in root.GetProperty("sessions").EnumerateArray())
        {
            AssertReadsAddUp(session.GetProperty("reads"));
        }

        // Every read that is not expected stands in the list, with its number.
        long others = root.GetProperty("sessions").EnumerateArray().Select(session => session.GetProperty("reads"))
            .Sum(reads => reads.GetProperty("total").GetInt64() - reads.GetProperty("expected").GetInt64());
        Assert.Equal(others, root.GetProperty("otherReads").EnumerateArray().Sum(read => read.GetProperty("reads").GetInt64()));
    }

    // Whatever a shift was like: the schema holds, lines and reads add up, and no line of the text is wider than asked.
    [Property(Arbitrary = [typeof(AnyReconciliationCase)], MaxTest = 60)]
    public void Any_shift_gives_a_report_that_adds_up(ReconciliationCase facts, bool isNarrow)
    {
        var policy = new ReconciliationPolicy();
        ReconciliationResult result = new Reconciler(policy).Reconcile(facts.ToInput(policy.Sessions));
        var report = new ShiftReport(new ShiftReportInput { Results = [result], MadeAt = facts.AsOf });
        byte[] json = report.ToJson();

        StoredSchema.AssertAccepts(SchemaName, json);
        using JsonDocument document = JsonDocument.Parse(json);
        AssertKitAddsUp(document.RootElement.GetProperty("kits")[0]);
        Assert.All(document.RootElement.GetProperty("sessions").EnumerateArray(), session => AssertReadsAddUp(session.GetProperty("reads")));
        int width = isNarrow ? ShiftReport.MinWidth : 100;
        Assert.All(report.ToText(width).Split('\n'), line => Assert.InRange(line.Length, 0, width));
    }

    [Property(Arbitrary = [typeof(PeopleCase)], MaxTest = 40)]
    public void Whatever_people_record_the_report_keeps_the_schema(PeopleCase people)
    {
        World world = people.ToWorld();
        world.UnlistedItems.Add(new UnlistedItemReport { Description = "phone", By = World.P, At = World.End, TouchedSince = [new Place("bay 2")] });
        ReconciliationResult result = world.Reconcile();
        byte[] json = new ShiftReport(new ShiftReportInput { Results = [result], MadeAt = World.End }).ToJson();

        StoredSchema.AssertAccepts(SchemaName, json);
        using JsonDocument document = JsonDocument.Parse(json);
        JsonElement kit = document.RootElement.GetProperty("kits")[0];
        AssertKitAddsUp(kit);
        Assert.Equal(result.NotExpected.Count, kit.GetProperty("notExpected").GetArrayLength());
        Assert.Equal("phone", kit.GetProperty("unlistedItems")[0].GetProperty("description").GetString());
    }

    [Fact]
    public void Annotations_balances_fragments_and_unlisted_items_are_told_in_words()
    {
        World world = new PeopleCase(12, [new UseDraw(1, 7, 0, 60)], 5, 2, 2, 1, 3, 0, false, 2, [new AnnotationDraw(12, AnnotationKind.Removed, 400, 1)], []).ToWorld();
        world.UnlistedItems.Add(new UnlistedItemReport { Description = "phone", By = World.P, At = World.End, TouchedSince = [new Place("aircraft A")] });
        var report = new ShiftReport(new ShiftReportInput { Results = [world.Reconcile()], MadeAt = World.End });
        string text = string.Join(' ', report.ToText(200).Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries));

        Assert.Contains("Not expected, so in none of these counts: line 12", text, StringComparison.Ordinal);
        Assert.Contains("issued 20 = used 7 + returned 12 + scrapped 0 + unexplained 1 (each; jobs 1)", text, StringComparison.Ordinal);
        Assert.Contains("2 of 3 pieces counted", text, StringComparison.Ordinal);
        Assert.Contains("2 parts make 1 whole", text, StringComparison.Ordinal);
        Assert.Contains("touched since: aircraft A", text, StringComparison.Ordinal);
        Assert.Contains("Items on no list, reported gone: 1", text, StringComparison.Ordinal);
        Assert.Contains("removed on record", report.ToMarkdown(), StringComparison.Ordinal);
    }

    [Fact]
    public void Calibration_stands_beside_the_lines_and_not_inside_them()
    {
        using JsonDocument document = JsonDocument.Parse(new TurbineShift().Report().ToJson());
        JsonElement kit = document.RootElement.GetProperty("kits")[0];

        JsonElement line = kit.GetProperty("lines").EnumerateArray().Single(line => line.GetProperty("line").ValueEquals("4"));
        JsonElement status = kit.GetProperty("calibration").EnumerateArray().Single(status => status.GetProperty("line").ValueEquals("4"));
        Assert.Equal("accounted-for", line.GetProperty("state").GetString());
        Assert.False(line.TryGetProperty("calibration", out _));
        Assert.Equal(("overdue", "2026-02-20"), (status.GetProperty("state").GetString(), status.GetProperty("dueOn").GetString()));
    }

    [Fact]
    public void A_tool_of_a_kit_that_was_presented_in_the_same_session_is_expected()
    {
        var apart = new TurbineShift();
        var together = new TurbineShift { IsOtherPresented = true };
        using JsonDocument alone = JsonDocument.Parse(apart.Report([apart.Reconcile()]).ToJson());
        using JsonDocument both = JsonDocument.Parse(together.Report([together.Reconcile(), together.Reconcile(TurbineShift.Other)]).ToJson());

        Assert.Contains(alone.RootElement.GetProperty("otherReads").EnumerateArray(), IsOfOther);
        Assert.DoesNotContain(both.RootElement.GetProperty("otherReads").EnumerateArray(), IsOfOther);
        Assert.Equal(1, both.RootElement.GetProperty("sessions").GetArrayLength());
        AssertReadsAddUp(both.RootElement.GetProperty("sessions")[0].GetProperty("reads"));

        static bool IsOfOther(JsonElement read) => read.TryGetProperty("kit", out JsonElement kit) && kit.ValueEquals(TurbineShift.Other.Value);
    }

    [Fact]
    public void Times_are_those_of_the_site_with_their_offset()
    {
        using JsonDocument document = JsonDocument.Parse(new TurbineShift().Report().ToJson());

        Assert.Equal("2026-03-02T15:58:30+01:00", document.RootElement.GetProperty("madeAt").GetString());
        Assert.Equal("2026-03-02T15:55:00+01:00", document.RootElement.GetProperty("sessions")[0].GetProperty("from").GetString());
    }

    private static void AssertKitAddsUp(JsonElement kit)
    {
        JsonElement counts = kit.GetProperty("counts");
        int lines = counts.GetProperty("lines").GetInt32();
        JsonElement[] listed = [.. WithInner(kit.GetProperty("lines"))];
        Assert.Equal(lines, counts.EnumerateObject().Where(count => !count.NameEquals("lines")).Sum(count => count.Value.GetInt32()));
        Assert.Equal(lines, listed.Length);
        Assert.Equal(counts.GetProperty("accounted").GetInt32(), listed.Count(line => line.GetProperty("state").ValueEquals("accounted-for")));
        Assert.Equal(
            listed.Where(line => !line.GetProperty("state").ValueEquals("accounted-for")).Select(line => line.GetProperty("line").GetString()).Order(StringComparer.Ordinal),
            kit.GetProperty("chase").EnumerateArray().Select(number => number.GetString()).Order(StringComparer.Ordinal));
        Assert.All(listed, line => Assert.Equal(line.GetProperty("state").ValueEquals("accounted-for"), !line.TryGetProperty("next", out _)));
    }

    // Every line with those inside it, which count like others.
    private static IEnumerable<JsonElement> WithInner(JsonElement lines) => lines.EnumerateArray()
        .SelectMany(line => line.TryGetProperty("inner", out JsonElement inner) ? WithInner(inner).Prepend(line) : [line]);

    private static void AssertReadsAddUp(JsonElement reads) => Assert.Equal(
        reads.GetProperty("total").GetInt64(),
        reads.EnumerateObject().Where(count => !count.NameEquals("total")).Sum(count => count.Value.GetInt64()));

    private static ShiftReport ReportOf(string shift) => shift switch
    {
        "as it was" => new TurbineShift().Report(),
        "settled" => new TurbineShift { NotRead = [], Weak = [], Strays = [] }.Report(),
        "dead station" => new TurbineShift { IsStationAlive = false, IsCounted = false }.Report(),
        _ => new TurbineShift().Report(
        [
            new TurbineShift().Reconcile(),
            new TurbineShift { Kit = new KitId("B-08"), NotRead = [], Weak = [] }.Reconcile(),
            new TurbineShift { Kit = new KitId("B-10"), IsStationAlive = false }.Reconcile(),
        ]),
    };
}
