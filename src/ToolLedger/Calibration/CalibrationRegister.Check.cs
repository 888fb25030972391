using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Calibration;

/// <content>What is refused.</content>
public sealed partial class CalibrationRegister
{
    private static IssueList FindIssues(IReadOnlyList<CalibrationRecord> records, IReadOnlyList<CalibrationEvent> events)
    {
        var issues = new IssueList();
        RefuseTooMany(issues, "$.records", CalibrationRules.TooManyRecords, MaxRecordCount, records.Count);
        RefuseTooMany(issues, "$.events", CalibrationEventRules.TooManyEvents, MaxEventCount, events.Count);
        HashSet<ToolId> planned = Planned(events);
        bool mustBeSigned = !IsFirstForm(records, events);
        for (int index = 0; index < records.Count; index++)
        {
            CalibrationRecord record = records[index];
            record.AddIssues(PlaceOf(index), issues, planned.Contains(record.Tool));
            if (mustBeSigned && record.RecordedBy.IsEmpty)
            {
                issues.Report(PlaceOf(index) + ".recordedBy", new Reason(CalibrationEventRules.NotSigned));
            }
        }

        for (int index = 0; index < events.Count; index++)
        {
            events[index].AddIssues(EventPlaceOf(index), issues);
        }

        FindRepeats(records, issues);
        FindRepeats(events, issues);
        FindSilentClearings(events, issues);
        return issues;
    }

    private static void RefuseTooMany(IssueList issues, string place, ReasonKind rule, int limit, int count)
    {
        if (count > limit)
        {
            issues.Report(place, new Reason(rule, ("limit", limit.ToString(CultureInfo.InvariantCulture)), ("count", count.ToString(CultureInfo.InvariantCulture))));
        }
    }

    private static HashSet<ToolId> Planned(IReadOnlyList<CalibrationEvent> events) => [.. events.OfType<CalibrationPlan>().Select(static plan => plan.Tool)];

    private static void FindRepeats(IReadOnlyList<CalibrationRecord> records, IssueList issues)
    {
        var seen = new HashSet<(ToolId Tool, string? Function, DateOnly Day, long RecordedTicks)>();
        for (int index = 0; index < records.Count; index++)
        {
            CalibrationRecord record = records[index];
            if (!seen.Add((record.Tool, record.Function, record.CalibratedOn, record.RecordedAt.UtcTicks)))
            {
                issues.Report(PlaceOf(index), new Reason(
                    CalibrationRules.SameRecordTwice,
                    ("tool", record.Tool.Value),
                    ("day", CalibrationRecord.Text(record.CalibratedOn)),
                    ("recordedAt", RecordTime.ToText(record.RecordedAt))));
            }
        }
    }

    private static void FindRepeats(IReadOnlyList<CalibrationEvent> events, IssueList issues)
    {
        var seen = new HashSet<(ToolId, string)>();
        for (int index = 0; index < events.Count; index++)
        {
            CalibrationEvent one = events[index];
            if (!seen.Add(one.Identity))
            {
                issues.Report(EventPlaceOf(index), new Reason(
                    CalibrationEventRules.SameEventTwice, ("tool", one.Tool.Value), ("kind", one.Kind), ("recordedAt", RecordTime.ToText(one.RecordedAt))));
            }
        }
    }

    /// <summary>Quarantine is not cleared without a reason and a name: a label that follows a rejection says why.</summary>
    private static void FindSilentClearings(IReadOnlyList<CalibrationEvent> events, IssueList issues)
    {
        var ordered = events.Select(static (one, index) => (Label: one as CalibrationLabel, Index: index))
            .Where(static one => one.Label is not null)
            .OrderBy(static one => one.Label!.RecordedAt)
            .GroupBy(static one => (one.Label!.Tool, one.Label.Function));
        foreach (var labels in ordered)
        {
            CalibrationLabel? rejection = null;
            foreach ((CalibrationLabel? label, int index) in labels)
            {
                if (rejection is not null && label!.Label != LabelKind.Rejected && label.Note is null)
                {
                    issues.Report(EventPlaceOf(index) + ".note", new Reason(
                        CalibrationEventRules.ClearedWithoutReason, ("tool", label.Tool.Value), ("since", RecordTime.ToText(rejection.RecordedAt))));
                }

                rejection = label!.Label == LabelKind.Rejected ? label : null;
            }
        }
    }
}
