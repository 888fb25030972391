using System;
using ToolLedger.Records;

namespace ToolLedger.Calibration;

/// <content>Due dates, counts of uses, and what is covered.</content>
internal readonly ref partial struct FitnessJudge
{
    private bool Counts(CalibrationRecord record) => record.RecordedAt <= use.At && record.CalibratedOn <= today;

    internal CalibrationRecord? LatestRecord(string? function)
    {
        CalibrationRecord[] records = history.Records;
        for (int index = records.Length - 1; index >= 0; index--)
        {
            if (Counts(records[index]) && records[index].Concerns(function))
            {
                return records[index];
            }
        }

        return null;
    }

    private CalibrationRecord? Correction(CalibrationRecord record)
    {
        CalibrationRecord[] records = history.Records;
        for (int index = records.Length - 1; index >= 0; index--)
        {
            CalibrationRecord other = records[index];
            if (other.RecordedAt > use.At && other.RecordedAt <= use.Known && other.CalibratedOn == record.CalibratedOn
                && string.Equals(other.Function, record.Function, StringComparison.Ordinal))
            {
                return other;
            }
        }

        return null;
    }

    private bool IsCalibratedAfter(string? function, DateTimeOffset time)
    {
        CalibrationRecord[] records = history.Records;
        for (int index = records.Length - 1; index >= 0; index--)
        {
            CalibrationRecord record = records[index];
            if (Counts(record) && record.IsPassed && record.Concerns(function)
                && (record.CompletedAt is { } done ? done > time : record.CalibratedOn > calendar.DateAt(time)))
            {
                return true;
            }
        }

        return false;
    }

    private bool Lapses(DateOnly? until) => use.Until > use.At && until is { } last && calendar.DateAt(use.Until) > last;

    private CalibrationVerdict Due(string? function, PlannedFunction? planned, CalibrationRecord record, CalibrationVerdict? byUser)
    {
        if (record.DueMonth is not null && policy.Convention != DueConvention.MonthEnd)
        {
            return Of(CalibrationState.Unknown, CalibrationReasons.MonthOnly, function) with { Record = record };
        }

        DateOnly? plain = LastDay(function, planned, record);
        CalibrationExtension? extension = null;
        DateOnly? until = plain is { } last ? Extended(function, record, last, out extension) : null;
        var answer = new CalibrationVerdict { Record = record, SiteDate = today, Function = function, Until = until, PlainUntil = plain, Event = extension };
        if (until is { } day && day < today)
        {
            return answer with { State = CalibrationState.Overdue, Kind = CalibrationReasons.Overdue };
        }

        bool isSoon = until is { } near && near.DayNumber - today.DayNumber <= policy.DueSoonDays;
        bool isByUse = ByUse(function, planned, record, ref answer, out bool isUseSoon);
        if (isByUse && !answer.IsFit)
        {
            return answer;
        }

        if (until is null && !isByUse)
        {
            return byUser ?? (answer with { State = CalibrationState.Unknown, Kind = CalibrationReasons.NoDueDate });
        }

        ReasonKind kind = until is null || (isUseSoon && !isSoon)
            ? isUseSoon ? CalibrationReasons.DueSoonByUse : CalibrationReasons.CurrentByUse
            : extension is not null ? CalibrationReasons.Extended : isSoon ? CalibrationReasons.DueSoon : CalibrationReasons.Current;
        return answer with
        {
            State = isSoon || isUseSoon ? CalibrationState.DueSoon : CalibrationState.Current,
            Kind = kind,
            IsFit = true,
            Until = Earlier(until, byUser?.Until),
            LapsesDuring = Lapses(Earlier(until, byUser?.Until)),
        };
    }

    /// <summary>The last day in date without an extension; null if no date limits the calibration.</summary>
    internal DateOnly? LastDay(string? function, PlannedFunction? planned, CalibrationRecord record)
    {
        DateOnly? due = record.DueOn ?? record.DueMonth;
        due = Earlier(due, Counted(function, record, record.IntervalMonths));
        due = Earlier(due, Counted(function, record, planned?.Interval?.Months));
        if (due is not { } day)
        {
            return null;
        }

        if (policy.Convention == DueConvention.MonthEnd)
        {
            day = new DateOnly(day.Year, day.Month, DateTime.DaysInMonth(day.Year, day.Month));
        }

        return day.AddDays(policy.GraceDays);
    }

    private static DateOnly? Earlier(DateOnly? one, DateOnly? other) => one is null || other < one ? other ?? one : one;

    private DateOnly? Counted(string? function, CalibrationRecord record, int? months)
    {
        if (months is not { } interval)
        {
            return null;
        }

        if (policy.Convention == DueConvention.FixedAnchor)
        {
            return InRow(function, record, interval);
        }

        return (policy.Start == PeriodStart.FirstUse ? FirstUse(function, record) : record.CalibratedOn).AddMonths(interval);
    }

    /// <summary>The due date in the row of dates from a fixed anchor: the n-th is the anchor and n intervals, never the one before and one interval, because adding months is not associative.</summary>
    private DateOnly InRow(string? function, CalibrationRecord last, int months)
    {
        DateOnly? anchor = null;
        DateOnly previous = default;
        int count = 1;
        foreach (CalibrationRecord record in history.Records)
        {
            if (!Counts(record) || !record.Concerns(function) || record.CalibratedOn > last.CalibratedOn)
            {
                continue;
            }

            if (anchor is { } start && record.CalibratedOn == previous)
            {
                continue; // a correction of the same calibration
            }

            previous = record.CalibratedOn;
            if (anchor is { } from && DueWindow.Around(from.AddMonths(count * months), months, policy).Contains(record.CalibratedOn))
            {
                count++;
            }
            else
            {
                anchor = record.CalibratedOn;
                count = 1;
            }
        }

        return (anchor ?? last.CalibratedOn).AddMonths(count * months);
    }

    /// <summary>The first day after a calibration on which the tool was used, or may have been used because the log of uses does not cover it.</summary>
    private DateOnly FirstUse(string? function, CalibrationRecord record)
    {
        DateOnly needed = record.CalibratedOn;
        DateOnly latest = record.CalibratedOn.AddMonths(policy.StorageMonths);
        foreach (UsePeriod period in history.Uses)
        {
            if (period.RecordedAt > use.Known || period.Through < needed || !period.Concerns(function))
            {
                continue;
            }

            if (period.From > needed)
            {
                break;
            }

            if (period.Amount > 0)
            {
                return Min(Max(period.From, record.CalibratedOn), latest);
            }

            needed = period.Through.AddDays(1);
        }

        return Min(needed, latest);
    }

    private DateOnly Extended(string? function, CalibrationRecord record, DateOnly last, out CalibrationExtension? extension)
    {
        extension = null;
        DateOnly until = last;
        foreach (CalibrationExtension one in history.Extensions)
        {
            if (one.RecordedAt <= use.At && calendar.DateAt(one.RecordedAt) >= record.CalibratedOn && Covers(one.Function, function) && one.IsFor(use.Job) && Min(one.Through, last.AddDays(policy.ExtensionDays)) is var through && through > until)
            {
                until = through;
                extension = one;
            }
        }

        return until;
    }

    /// <summary>Whether cycles or hours limit the calibration; an answer that is not fit is put into the verdict.</summary>
    private bool ByUse(string? function, PlannedFunction? planned, CalibrationRecord record, ref CalibrationVerdict answer, out bool isSoon)
    {
        bool isLimited = false;
        isSoon = false;
        answer = answer with { IsFit = true };
        for (UseMeasure measure = UseMeasure.Cycles; measure <= UseMeasure.Hours && answer.IsFit; measure++)
        {
            if (Least(record.Interval?.LimitOf(measure), planned?.Interval?.LimitOf(measure)) is not { } limit)
            {
                continue;
            }

            isLimited = true;
            decimal? used = UsedSince(function, record, measure);
            bool isReached = used >= limit;
            bool isNear = used * 100 >= limit * policy.DueSoonUsePercent;
            if (used is null || isReached || isNear || answer.Limit == 0)
            {
                answer = answer with { Used = used ?? 0, Limit = limit, Measure = measure };
            }

            isSoon |= isNear;
            if (used is null || isReached)
            {
                answer = answer with
                {
                    State = isReached ? CalibrationState.Overdue : CalibrationState.Unknown,
                    Kind = isReached ? CalibrationReasons.OverdueByUse : CalibrationReasons.UseUnknown,
                    IsFit = false,
                };
            }
        }

        return isLimited;
    }

    private static decimal? Least(decimal? one, decimal? other) => one is null || other < one ? other ?? one : one;

    /// <summary>Uses since the day of calibration, that day included; null where a day up to now, less the lag of the log, is not covered: unknown is not zero.</summary>
    internal decimal? UsedSince(string? function, CalibrationRecord record, UseMeasure measure)
    {
        DateOnly needed = record.CalibratedOn;
        decimal used = 0;
        foreach (UsePeriod period in history.Uses)
        {
            if (period.Measure != measure || period.RecordedAt > use.Known || period.Through < record.CalibratedOn || !period.Concerns(function))
            {
                continue;
            }

            if (period.From > today)
            {
                break;
            }

            if (period.From > needed)
            {
                return null;
            }

            used += period.Amount;
            needed = Max(needed, period.Through.AddDays(1));
        }

        return needed > today.AddDays(-policy.UseLogLagDays) ? used : null;
    }

    /// <summary>What is covered: the range of the plan, and the limitations of the record and of a label.</summary>
    private CalibrationVerdict InRange(CalibrationVerdict answer, PlannedFunction? planned, CalibrationLabel? label, CalibrationRecord? record)
    {
        if (use.Value is { } value && planned is not null && (value < planned.From || value > planned.To))
        {
            return Outside(answer, planned.From, planned.To);
        }

        for (int index = 0; index < (record?.Limitations.Count ?? 0); index++)
        {
            answer = Within(answer, record!.Limitations[index]);
        }

        for (int index = 0; index < (label?.Limitations.Count ?? 0); index++)
        {
            answer = Within(answer, label!.Limitations[index]);
        }

        return answer;
    }

    private CalibrationVerdict Within(CalibrationVerdict answer, CalibrationLimitation limitation)
    {
        if (!answer.IsFit || !limitation.Concerns(answer.Function))
        {
            return answer;
        }

        if (limitation.IsExcluded)
        {
            return Limited(answer, CalibrationReasons.FunctionExcluded) with { Limitation = limitation };
        }

        if (use.Value is { } value)
        {
            return value < limitation.From || value > limitation.To ? Outside(answer, limitation.From, limitation.To) : answer with { Limitation = limitation };
        }

        return limitation.From is null && limitation.To is null
            ? answer with { Limitation = limitation }
            : Limited(answer, CalibrationReasons.LimitedRange) with { Limitation = limitation };
    }

    private static CalibrationVerdict Outside(CalibrationVerdict answer, decimal? from, decimal? to) =>
        Limited(answer, CalibrationReasons.OutsideRange) with { From = from, To = to };

    /// <summary>In date, but not for this: the range decides, not the check or extension that kept the date.</summary>
    private static CalibrationVerdict Limited(CalibrationVerdict answer, ReasonKind kind) =>
        answer with { State = CalibrationState.Limited, IsFit = false, Kind = kind, Event = null };

    private static DateOnly Min(DateOnly one, DateOnly other) => one < other ? one : other;

    private static DateOnly Max(DateOnly one, DateOnly other) => one > other ? one : other;
}
