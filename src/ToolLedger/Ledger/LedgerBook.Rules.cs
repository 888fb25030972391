using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Custody;
using ToolLedger.Holds;
using ToolLedger.Reconciliation;
using ToolLedger.Records;

namespace ToolLedger.Ledger;

/// <content>What speaks against an entry, and what a person must look into.</content>
public sealed partial class LedgerBook
{
    private RecordIssue? WhyNot(LedgerEntry entry) => entry switch
    {
        _ when facts.Count >= MaxEntryCount => new RecordIssue("$", new Reason(LedgerRules.TooManyEntries, ("limit", "10,000,000"))),
        _ when entry.RecordedAt < entry.OccurredAt => new RecordIssue("$.at", LedgerFacts.RecordedBefore(entry)),
        { Content: EntryCorrection correction } => WhyNot(correction),
        { Content: Amendment amendment } => WhyNot(amendment),
        _ => null,
    };

    private RecordIssue? WhyNot(EntryCorrection correction)
    {
        if (correction.Witness.IsEmpty || PersonCount.AreSame(correction.Witness, correction.By))
        {
            return new RecordIssue("$.witness", new Reason(LedgerRules.NotWitnessed));
        }

        return facts.Find(correction.Corrects) switch
        {
            null => new RecordIssue("$.corrects", new Reason(LedgerRules.NoSuchEntry, ("id", correction.Corrects.Value))),
            { Content: var content } when !IsCorrectable(content) => new RecordIssue("$.corrects", new Reason(LedgerRules.NotCorrectable, ("kind", content.Kind))),
            _ => null,
        };
    }

    private RecordIssue? WhyNot(Amendment amendment) => facts.Find(amendment.Amends) switch
    {
        { Content: SignedReconciliation signed } when signed.ResultDigest == amendment.SignedDigest => null,
        { Content: SignedReconciliation } => new RecordIssue("$.signedDigest", new Reason(LedgerRules.OtherSignedBytes, ("id", amendment.Amends.Value))),
        _ => new RecordIssue("$.amends", new Reason(LedgerRules.NoSuchEntry, ("id", amendment.Amends.Value))),
    };

    /// <summary>Lets a new fact take effect; every rule that speaks against it, or none.</summary>
    private IReadOnlyList<RecordIssue> Take(RecordEntry content)
    {
        IReadOnlyList<RecordIssue> issues = [];
        switch (content)
        {
            case CustodyEntry entry:
                custody.Record(entry, out issues);
                break;
            case HoldEntry entry:
                holds.Record(entry, out issues);
                break;
            case SignedReconciliation signOff:
                signOffs.Add(signOff);
                break;
            case Amendment amendment:
                amendments.Add(amendment);
                break;
            case EntryCorrection correction:
                corrected.Add(correction.Corrects);
                custody = BookOf(facts.Effective().OfType<CustodyEntry>());
                break;
        }

        if (content is SignedReconciliation or Amendment)
        {
            SortSigned();
        }

        exposure = null;
        return issues;
    }

    /// <summary>A correction counts wherever it came from only if two persons made it and it names what can be corrected.</summary>
    private bool IsCorrection(EntryCorrection correction) => WhyNot(correction) is null;

    /// <summary>What can only narrow the search, or was signed, is not taken back by two persons.</summary>
    private static bool IsCorrectable(RecordEntry content) => content is CustodyEntry and not (JobVisit or JobDeparture);

    private List<LedgerFinding> Findings()
    {
        var findings = new List<LedgerFinding>();
        foreach ((EntryId id, List<LedgerEntry> facing) in facts.Disputes)
        {
            findings.Add(new LedgerFinding(id, new Reason(LedgerRules.FindingDispute,
                ("id", id.Value),
                ("count", facing.Count.ToString(System.Globalization.CultureInfo.InvariantCulture)),
                ("names", string.Join(", ", facing.Select(static fact => LedgerFacts.NameOf(fact.Content).Value))),
                ("facts", string.Join("; ", facing.Select(static fact => fact.ToString()))))));
        }

        foreach (RefusedEntry refused in custody.Live.Refused.Concat(holds.Live.Refused))
        {
            findings.Add(NoEffect(refused.Entry, string.Join(' ', refused.Issues.Select(static issue => issue.Reason.ToString()))));
        }

        foreach ((LedgerEntry fact, Reason why) in withoutEffect.OrderBy(static one => one.Fact.Id.Value, StringComparer.Ordinal))
        {
            findings.Add(NoEffect(fact.Content, why.ToString()));
        }

        foreach (FoundDeclaration found in holds.Live.FoundAt(DateTimeOffset.MaxValue))
        {
            foreach (ContradictedSignOff one in SignOffReview.ContradictedBy(found, signOffs))
            {
                findings.Add(new LedgerFinding(one.SignOff.Id, new Reason(LedgerRules.FindingContradicted,
                    ("signOff", one.SignOff.Id.Value),
                    ("kit", one.SignOff.Kit.Value),
                    ("at", RecordTime.ToText(one.SignOff.AsOf)),
                    ("line", one.Line.ToString()),
                    ("found", $"{RecordTime.ToText(found.At)} {(found.Where.IsEmpty ? "elsewhere" : found.Where.Value)}"))));
            }
        }

        return findings;
    }

    private static LedgerFinding NoEffect(RecordEntry entry, string why) => new(entry.Id, new Reason(LedgerRules.FindingNoEffect,
        ("kind", entry.Kind), ("id", entry.Id.Value), ("by", entry.By.Value), ("at", RecordTime.ToText(entry.At)), ("why", why)));
}
