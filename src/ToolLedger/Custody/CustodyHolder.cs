using ToolLedger.Records;

namespace ToolLedger.Custody;

/// <summary>Who or what answers: a person who signed, or a place.</summary>
/// <param name="Person">The person; empty if a place answers.</param>
/// <param name="Place">The place; empty if a person answers.</param>
public readonly record struct CustodyHolder(PersonId Person, Place Place)
{
    /// <summary>True if a person answers.</summary>
    public bool IsPerson => !Person.IsEmpty;

    /// <summary>Person or place.</summary>
    /// <returns>Text for people.</returns>
    public override string ToString() => IsPerson ? Person.Value : Place.Value;

    internal static CustodyHolder Of(PersonId person) => new(person, default);

    internal static CustodyHolder Of(Place place) => new(default, place);
}
