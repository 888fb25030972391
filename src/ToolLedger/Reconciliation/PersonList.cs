using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>Different persons in the order they were first named, however often and by however many entries they are.</summary>
internal sealed class PersonList
{
    // So few are compared with each other faster than a set of them is made.
    private const int Few = 8;

    private readonly List<PersonId> persons = [];
    private HashSet<PersonId>? known;

    public void Add(PersonId person)
    {
        if (person.IsEmpty)
        {
            return;
        }

        if (persons.Count == Few)
        {
            known ??= [.. persons];
        }

        if (known is null ? !persons.Contains(person) : known.Add(person))
        {
            persons.Add(person);
        }
    }

    public PersonId[] ToArray() => [.. persons];
}
