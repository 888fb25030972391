using System;
using System.Collections.Generic;
using System.Globalization;
using System.Text;

namespace ToolLedger.Reports;

/// <summary>How many columns of a terminal or a fixed-pitch print a text takes, and how it is broken into lines.</summary>
/// <remarks>Wide characters (the East Asian scripts and most pictographs) take two columns and combining marks none; the ranges follow the idea of UAX #11 from memory
/// and need only be near enough: no row has anything after its free text, so a wrong guess moves no column.</remarks>
internal static class TextColumns
{
    /// <summary>A space at which no line is broken; printed as a space. Escaped text holds no such character of its own.</summary>
    internal const char BoundSpace = '\u001F';

    internal static int Width(ReadOnlySpan<char> text)
    {
        int width = 0;
        while (!text.IsEmpty)
        {
            Rune.DecodeFromUtf16(text, out Rune rune, out int used);
            width += Width(rune);
            text = text[used..];
        }

        return width;
    }

    /// <summary>Breaks a text at white space into lines of at most so many columns; a word that is longer is broken between characters.</summary>
    internal static IEnumerable<string> Wrap(string text, int width)
    {
        var line = new StringBuilder();
        int used = 0;
        foreach (string word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            int needed = Width(word);
            if (used > 0 && used + 1 + needed > width)
            {
                yield return Take(line, ref used);
            }

            if (used > 0)
            {
                line.Append(' ');
                used++;
            }

            foreach (string part in Parts(word, width))
            {
                int partWidth = Width(part);
                if (used + partWidth > width && used > 0)
                {
                    yield return Take(line, ref used);
                }

                line.Append(part);
                used += partWidth;
            }
        }

        if (line.Length > 0)
        {
            yield return Take(line, ref used);
        }
    }

    private static string Take(StringBuilder line, ref int used)
    {
        string text = line.Replace(BoundSpace, ' ').ToString();
        line.Clear();
        used = 0;
        return text;
    }

    /// <summary>The word in one part if it fits, else in text elements, so that no character loses its marks.</summary>
    private static IEnumerable<string> Parts(string word, int width)
    {
        if (Width(word) <= width)
        {
            yield return word;
            yield break;
        }

        for (int index = 0; index < word.Length;)
        {
            int length = StringInfo.GetNextTextElementLength(word.AsSpan(index));
            yield return word.Substring(index, length);
            index += length;
        }
    }

    private static int Width(Rune rune) => rune.Value == BoundSpace ? 1 : Rune.GetUnicodeCategory(rune)
        is UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark or UnicodeCategory.Format or UnicodeCategory.Control
        ? 0
        : IsWide(rune.Value) ? 2 : 1;

    private static bool IsWide(int value) => value
        is (>= 0x1100 and <= 0x115F) or (>= 0x2E80 and <= 0x303E) or (>= 0x3041 and <= 0xA4CF) or (>= 0xAC00 and <= 0xD7A3)
        or (>= 0xF900 and <= 0xFAFF) or (>= 0xFE30 and <= 0xFE6F) or (>= 0xFF00 and <= 0xFF60) or (>= 0xFFE0 and <= 0xFFE6)
        or (>= 0x1F300 and <= 0x1F64F) or (>= 0x1F900 and <= 0x1F9FF) or (>= 0x20000 and <= 0x3FFFD);
}
