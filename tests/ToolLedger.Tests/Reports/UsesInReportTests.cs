using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.Json;
using FsCheck.Xunit;
using ToolLedger.Calibration;
using ToolLedger.Custody;
using ToolLedger.Ledger;
using ToolLedger.Records;
using ToolLedger.Reports;
using ToolLedger.Tests.Reconciliation;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Reports;

/// <summary>
/// The seventh section: of a tool that is not in date, the uses on record that somebody has to review (ISO 9001:2015 and AS9100D, 7.1.5.2, as quoted in public pages). T4 of the
/// invented kit is a torque wrench whose calibration ended on 28 February 2026.
/// </summary>
public sealed class UsesInReportTests
{
    private static readonly ToolUse InDate = Use("USE-1", new DateTimeOffset(2026, 2, 20, 9, 0, 0, TimeSpan.Zero), "J-1");
    private static readonly ToolUse Overdue = Use("USE-2", new DateTimeOffset(2026, 3, 2, 9, 0, 0, TimeSpan.Zero), "J-2");
    private static readonly ToolUse AfterTheAnswer = Use("USE-3", World.End.AddHours(1), "J-3");

    [Fact]
    public void The_uses_of_an_overdue_tool_are_listed_with_job_function_and_what_is_in_question()
    {
        ShiftReport report = Report(NotInDate(), [InDate, Overdue, AfterTheAnswer]);
        string text = report.ToText(400);

        Assert.Contains("OVERDUE", text, StringComparison.Ordinal);
        Assert.Contains("2 uses on record up to now, 1 in question.", text, StringComparison.Ordinal);
        string row = Assert.Single(text.Split('\n'), static line => line.Contains("IN QUESTION", StringComparison.Ordinal));
        Assert.Contains("tool 4 [K1-4], used 09:00:00+00:00 on job J-2, aircraft B, torque, 40 N·m by P (USE-2): ", row, StringComparison.Ordinal);
        Assert.Contains("2026-02-28", row, StringComparison.Ordinal);
        Assert.DoesNotContain("J-1", text, StringComparison.Ordinal);
        Assert.DoesNotContain("No ledger was given", text, StringComparison.Ordinal);
        Assert.Contains("IN QUESTION", report.ToMarkdown(), StringComparison.Ordinal);
        Assert.Contains("IN QUESTION", report.ToHtml(), StringComparison.Ordinal);
        Assert.Contains("on job J-2", report.ToHtml(), StringComparison.Ordinal);

        JsonElement status = StatusOf(report);
        Assert.Equal(2, status.GetProperty("usesOnRecord").GetInt32());
        JsonElement use = Assert.Single(status.GetProperty("usesInQuestion").EnumerateArray());
        Assert.Equal(("USE-2", "J-2", "torque", 40m), (use.GetProperty("entry").GetString(), use.GetProperty("job").GetString(), use.GetProperty("function").GetString(), use.GetProperty("value").GetDecimal()));
        Assert.Equal("calibration.overdue", use.GetProperty("why")[0].GetProperty("code").GetString());
    }

