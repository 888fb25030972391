using System;
using System.Collections.Generic;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Presence;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>The figures of a line, and how old and how new the evidence is that it rests on.</summary>
internal sealed class LineEvidenceSearch(ReconciliationScope scope, KitTree tree, ToolReadsCollector collector, SealSearch seals)
{
    private readonly KitOpening? opening = tree.Openings(scope) is [var latest, ..] ? latest : null;

    public LineEvidence Of(in LineFacts facts, ToolReads reads, bool isAccounted, IReadOnlyList<PersonId> persons)
    {
        PresenceEvidence? best = reads.Best;
        DateTimeOffset? oldest = isAccounted ? OldestOf(facts) : null;
        return new LineEvidence
        {
            LiveTagCount = facts.LiveTags.Count,
            Best = best,
            Risk = reads.Judgement?.Risk,
            LookCount = best?.LookCount ?? 0,
            AntennaCount = best?.Antennas.Count ?? 0,
            PassCount = PassesWithLooks(best),
            Strongest = best?.Strongest,
            LooksNotCounted = reads.LooksNotCounted,
            LastSeen = reads.LastSeen ?? reads.LastHeardNearby,
            Counted = facts.Counted ?? (facts.Pieces?.Pieces is { } pieces ? new Quantity(pieces, Unit.Piece) : null),
            By = facts.Sighting?.By ?? facts.Count?.By ?? facts.Pieces?.By,
            At = facts.Sighting?.At ?? facts.Count?.At ?? facts.Pieces?.At,
            SightedIn = facts.Sighting is { InKit.IsEmpty: false } seen ? seen.InKit : null,
            Witness = facts.Sighting is { } sighting ? WitnessOf(sighting) : facts.Count?.Witness ?? facts.Pieces?.Witness,
            History = best?.History,
            Persons = persons,
            KnownShort = facts.KnownShort,
            Balance = facts.Balance,
            Receipt = facts.Receipt,
            LatestAt = LatestOf(facts),
            OldestAt = oldest,
            OpenedSince = opening is { } opened && oldest <= opened.At ? opened.At : null,
        };
    }

    private static int PassesWithLooks(PresenceEvidence? best)
    {
        int count = 0;
        for (int i = 0; i < best?.Passes.Count; i++)
        {
            count += best.Passes[i].LookCount > 0 ? 1 : 0;
        }

        return count;
    }

    private DateTimeOffset? SealCheckedAt(in LineFacts facts) => facts.Seal is null ? null : seals.Check?.At;

    private static PersonId? WitnessOf(Sighting sighting) => sighting.Witness.IsEmpty ? null : sighting.Witness;

    /// <summary>The latest of all that people said of the line; reconstructions are not about what is there now and need no later signature.</summary>
    private DateTimeOffset? LatestOf(in LineFacts facts)
    {
        DateTimeOffset? latest = null;
        foreach (DateTimeOffset? at in (ReadOnlySpan<DateTimeOffset?>)[facts.Sighting?.At, facts.Count?.At, facts.Joining?.At, facts.Pieces?.At, SealCheckedAt(facts), tree.SwappedAt(facts.Line)])
        {
            latest = latest is null || at > latest ? at ?? latest : latest;
        }

        return latest;
    }

    /// <summary>
    /// The newest basis that suffices decides, by its oldest part; a count that the line cannot do without can only make it older.
    /// Null where a basis has no time of its own.
    /// </summary>
    private DateTimeOffset? OldestOf(in LineFacts facts)
    {
        if (facts.Line is SubKitLine { Case: null })
        {
            return OldestInside(facts.Inner);
        }

        DateTimeOffset? oldest = null;
        for (int i = 0; i < facts.Bases.Count; i++)
        {
            DateTimeOffset? at = facts.Bases[i] switch
            {
                AccountingBasis.Sighted => facts.Sighting?.At,
                AccountingBasis.Counted => facts.Count?.At,
                // An open receipt is looked up at the instant of the answer; it stands for then.
                AccountingBasis.Record when facts.Receipt is not null => facts.AsOf,
                AccountingBasis.Record => seals.Check?.At,
                AccountingBasis.Read => FirstLook(facts.BestEvidence),
                _ => null,
            };
            oldest = oldest is null || at > oldest ? at ?? oldest : oldest;
        }

        oldest = facts.Line is not ToolLine && facts.Count is { } count ? Earlier(oldest, count.At) : oldest;
        bool needsPieces = facts.Line.Tool is { } tool && Math.Max(tool.PieceCount, facts.PiecesEstablished) > 1;
        return needsPieces && facts.Pieces is { } pieces ? Earlier(oldest, pieces.At) : oldest;
    }

    /// <summary>A sub-kit without a case is as old as the oldest of what is inside; of no known age if one of that is.</summary>
    private static DateTimeOffset? OldestInside(IReadOnlyList<LineConclusion> inner)
    {
        DateTimeOffset? oldest = null;
        foreach (LineConclusion line in inner)
        {
            if (line.Evidence.OldestAt is not { } at)
            {
                return null;
            }

            oldest = Earlier(oldest, at);
        }

        return oldest;
    }

    private DateTimeOffset? FirstLook(PresenceEvidence? best)
    {
        DateTimeOffset? first = null;
        for (int i = 0; best is not null && i < collector.UsedSessions.Count; i++)
        {
            if (collector.UsedSessions[i].Find(best.Tag) is { FirstSeen: { } seen })
            {
                first = Earlier(first, seen);
            }
        }

        return first;
    }

    private static DateTimeOffset? Earlier(DateTimeOffset? one, DateTimeOffset other) => one is { } first && first < other ? first : other;
}
