using System;
using System.IO;
using System.Linq;
using System.Text;
using ToolLedger.Calibration;
using ToolLedger.Interchange;
using ToolLedger.Reports;
using ToolLedger.Tools;

namespace CalibrationDesk;

/// <summary>The command: which question, of which data.</summary>
internal static class DeskCommand
{
    internal static int Run(string[] arguments, TextWriter output, TextWriter error, bool isPlain)
    {
        try
        {
            DeskOptions options = DeskOptions.Parse(arguments);
            if (options.ShowHelp)
            {
                output.WriteLine(DeskOptions.Help.ReplaceLineEndings("\n"));
                return ExitCodes.Fit;
            }

            FleetData fleet = FleetFiles.Load(options);
            var page = new DeskPage(output, fleet, isPlain);
            return !options.Tool.IsEmpty ? page.History(options.Tool)
                : !options.Trace.IsEmpty ? Trace(options, fleet, page, output)
                : options.CalendarFile is { } file ? Feed(file, options, fleet, output)
                : page.Board(options.Within);
        }
        catch (DeskException stopped)
        {
            error.WriteLine(stopped.Message);
            return stopped.ExitCode;
        }
    }

    private static int Trace(DeskOptions options, FleetData fleet, DeskPage page, TextWriter output)
    {
        Tool tool = page.Find(options.Trace);
        CalibrationRecord finding = page.Finding(tool)
            ?? throw new DeskException(ExitCodes.Usage, $"No calibration of {tool.Id.Value} found it out of tolerance by then: there is nothing to trace.");
        OutOfToleranceTrace trace = page.Trace(tool, finding);
        var report = new TraceReport(trace, fleet.Calendar);
        output.Write(options.Format switch
        {
            "csv" => report.ToCsv(),
            "json" => Encoding.UTF8.GetString(report.ToJson()),
            _ => report.ToMarkdown(),
        });
        return trace.OpenCount == 0 ? ExitCodes.Fit : ExitCodes.NotFit;
    }

    private static int Feed(string file, DeskOptions options, FleetData fleet, TextWriter output)
    {
        DueBoard board = DueBoard.Of(fleet.Register, fleet.Tools, fleet.AsOf, fleet.Policy, fleet.Calendar);
        CalendarFeedOptions feed;
        try
        {
            feed = new CalendarFeedOptions { Domain = options.Domain };
        }
        catch (ArgumentException problem)
        {
            throw new DeskException(ExitCodes.Usage, problem.Message);
        }

        byte[] bytes = CalendarFeed.Write(board.Items, feed);
        if (file == "-")
        {
            output.Write(Encoding.UTF8.GetString(bytes));
            return ExitCodes.Fit;
        }

        try
        {
            File.WriteAllBytes(file, bytes);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw new DeskException(ExitCodes.Usage, $"{file} cannot be written: {problem.Message}");
        }

        output.WriteLine($"{board.Items.Count(static item => item.Record is not null)} entries are in {file}.");
        return ExitCodes.Fit;
    }
}
