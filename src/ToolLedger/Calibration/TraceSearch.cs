using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Reads;
using ToolLedger.Records;

namespace ToolLedger.Calibration;

/// <summary>Finds the suspect window of a finding and judges each use in it.</summary>
internal sealed class TraceSearch(ToolHistory history, CalibrationRecord? record, CalibrationCheck? check, DateOnly foundOn, DateTimeOffset knownAt, CalibrationPolicy policy, SiteCalendar calendar)
{
    private readonly string? function = record is not null ? record.Function : check?.Function;
    private readonly IReadOnlyList<CalibrationPoint> points = record?.AsFound ?? check?.Points ?? [];

    /// <summary>The last calibration before the finding that left the tool good, or, where the policy says so, a passed check in service with values.</summary>
    internal DateOnly? LastGood(out string? by)
    {
        CalibrationRecord? good = Array.FindLast(history.Records, one => one != record && one.IsPassed && one.RecordedAt <= knownAt && Covers(one.Function) && IsBefore(one));
        by = good?.Certificate;
        DateOnly? day = good?.CalibratedOn;
        if (!policy.CheckNarrowsTrace)
        {
            return day;
        }

        CalibrationCheck? passed = Array.FindLast(history.Checks, one => one.Check == CheckKind.InServiceCheck && one.IsPassed && one.RecordedAt <= knownAt && Covers(one.Function)
            && one.Points.Count > 0 && one.Points.All(static point => point.IsWithinLimits == true) && (check is null ? calendar.DateAt(one.At) <= foundOn : one.At < check.At));
        if (passed is null || calendar.DateAt(passed.At) < day)
        {
            return day;
        }

        by = "check";
        return calendar.DateAt(passed.At);
    }

    internal bool IsSuspect(MeasuredUse use, DateOnly? lastGood) =>
        (function is null || use.Function is null || string.Equals(function, use.Function, StringComparison.Ordinal))
        && calendar.DateAt(use.At) <= foundOn
        && (lastGood is null || calendar.DateAt(use.Until ?? use.At) >= lastGood || calendar.DateAt(use.At) >= lastGood);

    internal TracedUse Judge(UseReview review)
    {
        MeasuredUse use = review.Use;
        FoundError error = use.Value is { } value ? FoundError.At(value, points) : default;
        (UseEffect effect, Reason reason) = Effect(use, error);
        return new TracedUse(use, review.Status, error, effect, reason, null);
    }

    private (UseEffect Effect, Reason Reason) Effect(MeasuredUse use, FoundError error)
    {
        Unit unit = history.PlanAt(use.At)?.Find(use.Function ?? function)?.Unit ?? default;
        if (points.Count == 0)
        {
            return (UseEffect.NotKnown, new Reason(TraceReasons.NoFoundData));
        }

        if (use.Value is not { } value)
        {
            return (UseEffect.NotKnown, new Reason(TraceReasons.NoValue));
        }

        if (!unit.IsEmpty && !use.Unit.IsEmpty && unit != use.Unit)
        {
            return (UseEffect.NotKnown, new Reason(TraceReasons.OtherUnit, ("found", use.Unit.Value), ("unit", unit.Value)));
        }

        if (error.Value is not { } found)
        {
            return (UseEffect.NotKnown, new Reason(TraceReasons.BeyondPoints,
                ("value", EventJson.Text(value)), ("from", EventJson.Text(points.Min(static point => point.Nominal))), ("to", EventJson.Text(points.Max(static point => point.Nominal)))));
        }

        if (use.Tolerance is not { } tolerance)
        {
            return (UseEffect.NotKnown, new Reason(TraceReasons.NoTolerance, ("error", EventJson.Text(found))));
        }

        decimal uncertainty = error.Uncertainty ?? 0;
        bool isWithin = error.Uncertainty is not null && error.Worst + uncertainty <= tolerance;
        bool isOutside = decimal.Abs(found) - uncertainty > tolerance;
        UseEffect effect = isOutside ? UseEffect.OutsideTolerance : isWithin ? UseEffect.WithinTolerance : UseEffect.Unclear;
        ReasonKind kind = isOutside ? TraceReasons.Outside : isWithin ? TraceReasons.Within : TraceReasons.Unclear;
        return (effect, new Reason(kind,
            ("error", EventJson.Text(found)), ("uncertainty", error.Uncertainty is { } stated ? EventJson.Text(stated) : "not stated"), ("tolerance", EventJson.Text(tolerance))));
    }

    private bool Covers(string? done) => done is null || string.Equals(done, function, StringComparison.Ordinal);

    private bool IsBefore(CalibrationRecord other)
    {
        if (record is null)
        {
            return other.CompletedAt is { } ended ? ended < check!.At : other.CalibratedOn < foundOn;
        }

        return other.CompletedAt is { } done && record.CompletedAt is { } found ? done < found : other.CalibratedOn < foundOn;
    }
}
