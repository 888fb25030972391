using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Custody;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>Brings reads and people's evidence of one line together and lets the rules judge it.</summary>
internal sealed class LineJudge
{
    private readonly ReconciliationScope scope;
    private readonly KitTree tree;
    private readonly ToolReadsCollector collector;
    private readonly IReconciliationRule[] rules;
    private readonly PeopleCollector people;
    private readonly NotExpectedSearch notExpected;
    private readonly BalanceSearch balances;
    private readonly BasisSearch bases;
    private readonly LineEvidenceSearch evidence;
    private readonly AgreedPersons persons;
    private readonly SealSearch seals;
    private readonly LineSentences sentences;
    private readonly CalibrationAnswer calibration;

    // Of the line that is being concluded.
    private readonly List<Reason> reasons = [];

    public LineJudge(
        ReconciliationScope scope, KitTree tree, ToolReadsCollector collector, IReconciliationRule[] rules, NotExpectedSearch notExpected)
    {
        this.scope = scope;
        this.tree = tree;
        this.collector = collector;
        this.rules = rules;
        this.notExpected = notExpected;
        people = new PeopleCollector(scope, tree);
        balances = new BalanceSearch(scope, tree.Manifest);
        bases = new BasisSearch(scope, tree, collector);
        seals = new SealSearch(scope, tree, collector);
        evidence = new LineEvidenceSearch(scope, tree, collector, seals);
        persons = new AgreedPersons(scope, tree, people, seals);
        sentences = new LineSentences(scope, tree, seals);
        calibration = new CalibrationAnswer(scope, tree);
    }

    /// <summary>One conclusion for every line that is expected, in line order.</summary>
    public JudgedLine[] JudgeLines() => [.. tree.Lines.Where(line => !notExpected.IsNotExpected(line, collector)).Select(Judge)];

    private JudgedLine Judge(ManifestLine line)
    {
        ToolReads reads = line.Tool is { } tool ? collector.Collect(tool, tree) : new ToolReads();
        var remarks = new List<Reason>();
        ToolReceipt? receipt = scope.Receipts.Of(line, remarks);
        Sighting? sighting = line.Tool is { } sighted ? people.FindSighting(sighted, reads, receipt, remarks) : null;
        PieceNumber number = line.Tool is { } broken ? PieceNumber.Of(scope, broken, remarks) : default;
        PieceCount? pieces = line.Tool is { } piecesOf ? people.FindPieces(piecesOf, number, remarks) : null;
        decimal knownShort = notExpected.ShortOf(line, remarks);
        IReadOnlyList<ConsumableUse> uses = line is ConsumableLine consumable ? balances.FindUses(consumable, remarks) : [];
        decimal settled = line.Expected.Amount - knownShort - BalanceSearch.TakenOut(uses);
        LineCount? count = people.FindCount(line, settled, remarks, out JoiningStatement? joining);
        if (count is not null && (balances.WhyCountedTooEarly(count, uses) ?? WhyDisputed(line, count, joining, settled, uses)) is { } unfit)
        {
            remarks.Add(unfit);
            (count, joining) = (null, null);
        }

        Remark(line, count, reads, remarks);
        JudgedLine[] inner = JudgeInner(line);
        LineConclusion[] innerConclusions = inner.Length == 0 ? [] : Array.ConvertAll(inner, static judged => judged.Conclusion);
        bases.DoubtPlace(line, reads, sighting, count, innerConclusions);
        Reason[] doubts = OpenDoubts(line, reads, sighting, remarks, out Reason[] standing);
        Reason? sealDoubt = seals.Doubt ?? seals.WhyNotFor(line, reads, knownShort, number.Known);
        SealRecord? seal = sealDoubt is null ? seals.Seal : null;
        IReadOnlyList<AccountingBasis> held = scope.Receipts.WithReceipt(
            bases.Of(line, reads, sighting, count, seal, innerConclusions), receipt, reads, sighting, count, remarks);
        var facts = new LineFacts
        {
            Manifest = tree.Manifest,
            Line = line,
            AsOf = scope.AsOf,
            HasUsableSession = collector.HasUsableSession,
            LiveTags = reads.LiveTags,
            BestEvidence = reads.Best,
            Presence = reads.Judgement,
            ReadsWithheld = reads.ReadsWithheld,
            IdentityDoubts = doubts,
            StandingDoubts = standing,
            Sighting = sighting,
            Count = count,
            Pieces = pieces,
            KnownShort = knownShort,
            Joining = joining,
            PiecesEstablished = number.Known,
            IsPieceNumberUnknown = number.IsUnknown,
            IsMarkShared = line.Tool is { } marked && people.IsShared(marked),
            Unwitnessed = Unwitnessed(line, held, count, pieces, number),
            Remarks = remarks,
            Receipt = receipt,
            Bases = held,
            Inner = innerConclusions,
            Seal = seal,
            SealDoubt = sealDoubt,
            SubKitDoubt = line is SubKitLine subKit ? tree.DoubtOf(subKit) : null,
        };
        IReadOnlyList<PersonId> said = persons.Of(facts, uses.Count > 0 ? uses[0].At : null, number.LastWord);
        return Conclude(WithBalance(facts, uses), reads, said, number.IsBroken, inner);
    }

