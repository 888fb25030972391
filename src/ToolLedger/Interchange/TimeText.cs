using System;
using System.Buffers.Text;
using ToolLedger.Reads;
using ToolLedger.Records;

namespace ToolLedger.Interchange;

/// <summary>Reads instants from UTF-8 digits, in every spelling that a form allows.</summary>
internal sealed class TimeText
{
    private const int DateLength = 10;
    private const int MinuteLength = 17;
    private const int SecondsLength = 19;
    private const int MaxFractionDigits = 12;

    /// <summary>The first tick of the years that are allowed.</summary>
    internal static readonly long FirstTicks = new DateTime(RecordTime.FirstYear, 1, 1, 0, 0, 0, DateTimeKind.Utc).Ticks;

    /// <summary>The first tick behind them.</summary>
    internal static readonly long EndTicks = new DateTime(RecordTime.LastYear + 1, 1, 1, 0, 0, 0, DateTimeKind.Utc).Ticks;

    private readonly ReadTimeForm _form;
    private readonly SiteCalendar? _calendar;

    // Date, hour and minute of the row before, up to the second colon: nearly always those of this row.
    private readonly byte[] _minute = new byte[MinuteLength];
    private long _minuteTicks;

    internal TimeText(ReadFileOptions options)
    {
        _form = options.TimeForm;
        _calendar = options.Calendar;
    }

    /// <summary>Null when read, otherwise the rule that was broken.</summary>
    internal ReasonKind? Read(ReadOnlySpan<byte> text, out long ticks)
    {
        ReasonKind? fault = _form is ReadTimeForm.Iso8601WithOffset or ReadTimeForm.Iso8601Local ? ReadIso(text, out ticks) : ReadEpoch(text, out ticks);
        return fault ?? (ticks >= FirstTicks && ticks < EndTicks ? null : ReadFileRules.TimeOutOfRange);
    }

    private ReasonKind? ReadIso(ReadOnlySpan<byte> text, out long ticks)
    {
        ticks = 0;
        if (text.Length < SecondsLength || !TryReadMinute(text[..MinuteLength], out long minute))
        {
            return ReadFileRules.BadTime;
        }

        int second = TwoDigits(text, MinuteLength);
        if (second is < 0 or > 59)
        {
            return ReadFileRules.BadTime;
        }

        int at = SecondsLength;
        long fraction = 0;
        if (at < text.Length && text[at] is (byte)'.' or (byte)',')
        {
            at = ReadFraction(text, at + 1, out fraction);
            if (at < 0)
            {
                return ReadFileRules.BadTime;
            }
        }

        ticks = minute + (second * TimeSpan.TicksPerSecond) + fraction;
        return _calendar is null || _form != ReadTimeForm.Iso8601Local ? ReadOffset(text[at..], ref ticks) : ReadLocal(text[at..], _calendar, ref ticks);
    }

    // A time with an offset among times that are declared to have none: one of the two is wrong, and nobody here knows which.
    private static ReasonKind? ReadLocal(ReadOnlySpan<byte> rest, SiteCalendar calendar, ref long ticks)
    {
        if (!rest.IsEmpty)
        {
            long offset = 0;
            return ReadOffset(rest, ref offset) is null ? ReadFileRules.TimeWithOffset : ReadFileRules.BadTime;
        }

        if (calendar.TryFromLocal(new DateTime(ticks, DateTimeKind.Unspecified), out DateTimeOffset instant, out Reason? refusal))
        {
            ticks = instant.UtcTicks;
            return null;
        }

        return refusal.Kind == CalendarRules.AmbiguousLocalTime ? ReadFileRules.AmbiguousLocalTime
            : refusal.Kind == CalendarRules.SkippedLocalTime ? ReadFileRules.SkippedLocalTime
            : ReadFileRules.TimeOutOfRange;
    }

