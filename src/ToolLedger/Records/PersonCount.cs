using System;
using System.Collections.Generic;

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

    public static bool AreSame(PersonId one, PersonId other) => string.Equals(FoldedText.Of(one.Value), FoldedText.Of(other.Value), StringComparison.Ordinal);
}
