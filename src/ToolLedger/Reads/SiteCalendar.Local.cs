using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using ToolLedger.Records;

namespace ToolLedger.Reads;

/// <content>From local time to an instant.</content>
public sealed partial class SiteCalendar
{
    /// <summary>The instant at which the site's clocks showed a local time.</summary>
    /// <param name="local">Date and time as the clocks showed them; its kind is not looked at.</param>
    /// <returns>The instant with the site's offset.</returns>
    /// <exception cref="RecordException">The clocks showed it twice or never, or the year is outside 1970 to 2999: such a time is refused, never guessed.</exception>
    public DateTimeOffset FromLocal(DateTime local) => TryFromLocal(local, out DateTimeOffset instant, out Reason? refusal)
        ? instant
        : throw new RecordException([new RecordIssue("$", refusal)]);

    /// <summary>The instant at which the site's clocks showed a local time, if there is exactly one.</summary>
    /// <param name="local">Date and time as the clocks showed them; its kind is not looked at.</param>
    /// <param name="instant">The instant with the site's offset, or the default value.</param>
    /// <param name="refusal">Why there is none (<see cref="CalendarRules"/>), or null.</param>
    /// <returns>False if the clocks showed it twice or never, or the year is outside 1970 to 2999.</returns>
    public bool TryFromLocal(DateTime local, out DateTimeOffset instant, [NotNullWhen(false)] out Reason? refusal)
    {
        instant = default;
        refusal = null;
        if (local.Year is < RecordTime.FirstYear or > RecordTime.LastYear)
        {
            refusal = new Reason(RecordRules.OutOfRange, ("range", "the years 1970 to 2999"), ("found", Text(local)));
            return false;
        }

        List<DateTimeOffset> found = InstantsOf(DateTime.SpecifyKind(local, DateTimeKind.Unspecified));
        if (found.Count == 0)
        {
            refusal = new Reason(CalendarRules.SkippedLocalTime, ("local", Text(local)));
        }
        else if (found.Count > 1)
        {
            refusal = new Reason(CalendarRules.AmbiguousLocalTime,
                ("local", Text(local)), ("first", RecordTime.ToText(found[0])), ("second", RecordTime.ToText(found[^1])));
        }
        else
        {
            instant = found[0];
        }

        return found.Count == 1;
    }

    /// <summary>The one offset of a local date, where none came or went within a day of it: then every time of that date is one instant.</summary>
    /// <param name="localDateTicks">Midnight of the date.</param>
    /// <param name="offset">Site time minus UTC.</param>
    /// <returns>False near a change and outside the years 1970 to 2999.</returns>
    internal bool TryGetSteadyOffset(long localDateTicks, out TimeSpan offset)
    {
        offset = default;
        var date = new DateTime(localDateTicks, DateTimeKind.Utc);
        if (date.Year is < RecordTime.FirstYear or > RecordTime.LastYear)
        {
            return false;
        }

        var from = new DateTimeOffset(date.AddDays(-1));
        var to = new DateTimeOffset(date.AddDays(2));
        offset = OffsetAt(from);
        foreach (OffsetChange change in _changes)
        {
            if (change.From > from && change.From <= to)
            {
                return false;
            }
        }

        return true;
    }

    private static string Text(DateTime local) => local.ToString("yyyy-MM-dd HH:mm:ss.FFFFFFF", CultureInfo.InvariantCulture);

    // Only offsets in force within 14 hours of the local time, taken as UTC, can have shown it.
    private List<DateTimeOffset> InstantsOf(DateTime local)
    {
        var nominal = new DateTimeOffset(local, TimeSpan.Zero);
        var found = new List<DateTimeOffset>();
        Note(OffsetAt(nominal - OffsetLimit));
        foreach (OffsetChange change in _changes)
        {
            if (change.From > nominal + OffsetLimit)
            {
                break;
            }

            if (change.From > nominal - OffsetLimit)
            {
                Note(change.Offset);
            }
        }

        found.Sort();
        return found;

        void Note(TimeSpan offset)
        {
            var at = new DateTimeOffset(local, offset);
            if (OffsetAt(at) == offset && !found.Contains(at))
            {
                found.Add(at);
            }
        }
    }
}
