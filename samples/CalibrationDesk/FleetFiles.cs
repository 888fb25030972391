using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using ToolLedger.Calibration;
using ToolLedger.Policies;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace CalibrationDesk;

/// <summary>The user's own files. A refused file is refused whole, with every issue and its place.</summary>
internal static class FleetFiles
{
    private static readonly string[] CalibrationColumns =
        ["tool", "description", "calibratedOn", "dueOn", "dueMonth", "intervalMonths", "certificate", "function", "result", "foundInTolerance", "recordedAt", "recordedBy"];

    private static readonly string[] UseColumns = ["use", "tool", "at", "job", "by", "function", "value", "unit", "tolerance"];

    /// <exception cref="DeskException">A file cannot be opened, or is refused.</exception>
    internal static FleetData Load(DeskOptions options)
    {
        SitePolicy policy = options.Policy is { } file ? Policy(file) : SitePolicy.Default;
        if (!options.HasOwnData)
        {
            FleetData demo = DemoFleet.Make(options.FleetCount);
            return demo with { AsOf = options.AsOf ?? demo.AsOf, Policy = options.Policy is null ? demo.Policy : policy.Calibration, Calendar = options.Policy is null ? demo.Calendar : policy.Calendar };
        }

        var tools = new Dictionary<ToolId, Tool>();
        CalibrationRegister register = options.Register is { } json ? Register(json, tools) : Calibrations(options.Calibrations!, tools);
        IReadOnlyList<MeasuredUse> uses = options.Uses is { } csv ? Uses(csv) : [];
        return new FleetData(options.Register ?? options.Calibrations!, [.. tools.Values], register, uses, policy.Calibration, policy.Calendar, options.AsOf!.Value);
    }

    private static CalibrationRegister Calibrations(string path, Dictionary<ToolId, Tool> tools)
    {
        CsvTable table = CsvTable.Read(path, ["tool", "calibratedOn"], CalibrationColumns);
        var records = new List<CalibrationRecord>();
        foreach ((int line, string[] cells) in table.Rows)
        {
            if (!ToolId.TryCreate(table.Text(cells, "tool"), out ToolId id))
            {
                throw table.Wrong(line, cells, "tool", "must be 1 to 64 printable characters");
            }

            tools.TryAdd(id, new Tool { Id = id, Description = table.Text(cells, "description") ?? "no description", NeedsCalibration = true });
            DateOnly day = Day(table, line, cells, "calibratedOn") ?? throw table.Wrong(line, cells, "calibratedOn", "must be a day such as 2026-03-31");
            CalibrationResult result = Result(table, line, cells);
            records.Add(new CalibrationRecord
            {
                Tool = id,
                CalibratedOn = day,
                DueOn = Day(table, line, cells, "dueOn"),
                DueMonth = Day(table, line, cells, "dueMonth", "yyyy-MM"),
                IntervalMonths = table.Text(cells, "intervalMonths") is { } months
                    ? int.TryParse(months, NumberStyles.None, CultureInfo.InvariantCulture, out int number) ? number : throw table.Wrong(line, cells, "intervalMonths", "must be a whole number")
                    : null,
                Certificate = table.Text(cells, "certificate"),
                Function = table.Text(cells, "function"),
                Result = result,
                FoundInTolerance = table.Text(cells, "foundInTolerance") switch
                {
                    null => null,
                    "yes" => true,
                    "no" => false,
                    _ => throw table.Wrong(line, cells, "foundInTolerance", "is yes or no"),
                },
                RecordedAt = Time(table, line, cells, "recordedAt") ?? new DateTimeOffset(day, new TimeOnly(12, 0), TimeSpan.Zero),
                RecordedBy = new PersonId(table.Text(cells, "recordedBy") ?? "file"),
            });
        }

        return CalibrationRegister.TryCreate(records, out CalibrationRegister? register, out IReadOnlyList<RecordIssue> issues)
            ? register
            : throw Refused(path, issues, index => table.Rows[index].Line);
    }

    private static CalibrationRegister Register(string path, Dictionary<ToolId, Tool> tools)
    {
        if (!CalibrationRegister.TryParse(Bytes(path), out CalibrationRegister? register, out IReadOnlyList<RecordIssue> issues))
        {
            throw Refused(path, issues, null);
        }

        foreach (ToolId id in register.Tools)
        {
            tools.Add(id, new Tool { Id = id, Description = "no description", NeedsCalibration = true });
        }

        return register;
    }

