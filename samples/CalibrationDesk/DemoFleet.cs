using System;
using System.Collections.Generic;
using ToolLedger.Calibration;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace CalibrationDesk;

/// <summary>An invented fleet over a decade: torque wrenches, gauges, meters with two functions, tools checked by their users, and rulers that need no calibration. Seeded; nothing in it is real.</summary>
internal sealed class DemoFleet
{
    internal static readonly DateTimeOffset Start = new(2016, 6, 20, 8, 0, 0, TimeSpan.Zero);
    internal static readonly DateTimeOffset End = new(2026, 6, 15, 8, 0, 0, TimeSpan.Zero);

    private static readonly PersonId Laboratory = new("LAB-1");
    private static readonly PersonId User = new("P-17");
    private static readonly Unit NewtonMetre = new("N·m");

    private readonly List<Tool> tools = [];
    private readonly List<CalibrationRecord> records = [];
    private readonly List<CalibrationEvent> events = [];
    private readonly List<MeasuredUse> uses = [];
    private readonly DemoChance chance;

    private DemoFleet(ulong seed) => chance = new DemoChance(seed);

    /// <summary>Invents a fleet.</summary>
    internal static FleetData Make(int count, ulong seed = 20_260_615)
    {
        var fleet = new DemoFleet(seed);
        for (int number = 1; number <= count; number++)
        {
            fleet.Add(number);
        }

        return new FleetData("an invented fleet", fleet.tools, new CalibrationRegister(fleet.records, fleet.events), fleet.uses, CalibrationPolicy.Default, SiteCalendar.Fixed("hangar", TimeSpan.FromHours(2)), End);
    }

    private void Add(int number)
    {
        switch (number % 10)
        {
            case 0: AddUserChecked(New("HG", number, "Height gauge, checked by its user")); break;
            case 1 or 2 or 3 or 4 or 5: AddTorqueWrench(New("TW", number, "Torque wrench 20 to 200 N·m")); break;
            case 6 or 7: AddSimple(New("PG", number, "Pressure gauge"), 6); break;
            case 8: AddMeter(New("MM", number, "Multimeter")); break;
            default: AddRuler(New("RL", number, "Steel rule", needsCalibration: false)); break;
        }
    }

    private Tool New(string stem, int number, string description, bool needsCalibration = true)
    {
        var tool = new Tool { Id = new ToolId(FormattableString.Invariant($"{stem}-{number:D3}")), Description = description, NeedsCalibration = needsCalibration };
        tools.Add(tool);
        return tool;
    }

    private void AddTorqueWrench(Tool tool)
    {
        events.Add(new CalibrationPlan
        {
            Tool = tool.Id,
            RecordedAt = Start,
            RecordedBy = Laboratory,
            Functions = [new PlannedFunction { Name = "torque", Unit = NewtonMetre, From = 20, To = 200, Interval = CalibrationInterval.HandTorqueTool }],
        });
        int perQuarter = 100 + (150 * chance.Below(9));
        for (DateTimeOffset from = Start; from < End; from = from.AddDays(91))
        {
            DateTimeOffset through = from.AddDays(90) < End ? from.AddDays(90) : End.AddDays(-1);
            events.Add(new UsePeriod
            {
                Tool = tool.Id,
                RecordedAt = through.AddHours(10),
                RecordedBy = User,
                Measure = UseMeasure.Cycles,
                From = Day(from),
                Through = Day(through),
                Amount = perQuarter + chance.Below(50),
            });
        }

        decimal drift = 0;
        for (DateTimeOffset at = Start; at < End; at = at.AddDays(330 + chance.Below(45)))
        {
            drift += (chance.Below(61) - 30) / 10m;
            Calibrate(tool, at, null, null, drift, NewtonMetre);
            if (decimal.Abs(drift) > 3)
            {
                drift = 0; // adjusted
            }

            AddUses(tool, at);
            AddMishap(tool, at);
        }
    }

    private void AddSimple(Tool tool, int months)
    {
        for (DateTimeOffset at = Start; at < End; at = at.AddMonths(months).AddDays(-chance.Below(15)))
        {
            Calibrate(tool, at, months, null, (chance.Below(61) - 30) / 10m, default);
            if (chance.OneIn(40))
            {
                Extend(tool, at.AddMonths(months));
            }
        }
    }

    private void AddMeter(Tool tool)
    {
        for (DateTimeOffset at = Start; at < End; at = at.AddDays(350))
        {
            Calibrate(tool, at, 12, "voltage", (chance.Below(21) - 10) / 10m, default);
        }

        for (DateTimeOffset at = Start.AddHours(1); at < End; at = at.AddDays(118 + chance.Below(6)))
        {
            Calibrate(tool, at, 4, "resistance", (chance.Below(21) - 10) / 10m, default);
        }
    }

    private void AddUserChecked(Tool tool)
    {
        events.Add(new CalibrationLabel { Tool = tool.Id, RecordedAt = Start, RecordedBy = Laboratory, Label = LabelKind.UserCalibration, UserCheckDays = 30 });
        for (DateTimeOffset at = Start.AddHours(1); at < End; at = at.AddDays(18 + chance.Below(14)))
        {
            events.Add(new CalibrationCheck { Tool = tool.Id, RecordedAt = at, RecordedBy = User, Check = CheckKind.UserCheck, At = at, IsPassed = true });
        }
    }

