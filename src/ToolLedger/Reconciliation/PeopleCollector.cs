using System;
using System.Collections.Generic;
using System.Globalization;
using ToolLedger.Custody;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>Finds what people said about a line and still counts; the latest word decides, and what is left out is remarked.</summary>
internal sealed class PeopleCollector
{
    private readonly ReconciliationScope scope;
    private readonly KitTree tree;

    /// <param name="scope">What people said.</param>
    /// <param name="tree">The part of the kit whose lines are looked at. Marks are told apart within the whole kit.</param>
    public PeopleCollector(ReconciliationScope scope, KitTree tree)
    {
        this.scope = scope;
        this.tree = tree;
    }

    /// <summary>
    /// The latest sighting decides: one that saw the tool in another kit or somewhere without a kit, or another mark, is no basis and makes an earlier one void.
    /// Of two at one instant the contrary one decides.
    /// </summary>
    public Sighting? FindSighting(Tool tool, ToolReads reads, ToolReceipt? receipt, List<Reason> remarks)
    {
        IReadOnlyList<Sighting> sightings = scope.People.SightingsOf(tool.Id);

        // All of one instant are asked once, so that many of them cost as much as they are.
        DateTimeOffset? asked = null;
        for (int i = 0; i < sightings.Count; i++)
        {
            Sighting sighting = sightings[i];
            Reason? contrary = sighting.At == asked ? null : WhyContrary(tool, sightings, i);
            asked = sighting.At;
            if (!IsFresh(sighting.At))
            {
                remarks.Add(TooOld("a sighting", sighting.By, sighting.At));
            }
            else if (ReceiptSearch.IsWithBorrower(receipt, sighting))
            {
                remarks.Add(new Reason(CustodyReasons.SightedWithBorrower,
                    ("by", sighting.By.Value), ("at", scope.Time(sighting.At)), ("kit", sighting.InKit.Value), ("receipt", receipt!.Id.Value)));
                return null;
            }
            else if (contrary is not null)
            {
                Contradict(sighting, contrary, reads, remarks);
                return null;
            }
            else if (tree.CountOfMark(sighting.MarkRead) > 1 && !IsToldApart(sighting))
            {
                remarks.Add(new Reason(ReconciliationReasons.SharedMark, ("mark", sighting.MarkRead)));
            }
            else if (scope.Policy.Inventory.SightingWitnessNeeded && IsAlone(sighting.By, sighting.Witness))
            {
                remarks.Add(WitnessNeeded("a sighting", sighting.By, sighting.At));
            }
            else
            {
                if (tree.CountOfMark(sighting.MarkRead) > 1)
                {
                    remarks.Add(new Reason(PeopleReasons.AlsoIdentified, ("mark", sighting.MarkRead), ("also", sighting.AlsoIdentifiedBy!)));
                }

                return sighting;
            }
        }

        return null;
    }

    private static void Contradict(Sighting sighting, Reason contrary, ToolReads reads, List<Reason> remarks)
    {
        if (contrary.Kind == ReconciliationReasons.SightedOutside)
        {
            // It says who the tool is, and not that it is back: identity and place stay as open as they were.
            remarks.Add(contrary);
            reads.SeenOutside = sighting;
        }
        else if (reads.LastSeen is { } read && read > sighting.At && contrary.Kind == ReconciliationReasons.SightedInOtherKit)
        {
            // What was read after the sighting may have come here since; what was read before it has been contradicted.
            remarks.Add(contrary);
        }
        else
        {
            reads.AddDoubt(new IdentityDoubt(contrary, sighting.At));
        }
    }

    public bool IsShared(Tool tool) => tool.Mark is { } mark && tree.CountOfMark(mark) > 1;

    /// <summary>Why a count settles nothing although it may contradict, or null.</summary>
    public Reason? WhyUnwitnessed(string what, PersonId by, PersonId witness, DateTimeOffset at)
        => IsUnwitnessed(by, witness) ? WitnessNeeded(what, by, at) : null;

    private bool IsUnwitnessed(PersonId by, PersonId witness) => scope.Policy.Inventory.CountWitnessNeeded && IsAlone(by, witness);

