using System;
using System.Linq;
using System.Text.Json;
using ToolLedger.Inventory;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Reports;
using ToolLedger.Tests.Reconciliation;
using Xunit;

namespace ToolLedger.Tests.Reports;

/// <summary>Kits inside kits in print: every line inside has a number of its own.</summary>
public sealed class SubKitReportTests
{
    [Fact]
    public void S36_The_text_names_the_open_lines_inside_and_adds_up_the_list()
    {
        string text = ReportOf(new SubKitWorld().ReadWell("T1", "T2", "CASE", "A1", "A2", "A3")).ToText(200);

        Assert.Contains("Of 8 lines: 5 accounted for, 2 not read, 1 partial", text, StringComparison.Ordinal);
        Assert.Contains("NOT READ  line 7.4 tool A4 [mark A4] (tray)", text, StringComparison.Ordinal);
        Assert.Contains("line 7 tool CASE [mark CASE], with sub-kit K1a revision 2 (lid)", text, StringComparison.Ordinal);
        Assert.Contains("open it and settle lines 7.4, 7.5", text, StringComparison.Ordinal);
        Assert.Contains("listed 8 each; a tag on 8 of 8 lines", text, StringComparison.Ordinal);
        Assert.Contains("By place: lid 6 each, tray 2 each.", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(true, true)]
    [InlineData(true, false)]
    [InlineData(false, true)]
    public void The_json_keeps_the_schema_and_holds_the_lines_inside(bool isRegistered, bool isNested)
    {
        SubKitWorld shift = new SubKitWorld { IsK1aRegistered = isRegistered, IsNestedTwice = isNested }.ReadWell("T1", "T2", "CASE", "A1", "B1");
        shift.World.Annotations.Add(new Annotation
        {
            Kit = SubKitWorld.K1a,
            LineNumber = 3,
            Kind = AnnotationKind.Removed,
            Reason = "at the grinder",
            SignedBy = new Signature { By = World.Q, At = World.Start.AddHours(-1) },
        });
        byte[] json = ReportOf(shift).ToJson();

        StoredSchema.AssertAccepts("shift-report", json);
        using JsonDocument document = JsonDocument.Parse(json);
        JsonElement kit = document.RootElement.GetProperty("kits")[0];
        JsonElement subKit = kit.GetProperty("lines")[2];
        Assert.Equal(isRegistered, subKit.TryGetProperty("inner", out JsonElement inner));
        Assert.Equal(isRegistered ? 0 : 1, kit.GetProperty("totals").GetProperty("notAddedUp").GetArrayLength());
        if (isRegistered)
        {
            string?[] expected = isNested ? ["7.1", "7.2", "7.4", "7.5", "7.9"] : ["7.1", "7.2", "7.4", "7.5"];
            Assert.Equal(expected, inner.EnumerateArray().Select(static line => line.GetProperty("line").GetString()));
            Assert.Equal("7.3", kit.GetProperty("notExpected")[0].GetProperty("line").GetString());
        }
    }

    // A reader hears the tools inside when the outer kit is presented: none of them is a stranger.
    [Fact]
    public void A_tool_inside_a_sub_kit_is_expected_where_the_outer_kit_was_presented_also_beside_other_kits()
    {
        SubKitWorld shift = new SubKitWorld().ReadWell("T1", "T2", "CASE", "A1", "A2", "A3");
        shift.Others.Add(SubKitWorld.Manifest(World.K2, 1, SubKitWorld.Line(1, "U1")));
        ReadSession session = shift.World.Session("S1", [World.K1, World.K2]);
        ReconciliationResult[] results = [shift.Reconcile(World.K2, session), shift.Reconcile(World.K1, session)];
        string text = new ShiftReport(new ShiftReportInput { Results = results, MadeAt = World.End }).ToText(200);
        string alone = new ShiftReport(new ShiftReportInput { Results = results[..1], MadeAt = World.End }).ToText(200);

        Assert.Contains("UNEXPECTED", alone, StringComparison.Ordinal); // without the outer kit among the results nothing says that they belong there
        Assert.DoesNotContain("UNEXPECTED", text, StringComparison.Ordinal);
    }

    private static ShiftReport ReportOf(SubKitWorld shift) => new(new ShiftReportInput { Results = [shift.Reconcile()], MadeAt = World.End.AddMinutes(3) });
}
