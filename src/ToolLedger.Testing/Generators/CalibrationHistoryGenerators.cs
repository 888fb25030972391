using System;
using System.Collections.Generic;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using ToolLedger.Calibration;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Generators;

/// <summary>FsCheck generators of whole calibration histories: signed records with results and functions, plans, labels, checks, reports, extensions and counts of uses of six tools.</summary>
/// <remarks>Everything generated keeps the rules of <see cref="CalibrationRules"/> and <see cref="CalibrationEventRules"/>. Thread-safe.</remarks>
public static class CalibrationHistoryGenerators
{
    private static readonly DateTimeOffset Start = new(2020, 1, 1, 0, 0, 0, TimeSpan.Zero);
    private static readonly string?[] Functions = [null, null, "a", "b"];

    /// <summary>Events of tools T1 to T6 in the years 2020 to 2026.</summary>
    /// <returns>The generator.</returns>
    public static Arbitrary<CalibrationEvent> CalibrationEvent() => Arb.From(Events());

    /// <summary>Registers with up to twelve records and up to sixteen events.</summary>
    /// <returns>The generator.</returns>
    public static Arbitrary<CalibrationRegister> CalibrationRegister() => Arb.From(
        from records in GeneratedValues.ListOf(Records(), 12)
        from events in GeneratedValues.ListOf(Events(), 16)
        select Made(records, events));

    /// <summary>Uses at any instant of the years 2020 to 2027, with and without function, value, job, planned end and later knowledge.</summary>
    /// <returns>The generator.</returns>
    public static Arbitrary<IntendedUse> IntendedUse() => Arb.From(
        from at in Times()
        from later in Gen.Frequency((2, Gen.Constant(0)), (1, Gen.Choose(1, 400)))
        from ends in Gen.Frequency((2, Gen.Constant(0)), (1, Gen.Choose(1, 500)))
        from function in Gen.Elements(Functions)
        from value in Gen.Frequency((1, Gen.Constant((decimal?)null)), (1, Gen.Choose(0, 300).Select(static n => (decimal?)n)))
        from job in Gen.Elements("J1", "J2", "")
        select new IntendedUse(at)
        {
            KnownAt = later == 0 ? default : at.AddDays(later),
            Until = ends == 0 ? default : at.AddHours(ends),
            Function = function,
            Value = value,
            Job = job.Length == 0 ? default : new JobId(job),
        });

    internal static CalibrationRegister Made(IEnumerable<CalibrationRecord> records, IEnumerable<CalibrationEvent> events) => new(
        records.DistinctBy(static one => (one.Tool, one.Function, one.CalibratedOn, one.RecordedAt.UtcTicks)),
        events.DistinctBy(static one => (one.Tool, one.Kind, one.Function, one.RecordedAt.UtcTicks)));

    private static Gen<DateTimeOffset> Times() => Gen.Choose(0, 7 * 365 * 24 * 60).Select(static minutes => Start.AddMinutes(minutes));

    private static Gen<CalibrationRecord> Records() =>
        from number in Gen.Choose(1, 6)
        from at in Times()
        from before in Gen.Choose(0, 20)
        from due in Gen.Choose(0, 5)
        from months in Gen.Choose(1, 36)
        from days in Gen.Choose(0, 800)
        from result in Gen.Frequency((5, Gen.Constant(CalibrationResult.Passed)), (1, Gen.Constant(CalibrationResult.Failed)), (1, Gen.Constant(CalibrationResult.Limited)))
        from function in Gen.Elements(Functions)
        from found in Gen.Elements((bool?)null, true, false)
        from point in Points()
        let day = DateOnly.FromDateTime(at.UtcDateTime).AddDays(-before)
        let isFailed = result == CalibrationResult.Failed
        select new CalibrationRecord
        {
            Tool = new ToolId(FormattableString.Invariant($"T{number}")),
            CalibratedOn = day,
            RecordedAt = at,
            RecordedBy = new PersonId("Q"),
            Function = function,
            Result = result,
            DueOn = !isFailed && due == 0 ? day.AddDays(days) : null,
            DueMonth = !isFailed && due == 1 ? day.AddDays(days) : null,
            IntervalMonths = !isFailed && due is 2 or 3 ? months : null,
            Interval = !isFailed && due >= 3 ? new CalibrationInterval { Cycles = 100 * months } : null,
            FoundInTolerance = found == true ? null : found,
            AsFound = [point],
            AsLeft = isFailed ? [] : [point with { Measured = point.Nominal }],
            Limitations = result == CalibrationResult.Limited ? [new CalibrationLimitation { From = months, To = 200 }] : [],
            Certificate = FormattableString.Invariant($"C-{months}"),
            CertifiedOn = due == 4 ? day : null,
            Laboratory = due == 5 ? "Laboratory" : null,
            Standards = due == 4 ? ["Standard 1", "Standard 2"] : [],
        };

