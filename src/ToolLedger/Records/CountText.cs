using System.Globalization;

namespace ToolLedger.Records;

/// <summary>Numbers of things in English, for the one line that a log or a debugger prints.</summary>
internal static class CountText
{
    /// <summary>For example "1 entry" or "3 entries".</summary>
    /// <param name="count">How many.</param>
    /// <param name="one">The word for one.</param>
    /// <param name="many">The word for any other number; null (the default) for that of one with an s.</param>
    public static string Of(long count, string one, string? many = null) => count.ToString(CultureInfo.InvariantCulture) + " " + (count == 1 ? one : many ?? one + "s");
}