    private void Remark(ManifestLine line, LineCount? count, ToolReads reads, List<Reason> remarks)
    {
        if (count is not null && line is ToolLine or SubKitLine && !bases.IsKnownByCount(line.Tool))
        {
            remarks.Add(new Reason(ReconciliationReasons.CountNotIdentity, ("by", count.By.Value)));
        }

        if (reads.Neighbour is { } neighbour)
        {
            remarks.Add(neighbour);
        }

        foreach (SurroundingsChange change in reads.Changes)
        {
            remarks.Add(new Reason(RiskReasons.SurroundingsChanged, ("what", change.What), ("by", change.By.Value), ("at", scope.Time(change.At))));
        }
    }

    /// <summary>Of entries of one instant that say different numbers one does not agree with a count that settles the line by another.</summary>
    private Reason? WhyDisputed(ManifestLine line, LineCount count, JoiningStatement? joining, decimal settled, IReadOnlyList<ConsumableUse> uses)
    {
        if (count.Quantity.Amount + (joining?.Wholes ?? 0) != settled)
        {
            return null;
        }

        string? what = balances.AreDisputed(uses) ? "job records" : notExpected.IsDisputed(line) ? "annotations" : null;
        return what is null ? null : new Reason(PeopleReasons.EntriesDiffer, ("what", what), ("by", count.By.Value));
    }

    private static LineFacts WithBalance(LineFacts facts, IReadOnlyList<ConsumableUse> uses) => facts.Line is ConsumableLine && facts.Counted is { } counted
        ? facts with { Balance = BalanceSearch.Of(facts.Expected.Amount, counted, uses) }
        : facts;

    /// <summary>Why counts that the line needs settle nothing. What it does not need takes nothing from it, said alone or not.</summary>
    private Reason[] Unwitnessed(ManifestLine line, IReadOnlyList<AccountingBasis> held, LineCount? count, PieceCount? pieces, PieceNumber number)
    {
        if (!scope.Policy.Inventory.CountWitnessNeeded)
        {
            return [];
        }

        var list = new List<Reason>();
        bool needsCount = line is not (ToolLine or SubKitLine) || held is [AccountingBasis.Counted];
        if (needsCount && count is not null && people.WhyUnwitnessed("a count", count.By, count.Witness, count.At) is { } ofCount)
        {
            list.Add(ofCount);
        }

        bool needsPieces = line.Tool is { } tool && Math.Max(tool.PieceCount, number.Known) > 1;
        if (needsPieces && pieces is not null && people.WhyUnwitnessed("a piece count", pieces.By, pieces.Witness, pieces.At) is { } ofPieces)
        {
            list.Add(ofPieces);
        }

        return [.. list];
    }

    private JudgedLine[] JudgeInner(ManifestLine line)
    {
        if (line is not SubKitLine subKit || tree.Inner(subKit) is not { } inner)
        {
            return [];
        }

        return new LineJudge(scope, inner, collector, rules, notExpected.Of(inner)).JudgeLines();
    }

