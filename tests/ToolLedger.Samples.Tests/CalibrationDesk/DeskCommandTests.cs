using System;
using System.IO;
using System.Linq;
using System.Text;
using CalibrationDesk;
using Xunit;

namespace ToolLedger.Samples.Tests.CalibrationDesk;

/// <summary>The desk answers on invented and on own data, is plain when piped, and refuses with place and rule.</summary>
public sealed class DeskCommandTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("calibration-desk-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void The_board_of_the_invented_fleet_lists_what_is_due_in_order()
    {
        DeskRun run = DeskRun.Of();

        Assert.Equal("", run.Error);
        Assert.StartsWith("Due board of an invented fleet, 2026-06-15 by the calendar \"hangar\":", run.Output, StringComparison.Ordinal);
        string[] days = [.. run.Output.Split('\n').Where(static line => line.Length > 11 && char.IsAsciiDigit(line[0]) && line[4] == '-' && line[7] == '-').Select(static line => line[..10])];
        Assert.True(days.Length >= 20, run.Output);
        Assert.Equal(days.Order(StringComparer.Ordinal), days);
        Assert.Equal(run.Output.Contains("OVERDUE", StringComparison.Ordinal) || run.Output.Contains("SUSPENDED", StringComparison.Ordinal) ? ExitCodes.NotFit : ExitCodes.Fit, run.ExitCode);
        Assert.Equal(run, DeskRun.Of());
    }

    [Fact]
    public void Emphasis_is_for_terminals_only()
    {
        Assert.DoesNotContain('\u001b', DeskRun.Of("--fleet", "300").Output);
        Assert.Contains('\u001b', DeskRun.Of(false, "--fleet", "300").Output);
    }

    [Fact]
    public void The_history_of_an_instrument_tells_each_entry_and_the_status_it_led_to()
    {
        DeskRun run = DeskRun.Of("--tool", "TW-004");

        Assert.Equal("", run.Error);
        Assert.StartsWith("TW-004 Torque wrench", run.Output, StringComparison.Ordinal);
        Assert.Contains("plan of 1 function(s)  ->  UNKNOWN", run.Output, StringComparison.Ordinal);
        Assert.Contains("calibrated on 2016-06-20, C-", run.Output, StringComparison.Ordinal);
        Assert.Contains("As of 2026-06-15 10:00 +02:00: ", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("csv", "use,at,job,")]
    [InlineData("json", "{\n  \"schema\": \"toolledger/trace-report/1\"")]
    [InlineData("markdown", "# Uses to review: TW-003")]
    [InlineData("text", "# Uses to review: TW-003")]
    public void A_trace_is_written_in_the_form_asked_for_and_stays_open(string format, string start)
    {
        DeskRun run = DeskRun.Of("--trace", "TW-003", "--format", format);

        Assert.Equal("", run.Error);
        Assert.StartsWith(start, run.Output, StringComparison.Ordinal);
        Assert.Equal(ExitCodes.NotFit, run.ExitCode);
    }

    [Fact]
    public void The_calendar_goes_to_a_file_or_to_the_output_and_is_the_same()
    {
        string file = Path.Combine(_folder, "due.ics");

        DeskRun toFile = DeskRun.Of("--ics", file), toOutput = DeskRun.Of("--ics", "-");

        Assert.Equal((ExitCodes.Fit, ExitCodes.Fit), (toFile.ExitCode, toOutput.ExitCode));
        Assert.Contains("entries are in", toFile.Output, StringComparison.Ordinal);
        Assert.Equal(File.ReadAllText(file), toOutput.Output);
        Assert.StartsWith("BEGIN:VCALENDAR\r\n", toOutput.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Own_files_are_read_and_traced()
    {
        string calibrations = Write("calibrations.csv", """
            tool,description,calibratedOn,intervalMonths,foundInTolerance,certificate
            W-1,"Wrench, long",2025-06-01,12,yes,A-1
            W-1,"Wrench, long",2026-03-01,12,no,A-2
            W-2,Gauge,2025-01-10,12,,
            """);
        string uses = Write("uses.csv", """
            use,tool,at,job,value,unit,tolerance
            1,W-1,2025-05-31T09:00:00Z,J1,100,N·m,4
            2,W-1,2025-06-01T09:00:00Z,J2,100,N·m,4
            3,W-1,2026-02-28T09:00:00Z,J3,100,N·m,4
            """);
        string[] own = ["--calibrations", calibrations, "--uses", uses, "--as-of", "2026-06-15T08:00:00Z"];

        DeskRun board = DeskRun.Of([.. own, "--within", "0"]);
        Assert.Equal((ExitCodes.NotFit, ""), (board.ExitCode, board.Error));
        Assert.Contains("2026-01-10  OVERDUE", board.Output, StringComparison.Ordinal);
        DeskRun trace = DeskRun.Of([.. own, "--trace", "W-1", "--format", "csv"]);
        DeskRun history = DeskRun.Of([.. own, "--tool", "W-1"]);
        Assert.Contains("Found out of tolerance on 2026-03-01: uses since it was last known good that nobody has decided on: 2 on record. List them: --trace W-1", history.Output, StringComparison.Ordinal);
        Assert.Equal(ExitCodes.NotFit, history.ExitCode); // in date, and yet two uses wait for a decision
        Assert.Equal(["2", "3"], trace.Output.Split("\r\n", StringSplitOptions.RemoveEmptyEntries).Skip(1).Select(static line => line.Split(',')[0]));
        Assert.Equal(ExitCodes.Fit, DeskRun.Of([.. own, "--within", "0", "--as-of", "2025-06-10T08:00:00Z"]).ExitCode);
    }

    [Fact]
    public void A_stored_register_is_read_too()
    {
        string file = Path.Combine(_folder, "register.json");
        File.WriteAllBytes(file, DemoFleet.Make(10).Register.ToJson());

        DeskRun run = DeskRun.Of("--register", file, "--as-of", "2026-06-15T08:00:00+02:00", "--tool", "TW-001");

        Assert.Equal("", run.Error);
        Assert.Contains("As of 2026-06-15 06:00 +00:00", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("The header, cut at commas, has: tool;calibratedOn.", "tool;calibratedOn\nW;2025-01-01")]
    [InlineData("line 1: the column calibratedOn is missing", "tool,day\nW,2025-01-01")]
    [InlineData("line 1: the column colour is not known here", "tool,calibratedOn,colour\nW,2025-01-01,red")]
    [InlineData("line 2: 2 fields, but the header has 3", "tool,calibratedOn,dueOn\nW,2025-01-01")]
    [InlineData("line 3: calibratedOn must be of the form yyyy-MM-dd; found \"1.2.2025\".", "tool,calibratedOn,intervalMonths\nW,2025-01-01,12\nW,1.2.2025,12")]
    [InlineData("line 2: A calibration record must give exactly one of due day, due month and interval; this one gives 0. (calibration.one-due-needed)", "tool,calibratedOn,dueOn\nW,2025-01-01,")]
    [InlineData("line 2: quotation marks do not enclose a whole field", "tool,calibratedOn,dueOn\n\"W,2025-01-01,2026-01-01")]
    [InlineData("line 2: intervalMonths must be a whole number; found \"twelve\".", "tool,calibratedOn,intervalMonths\nW,2025-01-01,twelve")]
    [InlineData("line 2: result is passed, limited or failed", "tool,calibratedOn,intervalMonths,result\nW,2025-01-01,12,ok")]
    public void A_bad_file_is_refused_with_line_and_rule(string message, string content)
    {
        DeskRun run = DeskRun.Of("--calibrations", Write("bad.csv", content), "--as-of", "2026-06-15T08:00:00Z");

        Assert.Equal((ExitCodes.BadInput, ""), (run.ExitCode, run.Output));
        Assert.Contains(message, run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("There is no option --toool.", "--toool", "x")]
    [InlineData("ask one", "--tool", "a", "--trace", "b")]
    [InlineData("name one", "--calibrations", "a", "--register", "b", "--as-of", "2026-06-15T08:00:00Z")]
    [InlineData("--as-of needs a time with offset", "--as-of", "2026-06-15T08:00:00")]
    [InlineData("say for which instant", "--calibrations", "a")]
    [InlineData("--uses goes with", "--uses", "a")]
    [InlineData("--within needs a number from 0 to 3660.", "--within", "-1")]
    [InlineData("--format is text", "--trace", "TW-001", "--format", "pdf")]
    [InlineData("There is no tool X in an invented fleet.", "--tool", "X")]
    [InlineData("there is nothing to trace", "--trace", "PG-006", "--fleet", "6", "--as-of", "2016-06-21T08:00:00Z")]
    [InlineData("cannot be read", "--calibrations", "/nowhere/at/all.csv", "--as-of", "2026-06-15T08:00:00Z")]
    [InlineData("A domain is", "--ics", "-", "--domain", "a b")]
    public void A_wrong_command_line_teaches(string message, params string[] arguments)
    {
        DeskRun run = DeskRun.Of(arguments);

        Assert.Equal((ExitCodes.Usage, ""), (run.ExitCode, run.Output));
        Assert.Contains(message, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Help_names_every_option_and_exit_code()
    {
        DeskRun run = DeskRun.Of("--help");

        Assert.Equal(ExitCodes.Fit, run.ExitCode);
        Assert.All((string[])["--within", "--tool", "--trace", "--format", "--ics", "--calibrations", "--register", "--uses", "--policy", "--as-of", "--fleet", "--domain", "64", "65"],
            option => Assert.Contains(option, run.Output, StringComparison.Ordinal));
    }

    private string Write(string name, string content)
    {
        string path = Path.Combine(_folder, name);
        File.WriteAllText(path, content, new UTF8Encoding(false));
        return path;
    }
}
