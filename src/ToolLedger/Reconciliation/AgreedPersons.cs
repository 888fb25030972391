using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>
/// Who sighted, counted or witnessed what counts for a line, and whoever said the same before, as far back as nobody said otherwise: two people who
/// count one after the other are two people, unless the kit was opened in between.
/// </summary>
internal sealed class AgreedPersons(ReconciliationScope scope, KitTree tree, PeopleCollector people, SealSearch seals)
{
    private readonly KitManifest manifest = tree.Manifest;
    private readonly DateTimeOffset? opened = LastOpening(scope, tree);

    /// <param name="facts">The line.</param>
    /// <param name="lastUse">The last job record that counts: a count before it is not the same, whatever its number.</param>
    /// <param name="lastWord">The last word on how the tool broke: a count of pieces before it says nothing.</param>
    public IReadOnlyList<PersonId> Of(in LineFacts facts, DateTimeOffset? lastUse, DateTimeOffset? lastWord)
    {
        if (facts is { Sighting: null, Count: null, Pieces: null, Seal: null, Receipt: null })
        {
            return [];
        }

        var persons = new PersonList();
        if (facts is { Sighting: { } sighting, Line.Tool: { } tool })
        {
            Add(persons, sighting.By, sighting.Witness);
            AddSightings(tool, sighting, persons);
        }

        if (facts.Count is { } count)
        {
            Add(persons, count.By, count.Witness);
            Add(persons, facts.Joining?.By ?? default, default);
            AddCounts(count, facts.Counted!.Value.Amount, lastUse, persons);
        }

        if (facts.Pieces is { } pieces)
        {
            Add(persons, pieces.By, pieces.Witness);
            AddPieces(pieces, lastWord, persons);
        }

        Add(persons, facts.Receipt?.By ?? default, facts.Receipt?.ReceivedBy?.By ?? default);
        Add(persons, facts.Seal is not null && seals.Check is { } check ? check.By : default, default);
        return persons.ToArray();
    }

    private static DateTimeOffset? LastOpening(ReconciliationScope scope, KitTree tree)
    {
        DateTimeOffset? own = tree.Subject.Openings(scope) is [var opening, ..] ? opening.At : null;
        DateTimeOffset? outer = scope.HoldersOf(tree.Subject.Manifest.Id)
            .Select(scope.People.OpeningsOf)
            .Where(static openings => openings.Count > 0)
            .Max(static openings => (DateTimeOffset?)openings[0].At);
        return own > outer || outer is null ? own : outer;
    }

    private void AddSightings(Tool tool, Sighting latest, PersonList persons)
    {
        foreach (Sighting earlier in scope.People.SightingsOf(tool.Id))
        {
            if (earlier.At > latest.At || !people.IsFresh(earlier.At))
            {
                continue;
            }

            if (earlier.At <= opened || people.IsContrary(tool, earlier))
            {
                return;
            }

            if (people.IsAside(earlier))
            {
                continue;
            }

            Add(persons, earlier.By, earlier.Witness);
        }
    }

    /// <summary>Whoever counted items and whoever counted parts that make as many counted the same.</summary>
    private void AddCounts(LineCount latest, decimal counted, DateTimeOffset? lastUse, PersonList persons)
    {
        foreach (LineCount earlier in scope.People.CountsOf(manifest.Id, latest.LineNumber))
        {
            if (earlier.At > latest.At || !people.IsFresh(earlier.At) || earlier.At < manifest.EffectiveFrom || earlier.Quantity.Unit != latest.Quantity.Unit)
            {
                continue;
            }

            if (earlier.At <= opened || people.AmountOf(earlier, counted, out JoiningStatement? joining) != counted || earlier.At < lastUse)
            {
                return;
            }

            Add(persons, earlier.By, earlier.Witness);
            Add(persons, joining?.By ?? default, default);
        }
    }

    private void AddPieces(PieceCount latest, DateTimeOffset? lastWord, PersonList persons)
    {
        foreach (PieceCount earlier in scope.People.PiecesOf(latest.Tool))
        {
            if (earlier.At > latest.At || !people.IsFresh(earlier.At) || earlier.Pieces is null)
            {
                continue;
            }

            if (earlier.At <= opened || earlier.Pieces != latest.Pieces || earlier.At < lastWord)
            {
                return;
            }

            Add(persons, earlier.By, earlier.Witness);
        }
    }

    private static void Add(PersonList persons, PersonId by, PersonId witness)
    {
        persons.Add(by);
        persons.Add(witness);
    }
}
