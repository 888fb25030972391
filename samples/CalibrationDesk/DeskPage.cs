using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text;
using ToolLedger.Calibration;
using ToolLedger.Tools;

namespace CalibrationDesk;

/// <summary>What the desk prints. A status is a word; on a terminal the word of what is not fit is bold, and nothing else is added.</summary>
internal sealed class DeskPage(TextWriter output, FleetData fleet, bool isPlain)
{
    private const int MaxLineLength = 160;

    internal int Board(int? within)
    {
        DueBoard board = DueBoard.Of(fleet.Register, fleet.Tools, fleet.AsOf, fleet.Policy, fleet.Calendar);
        List<DueItem> shown = [.. within is { } days ? board.Within(days) : board.Items];
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Due board of {fleet.Name}, {Day(board.SiteDate)} by the calendar \"{fleet.Calendar.Name}\": {shown.Count} of {board.Items.Count} due dates shown, {shown.Count(static item => !item.Status.IsFit)} of them not fit for use; {board.Undated.Count} without a due date."));
        foreach (IGrouping<DateOnly, DueItem> month in shown.GroupBy(static item => new DateOnly(item.Day!.Value.Year, item.Day.Value.Month, 1)))
        {
            output.WriteLine();
            output.WriteLine(month.Key.ToString("yyyy-MM", CultureInfo.InvariantCulture));
            foreach (DueItem item in month)
            {
                Line(Day(item.Day!.Value) + (item.IsForecast ? "?" : " "), item);
            }
        }

        if (board.Undated.Count > 0)
        {
            output.WriteLine();
            output.WriteLine("without a due date");
            foreach (DueItem item in board.Undated)
            {
                Line("           ", item);
            }
        }

        if (shown.Exists(static item => item.IsForecast))
        {
            output.WriteLine();
            output.WriteLine("? A forecast from average use, not a due date.");
        }

        Caution();
        return shown.Exists(static item => !item.Status.IsFit) || board.Undated.Any(static item => !item.Status.IsFit) ? ExitCodes.NotFit : ExitCodes.Fit;
    }

    internal int History(ToolId id)
    {
        Tool tool = Find(id);
        output.WriteLine($"{tool.Id.Value} {tool.Description}");
        output.WriteLine();
        IEnumerable<(DateTimeOffset At, string What)> entries = fleet.Register.Records.Where(record => record.Tool == id).Select(record => (record.RecordedAt, What(record)))
            .Concat(fleet.Register.Events.Where(one => one.Tool == id && one is not UsePeriod).Select(one => (one.RecordedAt, What(one))))
            .Where(entry => entry.RecordedAt <= fleet.AsOf)
            .OrderBy(static entry => entry.RecordedAt);
        foreach ((DateTimeOffset at, string what) in entries)
        {
            CalibrationStatus then = fleet.Register.StatusOf(tool, at, fleet.Policy, fleet.Calendar);
            output.WriteLine(Cut($"{Time(at)}  {what}  ->  {Word(then)}"));
        }

        CalibrationStatus now = fleet.Register.StatusOf(tool, fleet.AsOf, fleet.Policy, fleet.Calendar);
        output.WriteLine();
        output.WriteLine($"As of {Time(fleet.AsOf)}: {Word(now)}. {now.Reason}");
        foreach (CalibrationStatus part in now.Parts)
        {
            output.WriteLine($"  {part.Function}: {Word(part)}. {part.Reason}");
        }

        IReadOnlyList<UseReview> reviews = UseReview.Of(fleet.Register, tool, fleet.Uses, fleet.AsOf, fleet.Policy, fleet.Calendar);
        foreach (UseReview review in reviews.Where(static review => review.IsToReview))
        {
            output.WriteLine(Cut($"To review: {review.Use.Id} on {review.Use.Job.Value}, {Time(review.Use.At)}: {review.Status.Reason}"));
        }

        int openUses = 0;
        if (Finding(tool) is { } finding)
        {
            openUses = Trace(tool, finding).OpenCount;
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Found out of tolerance on {Day(finding.CalibratedOn)}: uses since it was last known good that nobody has decided on: {openUses} on record. List them: --trace {tool.Id.Value}"));
        }

        Caution();
        return now.IsFit && openUses == 0 && !reviews.Any(static review => review.IsToReview) ? ExitCodes.Fit : ExitCodes.NotFit;
    }

    /// <summary>The latest calibration known by then that found the tool out of tolerance.</summary>
    internal CalibrationRecord? Finding(Tool tool) =>
        fleet.Register.Records.LastOrDefault(record => record.Tool == tool.Id && record.RecordedAt <= fleet.AsOf && record.WasFoundInTolerance == false);

    internal OutOfToleranceTrace Trace(Tool tool, CalibrationRecord finding) =>
        OutOfToleranceTrace.Of(fleet.Register, tool, finding, fleet.Uses, fleet.AsOf, fleet.Policy, fleet.Calendar);

    internal Tool Find(ToolId id) => fleet.Tools.FirstOrDefault(tool => tool.Id == id)
        ?? throw new DeskException(ExitCodes.Usage, $"There is no tool {id.Value} in {fleet.Name}.");

    private void Line(string day, DueItem item)
    {
        string name = item.Tool.Id.Value + (item.Function is { } function ? " " + function : "");
        output.WriteLine(Cut($"{day} {Word(item.Status)}{new string(' ', Math.Max(1, 13 - Plain(item.Status).Length))}{name}  {item.Tool.Description}. {item.Status.Reason}"));
    }

    private void Caution()
    {
        output.WriteLine();
        output.WriteLine("Status comes from entered records by the convention named; the label and the responsible laboratory decide.");
    }

    private string Word(CalibrationStatus status)
    {
        string word = Plain(status);
        return isPlain || status.IsFit ? word : $"\u001b[1m{word}\u001b[0m";
    }

    /// <summary>The word of the status as the library says it: what stands before the colon.</summary>
    private static string Plain(CalibrationStatus status) => status.ToString().Split(':')[0].ToUpperInvariant();

    private static string What(CalibrationRecord record)
    {
        var text = new StringBuilder("calibrated on ").Append(Day(record.CalibratedOn));
        text.Append(record.Function is { } function ? $", {function}" : "");
        text.Append(record.Result == CalibrationResult.Failed ? ", failed" : "");
        text.Append(record.WasFoundInTolerance == false ? ", found out of tolerance" : "");
        return text.Append(record.Certificate is { } certificate ? $", {certificate}" : "").ToString();
    }

    private static string What(CalibrationEvent one) => one switch
    {
        ConditionReport report => $"{report.Condition.ToString().ToLowerInvariant()}{(report.Note is { } note ? ", " + note : "")}",
        CalibrationCheck check => $"{(check.Check == CheckKind.UserCheck ? "check by user" : "check in service")} {(check.IsPassed ? "passed" : "failed")}",
        CalibrationLabel label => $"label {label.Label}",
        CalibrationExtension extension => $"extension through {Day(extension.Through)}: {extension.Reason}",
        CalibrationPlan plan => $"plan of {plan.Functions.Count.ToString(CultureInfo.InvariantCulture)} function(s)",
        _ => one.Kind,
    };

    private string Time(DateTimeOffset time) => fleet.Calendar.ToSite(time).ToString("yyyy-MM-dd HH:mm zzz", CultureInfo.InvariantCulture);

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Cut(string line) => line.Length <= MaxLineLength ? line : line[..(MaxLineLength - 3)] + "...";
}
