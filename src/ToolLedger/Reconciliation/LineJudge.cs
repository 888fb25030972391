using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Presence;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>Brings reads and people's evidence of one line together and lets the rules judge it.</summary>
internal sealed class LineJudge
{
    private readonly ReconciliationScope scope;
    private readonly KitManifest manifest;
    private readonly ToolReadsCollector collector;
    private readonly IReadOnlyList<IReconciliationRule> rules;
    private readonly PeopleCollector people;

    public LineJudge(ReconciliationScope scope, KitManifest manifest, ToolReadsCollector collector, IReadOnlyList<IReconciliationRule> rules)
    {
        this.scope = scope;
        this.manifest = manifest;
        this.collector = collector;
        this.rules = rules;
        people = new PeopleCollector(scope, manifest);
    }

    public JudgedLine Judge(ManifestLine line)
    {
        ToolReads reads = line.Tool is { } tool ? collector.Collect(tool.Id) : new ToolReads();
        var remarks = new List<Reason>();
        var persons = new List<PersonId>();
        Sighting? sighting = line.Tool is { } sighted ? people.FindSighting(sighted, reads, remarks, persons) : null;
        LineCount? count = people.FindCount(line, remarks, persons);
        PieceCount? pieces = line.Tool is { } piecesOf ? people.FindPieces(piecesOf, remarks, persons) : null;
        if (count is not null && line is ToolLine counted && !IsKnownByCount(counted.Tool, reads))
        {
            remarks.Add(new Reason(ReconciliationReasons.CountNotIdentity, ("by", count.By.Value)));
        }

        List<Reason> doubts = OpenDoubts(line, reads, sighting, remarks);
        var facts = new LineFacts
        {
            Manifest = manifest,
            Line = line,
            AsOf = scope.AsOf,
            HasUsableSession = collector.HasUsableSession,
            LiveTags = reads.LiveTags,
            BestEvidence = reads.Best,
            Presence = reads.Judgement,
            ReadsWithheld = reads.ReadsWithheld,
            IdentityDoubts = doubts,
            Sighting = sighting,
            Count = count,
            Pieces = pieces,
            Remarks = remarks,
            Bases = BasesOf(line, reads, sighting, count),
        };
        return Conclude(facts, reads, persons);
    }

    private static List<AccountingBasis> BasesOf(ManifestLine line, ToolReads reads, Sighting? sighting, LineCount? count)
    {
        var bases = new List<AccountingBasis>(3);
        if (sighting is not null && line is ToolLine)
        {
            bases.Add(AccountingBasis.Sighted);
        }

        if (count is not null && (line is not ToolLine tool || IsKnownByCount(tool.Tool, reads)))
        {
            bases.Add(AccountingBasis.Counted);
        }

        // A set's container that was seen says where the container is; the count says whether the set is whole.
        if (sighting is not null && line is SetLine)
        {
            bases.Add(AccountingBasis.Sighted);
        }

        if (reads is { Judgement.State: PresenceState.Accounted, ReadsWithheld: null })
        {
            bases.Add(AccountingBasis.Read);
        }

        return bases;
    }

    /// <summary>A count identifies no tool that has a mark or a live tag; it can still contradict.</summary>
    private static bool IsKnownByCount(Tool tool, ToolReads reads) => tool.Mark is null && reads.LiveTags.Count == 0;

    private static List<Reason> OpenDoubts(ManifestLine line, ToolReads reads, Sighting? sighting, List<Reason> remarks)
    {
        var open = new List<Reason>();
        foreach (IdentityDoubt doubt in reads.Doubts.OrderBy(static doubt => doubt.At).ThenBy(static doubt => doubt.Reason.ToString(), StringComparer.Ordinal))
        {
            // Only the tool's own mark settles who it is; a tool without one stays in doubt.
            if (sighting is not null && sighting.At >= doubt.At && line.Tool?.Mark is not null)
            {
                remarks.Add(new Reason(ReconciliationReasons.IdentitySettled, ("code", doubt.Reason.Code)));
            }
            else
            {
                open.Add(doubt.Reason);
            }
        }

        return open;
    }

