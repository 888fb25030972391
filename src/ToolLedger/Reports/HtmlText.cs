using System;
using System.Buffers;
using System.Globalization;
using System.Text;
using ToolLedger.Records;

namespace ToolLedger.Reports;

/// <summary>Text made safe for HTML, in an element or in a quoted attribute, and for a string of a style sheet.</summary>
internal static class HtmlText
{
    private const int PrintedLength = 90;
    private static readonly SearchValues<char> Specials = SearchValues.Create("&<>\"'");

    /// <summary>Appends a text to the content of an element. No character has a meaning in markup (HTML Living Standard, 13.1.2.3 and 13.1.4), none that is not printable stands by itself, and words
    /// written from right to left stand in an element of their own (4.5.24, bdi), so that they move nothing beside them.</summary>
    internal static StringBuilder Put(this StringBuilder page, string text) => page.PutIsolated(SafeText.Escape(text), "<bdi>", "</bdi>");

    /// <summary>The same for a quoted attribute or a title, which can hold no element: such words stand between the characters FIRST STRONG ISOLATE and POP DIRECTIONAL ISOLATE (UAX #9, 2.4).</summary>
    internal static StringBuilder PutAttribute(this StringBuilder page, string text) => page.PutIsolated(SafeText.Escape(text), "&#8296;", "&#8297;");

    private static StringBuilder PutIsolated(this StringBuilder page, ReadOnlySpan<char> rest, string open, string close)
    {
        for ((int start, int length) = RightToLeft.NextRun(rest); start >= 0; (start, length) = RightToLeft.NextRun(rest))
        {
            page.PutEscaped(rest[..start]).Append(open).PutEscaped(rest.Slice(start, length)).Append(close);
            rest = rest[(start + length)..];
        }

        return page.PutEscaped(rest);
    }

    private static StringBuilder PutEscaped(this StringBuilder page, ReadOnlySpan<char> rest)
    {
        for (int at = rest.IndexOfAny(Specials); at >= 0; at = rest.IndexOfAny(Specials))
        {
            page.Append(rest[..at]).Append(rest[at] switch
            {
                '&' => "&amp;",
                '<' => "&lt;",
                '>' => "&gt;",
                '"' => "&quot;",
                _ => "&#39;",
            });
            rest = rest[(at + 1)..];
        }

        return page.Append(rest);
    }

    /// <summary>A quoted string of a style sheet (CSS Syntax Level 3, 4.3.7): everything but plain letters, digits and a few marks is written as its number, so that nothing ends the string or the element. Words written from right to left are isolated.</summary>
    internal static string StyleString(string text)
    {
        string safe = Isolated(SafeText.Escape(text));
        var quoted = new StringBuilder("\"");
        int count = 0;
        foreach (Rune rune in safe.EnumerateRunes())
        {
            if (++count > PrintedLength)
            {
                // A cut inside an isolate would leave it open; a pop that closes none does nothing (UAX #9, X6a).
                quoted.Append("\\2069 ...");
                break;
            }

            if (rune.IsAscii && (char.IsAsciiLetterOrDigit((char)rune.Value) || rune.Value is ' ' or '.' or ',' or ':' or '-' or '+' or '(' or ')'))
            {
                quoted.Append((char)rune.Value);
            }
            else
            {
                quoted.Append(CultureInfo.InvariantCulture, $"\\{rune.Value:x} ");
            }
        }

        return quoted.Append('"').ToString();
    }

    private static string Isolated(ReadOnlySpan<char> rest)
    {
        var isolated = new StringBuilder(rest.Length);
        for ((int start, int length) = RightToLeft.NextRun(rest); start >= 0; (start, length) = RightToLeft.NextRun(rest))
        {
            isolated.Append(rest[..start]).Append('\u2068').Append(rest.Slice(start, length)).Append('\u2069');
            rest = rest[(start + length)..];
        }

        return isolated.Append(rest).ToString();
    }
}
