using System;
using System.Globalization;

namespace ToolLedger.Records;

/// <summary>Lengths of time as people say them: days, hours and minutes; seconds below an hour.</summary>
internal static class ElapsedText
{
    internal static string Of(TimeSpan elapsed)
    {
        string sign = elapsed < TimeSpan.Zero ? "-" : "";
        TimeSpan length = elapsed.Duration();
        return length < TimeSpan.FromHours(1)
            ? string.Create(CultureInfo.InvariantCulture, $"{sign}{length.Minutes} min {length.Seconds:00} s")
            : length < TimeSpan.FromDays(1)
                ? string.Create(CultureInfo.InvariantCulture, $"{sign}{length.Hours} h {length.Minutes:00} min")
                : string.Create(CultureInfo.InvariantCulture, $"{sign}{length.Days} d {length.Hours} h {length.Minutes:00} min");
    }
}
