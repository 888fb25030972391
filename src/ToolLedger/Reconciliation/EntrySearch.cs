using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>Finds what people entered that is used for no line, so that a slip of the pen is seen and not swallowed.</summary>
internal static class EntrySearch
{
    public static List<Finding> Search(ReconciliationScope scope, KitTree tree, IReadOnlyList<Signature> usedSignatures)
    {
        var findings = new List<Finding>();
        InventorySheet sheet = scope.Input.Inventory;
        foreach (LineCount count in sheet.Counts)
        {
            string? why = tree.Find(count.Kit) is not { } part ? WhyForeignKit(scope, count.Kit)
                : part.Manifest.FindLine(count.LineNumber) is null ? "the manifest has no such line"
                : WhyLater(scope, count.At);
            Add(scope, findings, FormattableString.Invariant($"the count of {count.Quantity} for line {count.LineNumber} of kit {count.Kit}"), count.By, count.At, why);
        }

        foreach (Sighting sighting in sheet.Sightings)
        {
            Add(scope, findings, $"the sighting of {sighting.Tool}", sighting.By, sighting.At, WhyTool(scope, tree, sighting.Tool, sighting.At, sighting.InKit));
        }

        foreach (PieceCount count in sheet.PieceCounts)
        {
            Add(scope, findings, $"the piece count of {count.Tool}", count.By, count.At, WhyTool(scope, tree, count.Tool, count.At, default));
        }

        foreach (Signature signature in sheet.Signatures.Except(usedSignatures))
        {
            string why = WhyLater(scope, signature.At) ?? "it is older than the last count or sighting it would have to cover, or than the policy allows";
            Add(scope, findings, "the signature", signature.By, signature.At, why);
        }

        return findings;
    }

    private static string? WhyForeignKit(ReconciliationScope scope, KitId kit)
        => scope.Input.Kits.Find(kit, scope.AsOf) is null ? "no manifest of that kit was handed in" : null;

    private static string? WhyLater(ReconciliationScope scope, DateTimeOffset at) => at > scope.AsOf ? "it is later than the instant this answer is for" : null;

    private static string? WhyTool(ReconciliationScope scope, KitTree tree, ToolId tool, DateTimeOffset at, KitId inKit)
        => tree.FindLine(tool) is not null ? WhyLater(scope, at)
            : scope.Input.Kits.KitOf(tool, scope.AsOf) is null && tree.Find(inKit) is null ? "no manifest lists that tool"
            : null;

    private static void Add(ReconciliationScope scope, List<Finding> findings, string what, PersonId by, DateTimeOffset at, string? why)
    {
        if (why is not null)
        {
            findings.Add(new Finding(
                FindingLevel.Kit, new Reason(ReconciliationReasons.EntryNotUsed, ("what", what), ("by", by.Value), ("at", scope.Time(at)), ("why", why))));
        }
    }
}
