using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>Finds what people said about a line and still counts; the latest word decides, and what is left out is remarked.</summary>
internal sealed class PeopleCollector
{
    private readonly ReconciliationScope scope;
    private readonly KitManifest manifest;
    private readonly HashSet<string> sharedMarks;

    public PeopleCollector(ReconciliationScope scope, KitManifest manifest)
    {
        this.scope = scope;
        this.manifest = manifest;
        sharedMarks = [.. manifest.Lines
            .Select(static line => line.Tool?.Mark)
            .OfType<string>()
            .GroupBy(static mark => mark, StringComparer.Ordinal)
            .Where(static group => group.Count() > 1)
            .Select(static group => group.Key)];
    }

    /// <summary>
    /// The latest sighting decides: one that saw the tool in another kit, or another mark, is no basis and makes an earlier one void. Of two at one
    /// instant the contrary one decides.
    /// </summary>
    public Sighting? FindSighting(Tool tool, ToolReads reads, List<Reason> remarks, List<PersonId> persons)
    {
        Sighting? latest = null;
        foreach (Sighting sighting in scope.People.SightingsOf(tool.Id))
        {
            if (WhyAside(sighting) is { } aside)
            {
                if (latest is null)
                {
                    remarks.Add(aside);
                }
            }
            else if (WhyContrary(tool, sighting) is not { } contrary)
            {
                latest ??= sighting;
                persons.Add(sighting.By);
            }
            else if (latest is not null && sighting.At < latest.At)
            {
                return latest;
            }
            else
            {
                // What was read after the sighting may have come here since; what was read before it has been contradicted.
                if (reads.LastSeen is { } read && read > sighting.At && contrary.Kind == ReconciliationReasons.SightedInOtherKit)
                {
                    remarks.Add(contrary);
                }
                else
                {
                    reads.Doubts.Add(new IdentityDoubt(contrary, sighting.At));
                }

                persons.Clear();
                return null;
            }
        }

        return latest;
    }

    private Reason? WhyAside(Sighting sighting)
        => !IsFresh(sighting.At) ? TooOld("a sighting", sighting.By, sighting.At)
            : sharedMarks.Contains(sighting.MarkRead) ? new Reason(ReconciliationReasons.SharedMark, ("mark", sighting.MarkRead))
            : null;

    private Reason? WhyContrary(Tool tool, Sighting sighting)
    {
        if (!sighting.InKit.IsEmpty && sighting.InKit != manifest.Id)
        {
            return new Reason(
                ReconciliationReasons.SightedInOtherKit, ("by", sighting.By.Value), ("kit", sighting.InKit.Value), ("at", scope.Time(sighting.At)));
        }

        bool isOthers = tool.Mark is null && manifest.Lines.Any(line => string.Equals(line.Tool?.Mark, sighting.MarkRead, StringComparison.Ordinal));
        return isOthers || (tool.Mark is { } mark && !string.Equals(mark, sighting.MarkRead, StringComparison.Ordinal))
            ? new Reason(
                ReconciliationReasons.OtherMark, ("by", sighting.By.Value), ("read", sighting.MarkRead), ("mark", tool.Mark ?? "none on the manifest"))
            : null;
    }

    /// <summary>The latest count decides; of two at one instant the one that differs from what is expected.</summary>
    /// <param name="line">The line.</param>
    /// <param name="remarks">Takes what is said and not used, and why.</param>
    /// <param name="persons">Takes whoever counted or witnessed it, or an earlier count of the same number that nobody contradicted since.</param>
    public LineCount? FindCount(ManifestLine line, List<Reason> remarks, List<PersonId> persons)
    {
        LineCount? latest = null;
        int before = persons.Count;
        bool isAgreed = true;
        foreach (LineCount count in scope.People.CountsOf(manifest.Id, line.Number))
        {
            if (!IsFresh(count.At))
            {
                remarks.Add(TooOld("a count", count.By, count.At));
            }
            else if (count.Quantity.Unit != line.Expected.Unit)
            {
                remarks.Add(new Reason(
                    ReconciliationReasons.OtherUnit, ("counted", count.Quantity.ToString()), ("by", count.By.Value), ("unit", line.Expected.Unit.Value)));
            }
            else if (count.At < manifest.EffectiveFrom)
            {
                remarks.Add(new Reason(ReconciliationReasons.CountOfOtherRevision, ("by", count.By.Value), ("at", scope.Time(count.At))));
            }
            else if (latest is null || count.Quantity == latest.Quantity)
            {
                latest ??= count;
                persons.AddRange(isAgreed ? [count.By, count.Witness] : []);
            }
            else
            {
                isAgreed = false;
                bool decides = count.At == latest.At && latest.Quantity == line.Expected;
                LineCount other = decides ? latest : count;
                remarks.Add(new Reason(ReconciliationReasons.CountsDiffer, ("by", other.By.Value), ("counted", other.Quantity.ToString())));
                if (decides)
                {
                    persons.RemoveRange(before, persons.Count - before);
                    persons.AddRange([count.By, count.Witness]);
                    latest = count;
                }
            }
        }

        return latest;
    }

    /// <summary>As for counts of a line; an unknown number is a number of its own.</summary>
    public PieceCount? FindPieces(Tool tool, List<Reason> remarks, List<PersonId> persons)
    {
        PieceCount? latest = null;
        int before = persons.Count;
        bool isAgreed = true;
        foreach (PieceCount count in scope.People.PiecesOf(tool.Id))
        {
            if (!IsFresh(count.At))
            {
                remarks.Add(TooOld("a piece count", count.By, count.At));
            }
            else if (latest is null || count.Pieces == latest.Pieces)
            {
                latest ??= count;
                persons.AddRange(isAgreed ? [count.By, count.Witness] : []);
            }
            else
            {
                isAgreed = false;
                bool decides = count.At == latest.At && latest.Pieces == tool.PieceCount;
                PieceCount other = decides ? latest : count;
                string counted = other.Pieces is { } pieces ? new Quantity(pieces, Unit.Piece).ToString() : "an unknown number";
                remarks.Add(new Reason(ReconciliationReasons.CountsDiffer, ("by", other.By.Value), ("counted", counted)));
                if (decides)
                {
                    persons.RemoveRange(before, persons.Count - before);
                    persons.AddRange([count.By, count.Witness]);
                    latest = count;
                }
            }
        }

        return latest;
    }

    private bool IsFresh(DateTimeOffset at) => scope.AsOf - at <= scope.Policy.Inventory.EvidenceAgeMax;

    private Reason TooOld(string what, PersonId by, DateTimeOffset at)
        => new(ReconciliationReasons.TooOld, ("what", what), ("by", by.Value), ("at", scope.Time(at)));
}
