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

    public List<Finding> Search(KitTree tree, SignatureSearch signing)
    {
        if (scope.Input.Inventory.IsEmpty)
        {
            return [];
        }

        var findings = new List<Finding>();
        foreach (KitTree part in tree.All)
        {
            foreach (PersonEntry entry in log.Value.OfKit(part.Manifest.Id))
            {
                Add(findings, entry, WhyOfKit(part, entry));
            }
        }

        foreach (ManifestLine line in log.Value.HasTooLate ? tree.All.SelectMany(static part => part.Manifest.Lines) : [])
        {
            foreach (PersonEntry entry in line.Tool is { } tool ? log.Value.TooLate(tool.Id) : [])
            {
                Add(findings, entry, WhyLater(entry));
            }
        }

        // The subject may be checked against a revision that is not the one in force, so what the register does not know is asked of the manifest too.
        foreach (PersonEntry entry in log.Value.OfNoManifest)
        {
            Add(findings, entry, WhyOfNoManifest(tree, entry));
        }

        foreach (UnlistedItemReport report in scope.Input.Inventory.UnlistedItems.Where(report => report.At > scope.AsOf))
        {
            Add(findings, $"the report of \"{report.Description}\"", report.By, report.At, LaterText);
        }

        foreach (Signature signature in scope.Input.Inventory.Signatures)
        {
            Add(findings, SignatureSearch.What, signature.By, signature.At, signing.WhyNot(signature));
        }

        return findings;
    }

    private const string LaterText = "it is later than the instant this answer is for";

    private string? WhyOfKit(KitTree part, PersonEntry entry)
    {
        ManifestLine? line = part.Manifest.FindLine(entry.LineNumber);
        return entry.LineNumber > 0 && line is null ? "the manifest has no such line"
            : entry.Entry is Substitution swap && entry.At <= scope.AsOf && InPlaceSearch.WhyNotUsed(part.Manifest, swap, part.PresentedAt) is { } why ? why
            : entry.Entry is ConsumableUse && line is not ConsumableLine ? "only consumable lines are balanced with job records"
            : WhyLater(entry);
    }

    private static string? WhyOfNoManifest(KitTree tree, PersonEntry entry)
        => entry.Tool.IsEmpty ? tree.Find(entry.Kit) is not null ? null : "no manifest of that kit was handed in"
            : tree.Find(entry.Kit) is not null || tree.FindLine(entry.Tool) is not null ? null
            : "no manifest lists that tool";

    private string? WhyLater(PersonEntry entry) => entry.At > scope.AsOf ? LaterText : null;

    private void Add(List<Finding> findings, PersonEntry entry, string? why)
    {
        if (why is not null)
        {
            Add(findings, entry.ToString(), entry.By, entry.At, why);
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
