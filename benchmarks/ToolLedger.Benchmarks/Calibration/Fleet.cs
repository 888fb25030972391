using System;
using System.Collections.Generic;
using ToolLedger.Calibration;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Benchmarks.Calibration;

/// <summary>The data of the calibration benchmarks: due days uniform over 790 days, and moves of single instruments (seed 50).</summary>
internal static class Fleet
{
    internal const int Count = 1_000_000;
    internal const int MoveCount = 100_000;
    internal const int DayCount = 790;

    internal static readonly DateOnly First = new(2026, 1, 1);

    internal static DateOnly[] DueDays()
    {
        var chance = new SplitMix64(50);
        var days = new DateOnly[Count];
        for (int index = 0; index < Count; index++)
        {
            days[index] = First.AddDays(chance.Below(DayCount));
        }

        return days;
    }

    internal static (int Instrument, DateOnly Day)[] Moves()
    {
        var chance = new SplitMix64(51);
        var moves = new (int, DateOnly)[MoveCount];
        for (int index = 0; index < MoveCount; index++)
        {
            moves[index] = (chance.Below(Count), First.AddDays(chance.Below(DayCount)));
        }

        return moves;
    }

    /// <summary>A register of so many torque wrenches, each with a plan, a label, three calibrations and a check.</summary>
    internal static (CalibrationRegister Register, Tool[] Tools) Register(int count)
    {
        var person = new PersonId("Q");
        var tools = new Tool[count];
        var records = new List<CalibrationRecord>();
        var events = new List<CalibrationEvent>();
        for (int index = 0; index < count; index++)
        {
            tools[index] = new Tool { Id = new ToolId(FormattableString.Invariant($"TW-{index:D6}")), Description = "Torque wrench", NeedsCalibration = true };
            ToolId id = tools[index].Id;
            DateTimeOffset start = new DateTimeOffset(2023, 1, 2, 8, 0, 0, TimeSpan.Zero).AddDays(index % 300);
            events.Add(new CalibrationPlan { Tool = id, RecordedAt = start, RecordedBy = person, Functions = [new PlannedFunction { Name = "torque", From = 20, To = 200, Interval = new CalibrationInterval { Months = 12 } }] });
            events.Add(new CalibrationLabel { Tool = id, RecordedAt = start.AddDays(1), RecordedBy = person, Label = LabelKind.Calibrated });
            events.Add(new CalibrationCheck { Tool = id, RecordedAt = start.AddDays(90), RecordedBy = person, At = start.AddDays(90), Check = CheckKind.InServiceCheck, IsPassed = true });
            for (int year = 0; year < 3; year++)
            {
                DateTimeOffset done = start.AddDays(360 * year);
                records.Add(new CalibrationRecord { Tool = id, CalibratedOn = DateOnly.FromDateTime(done.DateTime), RecordedAt = done, RecordedBy = person, Result = CalibrationResult.Passed });
            }
        }

        return (new CalibrationRegister(records, events), tools);
    }
}
