using System;
using System.Globalization;
using System.Text;

namespace ToolLedger.Reports;

/// <summary>Finds words of right-to-left scripts in a text, so that a page can isolate them: without that the bidirectional algorithm (UAX #9, rules W2 to N2) moves the numbers and marks beside them.</summary>
/// <remarks>
/// Controls of direction need no isolation, since they are shown by their numbers. What stands between two such words and is no letter (spaces, digits, hyphens, apostrophes) belongs to the run, so that
/// a name of several words reads as one; anything else ends it, so that no two names of a list change places.
/// </remarks>
internal static class RightToLeft
{
    // All scripts written from right to left stand from here on (DerivedBidiClass.txt of Unicode 16, from memory).
    private const char FirstBlock = '\u0590';

    /// <summary>The next run: where it starts and its length; a start of -1 where there is none.</summary>
    internal static (int Start, int Length) NextRun(ReadOnlySpan<char> text)
    {
        // Most texts hold none.
        int at = text.IndexOfAnyInRange(FirstBlock, char.MaxValue);
        int start = -1, end = -1;
        while (at >= 0 && at < text.Length)
        {
            Rune.DecodeFromUtf16(text[at..], out Rune rune, out int used);
            at += used;
            if (IsRightToLeft(rune.Value))
            {
                start = start < 0 ? at - used : start;
                end = at;
            }
            else if (start >= 0 && IsMarkOn(rune, at - used == end))
            {
                end = at;
            }
            else if (start >= 0 && !IsBetween(rune.Value))
            {
                break;
            }
        }

        return (start, end - start);
    }

    private static bool IsMarkOn(Rune rune, bool isBehindRun) => isBehindRun && Rune.GetUnicodeCategory(rune) is UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark;

    private static bool IsBetween(int value) => value is ' ' or '-' or '\'' or '\u2019' or (>= '0' and <= '9');

    /// <summary>Blocks whose characters are of class R or AL by default: Hebrew to Arabic Extended-A, the presentation forms, and the two ranges of the supplementary plane.</summary>
    private static bool IsRightToLeft(int value) => value
        is (>= FirstBlock and <= 0x08FF) or (>= 0xFB1D and <= 0xFDFF) or (>= 0xFE70 and <= 0xFEFE) or (>= 0x10800 and <= 0x10FFF) or (>= 0x1E800 and <= 0x1EFFF);
}