    private static bool IsAlone(PersonId by, PersonId witness) => witness.IsEmpty || PersonCount.AreSame(by, witness);

    private bool IsToldApart(Sighting sighting) => scope.Policy.Inventory.FurtherIdentificationAccepted && sighting.AlsoIdentifiedBy is not null;

    private Reason WitnessNeeded(string what, PersonId by, DateTimeOffset at)
        => new(PeopleReasons.WitnessNeeded, ("what", what), ("by", by.Value), ("at", scope.Time(at)));

    /// <summary>Why a sighting, or one of the same instant behind it, speaks against the tool being here; one that raises a conflict before one that merely leaves the line open.</summary>
    private Reason? WhyContrary(Tool tool, IReadOnlyList<Sighting> sightings, int index)
    {
        Reason? outside = null;
        for (int i = index; i < sightings.Count && sightings[i].At == sightings[index].At; i++)
        {
            Reason? contrary = WhyContrary(tool, sightings[i]);
            if (contrary is not null && contrary.Kind != ReconciliationReasons.SightedOutside)
            {
                return contrary;
            }

            outside ??= contrary;
        }

        return outside;
    }

    private Reason? WhyContrary(Tool tool, Sighting sighting)
    {
        Reason? elsewhere = ElsewhereSearch.WhyElsewhere(scope, tree, sighting);
        if (elsewhere is not null && elsewhere.Kind != ReconciliationReasons.SightedOutside)
        {
            return elsewhere;
        }

        bool isOthers = tool.Mark is null && tree.CountOfMark(sighting.MarkRead) > 0;
        return isOthers || (tool.Mark is { } mark && !string.Equals(mark, sighting.MarkRead, StringComparison.Ordinal))
            ? new Reason(
                ReconciliationReasons.OtherMark, ("by", sighting.By.Value), ("read", sighting.MarkRead), ("mark", tool.Mark ?? "none on the manifest"))
            : elsewhere;
    }

    /// <summary>The latest count decides; of two at one instant one that would not settle the line.</summary>
    public LineCount? FindCount(ManifestLine line, decimal settled, List<Reason> remarks, out JoiningStatement? joining)
    {
        joining = null;
        LineCount? latest = null;
        bool isAgreed = true;
        foreach (LineCount count in scope.People.CountsOf(tree.Manifest.Id, line.Number))
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
            else if (count.At < tree.Manifest.EffectiveFrom)
            {
                remarks.Add(new Reason(ReconciliationReasons.CountOfOtherRevision, ("by", count.By.Value), ("at", scope.Time(count.At))));
            }
            else if (latest is null)
            {
                latest = count;
            }
            else if (count.Quantity == latest.Quantity && count.Parts == latest.Parts)
            {
                // One who counts the same again alone takes nothing from those who counted it together.
                latest = isAgreed && IsUnwitnessed(latest.By, latest.Witness) && !IsUnwitnessed(count.By, count.Witness) ? count : latest;
            }
            else
            {
                isAgreed = false;

                // Parts that nobody joined are no count at all, so that a plain one of the same instant which differs from what is due is the one to hear.
                bool decides = count.At == latest.At && !Settles(count, settled) && (Settles(latest, settled) || (latest.Parts > 0 && count.Parts == 0));
                (latest, LineCount other) = decides ? (count, latest) : (latest, count);
                if (other.Quantity != latest.Quantity)
                {
                    remarks.Add(new Reason(ReconciliationReasons.CountsDiffer, ("by", other.By.Value), ("counted", other.Quantity.ToString())));
                }
            }
        }

        if (latest is not { Parts: > 0 })
        {
            return latest;
        }

