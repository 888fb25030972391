using System;
using System.Globalization;
using System.Text;

namespace ToolLedger.Records;

/// <summary>
/// Ids as people type them, the cautious way: what differs only by case, by form of a character (Unicode normalization form KC), by spaces, hyphens or
/// other characters that are neither letter nor digit, or by letters of other scripts that look like Latin capitals is one and the same.
/// </summary>
internal static class FoldedText
{
    // Capitals of the Greek and Cyrillic scripts, and the two special forms of I, beside the Latin capital they look like. The table is ours.
    private const string LookAlikes = "\u0391\u0392\u0395\u0396\u0397\u0399\u039A\u039C\u039D\u039F\u03A1\u03A4\u03A5\u03A7"
        + "\u0410\u0412\u0415\u041A\u041C\u041D\u041E\u0420\u0421\u0422\u0423\u0425\u0405\u0406\u0408\u04AE\u0401\u0407\u0130\u0131";

    private const string Latin = "ABEZHIKMNOPTYX" + "ABEKMHOPCTYXSIJYEIII";

    /// <summary>The same text for all ids that count as one; an id without letter or digit stands for itself.</summary>
    public static string Of(string id)
    {
        var key = new StringBuilder(id.Length);
        string form = Ascii.IsValid(id) ? id : id.Normalize(NormalizationForm.FormKC);
        foreach (Rune rune in form.EnumerateRunes())
        {
            if (Rune.IsDigit(rune))
            {
                key.Append(Rune.GetNumericValue(rune).ToString(CultureInfo.InvariantCulture));
            }
            else if (Rune.IsLetterOrDigit(rune))
            {
                Append(key, Rune.ToUpperInvariant(rune));
            }
        }

        return key.Length > 0 ? key.ToString() : id;
    }

    // Upper case first, then lower: some letters have two small forms and some two capitals.
    private static void Append(StringBuilder key, Rune upper)
    {
        int alike = upper.IsBmp ? LookAlikes.IndexOf((char)upper.Value, StringComparison.Ordinal) : -1;
        Rune lower = Rune.ToLowerInvariant(alike < 0 ? upper : new Rune(Latin[alike]));
        key.Append(lower.Value == '\u00DF' ? "ss" : lower.ToString());
    }
}
