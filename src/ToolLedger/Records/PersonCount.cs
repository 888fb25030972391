using System;
using System.Collections.Generic;
using System.Text;

namespace ToolLedger.Records;

/// <summary>Counts different persons, the cautious way: ids that are one when folded count as one person, so that a typing variant is no second pair of eyes.</summary>
internal static class PersonCount
{
    public static int Of(IEnumerable<PersonId> persons)
    {
        var keys = new HashSet<string>(StringComparer.Ordinal);
        foreach (PersonId person in persons)
        {
            keys.Add(FoldedText.Of(person.Value));
        }

        return keys.Count;
    }

    public static bool AreSame(PersonId one, PersonId other)
    {
        string left = one.Value, right = other.Value;
        return string.Equals(left, right, StringComparison.Ordinal)
            || (Ascii.IsValid(left) && Ascii.IsValid(right) && HasLetterOrDigit(left) && HasLetterOrDigit(right)
                ? AreSameAscii(left, right)
                : string.Equals(FoldedText.Of(left), FoldedText.Of(right), StringComparison.Ordinal));
    }

    private static bool HasLetterOrDigit(string text)
    {
        foreach (char c in text)
        {
            if (char.IsAsciiLetterOrDigit(c))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>What the folded forms of plain ids would say, without making them.</summary>
    private static bool AreSameAscii(string left, string right)
    {
        int j = 0;
        foreach (char c in left)
        {
            if (!char.IsAsciiLetterOrDigit(c))
            {
                continue;
            }

            j = Next(right, j);
            if (j == right.Length || char.ToLowerInvariant(right[j]) != char.ToLowerInvariant(c))
            {
                return false;
            }

            j++;
        }

        return Next(right, j) == right.Length;
    }

    private static int Next(string text, int index)
    {
        while (index < text.Length && !char.IsAsciiLetterOrDigit(text[index]))
        {
            index++;
        }

        return index;
    }
}
