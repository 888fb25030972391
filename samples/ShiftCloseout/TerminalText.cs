using System.Globalization;
using System.Text;

namespace ShiftCloseout;

/// <summary>Makes text safe for a terminal: what a file holds must not move the cursor, change colours or turn the writing direction.</summary>
internal static class TerminalText
{
    /// <summary>Replaces control, format, surrogate and unassigned characters by \u and four hexadecimal digits; line feeds stay.</summary>
    public static string Plain(string text)
    {
        StringBuilder? safe = null;
        for (int i = 0; i < text.Length; i++)
        {
            bool isPair = char.IsHighSurrogate(text[i]) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]);
            if (text[i] == '\n' || !IsUnsafe(CharUnicodeInfo.GetUnicodeCategory(text, i)))
            {
                safe?.Append(text, i, isPair ? 2 : 1);
            }
            else
            {
                safe ??= new StringBuilder(text, 0, i, text.Length + 16);
                safe.Append(CultureInfo.InvariantCulture, $"\\u{(int)text[i]:X4}");
                safe.Append(isPair ? string.Create(CultureInfo.InvariantCulture, $"\\u{(int)text[i + 1]:X4}") : "");
            }

            i += isPair ? 1 : 0;
        }

        return safe?.ToString() ?? text;
    }

    /// <summary>As <see cref="Plain"/>, and line feeds are replaced too: what is inserted into a message cannot pass for a message of its own.</summary>
    public static string OneLine(string text) => Plain(text).Replace("\n", "\\u000A", System.StringComparison.Ordinal);

    private static bool IsUnsafe(UnicodeCategory category) => category
        is UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.Surrogate or UnicodeCategory.OtherNotAssigned
        or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator;
}
