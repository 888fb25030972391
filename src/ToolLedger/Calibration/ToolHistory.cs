using System;
using System.Collections.Generic;
using System.Linq;

namespace ToolLedger.Calibration;

/// <summary>Everything that is recorded of one tool, in the order in which it is looked through.</summary>
internal sealed class ToolHistory
{
    internal static readonly ToolHistory Empty = new([], []);

    internal ToolHistory(CalibrationRecord[] records, IReadOnlyList<CalibrationEvent> events)
    {
        Records = records;
        Plans = Of<CalibrationPlan>(events, static one => one.RecordedAt.UtcTicks);
        Labels = Of<CalibrationLabel>(events, static one => one.RecordedAt.UtcTicks);
        Checks = Of<CalibrationCheck>(events, static one => one.At.UtcTicks);
        Conditions = Of<ConditionReport>(events, static one => one.At.UtcTicks);
        Extensions = Of<CalibrationExtension>(events, static one => one.RecordedAt.UtcTicks);
        Uses = Of<UsePeriod>(events, static one => one.From.DayNumber);
        Functions = records.Any(static one => one.Function is not null)
            ? [.. records.Select(static one => one.Function).OfType<string>().Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)]
            : [];
    }

    /// <summary>By day of calibration, then time of entry.</summary>
    internal CalibrationRecord[] Records { get; }

    /// <summary>By time of entry, as labels and extensions.</summary>
    internal CalibrationPlan[] Plans { get; }

    internal CalibrationLabel[] Labels { get; }

    /// <summary>By the time it happened, as conditions.</summary>
    internal CalibrationCheck[] Checks { get; }

    internal ConditionReport[] Conditions { get; }

    internal CalibrationExtension[] Extensions { get; }

    /// <summary>By first day.</summary>
    internal UsePeriod[] Uses { get; }

    /// <summary>The functions that records name.</summary>
    internal string[] Functions { get; }

    internal CalibrationPlan? PlanAt(DateTimeOffset at)
    {
        for (int index = Plans.Length - 1; index >= 0; index--)
        {
            if (Plans[index].RecordedAt <= at)
            {
                return Plans[index];
            }
        }

        return null;
    }

    private static T[] Of<T>(IReadOnlyList<CalibrationEvent> events, Func<T, long> order)
        where T : CalibrationEvent => events.Count == 0 ? [] : [.. events.OfType<T>().OrderBy(order).ThenBy(static one => one.RecordedAt.UtcTicks)];
}