    private static List<MeasuredUse> Uses(string path)
    {
        CsvTable table = CsvTable.Read(path, ["use", "tool", "at", "job"], UseColumns);
        var uses = new List<MeasuredUse>();
        foreach ((int line, string[] cells) in table.Rows)
        {
            try
            {
                uses.Add(new MeasuredUse
                {
                    Id = table.Text(cells, "use") ?? "",
                    Tool = new ToolId(table.Text(cells, "tool") ?? ""),
                    At = Time(table, line, cells, "at") ?? throw table.Wrong(line, cells, "at", "must be a time with offset, such as 2026-03-31T09:00:00Z"),
                    Job = new JobId(table.Text(cells, "job") ?? ""),
                    By = table.Text(cells, "by") is { } by ? new PersonId(by) : default,
                    Function = table.Text(cells, "function"),
                    Value = Number(table, line, cells, "value"),
                    Unit = table.Text(cells, "unit") is { } unit ? new Unit(unit) : default,
                    Tolerance = Number(table, line, cells, "tolerance"),
                });
            }
            catch (ArgumentException problem)
            {
                throw table.Wrong(line, problem.Message);
            }
        }

        return uses.DistinctBy(static use => use.Id).Count() == uses.Count ? uses : throw new DeskException(ExitCodes.BadInput, $"{path}: a use stands twice.");
    }

    private static SitePolicy Policy(string path) => SitePolicy.TryParse(Bytes(path), out SitePolicy? policy, out IReadOnlyList<RecordIssue> issues) ? policy : throw Refused(path, issues, null);

    private static byte[] Bytes(string path)
    {
        try
        {
            return File.ReadAllBytes(path);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw new DeskException(ExitCodes.Usage, $"{path} cannot be read: {problem.Message}");
        }
    }

    private static DeskException Refused(string path, IReadOnlyList<RecordIssue> issues, Func<int, int>? lineOf) => new(ExitCodes.BadInput, string.Join('\n',
    [
        $"{path} is refused:",
        .. issues.Take(20).Select(issue => "  " + (lineOf is not null && IndexOf(issue.Place) is { } index
            ? string.Create(CultureInfo.InvariantCulture, $"line {lineOf(index)}: {issue.Reason} ({issue.Rule})")
            : issue.ToString())),
        .. issues.Count > 20 ? [string.Create(CultureInfo.InvariantCulture, $"  and {issues.Count - 20} more")] : Array.Empty<string>(),
    ]));

    private static int? IndexOf(string place)
    {
        int open = place.IndexOf('[', StringComparison.Ordinal);
        int close = place.IndexOf(']', StringComparison.Ordinal);
        return open >= 0 && close > open && int.TryParse(place.AsSpan(open + 1, close - open - 1), NumberStyles.None, CultureInfo.InvariantCulture, out int index) ? index : null;
    }

    private static CalibrationResult Result(CsvTable table, int line, string[] cells) => table.Text(cells, "result") switch
    {
        null => CalibrationResult.NotStated,
        "passed" => CalibrationResult.Passed,
        "limited" => CalibrationResult.Limited,
        "failed" => CalibrationResult.Failed,
        _ => throw table.Wrong(line, cells, "result", "is passed, limited or failed"),
    };

    private static DateOnly? Day(CsvTable table, int line, string[] cells, string column, string form = "yyyy-MM-dd") => table.Text(cells, column) is not { } text ? null
        : DateOnly.TryParseExact(text, form, CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day) ? day
        : throw table.Wrong(line, cells, column, $"must be of the form {form}");

    private static DateTimeOffset? Time(CsvTable table, int line, string[] cells, string column) => table.Text(cells, column) is not { } text ? null
        : TimeText.TryRead(text, out DateTimeOffset time) ? time
        : throw table.Wrong(line, cells, column, "must be a time with offset, such as 2026-03-31T09:00:00Z");

    private static decimal? Number(CsvTable table, int line, string[] cells, string column) => table.Text(cells, column) is not { } text ? null
        : decimal.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out decimal number) ? number
        : throw table.Wrong(line, cells, column, "must be a number with a point");
}
