using System;
using System.Collections.Generic;
using System.Globalization;
using ToolLedger.Calibration;
using ToolLedger.Records;

namespace ToolLedger.Interchange;

/// <summary>Due dates as a calendar that anybody can subscribe to: iCalendar, RFC 5545.</summary>
/// <remarks>
/// One all-day entry for each due date. The id of an entry stays the same for a tool, function and calibration, and its sequence number rises when the date moves, so that subscribers see it move. Nothing in
/// the bytes depends on when they are written. Thread-safe.
/// </remarks>
public static class CalendarFeed
{
    /// <summary>The most entries of one feed.</summary>
    public const int MaxItemCount = 1_000_000;

    /// <summary>Writes a feed.</summary>
    /// <param name="items">What is due; items without a day are left out.</param>
    /// <param name="options">How.</param>
    /// <returns>UTF-8, lines ended by CR LF and folded at 75 octets. The same items give the same bytes.</returns>
    /// <exception cref="ArgumentException">There are more than 1,000,000 items.</exception>
    public static byte[] Write(IEnumerable<DueItem> items, CalendarFeedOptions options)
    {
        ArgumentNullException.ThrowIfNull(items);
        ArgumentNullException.ThrowIfNull(options);
        var lines = new CalendarLines();
        lines.Put("BEGIN:VCALENDAR");
        lines.Put("VERSION:2.0");
        lines.Put("PRODID:-//ToolLedger//Calibration due 1//EN");
        lines.Put("CALSCALE:GREGORIAN");
        int count = 0;
        foreach (DueItem item in items)
        {
            if (item is not { Day: { } day, Record: { } record } || (item.IsForecast && !options.HasForecasts && item.Due is null))
            {
                continue;
            }

            if (++count > MaxItemCount)
            {
                throw new ArgumentException("A calendar feed holds at most 1,000,000 entries.", nameof(items));
            }

            bool isForecast = item.IsForecast && options.HasForecasts;
            Put(lines, item, record, isForecast ? day : item.Due!.Value, isForecast, options);
        }

        lines.Put("END:VCALENDAR");
        return lines.ToArray();
    }

    private static void Put(CalendarLines lines, DueItem item, CalibrationRecord record, DateOnly day, bool isForecast, CalendarFeedOptions options)
    {
        string summary = options.SummaryOf?.Invoke(item)
            ?? $"Calibration due: {item.Tool.Id.Value}{(item.Function is null ? "" : " " + item.Function)} ({item.Tool.Description})";
        lines.Put("BEGIN:VEVENT");
        lines.Put($"UID:{IdOf(item, record)}@{options.Domain}");
        lines.Put("DTSTAMP:" + item.ChangedAt.UtcDateTime.ToString("yyyyMMdd'T'HHmmss'Z'", CultureInfo.InvariantCulture));

        // The last day on which the tool may be used, all of it: no time, no zone; the end is exclusive (RFC 5545, 3.6.1).
        lines.Put("DTSTART;VALUE=DATE:" + Day(day));
        lines.Put("DTEND;VALUE=DATE:" + Day(day.AddDays(1)));
        lines.Put("SEQUENCE:" + item.Sequence.ToString(CultureInfo.InvariantCulture));
        lines.PutText("SUMMARY", isForecast ? summary + " (forecast)" : summary);
        lines.PutText("DESCRIPTION", isForecast
            ? "Forecast from average use, not a due date. " + item.Status.Reason
            : item.Status.Reason.ToString());
        lines.Put("TRANSP:TRANSPARENT");
        lines.Put("END:VEVENT");
    }

    /// <summary>Stable for tool, function and calibration, and no secret of them: a part of a digest.</summary>
    private static string IdOf(DueItem item, CalibrationRecord record)
    {
        string key = $"{item.Tool.Id.Value}\n{item.Function}\n{Day(record.CalibratedOn)}";
        return Digest.Of(System.Text.Encoding.UTF8.GetBytes(key)).ToString()["sha256:".Length..][..32];
    }

    private static string Day(DateOnly day) => day.ToString("yyyyMMdd", CultureInfo.InvariantCulture);
}
