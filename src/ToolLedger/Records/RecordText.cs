using System;
using System.Globalization;
using System.Text;

namespace ToolLedger.Records;

/// <summary>Checks text that people will read and sign: printable, of a stated length, no white space at an end.</summary>
/// <remarks>
/// Length counts Unicode scalar values, as <c>maxLength</c> of JSON Schema 2020-12 does. Control, format (bidirectional
/// overrides, zero-width), unassigned and private-use characters, lone surrogates, line and paragraph separators, and what
/// Unicode draws as nothing (fillers, variation selectors) are refused: what is signed must look like what is stored.
/// </remarks>
internal static class RecordText
{
    /// <summary>Returns null when the text is allowed, otherwise what is wrong with it.</summary>
    internal static Reason? Check(string? value, int maxLength)
    {
        if (string.IsNullOrEmpty(value))
        {
            return new Reason(RecordRules.TextEmpty);
        }

        int position = 0;
        for (int i = 0; i < value.Length; position++)
        {
            if (position == maxLength)
            {
                return new Reason(RecordRules.TextTooLong, ("limit", Invariant(maxLength)));
            }

            bool whole = Rune.TryGetRuneAt(value, i, out Rune rune);
            if (!whole || !IsPrintable(rune))
            {
                return new Reason(RecordRules.TextNotPrintable,
                    ("character", "U+" + (whole ? rune.Value : value[i]).ToString("X4", CultureInfo.InvariantCulture)),
                    ("position", Invariant(position + 1)));
            }

            i += rune.Utf16SequenceLength;
        }

        return char.IsWhiteSpace(value[0]) || char.IsWhiteSpace(value[^1]) ? new Reason(RecordRules.TextWhiteSpace) : null;
    }

    /// <summary>The text, or an <see cref="ArgumentException"/> that says what is wrong with it.</summary>
    internal static string Require(string? value, int maxLength, string parameterName)
    {
        ArgumentNullException.ThrowIfNull(value, parameterName);
        return Check(value, maxLength) is { } fault ? throw new ArgumentException(fault.ToString(), parameterName) : value;
    }

    /// <summary>As <see cref="Require"/>, but null is allowed and means "not stated".</summary>
    internal static string? RequireOrNull(string? value, int maxLength, string parameterName) =>
        value is null ? null : Require(value, maxLength, parameterName);

    /// <summary>True if a person sees the character: no control, format, private-use, unassigned or ignorable one, no separator of lines.</summary>
    internal static bool IsPrintable(Rune rune)
    {
        if (rune.IsAscii)
        {
            return rune.Value is >= 0x20 and < 0x7F;
        }

        return Rune.GetUnicodeCategory(rune) is not (UnicodeCategory.Control or UnicodeCategory.Format
            or UnicodeCategory.PrivateUse or UnicodeCategory.OtherNotAssigned or UnicodeCategory.Surrogate
            or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator)
            && !IsIgnorable(rune.Value);
    }

    /// <summary>
    /// Default_Ignorable_Code_Point of Unicode 16, DerivedCoreProperties.txt, as far as the category does not tell (list from
    /// memory): combining grapheme joiner, Hangul fillers, Khmer inherent vowels, Mongolian and other variation selectors.
    /// </summary>
    private static bool IsIgnorable(int character) => character
        is 0x034F or 0x115F or 0x1160 or 0x17B4 or 0x17B5 or (>= 0x180B and <= 0x180F) or 0x3164 or (>= 0xFE00 and <= 0xFE0F)
        or 0xFFA0 or (>= 0xE0100 and <= 0xE01EF);

    private static string Invariant(int value) => value.ToString(CultureInfo.InvariantCulture);
}