    // RFC 3339 writes +hh:mm; the basic form +hhmm of ISO 8601 is just as clear.
    internal static ReasonKind? ReadOffset(ReadOnlySpan<byte> text, ref long ticks)
    {
        if (text.Length == 1 && (text[0] | 0x20) == 'z')
        {
            return null;
        }

        if (text.IsEmpty)
        {
            return ReadFileRules.TimeWithoutOffset;
        }

        bool colon = text.Length == 6 && text[3] == ':';
        if (text[0] is not ((byte)'+' or (byte)'-') || !(colon || text.Length == 5))
        {
            return ReadFileRules.BadTime;
        }

        int hours = TwoDigits(text, 1);
        int minutes = TwoDigits(text, colon ? 4 : 3);
        if (hours is < 0 or > 14 || minutes is < 0 or > 59 || (hours == 14 && minutes > 0))
        {
            return ReadFileRules.BadTime;
        }

        long offset = ((hours * 60L) + minutes) * TimeSpan.TicksPerMinute;
        ticks += text[0] == '+' ? -offset : offset;
        return null;
    }

    private bool TryReadMinute(ReadOnlySpan<byte> text, out long ticks)
    {
        if (text.SequenceEqual(_minute))
        {
            ticks = _minuteTicks;
            return true;
        }

        int hour = TwoDigits(text, 11);
        int minute = TwoDigits(text, 14);
        if (!TryReadDate(text[..DateLength], out ticks) || text[DateLength] is not ((byte)'T' or (byte)'t' or (byte)' ')
            || hour is < 0 or > 23 || text[13] != ':' || minute is < 0 or > 59 || text[16] != ':')
        {
            return false;
        }

        ticks += ((hour * 60L) + minute) * TimeSpan.TicksPerMinute;
        text.CopyTo(_minute);
        _minuteTicks = ticks;
        return true;
    }

    /// <summary>Reads a date of ten characters as the ticks of its midnight.</summary>
    internal static bool TryReadDate(ReadOnlySpan<byte> text, out long ticks)
    {
        ticks = 0;
        int century = TwoDigits(text, 0);
        int year = TwoDigits(text, 2);
        int month = TwoDigits(text, 5);
        int day = TwoDigits(text, 8);
        if ((century | year | month | day) < 0 || text[4] != '-' || text[7] != '-' || (century | year) == 0 || month is < 1 or > 12
            || day < 1 || day > DateTime.DaysInMonth((century * 100) + year, month))
        {
            return false;
        }

        ticks = new DateTime((century * 100) + year, month, day, 0, 0, 0, DateTimeKind.Utc).Ticks;
        return true;
    }

    // Gives the place behind the digits, or -1.
    private static int ReadFraction(ReadOnlySpan<byte> text, int from, out long ticks)
    {
        ticks = 0;
        int at = from;
        while (at < text.Length && (uint)(text[at] - '0') <= 9)
        {
            ticks = at - from < 7 ? (ticks * 10) + (text[at] - '0') : ticks;
            at++;
        }

        for (int i = at - from; i < 7; i++)
        {
            ticks *= 10;
        }

        return at == from || at - from > MaxFractionDigits ? -1 : at;
    }

    private ReasonKind? ReadEpoch(ReadOnlySpan<byte> text, out long ticks)
    {
        ticks = 0;
        long unit = _form switch
        {
            ReadTimeForm.EpochSeconds => TimeSpan.TicksPerSecond,
            ReadTimeForm.EpochMilliseconds => TimeSpan.TicksPerMillisecond,
            _ => TimeSpan.TicksPerMicrosecond,
        };
        if (text.IsEmpty || text[0] == '+' || !Utf8Parser.TryParse(text, out decimal value, out int used) || used != text.Length)
        {
            return ReadFileRules.BadTime;
        }

        // Beyond any year that is allowed, and before the multiplication can overflow.
        if (value < 0 || value > (EndTicks / unit))
        {
            ticks = -1;
            return null;
        }

        ticks = FirstTicks + (long)decimal.Truncate(value * unit);
        return null;
    }

    private static int TwoDigits(ReadOnlySpan<byte> text, int at)
    {
        uint tens = (uint)(text[at] - '0');
        uint ones = (uint)(text[at + 1] - '0');
        return tens <= 9 && ones <= 9 ? (int)((tens * 10) + ones) : -1;
    }
}
