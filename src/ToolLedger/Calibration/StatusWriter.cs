using System;
using System.Collections.Generic;
using System.Globalization;
using System.Runtime.InteropServices;
using ToolLedger.Reads;
using ToolLedger.Records;

namespace ToolLedger.Calibration;

/// <summary>Makes reasons with their values out of verdicts.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly struct StatusWriter(CalibrationPolicy policy, SiteCalendar calendar)
{
    internal CalibrationStatus Write(in CalibrationVerdict verdict, in IntendedUse use, IReadOnlyList<CalibrationStatus> parts) =>
        new(verdict, ReasonOf(verdict, use), WarningsOf(verdict, use), parts);

    private Reason[] WarningsOf(in CalibrationVerdict verdict, in IntendedUse use)
    {
        if (!verdict.LapsesDuring && (!verdict.IsFit || verdict.Limitation is null))
        {
            return [];
        }

        var warnings = new List<Reason>();
        if (verdict.LapsesDuring && verdict.Until is { } until)
        {
            warnings.Add(new Reason(CalibrationReasons.LapsesDuring, ("until", Day(until)), ("end", Day(calendar.DateAt(use.Until)))));
        }

        if (verdict.IsFit && verdict.Limitation is { } limitation)
        {
            warnings.Add(new Reason(CalibrationReasons.LimitationNote, ("limits", Text(limitation))));
        }

        return [.. warnings];
    }

    private Reason ReasonOf(in CalibrationVerdict verdict, in IntendedUse use)
    {
        ReasonKind kind = verdict.Kind ?? CalibrationReasons.NotRequired;
        (string, string)[] values = verdict.Event switch
        {
            CalibrationLabel label => [("day", Day(calendar.DateAt(label.RecordedAt))), ("note", label.Note ?? "no note")],
            ConditionReport report => [("condition", ConditionReport.Word(report.Condition).Replace('-', ' ')), ("at", Time(report.At))],
            CalibrationCheck check => [("at", Time(check.At)), ("until", DayOrNone(verdict.Until))],
            CalibrationExtension extension when kind == CalibrationReasons.Extended =>
            [
                ("until", DayOrNone(verdict.Until)), ("person", extension.AllowedBy.By.Value), ("reason", extension.Reason), ("due", DayOrNone(verdict.PlainUntil)), ("convention", policy.ConventionWord),
            ],
            _ => ByKind(kind, verdict, use),
        };
        return new Reason(kind, values);
    }

    private (string Name, string Value)[] ByKind(ReasonKind kind, in CalibrationVerdict verdict, in IntendedUse use)
    {
        if (kind == CalibrationReasons.NoRecord)
        {
            return [("siteDate", Day(verdict.SiteDate))];
        }

        if (kind == CalibrationReasons.MonthOnly)
        {
            return [("month", verdict.Record!.DueMonth!.Value.ToString("yyyy-MM", CultureInfo.InvariantCulture)), ("convention", policy.ConventionWord)];
        }

        if (kind == CalibrationReasons.CurrentByUse || kind == CalibrationReasons.DueSoonByUse || kind == CalibrationReasons.OverdueByUse || kind == CalibrationReasons.UseUnknown)
        {
            return
            [
                ("used", EventJson.Text(verdict.Used)), ("limit", EventJson.Text(verdict.Limit)), ("measure", verdict.Measure == UseMeasure.Cycles ? "cycles" : "hours"),
                ("day", Day(verdict.Record!.CalibratedOn)),
            ];
        }

        if (kind == CalibrationReasons.CalibrationFailed)
        {
            return [("day", Day(verdict.Record!.CalibratedOn))];
        }

        if (kind == CalibrationReasons.NoUserCheck)
        {
            return [("days", EventJson.Text(verdict.Limit)), ("siteDate", Day(verdict.SiteDate))];
        }

        return ByRange(kind, verdict, use) ?? (verdict.Until is not { } until ? [] :
        [
            ("until", Day(until)), ("convention", policy.ConventionWord), ("siteDate", Day(verdict.SiteDate)),
            ("days", EventJson.Text(Math.Abs(until.DayNumber - verdict.SiteDate.DayNumber))),
        ]);
    }

    private (string Name, string Value)[]? ByRange(ReasonKind kind, in CalibrationVerdict verdict, in IntendedUse use)
    {
        if (kind == CalibrationReasons.OutsideRange)
        {
            return [("from", OrOpen(verdict.From)), ("to", OrOpen(verdict.To)), ("value", EventJson.Text(use.Value)), ("until", DayOrNone(verdict.Until))];
        }

        if (kind == CalibrationReasons.LimitedRange || kind == CalibrationReasons.FunctionExcluded)
        {
            return [("limits", Text(verdict.Limitation!)), ("until", DayOrNone(verdict.Until)), ("convention", policy.ConventionWord)];
        }

        if (kind == CalibrationReasons.PartlyFit)
        {
            return
            [
                ("fit", EventJson.Text(verdict.FitCount)), ("unfit", EventJson.Text(verdict.UnfitCount)), ("function", verdict.Function ?? ""),
                ("state", CalibrationStatus.Word(verdict.WorstState).ToLowerInvariant()),
            ];
        }

        if (kind == CalibrationReasons.FunctionUnknown)
        {
            return [("function", verdict.Function ?? "")];
        }

        if (kind == CalibrationReasons.UnitMismatch)
        {
            return [("found", use.Unit.Value), ("unit", verdict.PlannedUnit.Value)];
        }

        return null;
    }

    private static string Text(CalibrationLimitation limitation)
    {
        var parts = new List<string>();
        if (limitation.Function is { } function)
        {
            parts.Add(function);
        }

        if (limitation.From is not null || limitation.To is not null)
        {
            parts.Add($"from {OrOpen(limitation.From)} to {OrOpen(limitation.To)}");
        }

        if (limitation.IsExcluded)
        {
            parts.Add("not to be used");
        }

        if (limitation.Note is { } note)
        {
            parts.Add(note);
        }

        return string.Join(", ", parts);
    }

    private static string OrOpen(decimal? value) => value is null ? "no limit" : EventJson.Text(value);

    private static string Day(DateOnly day) => CalibrationRecord.Text(day);

    private static string DayOrNone(DateOnly? day) => day is { } given ? Day(given) : "no date";

    private string Time(DateTimeOffset time) => RecordTime.ToText(calendar.ToSite(time));
}
