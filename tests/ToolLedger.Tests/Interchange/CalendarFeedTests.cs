using System;
using System.Collections.Generic;
using System.Linq;
using System.Text;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Ical.Net.CalendarComponents;
using ToolLedger.Calibration;
using ToolLedger.Interchange;
using ToolLedger.Reads;
using ToolLedger.Testing.Generators;
using ToolLedger.Tools;
using Xunit;
using static ToolLedger.Tests.Calibration.TorqueWrench;

namespace ToolLedger.Tests.Interchange;

/// <summary>The calendar feed (RFC 5545), read back by an independent parser (Ical.Net 5.2.4, MIT), and by six checks of bytes that no validator makes.</summary>
public sealed class CalendarFeedTests
{
    private static readonly CalendarFeedOptions Options = new() { Domain = "tools.example" };
    private static readonly DateTimeOffset Now = At("2026-03-01T08:00:00Z");

    [Fact]
    public void A_due_date_is_an_all_day_entry_with_a_stable_id()
    {
        string feed = Encoding.UTF8.GetString(CalendarFeed.Write(Items(Register([Passed("2025-03-10", months: 12)])), Options));

        // The 32 digits of the id are those of a digest.
        int id = feed.IndexOf("UID:", StringComparison.Ordinal);
        Assert.Equal(
            """
            BEGIN:VCALENDAR
            VERSION:2.0
            PRODID:-//ToolLedger//Calibration due 1//EN
            CALSCALE:GREGORIAN
            BEGIN:VEVENT
            UID:8f4a@tools.example
            DTSTAMP:20250310T100000Z
            DTSTART;VALUE=DATE:20260310
            DTEND;VALUE=DATE:20260311
            SEQUENCE:0
            SUMMARY:Calibration due: T4 (Torque wrench)
            DESCRIPTION:In date through 2026-03-10\, by printed day\; due soon.
            TRANSP:TRANSPARENT
            END:VEVENT
            END:VCALENDAR

            """.ReplaceLineEndings("\r\n"),
            feed[..(id + 4)] + "8f4a" + feed[(id + 4 + 32)..]);
    }

    // A moved date keeps its id and raises its sequence; another calibration, tool or function is another entry.
    [Fact]
    public void The_id_is_that_of_tool_function_and_calibration_and_the_sequence_rises_when_the_date_moves()
    {
        CalendarEvent before = Assert.Single(Parsed(Register([Passed("2025-03-10", months: 12)])));
        CalendarEvent extended = Assert.Single(Parsed(Register([Passed("2025-03-10", months: 12)], Extension("2026-03-20", "2026-02-20T08:00:00Z"))));
        CalendarEvent next = Assert.Single(Parsed(Register([Passed("2025-03-10", months: 12), Passed("2026-02-20", months: 12)])));

        Assert.Equal((before.Uid, 0, 1), (extended.Uid, before.Sequence, extended.Sequence));
        Assert.Equal(new DateOnly(2026, 3, 20), extended.Start!.Date);
        Assert.NotEqual(before.Uid, next.Uid);
    }

    [Fact]
    public void A_forecast_says_that_it_is_one_and_can_be_left_out()
    {
        CalibrationRegister register = Register([Passed("2026-01-10", months: 12, interval: new CalibrationInterval { Cycles = 1000 })], Used("2026-01-10", "2026-02-28", 500));

        CalendarEvent forecast = Assert.Single(Parsed(register)), fact = Assert.Single(Parsed(register, new CalendarFeedOptions { Domain = "tools.example", HasForecasts = false }));

        Assert.EndsWith("(forecast)", forecast.Summary, StringComparison.Ordinal);
        Assert.StartsWith("Forecast from average use, not a due date.", forecast.Description, StringComparison.Ordinal);
        Assert.Equal((new DateOnly(2027, 1, 10), "Calibration due: T4 (Torque wrench)"), (fact.Start!.Date, fact.Summary));
    }