    private void AddRuler(Tool tool) =>
        events.Add(new CalibrationLabel { Tool = tool.Id, RecordedAt = Start, RecordedBy = Laboratory, Label = LabelKind.NotRequired });

    private void Calibrate(Tool tool, DateTimeOffset at, int? months, string? function, decimal drift, Unit unit)
    {
        bool isFailed = chance.OneIn(150);
        CalibrationPoint[] found = unit.IsEmpty
            ? []
            : [Point(40, 40 + (0.4m * drift)), Point(120, 120 + (1.2m * drift)), Point(200, 200 + (2 * drift))];
        records.Add(new CalibrationRecord
        {
            Tool = tool.Id,
            CalibratedOn = Day(at),
            CompletedAt = at,
            RecordedAt = at.AddHours(2),
            RecordedBy = Laboratory,
            Function = function,
            IntervalMonths = isFailed ? null : months,
            Result = isFailed ? CalibrationResult.Failed : CalibrationResult.Passed,
            AsFound = found,
            FoundInTolerance = found.Length == 0 ? decimal.Abs(drift) <= 2.8m : null,
            Certificate = FormattableString.Invariant($"C-{records.Count + 10_001}"),
            CertifiedOn = Day(at),
            Laboratory = "Calibration bay",
            Standards = ["Reference standard 7"],
        });
        if (isFailed)
        {
            // Repaired and calibrated again a fortnight later.
            Repair(tool, at.AddDays(14), months, function);
        }
    }

    private void Repair(Tool tool, DateTimeOffset at, int? months, string? function)
    {
        if (at >= End)
        {
            return;
        }

        events.Add(new ConditionReport { Tool = tool.Id, Function = function, RecordedAt = at.AddHours(-3), RecordedBy = Laboratory, Condition = ConditionKind.Repaired, At = at.AddHours(-3), Note = "new spring" });
        records.Add(new CalibrationRecord
        {
            Tool = tool.Id,
            CalibratedOn = Day(at),
            CompletedAt = at,
            RecordedAt = at.AddHours(2),
            RecordedBy = Laboratory,
            Function = function,
            IntervalMonths = months,
            Result = CalibrationResult.Passed,
            Certificate = FormattableString.Invariant($"C-{records.Count + 10_001}"),
        });
    }

    private void AddUses(Tool tool, DateTimeOffset since)
    {
        for (int n = 0; n < 3; n++)
        {
            DateTimeOffset at = since.AddDays(5 + chance.Below(300)).AddHours(chance.Below(8));
            if (at >= End)
            {
                continue;
            }

            decimal value = 40 + (10 * chance.Below(17));
            uses.Add(new MeasuredUse
            {
                Id = FormattableString.Invariant($"U-{uses.Count + 1}"),
                Tool = tool.Id,
                At = at,
                Job = new JobId(FormattableString.Invariant($"WO-{4000 + chance.Below(5000)}")),
                Equipment = new EquipmentId(FormattableString.Invariant($"Rig {1 + chance.Below(9)}")),
                By = User,
                Value = chance.OneIn(12) ? null : value,
                Unit = NewtonMetre,
                Tolerance = value * 4 / 100,
            });
        }
    }

    private void AddMishap(Tool tool, DateTimeOffset since)
    {
        DateTimeOffset at = since.AddDays(30 + chance.Below(200));
        if (at.AddHours(2) >= End || !chance.OneIn(12))
        {
            return;
        }

        events.Add(new ConditionReport { Tool = tool.Id, RecordedAt = at.AddMinutes(20), RecordedBy = User, Condition = ConditionKind.Dropped, At = at, Note = "from the stand" });
        if (!chance.OneIn(4))
        {
            events.Add(new CalibrationCheck { Tool = tool.Id, RecordedAt = at.AddHours(2), RecordedBy = Laboratory, Check = CheckKind.InServiceCheck, At = at.AddHours(1), IsPassed = true });
        }
    }

    private void Extend(Tool tool, DateTimeOffset due)
    {
        if (due >= End)
        {
            return;
        }

        events.Add(new CalibrationExtension
        {
            Tool = tool.Id,
            RecordedAt = due,
            RecordedBy = Laboratory,
            Through = Day(due.AddDays(14)),
            Job = new JobId("WO-1"),
            Reason = "test in progress",
            AllowedBy = new Signature { By = new PersonId("S-2"), At = due, Role = new Role("quality") },
        });
    }

    /// <summary>Four percent of the nominal value either way: a limit of this fleet, not of a standard.</summary>
    private static CalibrationPoint Point(decimal nominal, decimal measured) => new()
    {
        Nominal = nominal,
        Measured = measured,
        Lower = nominal * 0.96m,
        Upper = nominal * 1.04m,
        ExpandedUncertainty = nominal / 100,
    };

    private static DateOnly Day(DateTimeOffset at) => DateOnly.FromDateTime(at.DateTime);
}