    private JudgedLine Conclude(in LineFacts facts, ToolReads reads, List<PersonId> persons)
    {
        Verdict lowest = Verdict.NoObjection;
        var reasons = new List<Reason>();
        var findings = new List<Finding>();
        bool positive = false;
        foreach (IReconciliationRule rule in rules)
        {
            Verdict verdict = rule.Judge(in facts) ?? throw new InvalidOperationException($"Rule \"{rule.Name}\" returned no verdict.");
            findings.AddRange(verdict.Findings);
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

        bool accounted = lowest.State == LineState.Accounted;
        reasons.AddRange(ReasonsFor(facts));
        foreach (Reason remark in facts.Remarks)
        {
            reasons.Add(remark);
        }

        var conclusion = new LineConclusion
        {
            Line = facts.Line,
            State = lowest.State,
            Basis = accounted ? facts.Bases[0] : AccountingBasis.None,
            OtherBases = accounted ? [.. facts.Bases.Skip(1)] : [],
            Reasons = [.. reasons.Distinct()],
            Next = lowest.Next,
            Evidence = EvidenceOf(facts, reads, persons),
            Calibration = facts.Line.Tool is { } tool
                ? scope.Input.Calibration.StatusOf(tool, scope.AsOf, scope.Policy.Calibration, scope.Policy.Calendar)
                : null,
            IsEpcOnly = reads.Best is { HasTid: false, LookCount: > 0 },
            IsPositiveDifference = positive,
        };
        return new JudgedLine(conclusion, reads, findings);
    }

    /// <summary>The sentences that state the bases that hold, also beside a lower verdict.</summary>
    private List<Reason> ReasonsFor(in LineFacts facts)
    {
        var list = new List<Reason>();
        if (facts.Sighting is { } sighting)
        {
            list.Add(new Reason(
                ReconciliationReasons.Sighted, ("by", sighting.By.Value), ("at", scope.Time(sighting.At)), ("where", sighting.Where.Value), ("mark", sighting.MarkRead)));
        }

        if (facts.Count is { } count)
        {
            list.Add(new Reason(
                ReconciliationReasons.Counted,
                ("counted", count.Quantity.Amount.ToString("0.###", CultureInfo.InvariantCulture)),
                ("expected", facts.Line.Expected.ToString()),
                ("by", count.By.Value),
                ("at", scope.Time(count.At))));
        }

        if (facts is { Pieces: { Pieces: { } pieces } record, Line.Tool: { } tool })
        {
            list.Add(new Reason(
                ReconciliationReasons.PiecesCounted,
                ("counted", pieces.ToString(CultureInfo.InvariantCulture)),
                ("expected", tool.PieceCount.ToString(CultureInfo.InvariantCulture)),
                ("by", record.By.Value),
                ("at", scope.Time(record.At))));
        }

        if (facts.Presence is { State: PresenceState.Accounted } presence && facts.ReadsWithheld is null)
        {
            list.AddRange(presence.Reasons);
        }

        return list;
    }

    private static LineEvidence EvidenceOf(in LineFacts facts, ToolReads reads, List<PersonId> persons)
    {
        PresenceEvidence? best = reads.Best;
        return new LineEvidence
        {
            LiveTagCount = facts.LiveTags.Count,
            LookCount = best?.LookCount ?? 0,
            AntennaCount = best?.Antennas.Count ?? 0,
            PassCount = best?.Passes.Count(static pass => pass.LookCount > 0) ?? 0,
            Strongest = best?.Strongest,
            LastSeen = reads.LastSeen,
            Counted = facts.Count?.Quantity ?? (facts.Pieces?.Pieces is { } pieces ? new Quantity(pieces, Unit.Piece) : null),
            By = facts.Sighting?.By ?? facts.Count?.By ?? facts.Pieces?.By,
            At = facts.Sighting?.At ?? facts.Count?.At ?? facts.Pieces?.At,
            Witness = facts.Sighting is null ? facts.Count?.Witness ?? facts.Pieces?.Witness : null,
            History = best?.History,
            Persons = [.. persons.Where(static person => !person.IsEmpty).Distinct()],
        };
    }
}
