using System;
using System.Globalization;
using System.Text;

namespace ToolLedger.Records;

/// <summary>Text from outside made safe to print: nothing that moves a cursor, hides or reorders characters.</summary>
internal static class SafeText
{
    /// <summary>Characters kept of a value quoted in an issue.</summary>
    internal const int ExcerptLength = 80;

    /// <summary>Writes every character that is not printable as <c>\u{hex}</c>.</summary>
    internal static string Escape(string text)
    {
        int clean = CleanLength(text);
        if (clean == text.Length)
        {
            return text;
        }

        var escaped = new StringBuilder(text.Length + 16).Append(text, 0, clean);
        for (int i = clean; i < text.Length;)
        {
            bool whole = Rune.TryGetRuneAt(text, i, out Rune rune);
            int length = whole ? rune.Utf16SequenceLength : 1;
            if (whole && RecordText.IsPrintable(rune))
            {
                escaped.Append(text, i, length);
            }
            else
            {
                escaped.Append(CultureInfo.InvariantCulture, $"\\u{{{(whole ? rune.Value : text[i]):X4}}}");
            }

            i += length;
        }

        return escaped.ToString();
    }

    /// <summary>At most 80 characters of the text; a longer one ends in its length, so that the cut shows.</summary>
    internal static string Excerpt(string? text)
    {
        if (text is null || text.Length <= ExcerptLength)
        {
            return text ?? "";
        }

        // Never cut a surrogate pair in two.
        int length = char.IsHighSurrogate(text[ExcerptLength - 1]) ? ExcerptLength - 1 : ExcerptLength;
        return string.Create(CultureInfo.InvariantCulture, $"{text.AsSpan(0, length)}... ({text.Length} characters)");
    }

    private static int CleanLength(string text)
    {
        int i = 0;
        while (i < text.Length && Rune.TryGetRuneAt(text, i, out Rune rune) && RecordText.IsPrintable(rune))
        {
            i += rune.Utf16SequenceLength;
        }

        return i;
    }
}
