using System;
using System.Collections.Generic;
using System.Linq;
using System.Text;
using ToolLedger.Calibration;
using ToolLedger.Records;
using ToolLedger.Tests.Reports;
using ToolLedger.Tools;
using Xunit;
using static ToolLedger.Tests.Calibration.TorqueWrench;

namespace ToolLedger.Tests.Calibration;

/// <summary>The future-dated, the contradictory and the unsigned are refused, each with place and rule, and a stored register of the first form knows nothing of the second.</summary>
public sealed class CalibrationEventRulesTests
{
    private static readonly CalibrationPoint Good = new() { Nominal = 100, Measured = 99, Lower = 96, Upper = 104 };
    private static readonly CalibrationPoint Bad = new() { Nominal = 100, Measured = 95, Lower = 96, Upper = 104 };

    public static TheoryData<string, string> Refusals => new(EventCases.Keys.Concat(RecordCases.Keys).Select(static key => (key, key.Split(' ')[0])));

    private static Dictionary<string, CalibrationEvent[]> EventCases => new(StringComparer.Ordinal)
    {
        ["calibration.event-without-tool"] = [new ConditionReport { Tool = default, Condition = ConditionKind.Dropped, At = At("2026-01-01T08:00:00Z"), RecordedAt = At("2026-01-01T08:00:00Z"), RecordedBy = Q }],
        ["calibration.event-without-recorded-time"] = [new CalibrationLabel { Tool = T4.Id, Label = LabelKind.Calibrated, RecordedAt = default, RecordedBy = Q }],
        ["calibration.event-without-time"] = [new ConditionReport { Tool = T4.Id, Condition = ConditionKind.Dropped, At = default, RecordedAt = At("2026-01-01T08:00:00Z"), RecordedBy = Q }],
        ["calibration.not-signed"] = [new CalibrationLabel { Tool = T4.Id, Label = LabelKind.Calibrated, RecordedAt = At("2026-01-01T08:00:00Z"), RecordedBy = default }],
        ["calibration.event-in-future"] = [Happened(ConditionKind.Dropped, "2026-01-01T08:00:01Z", recordedAt: "2026-01-01T08:00:00Z")],
        ["calibration.event-in-future check"] = [Checked(CheckKind.UserCheck, "2026-01-02T08:00:00Z", recordedAt: "2026-01-01T08:00:00Z")],
        ["calibration.event-in-future uses"] = [new UsePeriod { Tool = T4.Id, Measure = UseMeasure.Cycles, From = Day("2026-01-01"), Through = Day("2026-01-03"), Amount = 1, RecordedAt = At("2026-01-01T08:00:00Z"), RecordedBy = Q }],
        ["calibration.same-event-twice"] = [Label(LabelKind.Calibrated, "2026-01-01T08:00:00Z"), Label(LabelKind.Inactive, "2026-01-01T08:00:00Z")],
        ["calibration.plan-without-function"] = [Plan("2026-01-01T08:00:00Z")],
        ["calibration.plan-of-one-function"] = [new CalibrationPlan { Tool = T4.Id, Function = "a", Functions = [new PlannedFunction { Name = "a" }], RecordedAt = At("2026-01-01T08:00:00Z"), RecordedBy = Q }],
        ["calibration.same-function-twice"] = [Plan("2026-01-01T08:00:00Z", new PlannedFunction { Name = "a" }, new PlannedFunction { Name = "a" })],
        ["calibration.bad-interval"] = [Plan("2026-01-01T08:00:00Z", new PlannedFunction { Name = "a", Interval = new CalibrationInterval() })],
        ["calibration.bad-interval cycles"] = [Plan("2026-01-01T08:00:00Z", new PlannedFunction { Name = "a", Interval = new CalibrationInterval { Cycles = 1.5m } })],
        ["calibration.bad-range"] = [Plan("2026-01-01T08:00:00Z", new PlannedFunction { Name = "a", From = 2, To = 1 })],
        ["calibration.empty-limitation"] = [Label(LabelKind.Limited, "2026-01-01T08:00:00Z", new CalibrationLimitation())],
        ["calibration.limited-by-nothing"] = [Label(LabelKind.Limited, "2026-01-01T08:00:00Z")],
        ["calibration.rejected-without-reason"] = [new CalibrationLabel { Tool = T4.Id, Label = LabelKind.Rejected, RecordedAt = At("2026-01-01T08:00:00Z"), RecordedBy = Q }],
        ["calibration.cleared-without-reason"] =
        [
            Label(LabelKind.Rejected, "2026-01-01T08:00:00Z"),
            new CalibrationLabel { Tool = T4.Id, Label = LabelKind.Calibrated, RecordedAt = At("2026-01-02T08:00:00Z"), RecordedBy = Q },
        ],
        ["calibration.too-many"] = [new CalibrationCheck { Tool = T4.Id, Check = CheckKind.UserCheck, At = At("2026-01-01T08:00:00Z"), IsPassed = true, RecordedAt = At("2026-01-01T08:00:00Z"), RecordedBy = Q, Points = [.. Enumerable.Repeat(Good, 201)] }],
        ["calibration.bad-uncertainty"] = [new CalibrationCheck { Tool = T4.Id, Check = CheckKind.UserCheck, At = At("2026-01-01T08:00:00Z"), IsPassed = true, RecordedAt = At("2026-01-01T08:00:00Z"), RecordedBy = Q, Points = [Good with { ExpandedUncertainty = -1 }] }],
        ["calibration.passed-outside-limits"] = [new CalibrationCheck { Tool = T4.Id, Check = CheckKind.UserCheck, At = At("2026-01-01T08:00:00Z"), IsPassed = true, RecordedAt = At("2026-01-01T08:00:00Z"), RecordedBy = Q, Points = [Good, Bad] }],
        ["calibration.extension-without-reason"] = [new CalibrationExtension { Tool = T4.Id, Through = Day("2026-02-01"), Reason = null!, AllowedBy = new Signature { By = Q, At = At("2026-01-01T08:00:00Z") }, RecordedAt = At("2026-01-01T08:00:00Z"), RecordedBy = Q }],
        ["calibration.extension-in-past"] = [Extension("2025-12-30", "2026-01-01T08:00:00Z")],
        ["calibration.period-backwards"] = [new UsePeriod { Tool = T4.Id, Measure = UseMeasure.Cycles, From = Day("2026-01-01"), Through = Day("2025-12-31"), Amount = 1, RecordedAt = At("2026-01-01T08:00:00Z"), RecordedBy = Q }],
        ["calibration.bad-amount"] = [Used("2026-01-01", "2026-01-02", 0.5m)],
        ["calibration.bad-word"] = [Label((LabelKind)99, "2026-01-01T08:00:00Z")],
    };

