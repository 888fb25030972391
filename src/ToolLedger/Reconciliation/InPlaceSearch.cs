using System;
using System.Collections.Generic;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>Finds which tool is in place on a line by the latest substitution that counts; records of one instant that name different tools put none in place.</summary>
internal static class InPlaceSearch
{
    /// <summary>The records of the latest instant that counts: none, one, or as many as name different tools.</summary>
    /// <param name="scope">What people said.</param>
    /// <param name="manifest">The manifest.</param>
    /// <param name="line">The number of the line.</param>
    /// <param name="presentedAt">When the kit was first shown: what was recorded after that counts for nothing.</param>
    public static IReadOnlyList<Substitution> Latest(ReconciliationScope scope, KitManifest manifest, int line, DateTimeOffset presentedAt)
    {
        List<Substitution>? latest = null;
        HashSet<ToolId>? tools = null;
        foreach (Substitution record in scope.People.SubstitutionsOf(manifest.Id, line))
        {
            if (latest is not null && record.At != latest[0].At)
            {
                break;
            }

            if (WhyNotUsed(manifest, record, presentedAt) is null && (tools ??= []).Add(record.InPlace))
            {
                (latest ??= new List<Substitution>(1)).Add(record);
            }
        }

        return latest ?? (IReadOnlyList<Substitution>)[];
    }

    /// <summary>Why a substitution puts nothing in place, or null.</summary>
    public static string? WhyNotUsed(KitManifest manifest, Substitution record, DateTimeOffset presentedAt)
        => manifest.FindLine(record.LineNumber) is not ToolLine line ? "the line lists no single tool"
            : record.At < manifest.EffectiveFrom ? "it is older than this revision of the manifest"
            : record.At > presentedAt ? "it was recorded after the kit was presented"
            : line.Tool.Id != record.InPlace && line.FindAlternate(record.InPlace) is null ? "the manifest names no such alternate of that line"
            : null;

    /// <summary>The doubt that records of one instant raise where they name different tools.</summary>
    public static IdentityDoubt Doubt(ReconciliationScope scope, IReadOnlyList<Substitution> records)
    {
        var tools = new List<string>(records.Count);
        foreach (Substitution record in records)
        {
            tools.Add(record.InPlace.Value);
        }

        return new IdentityDoubt(new Reason(SealReasons.SubstitutionsDiffer, ("at", scope.Time(records[0].At)), ("tools", string.Join(", ", tools))), records[0].At);
    }
}