        // The latest word stands: a count of parts that nobody joined is no count, and makes an earlier one none either.
        joining = FindJoining(latest, settled, remarks);
        return joining is null ? null : latest;
    }

    private bool Settles(LineCount count, decimal settled) => AmountOf(count, settled, out _) == settled;

    /// <summary>How many whole items a count says there are, with those that its parts make; null where nobody stated what they make.</summary>
    public decimal? AmountOf(LineCount count, decimal settled, out JoiningStatement? joining)
    {
        joining = count.Parts == 0 ? null : FindJoining(count, settled, []);
        return count.Parts == 0 ? count.Quantity.Amount : count.Quantity.Amount + joining?.Wholes;
    }

    /// <summary>Joining parts is a human statement about the very parts that were counted.</summary>
    private JoiningStatement? FindJoining(LineCount count, decimal settled, List<Reason> remarks)
    {
        string parts = count.Parts.ToString(CultureInfo.InvariantCulture);
        JoiningStatement? latest = null;
        foreach (JoiningStatement joining in scope.People.JoiningsOf(tree.Manifest.Id, count.LineNumber))
        {
            if (latest is not null)
            {
                // Of two at one instant one that would not settle the line decides.
                bool isRival = joining.At == latest.At && joining.Parts == count.Parts && count.Quantity.Amount + latest.Wholes == settled;
                latest = isRival ? joining : latest;
            }
            else if (joining.At >= count.At && joining.Parts == count.Parts)
            {
                latest = joining;
            }
            else
            {
                remarks.Add(new Reason(
                    PeopleReasons.JoiningNotUsed, ("parts", joining.Parts.ToString(CultureInfo.InvariantCulture)), ("by", joining.By.Value), ("at", scope.Time(joining.At))));
            }
        }

        if (latest is not null)
        {
            string wholes = latest.Wholes.ToString(CultureInfo.InvariantCulture);
            remarks.Add(new Reason(PeopleReasons.Joined, ("by", latest.By.Value), ("at", scope.Time(latest.At)), ("parts", parts), ("wholes", wholes)));
            return latest;
        }

        remarks.Add(new Reason(PeopleReasons.PartsNotJoined, ("by", count.By.Value), ("at", scope.Time(count.At)), ("parts", parts)));
        return null;
    }

    /// <summary>The latest count that gives a number and was made after the last word on how the tool broke; of two at one instant one that would not settle the line.</summary>
    public PieceCount? FindPieces(Tool tool, PieceNumber number, List<Reason> remarks)
    {
        PieceCount? latest = null;
        bool isAgreed = true;
        foreach (PieceCount count in scope.People.PiecesOf(tool.Id))
        {
            if (!IsFresh(count.At))
            {
                remarks.Add(TooOld("a piece count", count.By, count.At));
            }
            else if (count.Pieces is not null && count.At < number.LastWord)
            {
                remarks.Add(new Reason(PeopleReasons.PieceCountBefore, ("by", count.By.Value), ("at", scope.Time(count.At))));
            }
            else if (count.Pieces is null)
            {
                // Not a count of anything; that the number is not known is told by the piece number.
                continue;
            }
            else if (latest is null)
            {
                latest = count;
            }
            else if (count.Pieces == latest.Pieces)
            {
                latest = isAgreed && IsUnwitnessed(latest.By, latest.Witness) && !IsUnwitnessed(count.By, count.Witness) ? count : latest;
            }
            else
            {
                isAgreed = false;
                bool decides = count.At == latest.At && latest.Pieces == number.Known;
                (latest, PieceCount other) = decides ? (count, latest) : (latest, count);
                string counted = new Quantity(other.Pieces!.Value, Unit.Piece).ToString();
                remarks.Add(new Reason(ReconciliationReasons.CountsDiffer, ("by", other.By.Value), ("counted", counted)));
            }
        }

        return latest;
    }

    /// <summary>Whether a sighting is no evidence at all: too old, by a mark that tells no tool from another, or alone where the policy asks for a witness.</summary>
    public bool IsAside(Sighting sighting) => !IsFresh(sighting.At)
        || (tree.CountOfMark(sighting.MarkRead) > 1 && !IsToldApart(sighting))
        || (scope.Policy.Inventory.SightingWitnessNeeded && IsAlone(sighting.By, sighting.Witness));

    public bool IsContrary(Tool tool, Sighting sighting) => WhyContrary(tool, sighting) is not null;

    public bool IsFresh(DateTimeOffset at) => scope.AsOf - at <= scope.Policy.Inventory.EvidenceAgeMax;

    private Reason TooOld(string what, PersonId by, DateTimeOffset at)
        => new(ReconciliationReasons.TooOld, ("what", what), ("by", by.Value), ("at", scope.Time(at)));
}