    private static Gen<CalibrationPoint> Points() =>
        from nominal in Gen.Choose(1, 300)
        from error in Gen.Choose(-60, 60)
        from uncertainty in Gen.Choose(0, 30)
        select new CalibrationPoint
        {
            Nominal = nominal,
            Measured = nominal + (error / 10m),
            Lower = nominal - 4,
            Upper = nominal + 4,
            ExpandedUncertainty = uncertainty == 0 ? null : uncertainty / 10m,
        };

    private static Gen<CalibrationEvent> Events() =>
        from kind in Gen.Choose(0, 5)
        from number in Gen.Choose(1, 6)
        from at in Times()
        from before in Gen.Choose(0, 60 * 24 * 10)
        from function in Gen.Elements(Functions)
        from n in Gen.Choose(0, 1000)
        from point in Points()
        select Event(kind, new ToolId(FormattableString.Invariant($"T{number}")), at, at.AddMinutes(-before), function, n, point);

    private static CalibrationEvent Event(int kind, ToolId tool, DateTimeOffset at, DateTimeOffset happened, string? function, int n, CalibrationPoint point)
    {
        var person = new PersonId("Q");
        DateOnly day = DateOnly.FromDateTime(happened.UtcDateTime);
        return kind switch
        {
            0 => new CalibrationPlan
            {
                Tool = tool,
                RecordedAt = at,
                RecordedBy = person,
                Functions = n % 3 == 0
                    ? [new PlannedFunction { Name = "a", Unit = new Unit("N·m"), From = 10, To = 250, Interval = CalibrationInterval.HandTorqueTool }]
                    : [new PlannedFunction { Name = "a", Interval = new CalibrationInterval { Months = 1 + (n % 24) } }, new PlannedFunction { Name = "b", From = 5, To = 150, UserCheckDays = n % 2 == 0 ? 1 + (n % 30) : null }],
            },
            1 => new CalibrationLabel
            {
                Tool = tool,
                Function = function,
                RecordedAt = at,
                RecordedBy = person,
                Note = "as found on the label",
                Label = (LabelKind)(n % 7),
                Limitations = n % 7 is (int)LabelKind.Limited or (int)LabelKind.UserCalibration ? [new CalibrationLimitation { From = 20, To = 20 + n, IsExcluded = n % 5 == 0 }] : [],
                UserCheckDays = 1 + (n % 40),
            },
            2 => new CalibrationCheck
            {
                Tool = tool,
                Function = function,
                RecordedAt = at,
                RecordedBy = person,
                At = happened,
                Check = n % 2 == 0 ? CheckKind.UserCheck : CheckKind.InServiceCheck,
                IsPassed = n % 4 != 0 && point.IsWithinLimits == true,
                Points = [point],
            },
            3 => new ConditionReport { Tool = tool, Function = function, RecordedAt = at, RecordedBy = person, At = happened, Condition = (ConditionKind)(n % 7) },
            4 => new CalibrationExtension
            {
                Tool = tool,
                Function = function,
                RecordedAt = at,
                RecordedBy = person,
                Through = DateOnly.FromDateTime(at.UtcDateTime).AddDays(n % 90),
                Job = n % 2 == 0 ? new JobId("J1") : default,
                Reason = "test in progress",
                AllowedBy = new Signature { By = new PersonId("S"), At = at, Role = new Role("authority") },
            },
            _ => new UsePeriod
            {
                Tool = tool,
                Function = function,
                RecordedAt = at,
                RecordedBy = person,
                Measure = UseMeasure.Cycles,
                From = day.AddDays(-n),
                Through = day,
                Amount = n,
            },
        };
    }
}
