using System;
using System.Linq;
using System.Text.Json;
using ToolLedger.Calibration;
using ToolLedger.Reads;
using ToolLedger.Reports;
using ToolLedger.Tests.Calibration;
using Xunit;
using static ToolLedger.Tests.Calibration.TorqueWrench;

namespace ToolLedger.Tests.Reports;

/// <summary>The list for the quality department in its three forms.</summary>
public sealed class TraceReportTests
{
    private static readonly SiteCalendar Site = SiteCalendar.Fixed("site", TimeSpan.FromHours(2));

    [Fact]
    public void Comma_separated_values_name_every_use_and_cannot_be_a_formula()
    {
        string csv = Report().ToCsv();

        Assert.Equal(
            """
            use,at,job,equipment,by,function,value,unit,tolerance,errorFound,uncertainty,effect,why,statusThen,open,decision,decisionWhy,decidedBy,decidedAt
            U1,2026-01-01T11:00:00+02:00,J-U1,,P,,100,N·m,5,-7,1,outside tolerance,"The error found, -7 with uncertainty 1, exceeds the tolerance of the work, 5.",current,settled,done again,checked with a second wrench,E,2026-06-12T10:00:00+02:00
            '=U2,2026-02-01T11:00:00+02:00,J-=U2,,P,,,N·m,5,,,not known,The record of use gives no value.,current,open,,,,

            """.ReplaceLineEndings("\r\n"),
            csv);
    }

    // What a spreadsheet takes for a formula begins with =, +, - or @, also in their full-width forms and behind a space (from memory); a name of a mark does not.
    [Theory]
    [InlineData("=1", "'=1")]
    [InlineData("\uFF1D1", "'\uFF1D1")]
    [InlineData("\uFF0B1", "'\uFF0B1")]
    [InlineData("\uFF0D1", "'\uFF0D1")]
    [InlineData("\uFF20x", "'\uFF20x")]
    [InlineData(" =1", "' =1")]
    [InlineData("K1-7", "K1-7")]
    public void No_field_begins_a_formula(string text, string expected) => Assert.Equal(expected, new CsvText().Field(text).ToString());

    [Fact]
    public void Markdown_shows_the_window_and_escapes_what_came_in()
    {
        string markdown = Report().ToMarkdown();

        Assert.Equal(
            """
            # Uses to review: T4 Torque wrench

            Found out of tolerance on 2026-06-10; last known good on 2025-12-10. Both days belong to the window.

            2 uses in the window, 1 open.

            | use | at | job | by | value | error found | effect | status then | decision |
            | --- | --- | --- | --- | --- | --- | --- | --- | --- |
            | U1 | 2026-01-01T11:00:00+02:00 | J-U1 | P | 100 N·m | \-7 | OUTSIDE TOLERANCE: The error found, -7 with uncertainty 1, exceeds the tolerance of the work, 5. | CURRENT | done again by E: checked with a second wrench |
            | \=U2 | 2026-02-01T11:00:00+02:00 | J-=U2 | P | N·m |  | NOT KNOWN: The record of use gives no value. | CURRENT | OPEN |

            Record-keeping aid: it does not decide that equipment is safe; authorised people and rules do. Calibration comes from entered records by the convention named; label and laboratory decide.

            """.ReplaceLineEndings("\n"),
            markdown);
    }

    [Fact]
    public void Json_keeps_its_schema_and_every_decision()
    {
        byte[] json = Report().ToJson();

        StoredSchema.AssertAccepts("trace-report", json);
        JsonElement root = JsonDocument.Parse(json).RootElement;
        Assert.Equal(("2025-12-10", 1), (root.GetProperty("lastGoodOn").GetString(), root.GetProperty("open").GetInt32()));
        Assert.Equal(["to be done again", "done again"], root.GetProperty("uses")[0].GetProperty("decisions").EnumerateArray().Select(static one => one.GetProperty("decision").GetString()));
    }

    private static TraceReport Report()
    {
        CalibrationRecord finding = TraceTests.Finding("2026-06-10", found: false);
        CalibrationRegister register = Register([Passed("2025-12-10", months: 12), finding]);
        MeasuredUse[] uses = [TraceTests.Use("=U2", "2026-02-01", value: null), TraceTests.Use("U1", "2026-01-01")];
        OutOfToleranceTrace trace = OutOfToleranceTrace.Of(register, T4, finding, uses, At("2026-07-01T08:00:00Z"), P0, Site);
        Assert.True(trace.TryWith(
            [TraceTests.Decided("U1", UseDecision.ToBeDoneAgain, "2026-06-11T08:00:00Z"), TraceTests.Decided("U1", UseDecision.DoneAgain, "2026-06-12T08:00:00Z")],
            out OutOfToleranceTrace? decided, out _));
        return new TraceReport(decided, Site);
    }
}
