using System;
using System.Collections.Generic;
using System.Text.Json;
using ToolLedger.Records;

namespace ToolLedger.Reads;

/// <content>The stored form inside a site's policy.</content>
public sealed partial class SiteCalendar
{
    private const int OffsetMinutesLimit = 14 * 60;

    /// <summary>Reads {"name", "offsetMinutes", "changes": [{"from", "offsetMinutes"}]}; absent members are those of
    /// <see cref="Utc"/>.</summary>
    internal static SiteCalendar FromJson(JsonElement element, string place, IssueList issues)
    {
        int before = issues.Reported;
        var fields = new JsonFields(element, place, issues);
        string name = fields.Text("name", Utc.Name, NameLength) ?? Utc.Name;
        int offset = fields.Int32("offsetMinutes", 0, -OffsetMinutesLimit, OffsetMinutesLimit);
        List<OffsetChange> changes = [];
        foreach ((JsonElement item, string itemPlace) in fields.Items("changes", MaxChangeCount))
        {
            var change = new JsonFields(item, itemPlace, issues);
            DateTimeOffset? from = change.RequiredTime("from");
            change.Require("offsetMinutes");
            int minutes = change.Int32("offsetMinutes", 0, -OffsetMinutesLimit, OffsetMinutesLimit);
            change.End();
            if (from is { } start && changes.Count > 0 && start <= changes[^1].From)
            {
                change.Report("from", new Reason(CalendarRules.ChangeOutOfOrder, ("from", RecordTime.ToText(start))));
            }

            changes.Add(new OffsetChange(from.GetValueOrDefault(), TimeSpan.FromMinutes(minutes)));
        }

        fields.End();
        return issues.Reported > before ? Utc : new SiteCalendar(name, TimeSpan.FromMinutes(offset), changes);
    }

    /// <summary>Writes an object with every member, in a stable order.</summary>
    internal void WriteJson(Utf8JsonWriter writer)
    {
        writer.WriteStartObject();
        writer.WriteString("name", Name);
        writer.WriteNumber("offsetMinutes", (int)BaseOffset.TotalMinutes);
        writer.WriteStartArray("changes");
        foreach (OffsetChange change in _changes)
        {
            writer.WriteStartObject();
            writer.WriteString("from", RecordTime.ToText(change.From));
            writer.WriteNumber("offsetMinutes", (int)change.Offset.TotalMinutes);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteEndObject();
    }
}
