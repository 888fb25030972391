using System;
using System.Globalization;

namespace ToolLedger.Records;

/// <summary>Instants as records keep them: RFC 3339 with an offset, 1970 to 2999, at most 7 decimals of a second.</summary>
internal static class RecordTime
{
    internal const int FirstYear = 1970;
    internal const int LastYear = 2999;

    internal static bool IsInRange(DateTimeOffset value) =>
        value.UtcDateTime.Year is >= FirstYear and <= LastYear && value.Year is >= FirstYear and <= LastYear;

    internal static DateTimeOffset Require(DateTimeOffset value, string parameterName) => IsInRange(value)
        ? value
        : throw new ArgumentOutOfRangeException(parameterName, value, "A time must lie in the years 1970 to 2999.");

    internal static DateTimeOffset? RequireOrNull(DateTimeOffset? value, string parameterName) =>
        value is { } time ? Require(time, parameterName) : null;

    /// <summary>RFC 3339 text: UTC as <c>Z</c>, decimals only as far as they are needed.</summary>
    internal static string ToText(DateTimeOffset value) => value.ToString(
        value.Offset == TimeSpan.Zero ? "yyyy-MM-dd'T'HH:mm:ss.FFFFFFF'Z'" : "yyyy-MM-dd'T'HH:mm:ss.FFFFFFFzzz",
        CultureInfo.InvariantCulture);

    /// <summary>Reads RFC 3339 text; returns null when it is allowed, otherwise what is wrong with it.</summary>
    internal static Reason? Check(string? text, out DateTimeOffset value)
    {
        value = default;
        if (RecordTimeForm.Check(text ?? "") is { } fault)
        {
            return fault;
        }

        // K accepts Z and +hh:mm alike; the presence of one of them was checked above.
        if (!DateTimeOffset.TryParseExact(text, "yyyy-MM-dd'T'HH:mm:ss.FFFFFFFK", CultureInfo.InvariantCulture,
            DateTimeStyles.None, out DateTimeOffset read))
        {
            return new Reason(RecordRules.BadTime, ("found", SafeText.Excerpt(text)));
        }

        if (!IsInRange(read))
        {
            return new Reason(RecordRules.TimeOutOfRange, ("found", SafeText.Excerpt(text)));
        }

        value = read;
        return null;
    }
}
