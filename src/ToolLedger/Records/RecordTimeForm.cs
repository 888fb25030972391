using System;
using System.Globalization;

namespace ToolLedger.Records;

/// <summary>Tells a text that is no time from a time with a part out of range, so that the message helps.</summary>
internal static class RecordTimeForm
{
    private const int MaxDecimalCount = 7;
    private const int MaxOffsetMinutes = 14 * 60; // what DateTimeOffset can hold; no place on Earth keeps more

    /// <summary>Returns null for RFC 3339 text whose every part is in range, otherwise what is wrong with it.</summary>
    internal static Reason? Check(string text)
    {
        // A longer year is of no form of RFC 3339, but it is plain what was meant.
        int yearLength = Math.Max(text.IndexOf('-', StringComparison.Ordinal), 0);
        ReadOnlySpan<char> rest = text.AsSpan(yearLength);
        if (yearLength is < 4 or > 9 || !IsShape(text.AsSpan(0, yearLength), new string('0', yearLength))
            || rest.Length < 15 || !IsShape(rest[..15], "-00-00T00:00:00"))
        {
            return Fault(RecordRules.BadTime, text);
        }

        ReadOnlySpan<char> tail = rest[15..];
        int decimalCount = 0;
        if (tail.StartsWith('.'))
        {
            int end = tail[1..].IndexOfAnyExceptInRange('0', '9');
            decimalCount = end < 0 ? tail.Length - 1 : end;
            tail = tail[(decimalCount + 1)..];
            if (decimalCount == 0)
            {
                return Fault(RecordRules.BadTime, text);
            }
        }

        bool isUtc = tail is "Z";
        if (!isUtc && (tail.Length != 6 || tail[0] is not ('+' or '-') || !IsShape(tail[1..], "00:00")))
        {
            return Fault(tail.ContainsAnyExceptInRange('+', ':') ? RecordRules.BadTime : RecordRules.TimeWithoutOffset, text);
        }

        return CheckParts(text, yearLength, decimalCount, isUtc ? 0 : (60 * Number(tail, 1)) + Number(tail, 4), isUtc ? 0 : Number(tail, 4));
    }

    private static Reason? CheckParts(string text, int yearLength, int decimalCount, int offsetMinutes, int minutesOfOffset)
    {
        ReadOnlySpan<char> rest = text.AsSpan(yearLength);
        int year = int.Parse(text.AsSpan(0, yearLength), NumberStyles.None, CultureInfo.InvariantCulture);
        if (year is < RecordTime.FirstYear or > RecordTime.LastYear)
        {
            return Fault(RecordRules.TimeOutOfRange, text);
        }

        if (yearLength > 4)
        {
            return Fault(RecordRules.BadTime, text);
        }

        int month = Number(rest, 1);
        if (month is < 1 or > 12)
        {
            return Part(text, "month", "01 to 12");
        }

        int dayCount = DateTime.DaysInMonth(year, month);
        if (Number(rest, 4) is var day && (day < 1 || day > dayCount))
        {
            return Part(text, "day", string.Create(CultureInfo.InvariantCulture, $"01 to {dayCount}"));
        }

        return Number(rest, 7) > 23 ? Part(text, "hour", "00 to 23")
            : Number(rest, 10) > 59 ? Part(text, "minute", "00 to 59")
            : Number(rest, 13) > 59 ? Part(text, "second", "00 to 59; a leap second is not kept")
            : decimalCount > MaxDecimalCount ? Part(text, "fraction of a second", "at most 7 decimals")
            : offsetMinutes > MaxOffsetMinutes || minutesOfOffset > 59 ? Part(text, "offset from UTC", "-14:00 to +14:00")
            : null;
    }

    /// <summary>Whether digits stand where the shape has 0, and its own characters elsewhere.</summary>
    private static bool IsShape(ReadOnlySpan<char> text, ReadOnlySpan<char> shape)
    {
        for (int i = 0; i < text.Length; i++)
        {
            if (shape[i] == '0' ? !char.IsAsciiDigit(text[i]) : text[i] != shape[i])
            {
                return false;
            }
        }

        return true;
    }

    private static int Number(ReadOnlySpan<char> text, int at) => (10 * (text[at] - '0')) + (text[at + 1] - '0');

    private static Reason Fault(ReasonKind kind, string text) => new(kind, ("found", SafeText.Excerpt(text)));

    private static Reason Part(string text, string part, string range) =>
        new(RecordRules.TimePartOutOfRange, ("part", part), ("found", SafeText.Excerpt(text)), ("range", range));
}