    // Whatever stands in a summary comes back as it was, and no byte breaks the rules.
    [Property]
    public Property Any_summary_survives_folding_and_escaping(NonEmptyArray<int> letters, PositiveInt length)
    {
        string[] alphabet = ["a", ";", ",", "\\", "\n", ":", " ", "\"", "ä", "工具", "\U0001F527", "\\n", "BEGIN:VEVENT"];
        string summary = "x" + string.Concat(Enumerable.Range(0, length.Get % 120).Select(n => alphabet[Math.Abs(letters.Get[n % letters.Get.Length] % alphabet.Length)])) + "x";
        byte[] feed = CalendarFeed.Write(Items(Register([Passed("2025-03-10", months: 12)])), new CalendarFeedOptions { Domain = "tools.example", SummaryOf = _ => summary });

        CheckBytes(feed);
        CalendarEvent entry = Assert.Single(Ical.Net.Calendar.Load(Encoding.UTF8.GetString(feed))!.Events);
        return (entry.Summary == summary).ToProperty();
    }

    [Property(Arbitrary = [typeof(CalibrationHistoryGenerators), typeof(CalibrationGenerators)], MaxTest = 60)]
    public void Any_fleet_gives_a_feed_that_parses_and_keeps_every_rule_of_bytes(CalibrationRegister register, CalibrationPolicy policy)
    {
        Tool[] tools = [.. register.Tools.Select(static id => new Tool { Id = id, Description = "Schlüssel; \\ groß, 工具 und noch viel mehr Text, damit gefaltet wird", NeedsCalibration = true })];
        DueBoard board = DueBoard.Of(register, tools, At("2024-07-01T08:00:00Z"), policy, SiteCalendar.Utc);

        byte[] feed = CalendarFeed.Write(board.Items, Options);

        CheckBytes(feed);
        Assert.Equal(feed, CalendarFeed.Write(board.Items, Options));
        CalendarEvent[] events = [.. Ical.Net.Calendar.Load(Encoding.UTF8.GetString(feed))!.Events];
        Assert.Equal(
            board.Items.Where(static item => item.Record is not null).Select(static item => (item.Day!.Value, item.Sequence, $"Calibration due: {item.Tool.Id.Value}{(item.Function is null ? "" : " " + item.Function)} ({item.Tool.Description}){(item.IsForecast ? " (forecast)" : "")}")),
            events.Select(static one => (one.Start!.Date, one.Sequence, one.Summary!)));
        Assert.All(events, static one => Assert.Equal((false, one.Start!.Date.AddDays(1)), (one.Start.HasTime, one.End!.Date)));
    }

    [Fact]
    public void A_domain_is_a_domain() => Assert.Throws<ArgumentException>(() => new CalendarFeedOptions { Domain = "a b\r\nX:1" });

    /// <summary>The six: CR LF only, 75 octets at most, no character cut in two, dates said to be dates, a start in each entry, no id twice.</summary>
    private static void CheckBytes(byte[] feed)
    {
        string text = new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(feed);
        Assert.DoesNotContain("\n", text.Replace("\r\n", "", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.DoesNotContain("\r", text.Replace("\r\n", "", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.EndsWith("END:VCALENDAR\r\n", text, StringComparison.Ordinal);

        int start = 0;
        for (int at = 0; at < feed.Length; at++)
        {
            if (feed[at] == '\n')
            {
                Assert.InRange(at - 1 - start, 0, 75);
                _ = new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(feed, start, at - 1 - start);
                start = at + 1;
            }
        }

        string[] lines = text.Replace("\r\n ", "", StringComparison.Ordinal).Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Assert.All(lines.Where(static line => line.StartsWith("DTSTART", StringComparison.Ordinal) || line.StartsWith("DTEND", StringComparison.Ordinal)),
            static line => Assert.Matches("^DT(START|END);VALUE=DATE:[0-9]{8}$", line));
        int entries = lines.Count(static line => line == "BEGIN:VEVENT");
        Assert.Equal(entries, lines.Count(static line => line.StartsWith("DTSTART;", StringComparison.Ordinal)));
        Assert.Equal(entries, lines.Count(static line => line.StartsWith("DTSTAMP:", StringComparison.Ordinal)));
        Assert.Equal(entries, lines.Where(static line => line.StartsWith("UID:", StringComparison.Ordinal)).Distinct(StringComparer.Ordinal).Count());
    }

    private static IReadOnlyList<DueItem> Items(CalibrationRegister register) => DueBoard.Of(register, [T4], Now, P0, SiteCalendar.Utc).Items;

    private static IEnumerable<CalendarEvent> Parsed(CalibrationRegister register, CalendarFeedOptions? options = null)
    {
        byte[] feed = CalendarFeed.Write(Items(register), options ?? Options);
        CheckBytes(feed);
        return Ical.Net.Calendar.Load(Encoding.UTF8.GetString(feed))!.Events;
    }
}