    private static Dictionary<string, CalibrationRecord> RecordCases => new(StringComparer.Ordinal)
    {
        ["calibration.passed-outside-limits record"] = Record(asLeft: [Bad]),
        ["calibration.found-contradicted"] = Record(asFound: [Bad], found: true),
        ["calibration.certified-too-early"] = Record(certifiedOn: "2025-12-31"),
        ["calibration.certified-in-future"] = Record(certifiedOn: "2026-01-03"),
        ["calibration.completed-elsewhen"] = Record(completedAt: "2025-12-31T08:00:00Z"),
        ["calibration.failed-with-due"] = Record(result: CalibrationResult.Failed),
        ["calibration.limited-by-nothing record"] = Record(result: CalibrationResult.Limited),
        ["calibration.not-signed record"] = Record(isSigned: false),
        ["calibration.one-due-needed"] = new CalibrationRecord { Tool = T4.Id, CalibratedOn = Day("2026-01-01"), RecordedAt = At("2026-01-01T10:00:00Z"), RecordedBy = Q, Result = CalibrationResult.Passed },
    };

    [Theory]
    [MemberData(nameof(Refusals))]
    public void What_breaks_a_rule_is_refused_by_its_code(string name, string code)
    {
        IEnumerable<CalibrationRecord> records = RecordCases.TryGetValue(name, out CalibrationRecord? record) ? [record] : [];
        IEnumerable<CalibrationEvent> events = EventCases.TryGetValue(name, out CalibrationEvent[]? found) ? found : [];

        Assert.False(CalibrationRegister.TryCreate(records, events, out CalibrationRegister? register, out IReadOnlyList<RecordIssue> issues));
        Assert.Null(register);
        Assert.Contains(code, issues.Select(static issue => issue.Rule), StringComparer.Ordinal);
        Assert.DoesNotContain(issues, static issue => issue.ToString().Contains('{', StringComparison.Ordinal));
        Assert.Throws<RecordException>(() => new CalibrationRegister(records, events));
    }

