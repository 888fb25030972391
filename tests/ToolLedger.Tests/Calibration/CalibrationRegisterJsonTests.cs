using System;
using System.Collections.Generic;
using System.Linq;
using System.Text;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ToolLedger.Calibration;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Testing.Generators;
using ToolLedger.Tests.Records;
using ToolLedger.Tests.Reports;
using Xunit;

namespace ToolLedger.Tests.Calibration;

public sealed class CalibrationRegisterJsonTests
{
    private const string SchemaName = "calibration-register";

    private const string Example = """
        {
          "schema": "toolledger/calibration-register/1",
          "records": [
            { "tool": "T4", "calibratedOn": "2025-03-31", "dueOn": "2026-03-31", "recordedAt": "2025-03-31T14:00:00+02:00", "recordedBy": "S", "certificate": "C-1187" },
            { "tool": "T6", "calibratedOn": "2025-04-10", "dueMonth": "2026-04", "recordedAt": "2025-04-10T14:00:00+02:00" },
            { "tool": "T8", "calibratedOn": "2024-02-29", "intervalMonths": 12, "recordedAt": "2024-03-01T08:00:00Z" }
          ]
        }
        """;

    [Fact]
    public void A_stored_register_is_read_as_written()
    {
        StoredSchema.AssertAccepts(SchemaName, Utf8(Example));

        CalibrationRegister register = CalibrationRegister.Parse(Utf8(Example));

        Assert.Equal([new DateOnly(2026, 3, 31), null, new DateOnly(2025, 2, 28)], register.Records.Select(record => record.Due));
        Assert.Equal(new DateOnly(2026, 4, 1), register.Records[1].DueMonth);
    }

    [Property(Arbitrary = [typeof(CalibrationGenerators)])]
    public void What_is_written_is_read_again_with_the_same_digest_and_keeps_the_schema(CalibrationRegister register)
    {
        byte[] json = register.ToJson();

        StoredSchema.AssertAccepts(SchemaName, json);
        CalibrationRegister read = CalibrationRegister.Parse(json);
        Assert.Equal(json, read.ToJson());
        Assert.Equal(register.Digest, read.Digest);
    }

    [Property(Arbitrary = [typeof(CalibrationGenerators)])]
    public void The_order_of_records_changes_no_byte(CalibrationRegister register) =>
        Assert.Equal(register.ToJson(), new CalibrationRegister(register.Records.Reverse()).ToJson());

    [Property(Arbitrary = [typeof(CalibrationGenerators)])]
    public Property TryParse_never_throws(CalibrationRegister register, PositiveInt[] places, byte[] values) =>
        DamagedRecord.IsReadOrRefused<CalibrationRegister>(register.ToJson(), places, values, CalibrationRegister.TryParse);

    [Fact]
    public void Every_fault_of_a_stored_register_is_told_in_one_go()
    {
        byte[] json = Utf8("""
            {
              "schema": "toolledger/calibration-register/1",
              "records": [
                { "tool": "T4", "calibratedOn": "2026-02-30", "dueOn": "2026-03-31", "recordedAt": "2025-03-31T14:00:00+02:00" },
                { "tool": "T4", "calibratedOn": "2025-03-31", "recordedAt": "2025-03-31T14:00:00+02:00" },
                { "tool": "T4", "calibratedOn": "2025-04-01", "dueOn": "2026-03-31", "intervalMonths": 12, "recordedAt": "2025-04-02T14:00:00+02:00" },
                { "tool": "T4", "calibratedOn": "2025-04-03", "intervalMonths": 121, "recordedAt": "2025-04-03T14:00:00+02:00" },
                { "tool": "T4", "calibratedOn": "2025-04-04", "dueOn": "2025-04-03", "recordedAt": "2025-04-04T14:00:00+02:00" },
                { "calibratedOn": "2025-04-05", "dueMonth": "2026-13", "recordedAt": "2025-04-05T14:00:00", "due": "x" }
              ]
            }
            """);

        Assert.False(StoredSchema.Accepts(SchemaName, json));
        Assert.False(CalibrationRegister.TryParse(json, out _, out IReadOnlyList<RecordIssue> issues));
        Assert.Equal(
            [
                "$.records[0].calibratedOn record.bad-form",
                "$.records[1] calibration.one-due-needed",
                "$.records[2] calibration.one-due-needed",
                "$.records[3].intervalMonths record.out-of-range",
                "$.records[4].dueOn calibration.due-before-calibrated",
                "$.records[5] record.unknown-member",
                "$.records[5] record.missing-member",
                "$.records[5].dueMonth record.bad-form",
                "$.records[5].recordedAt record.time-without-offset",
            ],
            issues.Select(issue => $"{issue.Place} {issue.Rule}"),
            StringComparer.Ordinal);
    }

    // S89, first half: a certificate dated after the entry is refused, by the earliest calendar on Earth.
    [Theory]
    [InlineData("2026-03-01", "2026-03-01T00:30:00+01:00", true)]
    [InlineData("2026-03-02", "2026-03-01T12:00:00Z", true)]
    [InlineData("2026-03-02", "2026-03-01T09:59:59Z", false)]
    public void A_day_of_calibration_that_had_not_begun_anywhere_is_refused(string day, string recordedAt, bool isAccepted)
    {
        byte[] json = Utf8($$"""{ "schema": "toolledger/calibration-register/1", "records": [ { "tool": "T4", "calibratedOn": "{{day}}", "intervalMonths": 12, "recordedAt": "{{recordedAt}}" } ] }""");

        Assert.Equal(isAccepted, CalibrationRegister.TryParse(json, out _, out IReadOnlyList<RecordIssue> issues));
        Assert.Equal(isAccepted ? [] : ["calibration.calibrated-in-future"], issues.Select(issue => issue.Rule), StringComparer.Ordinal);
    }

    [Fact]
    public void The_same_record_twice_is_refused_and_a_later_correction_is_not()
    {
        CalibrationRecord record = CalibrationRegister.Parse(Utf8(Example)).Records[0];
        var correction = new CalibrationRecord
        {
            Tool = record.Tool,
            CalibratedOn = record.CalibratedOn,
            DueOn = record.DueOn!.Value.AddDays(-1),
            RecordedAt = record.RecordedAt.AddHours(1),
        };

        Assert.False(CalibrationRegister.TryCreate([record, record], out _, out IReadOnlyList<RecordIssue> issues));
        Assert.Equal("calibration.same-record-twice", Assert.Single(issues).Rule);
        Assert.True(CalibrationRegister.TryCreate([record, correction], out CalibrationRegister? register, out _));
        Assert.Same(correction, register.LatestFor(record.Tool, correction.RecordedAt, SiteCalendar.Utc));
        Assert.Same(record, register.LatestFor(record.Tool, correction.RecordedAt.AddTicks(-1), SiteCalendar.Utc));
    }

    private static byte[] Utf8(string text) => Encoding.UTF8.GetBytes(text);
}
