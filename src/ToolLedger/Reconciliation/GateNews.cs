using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Custody;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>What became known about a kit after an inventory and no later than the instant of the gate.</summary>
internal sealed class GateNews
{
    private readonly DateTimeOffset after;
    private readonly DateTimeOffset until;
    private readonly HashSet<KitId> kits;
    private readonly HashSet<ToolId> tools;
    private readonly KitId subject;

    public GateNews(ReconciliationResult result, DateTimeOffset until)
    {
        after = result.AsOf;
        this.until = until;
        subject = result.Manifest.Id;

        // Whoever handles a box in the bag, or the bag around the box, could reach what is in it.
        ManifestLine[] lines = [.. result.AllLines.Select(static line => line.Line).Concat(result.NotExpected.Select(static line => line.Line))];
        kits = [result.Manifest.Id, .. result.Holders, .. lines.OfType<SubKitLine>().Select(static line => line.Kit)];
        tools = [.. lines.Select(static line => line.Tool?.Id).OfType<ToolId>(), .. result.Manifest.Lines.SelectMany(ToolsOf)];
    }

    public bool Concerns(KitId kit) => kits.Contains(kit);

    /// <summary>The entries about the kit, what holds it, its sub-kits and their tools, in order of time; openings are judged by the age of the evidence.</summary>
    public PersonEntry[] Entries(InventorySheet sheet) => sheet.IsEmpty ? [] :
    [
        .. EntryLog.KitEntries(sheet).Where(entry => entry.Entry is not KitOpening && kits.Contains(entry.Kit))
            .Concat(EntryLog.ToolEntries(sheet).Where(entry => tools.Contains(entry.Tool) || kits.Contains(entry.Kit)))
            .Where(entry => IsNews(entry.At))
            .OrderBy(static entry => entry.At)
            .ThenBy(static entry => entry.ToString(), StringComparer.Ordinal)
            .ThenBy(static entry => entry.By.Value, StringComparer.Ordinal),
    ];

    /// <summary>
    /// The custody entries about the kit, what holds it, its sub-kits and their tools, refused ones too, in order of time; and uses and visits that went on after the inventory and ended. That the kit
    /// itself was handed back on an inventory is what an inventory is for, and no news.
    /// </summary>
    public CustodyMention[] Custody(CustodyRegister custody) =>
    [
        .. CustodyMention.Of(custody)
            .Where(mention => (IsNews(mention.Entry.At) || IsNews(mention.Until)) && mention.Concerns(kits, tools)
                && !(mention is { IsRefused: false, Entry: KitTurnIn { Inventory.IsEmpty: false } turnIn } && turnIn.Kit == subject))
            .OrderBy(static mention => mention.Entry.At)
            .ThenBy(static mention => mention.Entry.Id.Value, StringComparer.Ordinal),
    ];

    /// <summary>Reports of items on no list that may be of this kit.</summary>
    public IEnumerable<UnlistedItemReport> Reports(ReconciliationInput known) => known.Inventory.UnlistedItems
        .Where(report => IsNews(report.At) && (report.Kit.IsEmpty || kits.Contains(report.Kit) || known.Kits.Find(report.Kit, until) is null))
        .OrderBy(static report => report.At)
        .ThenBy(static report => report.Description, StringComparer.Ordinal);

    /// <summary>The tools whose tags were bound, retired, put in quarantine or cleared.</summary>
    public ToolId[] Rebound(TagRegister tags) =>
    [
        .. tools
            .Where(tool => tags.HistoryOf(tool).Any(binding => IsNews(binding.From) || IsNews(binding.Until)
                || tags.QuarantinesOf(binding).Any(quarantine => IsNews(quarantine.From) || IsNews(quarantine.ClearedAt))))
            .OrderBy(static tool => tool.Value, StringComparer.Ordinal),
    ];

    /// <summary>The sessions that present the kit, or heard one of its tools somewhere.</summary>
    public ReadSession[] Sessions(ReconciliationInput known)
    {
        ReadSession[] later = [.. known.Sessions.Where(session => IsNews(session.To))];
        if (later.Length == 0)
        {
            return later;
        }

        TagId[] tags = [.. tools.SelectMany(known.Tags.HistoryOf).Where(binding => binding.From <= until).Select(static binding => binding.Tag).Distinct()];
        return
        [
            .. later
                .Where(session => session.Presentation.Kits.Any(kits.Contains) || Array.Exists(tags, tag => session.Heard(tag)))
                .OrderBy(static session => session.From)
                .ThenBy(static session => session.Id.Value, StringComparer.Ordinal),
        ];
    }

    private static IEnumerable<ToolId> ToolsOf(ManifestLine line)
    {
        IEnumerable<ToolId> own = line.Tool is { } tool ? [tool.Id] : [];
        return line is ToolLine single ? own.Concat(single.Alternates.Select(static alternate => alternate.Id)) : own;
    }

    private bool IsNews(DateTimeOffset? at) => at > after && at <= until;
}
