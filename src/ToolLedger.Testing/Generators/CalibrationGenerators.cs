using System;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using ToolLedger.Calibration;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Generators;

/// <summary>FsCheck generators of calibration records, registers and policies; hand the type to <c>Arbitrary</c> of a property.</summary>
/// <remarks>Everything generated keeps the rules of <see cref="CalibrationRules"/>. Thread-safe.</remarks>
public static class CalibrationGenerators
{
    /// <summary>Records of few tools with a due day, a due month or an interval, entered up to 400 days after the calibration.</summary>
    /// <returns>The generator.</returns>
    public static Arbitrary<CalibrationRecord> CalibrationRecord() => Arb.From(Records());

    /// <summary>Registers with up to eight records.</summary>
    /// <returns>The generator.</returns>
    public static Arbitrary<CalibrationRegister> CalibrationRegister() => Arb.From(
        GeneratedValues.ListOf(Records(), 8).Select(records => new CalibrationRegister(
            records.DistinctBy(record => (record.Tool, record.CalibratedOn, record.RecordedAt.UtcTicks)))));

    /// <summary>Calibration policies over the whole range of every setting.</summary>
    /// <returns>The generator.</returns>
    public static Arbitrary<CalibrationPolicy> CalibrationPolicy() => Arb.From(
        from days in Gen.Choose(0, 366)
        from convention in Gen.Elements(DueConvention.DayIncluded, DueConvention.MonthEnd, DueConvention.FixedAnchor)
        from start in Gen.Elements(PeriodStart.Calibration, PeriodStart.FirstUse)
        from numbers in Gen.Choose(0, 366).ArrayOf(4)
        from percent in Gen.Choose(1, 50)
        from flags in Gen.Elements(true, false).ArrayOf(4)
        select new CalibrationPolicy
        {
            DueSoonDays = days,
            Convention = convention,
            Start = start,
            DueSoonUsePercent = 2 * percent,
            StorageMonths = numbers[0] % 121,
            GraceDays = numbers[1],
            ExtensionDays = numbers[2],
            WindowPercent = percent,
            WindowDays = numbers[3] % 181,
            UseLogLagDays = numbers[3],
            CheckClearsDrop = flags[0],
            CheckClearsDoubt = flags[1],
            CheckClearsRepair = flags[2],
            CheckNarrowsTrace = flags[3],
        });

    private static Gen<CalibrationRecord> Records() =>
        from tool in GeneratedValues.FewIds("T")
        from recordedAt in GeneratedValues.Times()
        from daysBefore in Gen.Frequency((1, Gen.Constant(0)), (3, Gen.Choose(0, 400)))
        from dueKind in Gen.Choose(0, 2)
        from days in Gen.Choose(0, 1000)
        from months in Gen.Choose(1, Calibration.CalibrationRecord.MaxIntervalMonths)
        from certificate in Gen.Frequency((1, Gen.Constant((string?)null)), (2, GeneratedValues.Text(20).Select(text => (string?)text)))
        let day = DateOnly.FromDateTime(recordedAt.UtcDateTime).AddDays(-daysBefore)
        select new CalibrationRecord
        {
            Tool = new ToolId(tool),
            CalibratedOn = day,
            DueOn = dueKind == 0 ? day.AddDays(days) : null,
            DueMonth = dueKind == 1 ? day.AddDays(days) : null,
            IntervalMonths = dueKind == 2 ? months : null,
            RecordedAt = recordedAt,
            RecordedBy = new PersonId("S"),
            Certificate = certificate,
        };
}
