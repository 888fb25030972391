using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Records;

namespace ToolLedger.Calibration;

/// <content>What the calibration found and left; these members make a record of the second stored form, which must be signed.</content>
public sealed partial class CalibrationRecord
{
    /// <summary>The most standards a record names.</summary>
    public const int MaxStandardCount = 16;

    /// <summary>The function that was calibrated; null (the default) for all of them.</summary>
    public string? Function { get; init; }

    /// <summary>How it ended. The default is <see cref="CalibrationResult.NotStated"/>.</summary>
    public CalibrationResult Result { get; init; }

    /// <summary>A limit by cycles or hours, beside the due date; its months must not be given (use <see cref="IntervalMonths"/>). Null (the default) for none.</summary>
    public CalibrationInterval? Interval { get; init; }

    /// <summary>When the work was finished, where the hour is known: it orders the calibration against a drop on the same day. Null (the default) if not stated.</summary>
    public DateTimeOffset? CompletedAt { get; init; }

    /// <summary>The day on which the certificate was issued; null (the default) if not stated. It changes no due date.</summary>
    public DateOnly? CertifiedOn { get; init; }

    /// <summary>Who calibrated, in the words of the certificate: 1 to 100 printable characters; null (the default) if not stated.</summary>
    public string? Laboratory { get; init; }

    /// <summary>The standards that were used, each 1 to 100 printable characters, at most 16; empty (the default) if not stated.</summary>
    public IReadOnlyList<string> Standards { get; init => field = [.. value]; } = [];

    /// <summary>Whether the tool was found in tolerance, before any adjustment; null (the default) if that is not recorded, and then taken from <see cref="AsFound"/> where its points have limits.</summary>
    public bool? FoundInTolerance { get; init; }

    /// <summary>What was found before any adjustment, point by point; empty (the default) if not recorded.</summary>
    public IReadOnlyList<CalibrationPoint> AsFound { get; init => field = [.. value]; } = [];

    /// <summary>What was left after adjustment, point by point; empty (the default) if not recorded.</summary>
    public IReadOnlyList<CalibrationPoint> AsLeft { get; init => field = [.. value]; } = [];

    /// <summary>What the calibration is limited to; empty (the default) if it is not.</summary>
    public IReadOnlyList<CalibrationLimitation> Limitations { get; init => field = [.. value]; } = [];

    /// <summary>Whether the tool was found in tolerance: as said, or as the points as found show; null if neither tells.</summary>
    public bool? WasFoundInTolerance => FoundInTolerance ?? (AsFound.Any(static point => point.IsWithinLimits == false)
        ? false
        : AsFound.Count > 0 && AsFound.All(static point => point.IsWithinLimits == true) ? true : null);

    /// <summary>Whether the tool left fit for use.</summary>
    internal bool IsPassed => Result != CalibrationResult.Failed;

    /// <summary>Whether the record says nothing that the first stored form has no member for.</summary>
    internal bool IsPlain => Function is null && Result == CalibrationResult.NotStated && Interval is null && CompletedAt is null && CertifiedOn is null && Laboratory is null
        && Standards.Count == 0 && FoundInTolerance is null && AsFound.Count == 0 && AsLeft.Count == 0 && Limitations.Count == 0
        && (DueOn is not null || DueMonth is not null || IntervalMonths is not null);

    internal bool Concerns(string? function) => Function is null || function is null || string.Equals(Function, function, StringComparison.Ordinal);

    private void AddResultIssues(string place, IssueList issues)
    {
        var check = new EventCheck(place, issues);
        check.Refuse(!Enum.IsDefined(Result), "result", CalibrationEventRules.BadWord);
        check.Text(Function, IdText.MaxLength, "function");
        check.Text(Laboratory, MaxCertificateLength, "laboratory");
        check.Refuse(Standards.Count > MaxStandardCount, "standards", CalibrationEventRules.TooMany, ("limit", EventJson.Text(MaxStandardCount)));
        foreach (string standard in Standards)
        {
            check.Text(standard, MaxCertificateLength, "standards");
        }

        check.Refuse(Interval is { IsEmpty: true } or { IsValid: false } or { Months: not null }, "interval", CalibrationEventRules.BadInterval);
        check.Points(AsFound, "asFound");
        check.Points(AsLeft, "asLeft");
        check.Limitations(Limitations, "limitations");
        check.Refuse(Result == CalibrationResult.Limited && Limitations.Count == 0, "limitations", CalibrationEventRules.LimitedByNothing);
        check.Refuse(Result == CalibrationResult.Failed && (DueOn ?? DueMonth) is not null, "result", CalibrationEventRules.FailedWithDue);
        check.Refuse(Result == CalibrationResult.Passed && AsLeft.Any(static point => point.IsWithinLimits == false), "asLeft", CalibrationEventRules.PassedOutsideLimits);
        check.Refuse(FoundInTolerance == true && AsFound.Any(static point => point.IsWithinLimits == false), "asFound", CalibrationEventRules.FoundContradicted);
        AddTimeIssues(check);
    }

    private void AddTimeIssues(EventCheck check)
    {
        if (!RecordTime.IsInRange(RecordedAt))
        {
            return;
        }

        check.Refuse(CertifiedOn < CalibratedOn, "certifiedOn", CalibrationEventRules.CertifiedTooEarly,
            ("certifiedOn", CertifiedOn is { } early ? Text(early) : ""), ("day", Text(CalibratedOn)));
        check.Refuse(CertifiedOn > DateOnly.FromDateTime(RecordedAt.UtcDateTime.AddHours(14)), "certifiedOn", CalibrationEventRules.CertifiedInFuture,
            ("certifiedOn", CertifiedOn is { } late ? Text(late) : ""), ("recordedAt", RecordTime.ToText(RecordedAt)));
        check.Refuse(CompletedAt is { } done && (done > RecordedAt || !RecordTime.IsInRange(done) || DateOnly.FromDateTime(done.DateTime) != CalibratedOn), "completedAt", CalibrationEventRules.CompletedElsewhen,
            ("completedAt", CompletedAt is { } at ? RecordTime.ToText(at) : ""), ("day", Text(CalibratedOn)));
    }
}
