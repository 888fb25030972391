using System;
using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Calibration;

/// <summary>Collects what is wrong with one event or record, each with its member.</summary>
internal sealed class EventCheck(string place, IssueList issues)
{
    internal void Refuse(bool isBroken, string member, ReasonKind rule, params ReadOnlySpan<(string Name, string Value)> values)
    {
        if (isBroken)
        {
            issues.Report(member.Length == 0 ? place : $"{place}.{member}", new Reason(rule, values));
        }
    }

    internal void Text(string? text, int maxLength, string member)
    {
        if (text is not null && RecordText.Check(text, maxLength) is { } fault)
        {
            issues.Report($"{place}.{member}", fault);
        }
    }

    /// <summary>What happened lies in the years of records and not after its entry.</summary>
    internal void Happened(DateTimeOffset at, DateTimeOffset recordedAt, string member)
    {
        Refuse(!RecordTime.IsInRange(at), member, CalibrationEventRules.WithoutTime);
        Refuse(at > recordedAt, member, CalibrationEventRules.InFuture, ("at", TimeText(at)), ("recordedAt", TimeText(recordedAt)));
    }

    internal void Limitations(IReadOnlyList<CalibrationLimitation> limitations, string member)
    {
        Refuse(limitations.Count > CalibrationLimitation.MaxCount, member, CalibrationEventRules.TooMany, ("limit", EventJson.Text(CalibrationLimitation.MaxCount)));
        for (int index = 0; index < limitations.Count; index++)
        {
            string at = $"{member}[{EventJson.Text(index)}]";
            CalibrationLimitation limitation = limitations[index];
            Text(limitation.Function, IdText.MaxLength, at + ".function");
            Text(limitation.Note, CalibrationEvent.MaxNoteLength, at + ".note");
            Refuse(limitation.From > limitation.To, at, CalibrationEventRules.BadRange, ("from", EventJson.Text(limitation.From)), ("to", EventJson.Text(limitation.To)));
            Refuse(limitation.IsEmpty, at, CalibrationEventRules.EmptyLimitation);
        }
    }

    internal void Points(IReadOnlyList<CalibrationPoint> points, string member)
    {
        Refuse(points.Count > CalibrationPoint.MaxCount, member, CalibrationEventRules.TooMany, ("limit", EventJson.Text(CalibrationPoint.MaxCount)));
        for (int index = 0; index < points.Count; index++)
        {
            string at = $"{member}[{EventJson.Text(index)}]";
            CalibrationPoint point = points[index];
            Refuse(point.Lower > point.Upper, at, CalibrationEventRules.BadRange, ("from", EventJson.Text(point.Lower)), ("to", EventJson.Text(point.Upper)));
            Refuse(point.ExpandedUncertainty < 0 || point.CoverageFactor is <= 0 or > 10, at, CalibrationEventRules.BadUncertainty);
        }
    }

    /// <summary>A time that may be the default value of its type, which RFC 3339 text of records does not know.</summary>
    private static string TimeText(DateTimeOffset time) => RecordTime.ToText(time);
}
