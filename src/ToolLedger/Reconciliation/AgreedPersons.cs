using System;
using System.Collections.Generic;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>
/// Who sighted, counted or witnessed what counts for a line, and whoever said the same before, as far back as nobody said otherwise: two people who
/// count one after the other are two people.
/// </summary>
internal sealed class AgreedPersons(ReconciliationScope scope, KitManifest manifest, PeopleCollector people, SealSearch seals)
{
    /// <param name="facts">The line.</param>
    /// <param name="lastUse">The last job record that counts: a count before it is not the same, whatever its number.</param>
    /// <param name="lastWord">The last word on how the tool broke: a count of pieces before it says nothing.</param>
    public IReadOnlyList<PersonId> Of(in LineFacts facts, DateTimeOffset? lastUse, DateTimeOffset? lastWord)
    {
        if (facts is { Sighting: null, Count: null, Pieces: null, Seal: null })
        {
            return [];
        }

        var persons = new List<PersonId>();
        if (facts is { Sighting: { } sighting, Line.Tool: { } tool })
        {
            Add(persons, sighting.By, sighting.Witness);
            AddSightings(tool, sighting, persons);
        }

        if (facts.Count is { } count)
        {
            Add(persons, count.By, count.Witness);
            Add(persons, facts.Joining?.By ?? default, default);
            AddCounts(count, lastUse, persons);
        }

        if (facts.Pieces is { } pieces)
        {
            Add(persons, pieces.By, pieces.Witness);
            AddPieces(pieces, lastWord, persons);
        }

        Add(persons, facts.Seal is not null && seals.Check is { } check ? check.By : default, default);
        return persons;
    }

    private void AddSightings(Tool tool, Sighting latest, List<PersonId> persons)
    {
        foreach (Sighting earlier in scope.People.SightingsOf(tool.Id))
        {
            if (earlier.At > latest.At || people.IsAside(earlier))
            {
                continue;
            }

            if (people.IsContrary(tool, earlier))
            {
                return;
            }

            Add(persons, earlier.By, earlier.Witness);
        }
    }

    private void AddCounts(LineCount latest, DateTimeOffset? lastUse, List<PersonId> persons)
    {
        foreach (LineCount earlier in latest.Parts > 0 ? [] : scope.People.CountsOf(manifest.Id, latest.LineNumber))
        {
            if (earlier.At > latest.At || !people.IsFresh(earlier.At) || earlier.At < manifest.EffectiveFrom || earlier.Quantity.Unit != latest.Quantity.Unit)
            {
                continue;
            }

            if (earlier.Quantity != latest.Quantity || earlier.Parts > 0 || earlier.At < lastUse)
            {
                return;
            }

            Add(persons, earlier.By, earlier.Witness);
        }
    }

    private void AddPieces(PieceCount latest, DateTimeOffset? lastWord, List<PersonId> persons)
    {
        foreach (PieceCount earlier in scope.People.PiecesOf(latest.Tool))
        {
            if (earlier.At > latest.At || !people.IsFresh(earlier.At) || earlier.Pieces is null)
            {
                continue;
            }

            if (earlier.Pieces != latest.Pieces || earlier.At < lastWord)
            {
                return;
            }

            Add(persons, earlier.By, earlier.Witness);
        }
    }

    private static void Add(List<PersonId> persons, PersonId by, PersonId witness)
    {
        foreach (PersonId person in (ReadOnlySpan<PersonId>)[by, witness])
        {
            if (!person.IsEmpty && !persons.Contains(person))
            {
                persons.Add(person);
            }
        }
    }
}