    private Reason[] OpenDoubts(ManifestLine line, ToolReads reads, Sighting? sighting, List<Reason> remarks, out Reason[] standing)
    {
        standing = [];
        if (reads.Doubts.Count == 0)
        {
            return [];
        }

        var open = new List<Reason>();
        var unusable = new List<Reason>();
        foreach (IdentityDoubt doubt in reads.Doubts.OrderBy(static doubt => doubt.At).ThenBy(static doubt => doubt.Reason.ToString(), StringComparer.Ordinal))
        {
            // Only the tool's own mark settles who it is; a tool without one, or with one that others carry too, stays in doubt.
            if (sighting is not null && sighting.At >= doubt.At && !(doubt.StandsWithoutKit && sighting.InKit.IsEmpty) && line.Tool is { Mark: not null } marked && !people.IsShared(marked))
            {
                remarks.Add(new Reason(ReconciliationReasons.IdentitySettled, ("code", doubt.Reason.Code)));
            }
            else
            {
                List<Reason> list = doubt.Unusable is null ? open : unusable;
                list.Add(doubt.Reason);
                if (doubt.Unusable is { } session)
                {
                    list.Add(new Reason(ReconciliationReasons.SaidByUnusable, ("session", session.Id.Value)));
                }

                reads.IsIdentityUnknown |= doubt.IsWhichTool;
            }
        }

        standing = [.. unusable];
        return [.. open];
    }

    private JudgedLine Conclude(in LineFacts facts, ToolReads reads, IReadOnlyList<PersonId> said, bool isBroken, IReadOnlyList<JudgedLine> inner)
    {
        Verdict lowest = Verdict.NoObjection;
        reasons.Clear();
        List<Finding>? findings = null;
        bool positive = false;
        foreach (IReconciliationRule rule in rules)
        {
            Verdict verdict = RuleAsk.Ask(rule, facts, tree);
            if (verdict.Findings.Count > 0)
            {
                (findings ??= []).AddRange(verdict.Findings);
            }

            if (verdict.State == LineState.Accounted)
            {
                continue;
            }

            positive |= verdict.IsPositiveDifference;
            if (verdict.State < lowest.State)
            {
                lowest = verdict;
                reasons.InsertRange(0, verdict.Reasons);
            }
            else
            {
                reasons.AddRange(verdict.Reasons);
            }
        }

        AddAside(ref findings, facts, isBroken);
        bool accounted = lowest.State == LineState.Accounted;
        LineEvidence figures = evidence.Of(facts, reads, accounted, said);
        sentences.AddTo(reasons, facts);
        reasons.AddRange(facts.Remarks);
        if (figures.OpenedSince is { } opened)
        {
            reasons.Add(new Reason(PeopleReasons.OpenedSince, ("at", scope.Time(opened))));
        }

        var conclusion = new LineConclusion
        {
            Line = facts.Line,
            State = lowest.State,
            Basis = accounted ? facts.Bases[0] : AccountingBasis.None,
            OtherBases = accounted ? Others(facts.Bases) : [],
            Reasons = DifferentReasons(),
            Next = lowest.Next,
            Evidence = figures,
            Calibration = facts.Line.Tool is { } tool ? calibration.Of(tool, reads) : null,
            IsEpcOnly = reads.Best is { HasTid: false, LookCount: > 0 },
            IsPositiveDifference = positive,
            Within = tree.Within,
            Inner = facts.Inner,
        };
        return new JudgedLine(tree.Manifest, conclusion, reads, findings ?? (IReadOnlyList<Finding>)[], inner);
    }

    private void AddAside(ref List<Finding>? findings, in LineFacts facts, bool isBroken)
    {
        if (isBroken)
        {
            (findings ??= []).Add(tree.FindingOf(facts.Line, new Reason(PeopleReasons.FindingBroken)));
        }

        foreach (Reason aboutReceipt in facts.Receipt is { } receipt ? scope.Receipts.FindingsOf(receipt, facts.Bases) : [])
        {
            (findings ??= []).Add(tree.FindingOf(facts.Line, aboutReceipt));
        }
    }

    private static AccountingBasis[] Others(IReadOnlyList<AccountingBasis> bases) => bases.Count > 1 ? [.. bases.Skip(1)] : [];

    /// <summary>Each reason once, in the order given.</summary>
    private Reason[] DifferentReasons()
    {
        // So few are compared with each other faster than a set of them is made.
        const int Few = 8;
        if (reasons.Count > Few)
        {
            return [.. reasons.Distinct()];
        }

        for (int i = reasons.Count - 1; i > 0; i--)
        {
            if (reasons.IndexOf(reasons[i], 0, i) >= 0)
            {
                reasons.RemoveAt(i);
            }
        }

        return [.. reasons];
    }
}
