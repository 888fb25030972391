using System;
using FsCheck.Xunit;
using ToolLedger.Reads;
using ToolLedger.Records;
using Xunit;

namespace ToolLedger.Tests.Reads;

public sealed class SiteCalendarTests
{
    private static readonly DateTimeOffset Summer = new(2026, 3, 29, 1, 0, 0, TimeSpan.Zero);
    private static readonly DateTimeOffset Winter = new(2026, 10, 25, 1, 0, 0, TimeSpan.Zero);

    private static readonly SiteCalendar Site = new(
        "north shore", TimeSpan.FromHours(1), [new OffsetChange(Summer, TimeSpan.FromHours(2)), new OffsetChange(Winter, TimeSpan.FromHours(1))]);

    // S93 of the trade: at UTC+10 it is already the next day.
    [Fact]
    public void The_date_is_the_sites_and_not_that_of_utc()
    {
        SiteCalendar east = SiteCalendar.Fixed("east yard", TimeSpan.FromHours(10));
        Assert.Equal(new DateOnly(2026, 6, 1), east.DateAt(new DateTimeOffset(2026, 5, 31, 15, 0, 0, TimeSpan.Zero)));
        Assert.Equal(new DateOnly(2026, 5, 31), SiteCalendar.Utc.DateAt(new DateTimeOffset(2026, 6, 1, 1, 0, 0, TimeSpan.FromHours(10))));
    }

    [Fact]
    public void An_offset_holds_from_its_first_instant_on()
    {
        Assert.Equal(TimeSpan.FromHours(1), Site.OffsetAt(Summer.AddTicks(-1)));
        Assert.Equal(TimeSpan.FromHours(2), Site.OffsetAt(Summer));
        Assert.Equal(TimeSpan.FromHours(2), Site.OffsetAt(Winter.AddTicks(-1)));
        Assert.Equal(TimeSpan.FromHours(1), Site.OffsetAt(Winter));
        Assert.Equal("2026-10-25T02:59:59", Site.ToSite(Winter.AddSeconds(-1)).ToString("s", System.Globalization.CultureInfo.InvariantCulture));
        Assert.Equal("2026-10-25T02:00:00", Site.ToSite(Winter).ToString("s", System.Globalization.CultureInfo.InvariantCulture));
    }

    [Property]
    public void Site_time_is_the_same_instant(int minutes)
    {
        DateTimeOffset at = Winter.AddMinutes(minutes % 1_000_000);
        Assert.Equal(at, Site.ToSite(at));
        Assert.Equal(Site.OffsetAt(at), Site.ToSite(at).Offset);
    }

    // S66 of the trade: the window 01:30 to 02:10 local of the night the clocks go back holds two different 01:45s.
    [Fact]
    public void S66_A_local_time_that_the_clocks_showed_twice_is_refused_and_with_its_offset_it_orders()
    {
        // North shore goes from +02:00 to +01:00 at 03:00 local, so 02:45 was shown at 00:45Z and again at 01:45Z.
        DateTime local = new(2026, 10, 25, 2, 45, 0);
        Assert.False(Site.TryFromLocal(local, out DateTimeOffset instant, out Reason? refusal));
        Assert.Equal(default, instant);
        Assert.Equal(CalendarRules.AmbiguousLocalTime, refusal.Kind);
        Assert.Equal(
            "The site's clocks showed 2026-10-25 02:45:00 twice, first at 2026-10-25T02:45:00+02:00 and again at 2026-10-25T02:45:00+01:00; a time without offset does not say which is meant.",
            refusal.ToString());
        Assert.Equal(CalendarRules.AmbiguousLocalTime.Code, Assert.Single(Assert.Throws<RecordException>(() => Site.FromLocal(local)).Issues).Rule);

        DateTimeOffset first = new(local, TimeSpan.FromHours(2)), second = new(local, TimeSpan.FromHours(1));
        Assert.True(first < second);
        ReadSession session = Night(first, second);
        Assert.Equal((first, second), (session.Find(SessionScene.Tool(1))!.FirstSeen!.Value, session.Find(SessionScene.Tool(1))!.LastSeen!.Value));
        Assert.Equal(2, session.Find(SessionScene.Tool(1))!.LookCount);
    }

