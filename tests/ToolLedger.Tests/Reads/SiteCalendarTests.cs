using System;
using FsCheck.Xunit;
using ToolLedger.Reads;
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
}
