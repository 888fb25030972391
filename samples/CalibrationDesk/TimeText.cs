using System;
using System.Globalization;

namespace CalibrationDesk;

/// <summary>Times of files and of the command line: RFC 3339, always with an offset.</summary>
internal static class TimeText
{
    internal static bool TryRead(string text, out DateTimeOffset time) =>
        DateTimeOffset.TryParseExact(text, "yyyy-MM-dd'T'HH:mm:ssK", CultureInfo.InvariantCulture, DateTimeStyles.None, out time)
        && (text.EndsWith('Z') || text[^6] is '+' or '-');
}
