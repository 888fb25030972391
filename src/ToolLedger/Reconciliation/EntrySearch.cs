using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>Finds what people entered that is used for no line, so that a slip of the pen is seen and not swallowed.</summary>
internal sealed class EntrySearch(ReconciliationScope scope)
{
    private readonly Lazy<EntryLog> log = new(() => new EntryLog(scope));

    public List<Finding> Search(KitManifest manifest, SignatureSearch signing)
    {
        var findings = new List<Finding>();
        foreach (PersonEntry entry in log.Value.OfKit(manifest.Id))
        {
            Add(findings, entry, WhyOfKit(manifest, entry));
        }

        foreach (ManifestLine line in log.Value.HasTooLate ? manifest.Lines : [])
        {
            foreach (PersonEntry entry in line.Tool is { } tool ? log.Value.TooLate(tool.Id) : [])
            {
                Add(findings, entry, WhyLater(entry));
            }
        }

        // The subject may be checked against a revision that is not the one in force, so what the register does not know is asked of the manifest too.
        foreach (PersonEntry entry in log.Value.OfNoManifest)
        {
            Add(findings, entry, WhyOfNoManifest(manifest, entry));
        }

        foreach (UnlistedItemReport report in scope.Input.Inventory.UnlistedItems.Where(report => report.At > scope.AsOf))
        {
            Add(findings, $"the report of \"{report.Description}\"", report.By, report.At, LaterText);
        }

        foreach (Signature signature in scope.Input.Inventory.Signatures)
        {
            Add(findings, "the signature", signature.By, signature.At, signing.WhyNot(signature));
        }

        return findings;
    }

    private const string LaterText = "it is later than the instant this answer is for";

    private string? WhyOfKit(KitManifest manifest, PersonEntry entry)
    {
        ManifestLine? line = manifest.FindLine(entry.LineNumber);
        return entry.LineNumber > 0 && line is null ? "the manifest has no such line"
            : entry.Entry is ConsumableUse && line is not ConsumableLine ? "only consumable lines are balanced with job records"
            : WhyLater(entry);
    }

    private static string? WhyOfNoManifest(KitManifest manifest, PersonEntry entry)
        => entry.Tool.IsEmpty ? entry.Kit == manifest.Id ? null : "no manifest of that kit was handed in"
            : entry.Kit == manifest.Id || manifest.FindLine(entry.Tool) is not null ? null
            : "no manifest lists that tool";

    private string? WhyLater(PersonEntry entry) => entry.At > scope.AsOf ? LaterText : null;

    private static string TextOf(PersonEntry entry) => entry.Entry switch
    {
        LineCount count => FormattableString.Invariant($"the count of {count.Quantity} for line {count.LineNumber} of kit {count.Kit}"),
        Annotation annotation => FormattableString.Invariant($"the annotation of line {annotation.LineNumber} of kit {annotation.Kit}"),
        ConsumableUse use => FormattableString.Invariant($"the record of job {use.Job} for line {use.LineNumber} of kit {use.Kit}"),
        JoiningStatement joining => FormattableString.Invariant($"the joining for line {joining.LineNumber} of kit {joining.Kit}"),
        KitOpening opening => $"the opening of kit {opening.Kit}",
        Sighting => $"the sighting of {entry.Tool}",
        PieceCount => $"the piece count of {entry.Tool}",
        Breakage => $"the breakage of {entry.Tool}",
        _ => $"the reconstruction of {entry.Tool}",
    };

    private void Add(List<Finding> findings, PersonEntry entry, string? why)
    {
        if (why is not null)
        {
            Add(findings, TextOf(entry), entry.By, entry.At, why);
        }
    }

    private void Add(List<Finding> findings, string what, PersonId by, DateTimeOffset at, string? why)
    {
        if (why is not null)
        {
            findings.Add(new Finding(
                FindingLevel.Kit, new Reason(ReconciliationReasons.EntryNotUsed, ("what", what), ("by", by.Value), ("at", scope.Time(at)), ("why", why))));
        }
    }
}
