using System;
using System.IO;
// <example>
using ToolLedger.Calibration;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Reports;
using ToolLedger.Tools;
// </example>

namespace ToolLedger.Samples.Tests.Documents.Examples;

/// <summary>An example of docs/calibration.md: from a bad result back to the uses.</summary>
internal static class BackToTheUses
{
    public static void Run(TextWriter Console, RepositoryFiles File)
    {
        _ = File;
        // <example>
        var wrench = new Tool { Id = new ToolId("TW-3"), Description = "Torque wrench", NeedsCalibration = true };
        DateTimeOffset At(int month, int day) => new(2026, month, day, 9, 0, 0, TimeSpan.Zero);
        CalibrationRecord Calibrated(DateOnly day, params CalibrationPoint[] asFound) => new()
        {
            Tool = wrench.Id,
            CalibratedOn = day,
            IntervalMonths = 12,
            Result = CalibrationResult.Passed,
            AsFound = asFound,
            Certificate = $"C-{day:yyMMdd}",
            RecordedAt = new DateTimeOffset(day, new TimeOnly(15, 0), TimeSpan.Zero),
            RecordedBy = new PersonId("LAB-1"),
        };
        MeasuredUse Used(string id, int month, decimal? value) => new()
        {
            Id = id,
            Tool = wrench.Id,
            At = At(month, 2),
            Job = new JobId("WO-" + id),
            Value = value,
            Unit = new Unit("N·m"),
            Tolerance = 4,
        };

        CalibrationRecord good = Calibrated(new DateOnly(2025, 12, 10)), bad = Calibrated(
            new DateOnly(2026, 6, 10),
            new CalibrationPoint { Nominal = 40, Measured = 40.4m, Lower = 38.4m, Upper = 41.6m, ExpandedUncertainty = 0.4m },
            new CalibrationPoint { Nominal = 100, Measured = 93.0m, Lower = 96, Upper = 104, ExpandedUncertainty = 1 });
        OutOfToleranceTrace trace = OutOfToleranceTrace.Of(
            new CalibrationRegister([good, bad]), wrench, bad, [Used("1", 1, 40), Used("2", 3, 100), Used("3", 5, null), Used("4", 7, 100)], At(7, 15), CalibrationPolicy.Default, SiteCalendar.Utc);
        foreach (TracedUse one in trace.Uses)
        {
            Console.WriteLine($"{one.Use.Job}: {one.Effect}. {one.Reason}");
        }

        // A person decides, signs and says why; the rest stays open.
        trace.TryWith(
            [new UseDisposition { Use = "1", Decision = UseDecision.NoEffect, Reason = "within the tolerance of the work", By = new Signature { By = new PersonId("Q-1"), At = At(7, 16) } }],
            out OutOfToleranceTrace? decided, out _);
        Console.WriteLine($"{decided!.Uses.Count} uses from {trace.LastGoodOn:yyyy-MM-dd} through {trace.FoundOn:yyyy-MM-dd}, {decided.OpenCount} open");
        Console.WriteLine(new TraceReport(decided, SiteCalendar.Utc).ToCsv().Split("\r\n")[1]);

        // Without a finding: the status at each use. One after the due day is to be reviewed, whatever the next calibration said.
        var register = new CalibrationRegister([Calibrated(new DateOnly(2025, 5, 10))]);
        foreach (UseReview review in UseReview.Of(register, wrench, [Used("5", 3, 40), Used("6", 6, 40)], At(7, 15), CalibrationPolicy.Default, SiteCalendar.Utc))
        {
            Console.WriteLine($"{review.Use.Job}: {(review.IsToReview ? "to review" : "fit")}. {review.Status}");
        }
        // </example>
    }
}
