using System;
using System.IO;
// <example>
using ToolLedger.Calibration;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Tools;
// </example>

namespace ToolLedger.Samples.Tests.Documents.Examples;

/// <summary>An example of docs/calibration.md: one wrench, asked about several uses.</summary>
internal static class FitForUse
{
    public static void Run(TextWriter Console, RepositoryFiles File)
    {
        _ = File;
        // <example>
        var wrench = new Tool { Id = new ToolId("TW-3"), Description = "Torque wrench", NeedsCalibration = true };
        var laboratory = new PersonId("LAB-1");
        DateTimeOffset At(int month, int day, int hour) => new(2026, month, day, hour, 0, 0, TimeSpan.FromHours(2));
        var register = new CalibrationRegister(
            [
                new CalibrationRecord { Tool = wrench.Id, CalibratedOn = new DateOnly(2025, 6, 1), Result = CalibrationResult.Passed, RecordedAt = At(1, 1, 8), RecordedBy = laboratory },
            ],
            [
                new CalibrationPlan
                {
                    Tool = wrench.Id,
                    RecordedAt = At(1, 1, 8),
                    RecordedBy = laboratory,
                    Functions = [new PlannedFunction { Name = "torque", Unit = new Unit("N·m"), From = 20, To = 200, Interval = new CalibrationInterval { Months = 12 } }],
                },
                new CalibrationLabel
                {
                    Tool = wrench.Id,
                    RecordedAt = At(1, 1, 9),
                    RecordedBy = laboratory,
                    Label = LabelKind.Limited,
                    Limitations = [new CalibrationLimitation { To = 150 }],
                },
                new ConditionReport { Tool = wrench.Id, RecordedAt = At(3, 2, 12), RecordedBy = new PersonId("P-17"), Condition = ConditionKind.Dropped, At = At(3, 2, 10) },
                new CalibrationCheck { Tool = wrench.Id, RecordedAt = At(3, 3, 9), RecordedBy = laboratory, Check = CheckKind.InServiceCheck, At = At(3, 3, 8), IsPassed = true },
            ]);
        SiteCalendar hangar = SiteCalendar.Fixed("hangar", TimeSpan.FromHours(2));
        void Ask(IntendedUse use)
        {
            CalibrationStatus status = register.StatusOf(wrench, use, CalibrationPolicy.Default, hangar);
            Console.WriteLine($"{(status.IsFit ? "fit" : "not fit")}. {status}{(status.LapsesDuring ? " " + status.Warnings[0] : "")}");
        }

        Ask(new IntendedUse(At(2, 1, 8)) { Value = 120 });
        Ask(new IntendedUse(At(2, 1, 8)) { Value = 180 });                              // in date, but not covered
        Ask(new IntendedUse(At(3, 2, 11)) { Value = 120 });                             // what was known at eleven
        Ask(new IntendedUse(At(3, 2, 11)) { Value = 120, KnownAt = At(3, 2, 12) });     // what a reviewer knows
        Ask(new IntendedUse(At(3, 3, 10)) { Value = 120 });                             // cleared by a check
        Ask(new IntendedUse(At(6, 1, 22)) { Value = 120, Until = At(6, 2, 6) });        // lapses at midnight
        // </example>
    }
}