    // Two limits of size cannot be reached in a unit test at a bearable cost.
    [Fact]
    public void Every_rule_but_the_limit_of_events_is_seen_to_refuse() => Assert.Equal(
        CalibrationEventRules.All.Select(static rule => rule.Code).Except(["calibration.too-many-events"], StringComparer.Ordinal).Order(StringComparer.Ordinal),
        Refusals.Select(static row => row.Data.Item2).Distinct().Where(static code => code != "calibration.one-due-needed").Order(StringComparer.Ordinal));

    [Fact]
    public void A_record_without_a_due_date_is_accepted_where_a_plan_or_a_count_says_when()
    {
        CalibrationRecord bare = Passed("2026-01-10");

        Assert.False(CalibrationRegister.TryCreate([bare], out _, out _));
        Assert.True(CalibrationRegister.TryCreate([bare], [Plan("2026-01-01T08:00:00Z", new PlannedFunction { Name = "torque", Interval = CalibrationInterval.HandTorqueTool })], out _, out _));
        Assert.True(CalibrationRegister.TryCreate([Passed("2026-01-10", interval: new CalibrationInterval { Cycles = 5000 })], out _, out _));
        Assert.True(CalibrationRegister.TryCreate([Passed("2026-01-10", result: CalibrationResult.Failed)], out _, out _));
    }

