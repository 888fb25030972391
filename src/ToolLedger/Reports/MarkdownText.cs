using System;
using System.Buffers;
using System.Text;
using ToolLedger.Records;

namespace ToolLedger.Reports;

/// <summary>Text made safe for Markdown: every character that Markdown gives a meaning is written with a backslash, which means the character itself (CommonMark 0.31, 2.4).</summary>
internal static class MarkdownText
{
    private static readonly SearchValues<char> Specials = SearchValues.Create("\\`*_{}[]<>#|~!&$@^");

    internal static string Escape(string text)
    {
        string safe = SafeText.Escape(text);
        var escaped = new StringBuilder(safe.Length + 8);
        int digits = 0;
        while (digits < safe.Length && char.IsAsciiDigit(safe[digits]))
        {
            digits++;
        }

        for (int index = 0; index < safe.Length; index++)
        {
            // A list, a rule or an underline can begin only at the start of a text: "-", "+", "=", or digits with a full stop or a bracket.
            bool startsBlock = index == 0 ? safe[0] is '-' or '+' or '=' : index == digits && (safe[index] is '.' or ')');
            if (startsBlock || Specials.Contains(safe[index]) || (safe[index] == ':' && safe.AsSpan(index).StartsWith("://", StringComparison.Ordinal)))
            {
                escaped.Append('\\');
            }

            escaped.Append(safe[index]);
        }

        return escaped.ToString();
    }
}
