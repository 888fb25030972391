using System;
using System.IO;
// <example>
using ToolLedger.Calibration;
using ToolLedger.Reads;
using ToolLedger.Tools;
// </example>

namespace ToolLedger.Samples.Tests.Documents.Examples;

/// <summary>The example of docs/calibration.md: one due date under two conventions, at two sites, and a correction.</summary>
internal static class DueOrNot
{
    public static void Run(TextWriter Console, RepositoryFiles File)
    {
        _ = File;
        // <example>
        var meter = new Tool { Id = new ToolId("W-7"), Description = "Multimeter", NeedsCalibration = true };
        var entered = new CalibrationRecord
        {
            Tool = meter.Id,
            CalibratedOn = new DateOnly(2025, 10, 14),
            IntervalMonths = 12,
            RecordedAt = new DateTimeOffset(2025, 10, 15, 9, 0, 0, TimeSpan.Zero),
        };
        var corrected = new CalibrationRecord
        {
            Tool = meter.Id,
            CalibratedOn = entered.CalibratedOn,
            DueOn = new DateOnly(2026, 4, 14), // the certificate said six months
            RecordedAt = new DateTimeOffset(2026, 10, 15, 8, 0, 0, TimeSpan.Zero),
        };
        var register = new CalibrationRegister([entered, corrected]);
        SiteCalendar east = SiteCalendar.Fixed("east", TimeSpan.FromHours(10)), west = SiteCalendar.Fixed("west", TimeSpan.FromHours(-7));
        var byDay = new CalibrationPolicy();
        var byMonth = new CalibrationPolicy { Convention = DueConvention.MonthEnd };

        // One instant: already the 15th in the east, still the 14th in the west.
        DateTimeOffset use = new(2026, 10, 14, 20, 0, 0, TimeSpan.Zero);
        Console.WriteLine(register.StatusOf(meter, use, byDay, east));
        Console.WriteLine(register.StatusOf(meter, use, byDay, west));
        Console.WriteLine(register.StatusOf(meter, use, byMonth, east));

        // The correction counts from its entry on. What was answered for the evening before stays as it was.
        Console.WriteLine(register.StatusOf(meter, use.AddDays(1), byDay, west));
        Console.WriteLine(CalibrationRegister.Empty.StatusOf(meter, use, byDay, west));
        // </example>
    }
}
