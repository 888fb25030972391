using System;
using System.Collections.Generic;
using System.Globalization;
using System.Text;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>
/// Counts different persons, the cautious way: ids that differ only by case, spaces, hyphens or other characters that are neither letter nor digit
/// count as one person, so that a typing variant is no second pair of eyes.
/// </summary>
internal static class PersonCount
{
    public static int Of(IEnumerable<PersonId> persons)
    {
        var keys = new HashSet<string>(StringComparer.Ordinal);
        foreach (PersonId person in persons)
        {
            keys.Add(KeyOf(person.Value));
        }

        return keys.Count;
    }

    public static bool AreSame(PersonId one, PersonId other) => string.Equals(KeyOf(one.Value), KeyOf(other.Value), StringComparison.Ordinal);

    private static string KeyOf(string id)
    {
        var key = new StringBuilder(id.Length);
        foreach (Rune rune in id.EnumerateRunes())
        {
            if (Rune.IsLetterOrDigit(rune))
            {
                double digit = Rune.GetNumericValue(rune);
                key.Append(Rune.IsDigit(rune) ? digit.ToString(CultureInfo.InvariantCulture) : Rune.ToUpperInvariant(rune).ToString());
            }
        }

        return key.Length > 0 ? key.ToString() : id;
    }
}