    /// <summary>Found out of tolerance and not left good: what was done in date is in question too, back to the last good calibration.</summary>
    [Fact]
    public void Of_a_tool_found_out_of_tolerance_the_uses_in_date_are_in_question_too()
    {
        World world = NotInDate();
        world.Calibrations.Add(new CalibrationRecord
        {
            Tool = new ToolId("T4"),
            CalibratedOn = new DateOnly(2026, 2, 25),
            RecordedAt = new DateTimeOffset(2026, 2, 25, 18, 0, 0, TimeSpan.Zero),
            RecordedBy = World.Q,
            FoundInTolerance = false,
            Result = CalibrationResult.Failed,
        });
        string text = Report(world, [InDate, Overdue]).ToText(400);

        Assert.Contains("REJECTED", text, StringComparison.Ordinal);
        Assert.Contains("2 uses on record up to now, 2 in question.", text, StringComparison.Ordinal);
        Assert.Contains("the tool was found out of tolerance on 2026-02-25", Assert.Single(text.Split('\n'), static line => line.Contains("on job J-1", StringComparison.Ordinal)), StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_ledger_the_report_says_that_none_was_given()
    {
        ShiftReport report = Report(NotInDate(), null);

        Assert.Contains("No ledger was given, so no use of these tools is known here", report.ToText(400), StringComparison.Ordinal);
        Assert.Contains("No ledger was given", report.ToHtml(), StringComparison.Ordinal);
        Assert.False(StatusOf(report).TryGetProperty("usesOnRecord", out _));
    }

    /// <summary>Custody entries that were handed to the reconciliation hold the same uses.</summary>
    [Fact]
    public void Uses_in_the_custody_entries_of_the_reconciliation_are_told_without_a_ledger()
    {
        World world = NotInDate();
        world.Custody.Add(Overdue);

        Assert.Contains("on job J-2", Report(world, null).ToText(400), StringComparison.Ordinal);
    }

    [Fact]
    public void Of_a_tool_in_date_nothing_is_asked()
    {
        var world = new World();
        world.Calibrations.Add(Calibrated(new DateOnly(2026, 2, 1)));
        string text = Report(world.ReadAllBut().CountAll(), [InDate, Overdue]).ToText(400);

        Assert.Contains("CURRENT", text, StringComparison.Ordinal);
        Assert.DoesNotContain("uses on record", text, StringComparison.Ordinal);
    }

    /// <summary>A list of any length: every use after the due date is in question, in JSON each of them, and the text shows the latest and says how many more there are.</summary>
    [Property(MaxTest = 20)]
    public void Every_use_out_of_date_is_in_question(byte[] hours)
    {
        ToolUse[] uses = [.. hours.Take(60).Select(static (hour, index) => Use("USE-" + index, new DateTimeOffset(2026, 2, 28, 12, 0, 0, TimeSpan.Zero).AddHours(-hour / 2), "J-" + index))];
        ToolUse[] late = [.. uses.Select(static (use, index) => Use("LATE-" + index, new DateTimeOffset(2026, 3, 1, 0, 0, 0, TimeSpan.Zero).AddMinutes(index), "L-" + index))];
        ShiftReport report = Report(NotInDate(), [.. uses, .. late]);
        JsonElement status = StatusOf(report);

        Assert.Equal(uses.Length + late.Length, status.GetProperty("usesOnRecord").GetInt32());
        Assert.Equal(late.Select(static use => use.Id.Value), status.GetProperty("usesInQuestion").EnumerateArray().Select(static use => use.GetProperty("entry").GetString()!));
        Assert.Equal(late.Length > 20, report.ToText(400).Contains($"and {late.Length - 20} more.", StringComparison.Ordinal));
    }

    private static World NotInDate()
    {
        var world = new World();
        world.Calibrations.Add(Calibrated(new DateOnly(2025, 2, 28)));
        return world.ReadAllBut().CountAll();
    }

    private static CalibrationRecord Calibrated(DateOnly day) => new()
    {
        Tool = new ToolId("T4"),
        CalibratedOn = day,
        IntervalMonths = 12,
        RecordedAt = new DateTimeOffset(day, new TimeOnly(16, 0), TimeSpan.Zero),
        RecordedBy = World.Q,
    };

    private static ToolUse Use(string id, DateTimeOffset at, string job) => new()
    {
        Id = new EntryId(id),
        At = at,
        By = World.P,
        Tool = new ToolId("T4"),
        Job = new JobId(job),
        Equipment = new EquipmentId("aircraft B"),
        Function = "torque",
        Value = 40,
        Unit = new Unit("N·m"),
    };

    private static ShiftReport Report(World world, IReadOnlyList<ToolUse>? uses)
    {
        LedgerBook? book = uses is null ? null : new LedgerBook(new LedgerSettings { Kits = world.Kits() }, uses.Select(static use => new LedgerEntry(use, use.At)));
        return new ShiftReport(new ShiftReportInput { Results = [world.Reconcile()], MadeAt = world.AsOf, Ledger = book?.Now });
    }

    private static JsonElement StatusOf(ShiftReport report)
    {
        byte[] json = report.ToJson();
        StoredSchema.AssertAccepts("shift-report", json);
        using JsonDocument document = JsonDocument.Parse(json);
        return document.RootElement.GetProperty("kits")[0].GetProperty("calibration").EnumerateArray().Single(static one => one.GetProperty("line").ValueEquals("4")).Clone();
    }
}