    [Fact]
    public void S66_A_local_time_that_the_clocks_never_showed_is_refused_and_its_neighbours_are_not()
    {
        Assert.False(Site.TryFromLocal(new DateTime(2026, 3, 29, 2, 30, 0), out _, out Reason? refusal));
        Assert.Equal(CalendarRules.SkippedLocalTime, refusal.Kind);
        Assert.Equal(Summer.AddTicks(-1), Site.FromLocal(new DateTime(2026, 3, 29, 2, 0, 0).AddTicks(-1)));
        Assert.Equal(Summer, Site.FromLocal(new DateTime(2026, 3, 29, 3, 0, 0)));
        Assert.Equal(TimeSpan.FromHours(2), Site.FromLocal(new DateTime(2026, 10, 25, 1, 59, 59)).Offset);
        Assert.Equal(Winter.AddHours(1), Site.FromLocal(new DateTime(2026, 10, 25, 3, 0, 0)));
        Assert.False(Site.TryFromLocal(new DateTime(1969, 12, 31, 23, 59, 59), out _, out _));
        Assert.False(Site.TryFromLocal(DateTime.MaxValue, out _, out _));
        Assert.False(Site.TryFromLocal(DateTime.MinValue, out _, out _));
    }

    [Property]
    public void A_local_time_of_an_instant_leads_back_to_it_or_is_refused_as_ambiguous(int minutes)
    {
        DateTimeOffset at = Site.ToSite(Winter.AddMinutes(minutes % 500_000));
        bool back = Site.TryFromLocal(at.DateTime, out DateTimeOffset instant, out Reason? refusal);
        bool isTwice = at.DateTime >= new DateTime(2026, 10, 25, 2, 0, 0) && at.DateTime < new DateTime(2026, 10, 25, 3, 0, 0);
        Assert.Equal(!isTwice, back);
        Assert.Equal(isTwice ? CalendarRules.AmbiguousLocalTime : null, refusal?.Kind);
        Assert.True(!back || instant.EqualsExact(at));
    }

    private static ReadSession Night(params DateTimeOffset[] seen)
    {
        var builder = new ReadSessionBuilder(
            new Presentation
            {
                Id = new SessionId("night"),
                Station = SessionScene.R1,
                Kits = [],
                From = new DateTimeOffset(2026, 10, 25, 1, 30, 0, TimeSpan.FromHours(2)),
                ReaderClockOffset = TimeSpan.Zero,
            },
            new SessionPolicy { MaximumWindow = TimeSpan.FromHours(4) });
        foreach (DateTimeOffset at in seen)
        {
            Assert.Equal(ReadPlacement.Accepted, builder.Add(new TagRead(SessionScene.Tool(1), new AntennaPort(1), at)));
        }

        return builder.Close(new DateTimeOffset(2026, 10, 25, 3, 10, 0, TimeSpan.FromHours(1)), TimeSpan.Zero);
    }

    [Fact]
    public void Changes_ascend_and_offsets_are_whole_minutes_up_to_14_hours()
    {
        Assert.Throws<ArgumentException>(() => new SiteCalendar("x", TimeSpan.Zero, [new(Winter, TimeSpan.Zero), new(Summer, TimeSpan.Zero)]));
        Assert.Throws<ArgumentException>(() => new SiteCalendar("x", TimeSpan.Zero, [new(Winter, TimeSpan.Zero), new(Winter, TimeSpan.Zero)]));
        Assert.Throws<ArgumentException>(() => new SiteCalendar(" ", TimeSpan.Zero, []));
        Assert.Throws<ArgumentOutOfRangeException>(() => SiteCalendar.Fixed("x", TimeSpan.FromMinutes(841)));
        Assert.Throws<ArgumentOutOfRangeException>(() => SiteCalendar.Fixed("x", TimeSpan.FromSeconds(90)));
        Assert.Throws<ArgumentOutOfRangeException>(() => SiteCalendar.Fixed("x", TimeSpan.MinValue));
        Assert.Equal(TimeSpan.FromHours(-14), SiteCalendar.Fixed("x", TimeSpan.FromHours(-14)).BaseOffset);
    }

    // Asked about any instant, a status must not fail for the offset of the site.
    [Fact]
    public void The_first_and_the_last_instant_have_a_date_everywhere()
    {
        foreach (int hours in (int[])[-14, 0, 14])
        {
            SiteCalendar site = SiteCalendar.Fixed("x", TimeSpan.FromHours(hours));
            Assert.Equal(DateOnly.MinValue, site.DateAt(DateTimeOffset.MinValue));
            Assert.Equal(DateOnly.MaxValue, site.DateAt(DateTimeOffset.MaxValue));
        }
    }
}