    [Fact]
    public void A_stored_register_of_the_second_form_is_read_as_written_and_every_fault_is_told_in_one_go()
    {
        byte[] json = Encoding.UTF8.GetBytes("""
            {
              "schema": "toolledger/calibration-register/2",
              "records": [
                { "tool": "T4", "calibratedOn": "2026-01-10", "intervalMonths": 12, "recordedAt": "2026-01-10T10:00:00Z", "recordedBy": "Q",
                  "details": { "function": "torque", "result": "passed", "cycles": 5000, "laboratory": "Bay 3", "standards": ["TS-1"],
                    "asFound": [ { "nominal": 100, "measured": 98.5, "lower": 96, "upper": 104, "uncertainty": 1 } ] } }
              ],
              "events": [
                { "kind": "condition", "tool": "T4", "condition": "dropped", "at": "2026-02-01T09:00:00Z", "recordedAt": "2026-02-01T10:00:00Z", "recordedBy": "P", "note": "from the stand" }
              ]
            }
            """);
        StoredSchema.AssertAccepts("calibration-register-2", json);
        CalibrationRegister register = CalibrationRegister.Parse(json);
        Assert.Equal(-1.5m, register.Records[0].AsFound[0].Deviation);
        Assert.True(register.Records[0].WasFoundInTolerance);
        Assert.Equal(ConditionKind.Dropped, Assert.IsType<ConditionReport>(register.Events[0]).Condition);

        byte[] wrong = Encoding.UTF8.GetBytes("""
            {
              "schema": "toolledger/calibration-register/2",
              "records": [
                { "tool": "T4", "calibratedOn": "2026-01-10", "intervalMonths": 12, "recordedAt": "2026-01-10T10:00:00Z", "details": { "resultt": "passed", "asFound": [ { "nominal": 100 } ] } },
                { "tool": "T4", "calibratedOn": "2026-01-11", "intervalMonths": 12, "recordedAt": "2026-01-11T10:00:00Z", "recordedBy": "Q", "details": null }
              ],
              "events": [
                { "kind": "conditions", "tool": "T4", "recordedAt": "2026-02-01T10:00:00Z", "recordedBy": "P" },
                { "kind": "label", "tool": "T4", "label": "rejected", "recordedAt": "2026-02-01T10:00:00Z", "recordedBy": "P" },
                { "kind": "use-period", "tool": "T4", "measure": "cycles", "from": "2026-02-30", "through": "2026-03-01", "recordedAt": "2026-03-01T10:00:00Z", "recordedBy": "P" },
                7
              ]
            }
            """);
        Assert.False(StoredSchema.Accepts("calibration-register-2", wrong));
        Assert.False(CalibrationRegister.TryParse(wrong, out _, out IReadOnlyList<RecordIssue> issues));
        Assert.Equal(
            [
                "$.events[0].kind record.unknown-word",
                "$.events[1].note calibration.rejected-without-reason",
                "$.events[2] record.missing-member",
                "$.events[2].from record.bad-form",
                "$.events[3] record.wrong-type",
                "$.records[0] record.missing-member",
                "$.records[0].details record.unknown-member",
                "$.records[0].details.asFound[0] record.missing-member",
                "$.records[1].details record.wrong-type",
            ],
            issues.Select(static issue => $"{issue.Place} {issue.Rule}").Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("""{ "schema": "toolledger/calibration-register/1", "records": [], "events": [] }""")]
    [InlineData("""{ "schema": "toolledger/calibration-register/1", "records": [ { "tool": "T4", "calibratedOn": "2026-01-10", "intervalMonths": 12, "recordedAt": "2026-01-10T10:00:00Z", "details": { "result": "passed" } } ] }""")]
    public void The_first_form_refuses_the_members_of_the_second(string json)
    {
        Assert.False(CalibrationRegister.TryParse(Encoding.UTF8.GetBytes(json), out _, out IReadOnlyList<RecordIssue> issues));
        Assert.Equal("record.unknown-member", Assert.Single(issues).Rule);
    }

    [Fact]
    public void What_the_first_form_can_hold_is_written_in_it_and_keeps_its_digest()
    {
        var plain = new CalibrationRecord { Tool = new ToolId("T4"), CalibratedOn = Day("2026-01-10"), IntervalMonths = 12, RecordedAt = At("2026-01-10T10:00:00Z") };

        Assert.Contains(CalibrationRegister.FirstSchema, Encoding.UTF8.GetString(new CalibrationRegister([plain]).ToJson()), StringComparison.Ordinal);
        Assert.Contains(CalibrationRegister.Schema, Encoding.UTF8.GetString(Register([Passed("2026-01-10", months: 12)]).ToJson()), StringComparison.Ordinal);
    }

    private static CalibrationRecord Record(CalibrationPoint[]? asFound = null, CalibrationPoint[]? asLeft = null, bool? found = null, string? certifiedOn = null, string? completedAt = null,
        CalibrationResult result = CalibrationResult.Passed, bool isSigned = true) => new()
        {
            Tool = T4.Id,
            CalibratedOn = Day("2026-01-01"),
            DueOn = Day("2027-01-01"),
            RecordedAt = At("2026-01-01T10:00:00Z"),
            RecordedBy = isSigned ? Q : default,
            Result = result,
            AsFound = asFound ?? [],
            AsLeft = asLeft ?? [],
            FoundInTolerance = found,
            CertifiedOn = certifiedOn is null ? null : Day(certifiedOn),
            CompletedAt = completedAt is null ? null : At(completedAt),
        };
}
