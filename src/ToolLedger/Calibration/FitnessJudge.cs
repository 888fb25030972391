using System;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Calibration;

/// <summary>Judges one tool for one use: label before condition, condition before date, date before range. Allocates nothing.</summary>
internal readonly ref partial struct FitnessJudge
{
    private readonly ToolHistory history;
    private readonly Tool tool;
    private readonly ref readonly IntendedUse use;
    private readonly CalibrationPolicy policy;
    private readonly SiteCalendar calendar;
    private readonly DateOnly today;
    private readonly CalibrationPlan? plan;

    internal FitnessJudge(ToolHistory history, Tool tool, in IntendedUse use, CalibrationPolicy policy, SiteCalendar calendar)
    {
        this.history = history;
        this.tool = tool;
        this.use = ref use;
        this.policy = policy;
        this.calendar = calendar;
        today = calendar.DateAt(use.At);
        plan = history.PlanAt(use.At);
    }

    internal CalibrationVerdict Judge()
    {
        if (use.IsIdentityInDoubt)
        {
            return Of(CalibrationState.Unknown, CalibrationReasons.IdentityUnknown, null);
        }

        if (use.Function is { } asked)
        {
            return plan is not null && plan.Find(asked) is null
                ? Of(CalibrationState.Unknown, CalibrationReasons.FunctionUnknown, asked)
                : One(asked);
        }

        if (plan is not null)
        {
            return plan.Functions.Count == 1 ? One(plan.Functions[0].Name) : OfAllPlanned();
        }

        return history.Functions.Length == 0 ? One(null) : OfAllRecorded();
    }

    /// <summary>Whether a record of the function itself counts at the instant; until then the tool is one thing.</summary>
    internal bool IsKnown(string function)
    {
        foreach (CalibrationRecord record in history.Records)
        {
            if (Counts(record) && string.Equals(record.Function, function, StringComparison.Ordinal))
            {
                return true;
            }
        }

        return false;
    }

    private CalibrationVerdict OfAllPlanned()
    {
        var whole = default(WholeTool);
        for (int index = 0; index < plan!.Functions.Count; index++)
        {
            whole.Add(One(plan.Functions[index].Name));
        }

        return whole.Answer();
    }

    private CalibrationVerdict OfAllRecorded()
    {
        var whole = default(WholeTool);
        foreach (string function in history.Functions)
        {
            if (IsKnown(function))
            {
                whole.Add(One(function));
            }
        }

        return whole.IsEmpty ? One(null) : whole.Answer();
    }

    private CalibrationVerdict One(string? function)
    {
        PlannedFunction? planned = plan?.Find(function);
        if (use.Value is not null && planned is { Unit.IsEmpty: false } && !use.Unit.IsEmpty && use.Unit != planned.Unit)
        {
            return Of(CalibrationState.Unknown, CalibrationReasons.UnitMismatch, function) with { PlannedUnit = planned.Unit };
        }

        CalibrationLabel? label = LabelThatCounts(function, out CalibrationLabel? held);
        if (held is not null)
        {
            bool isRejected = held.Label == LabelKind.Rejected;
            return Of(isRejected ? CalibrationState.Rejected : CalibrationState.Inactive, isRejected ? CalibrationReasons.LabelRejected : CalibrationReasons.LabelInactive, function) with { Event = held };
        }

        CalibrationRecord? record = LatestRecord(function);
        if (label?.Label == LabelKind.NotRequired)
        {
            return Of(CalibrationState.NotRequired, CalibrationReasons.LabelNotRequired, function) with { Event = label };
        }

        if (label is null && record is null && plan is null && !tool.NeedsCalibration)
        {
            return Of(CalibrationState.NotRequired, CalibrationReasons.NotRequired, function);
        }

        return Suspension(function, out CalibrationVerdict suspended) ? suspended : ByRecord(function, planned, label, record);
    }

    private CalibrationVerdict ByRecord(string? function, PlannedFunction? planned, CalibrationLabel? label, CalibrationRecord? record)
    {
        int? checkDays = label?.Label == LabelKind.UserCalibration ? label.UserCheckDays : planned?.UserCheckDays;
        CalibrationVerdict? byUser = null;
        if (checkDays is { } days)
        {
            CalibrationVerdict check = UserCheck(function, days);
            if (!check.IsFit)
            {
                return check;
            }

            byUser = check;
        }

        if (record is null)
        {
            bool isUserOnly = byUser is not null && (label?.Label == LabelKind.UserCalibration || planned?.Interval is null);
            return isUserOnly ? InRange(byUser!.Value, planned, label, null) : Of(CalibrationState.Unknown, CalibrationReasons.NoRecord, function);
        }

        CalibrationVerdict answer = OfRecord(function, planned, label, record, byUser);
        if (use.Known > use.At && Correction(record) is { } correction)
        {
            // A correction that was entered after the use grants nothing to it, but what it takes away counts.
            CalibrationVerdict corrected = OfRecord(function, planned, label, correction, byUser);
            return corrected.Severity > answer.Severity ? corrected : answer;
        }

        return answer;
    }

    private CalibrationVerdict OfRecord(string? function, PlannedFunction? planned, CalibrationLabel? label, CalibrationRecord record, CalibrationVerdict? byUser)
    {
        if (!record.IsPassed)
        {
            return Of(CalibrationState.Rejected, CalibrationReasons.CalibrationFailed, function) with { Record = record };
        }

        CalibrationVerdict due = Due(function, planned, record, byUser);
        return due.IsFit ? InRange(due, planned, label, record) : due;
    }

    private CalibrationVerdict UserCheck(string? function, int days)
    {
        for (int index = history.Checks.Length - 1; index >= 0; index--)
        {
            CalibrationCheck check = history.Checks[index];
            if (check.Check == CheckKind.UserCheck && check.IsPassed && check.Concerns(function) && check.At <= use.At && check.RecordedAt <= use.At)
            {
                DateOnly until = calendar.DateAt(check.At).AddDays(days - 1);
                if (until >= today)
                {
                    return Of(CalibrationState.Current, CalibrationReasons.UserChecked, function) with { IsFit = true, Event = check, Until = until, LapsesDuring = Lapses(until) };
                }

                break;
            }
        }

        return Of(CalibrationState.Overdue, CalibrationReasons.NoUserCheck, function) with { Limit = days };
    }

    private CalibrationLabel? LabelThatCounts(string? function, out CalibrationLabel? held)
    {
        held = null;
        CalibrationLabel? lifted = null;
        CalibrationLabel? last = null;
        foreach (CalibrationLabel label in history.Labels)
        {
            if (label.RecordedAt > use.At || !label.Concerns(function))
            {
                continue;
            }

            last = label;
            if (label.Holds && (held is null || held.Label != LabelKind.Rejected || label.Label == LabelKind.Rejected || IsOver(function, held, lifted)))
            {
                held = label;
                lifted = null;
            }
            else if (!label.Holds && held is not null && (label.Function is null || string.Equals(label.Function, held.Function, StringComparison.Ordinal)))
            {
                lifted = label;
            }
        }

        if (held is not null && IsOver(function, held, lifted))
        {
            held = null;
        }

        return last;
    }

    /// <summary>Inactive ends with a calibration, rejected only with a calibration and a further label.</summary>
    private bool IsOver(string? function, CalibrationLabel held, CalibrationLabel? lifted) =>
        (held.Label == LabelKind.Inactive || lifted is not null) && IsCalibratedAfter(function, held.RecordedAt);

    private bool Suspension(string? function, out CalibrationVerdict verdict)
    {
        verdict = default;
        for (int index = history.Conditions.Length - 1; index >= 0; index--)
        {
            ConditionReport report = history.Conditions[index];
            if (report.At <= use.At && report.RecordedAt <= use.Known && report.Concerns(function) && !IsCleared(function, report))
            {
                ReasonKind kind = report.Condition == ConditionKind.SealBroken ? CalibrationReasons.Void : CalibrationReasons.Suspended;
                verdict = Of(CalibrationState.Suspended, kind, function) with { Event = report };
                return true;
            }
        }

        for (int index = history.Checks.Length - 1; index >= 0; index--)
        {
            CalibrationCheck check = history.Checks[index];
            if (!check.IsPassed && check.At <= use.At && check.RecordedAt <= use.Known && check.Concerns(function) && !IsCalibratedAfter(function, check.At))
            {
                verdict = Of(CalibrationState.Suspended, CalibrationReasons.CheckFailed, function) with { Event = check };
                return true;
            }
        }

        return false;
    }

    private bool IsCleared(string? function, ConditionReport report)
    {
        if (IsCalibratedAfter(function, report.At))
        {
            return true;
        }

        if (!policy.IsClearedByCheck(report.Condition))
        {
            return false;
        }

        foreach (CalibrationCheck check in history.Checks)
        {
            if (check.Check == CheckKind.InServiceCheck && check.IsPassed && Covers(check.Function, function) && check.At > report.At && check.At <= use.At && check.RecordedAt <= use.At)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Whether what was done to one function, or to all, was done to the function asked about.</summary>
    private static bool Covers(string? done, string? asked) => done is null || string.Equals(done, asked, StringComparison.Ordinal);

    private CalibrationVerdict Of(CalibrationState state, ReasonKind kind, string? function) => new() { State = state, Kind = kind, SiteDate = today, Function = function };
}
