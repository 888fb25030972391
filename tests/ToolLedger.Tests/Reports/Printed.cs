using System;

namespace ToolLedger.Tests.Reports;

/// <summary>Looks into a printed report.</summary>
internal static class Printed
{
    public static string Between(string text, string from, string to)
    {
        int start = text.IndexOf(from, StringComparison.Ordinal);
        return text[start..text.IndexOf(to, start, StringComparison.Ordinal)];
    }

    public static string Unwrapped(string text) => string.Join(' ', text.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries));

    public static int Count(string text, string part) => text.Split(part).Length - 1;
}
