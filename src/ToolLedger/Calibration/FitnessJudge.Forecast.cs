using System;

namespace ToolLedger.Calibration;

/// <content>What a due list asks beside the status.</content>
internal readonly ref partial struct FitnessJudge
{
    /// <summary>The day on which a limit of uses is reached at the average rate since the calibration; null if no use is limited, the count has a gap, or there was no use.</summary>
    internal DateOnly? Forecast(string? function, CalibrationRecord record)
    {
        PlannedFunction? planned = plan?.Find(function);
        DateOnly? first = null;
        for (UseMeasure measure = UseMeasure.Cycles; measure <= UseMeasure.Hours; measure++)
        {
            if (Least(record.Interval?.LimitOf(measure), planned?.Interval?.LimitOf(measure)) is { } limit && UsedSince(function, record, measure) is { } used and > 0)
            {
                // Whole days only, rounded down, so that the forecast is rather early than late.
                int days = today.DayNumber - record.CalibratedOn.DayNumber + 1;
                decimal left = decimal.Floor((limit - used) * days / used);
                first = Earlier(first, left > MaxForecastDays ? null : today.AddDays((int)Math.Max(0, left)));
            }
        }

        return first;
    }

    /// <summary>The most days a forecast looks ahead: a rate so small says nothing.</summary>
    private const int MaxForecastDays = 3660;

    /// <summary>How many entries have changed the due date since the calibration was entered, and when the last of all was made.</summary>
    internal (int Count, DateTimeOffset Last) ChangesSince(string? function, CalibrationRecord record)
    {
        int count = -1; // the calibration itself changes nothing
        DateTimeOffset last = default;
        foreach (CalibrationRecord one in history.Records)
        {
            if (Counts(one) && one.CalibratedOn == record.CalibratedOn && string.Equals(one.Function, record.Function, StringComparison.Ordinal))
            {
                Note(one.RecordedAt);
            }
        }

        foreach (CalibrationExtension one in history.Extensions)
        {
            if (one.Concerns(function) && one.RecordedAt > record.RecordedAt && one.RecordedAt <= use.At)
            {
                Note(one.RecordedAt);
            }
        }

        foreach (CalibrationPlan one in history.Plans)
        {
            if (one.RecordedAt > record.RecordedAt && one.RecordedAt <= use.At)
            {
                Note(one.RecordedAt);
            }
        }

        foreach (UsePeriod one in history.Uses)
        {
            if (one.Concerns(function) && one.RecordedAt > record.RecordedAt && one.RecordedAt <= use.At)
            {
                Note(one.RecordedAt);
            }
        }

        return (Math.Max(0, count), last);

        void Note(DateTimeOffset at)
        {
            count++;
            last = at > last ? at : last;
        }
    }
}
