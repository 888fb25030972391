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

    /// <summary>Appends a text in which no character has a meaning in markup (HTML Living Standard, 13.1.2.3 and 13.1.4), and none that is not printable stands by itself.</summary>
    internal static StringBuilder Put(this StringBuilder page, string text)
    {
        string safe = SafeText.Escape(text);
        ReadOnlySpan<char> rest = safe;
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

    /// <summary>A quoted string of a style sheet (CSS Syntax Level 3, 4.3.7): everything but plain letters, digits and a few marks is written as its number, so that nothing ends the string or the element.</summary>
    internal static string StyleString(string text)
    {
        string safe = SafeText.Escape(text);
        var quoted = new StringBuilder("\"");
        int count = 0;
        foreach (Rune rune in safe.EnumerateRunes())
        {
            if (++count > PrintedLength)
            {
                quoted.Append("...");
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
}
