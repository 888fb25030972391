using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Custody;

/// <summary>
/// What custody entries have done so far, kept by subject in time order, so that any instant is looked up and not replayed. Entries are applied in the order
/// of <see cref="EntryOrder"/>; an entry changes nothing that was before it.
/// </summary>
internal sealed class CustodyState(CustodyPolicy policy, KitRegister kits)
{
    private readonly Dictionary<KitId, List<KitTenure>> tenures = [];
    private readonly Dictionary<ToolId, List<ReceiptTenure>> receipts = [];
    private readonly Dictionary<EntryId, (ToolId Tool, int Index)> receiptIds = [];
    private readonly Dictionary<KitId, List<VisitTenure>> visits = [];
    private readonly Dictionary<EntryId, (KitId Kit, int Index)> visitIds = [];
    private readonly Dictionary<ToolId, List<ToolUse>> uses = [];
    private readonly Dictionary<ToolId, List<DispatchNote>> notes = [];
    private readonly Dictionary<ZoneItem, List<ZoneTally>> zones = [];
    private readonly Dictionary<Place, List<ZoneItem>> zoneItems = [];
    private readonly Dictionary<Place, List<ZoneClosing>> closings = [];
    private readonly List<PersonalItem> personalItems = [];
    private readonly List<ToolRoomInventory> inventories = [];
    private readonly HashSet<KitId> mentioned = [];

    internal CustodyPolicy Policy => policy;

    internal KitRegister Kits => kits;

    internal IEnumerable<KitId> KitsSignedOut => tenures.Keys;

    internal IEnumerable<ToolId> ToolsOnReceipt => receipts.Keys;

    internal IReadOnlyList<PersonalItem> PersonalItems => personalItems;

    internal IReadOnlyList<ToolRoomInventory> Inventories => inventories;

    internal bool IsMentioned(KitId kit) => mentioned.Contains(kit);

    /// <summary>The tenure of a kit at an instant; null while it was never signed out.</summary>
    internal KitTenure? TenureOf(KitId kit, DateTimeOffset at)
    {
        if (!tenures.TryGetValue(kit, out List<KitTenure>? list))
        {
            return null;
        }

        int index = TimeSearch.LastIndex(list, at, static tenure => tenure.From);
        return index < 0 ? null : list[index];
    }

    internal IReadOnlyList<KitTenure> TenuresOf(KitId kit) => tenures.TryGetValue(kit, out List<KitTenure>? list) ? list : [];

    internal IReadOnlyList<ReceiptTenure> ReceiptsOf(ToolId tool) => receipts.TryGetValue(tool, out List<ReceiptTenure>? list) ? list : [];

    /// <summary>The receipt a tool is on at an instant, or null.</summary>
    internal ReceiptTenure? ReceiptOf(ToolId tool, DateTimeOffset at)
    {
        if (!receipts.TryGetValue(tool, out List<ReceiptTenure>? list))
        {
            return null;
        }

        // One receipt is open at a time, so the latest that began decides.
        int index = TimeSearch.LastIndex(list, at, static tenure => tenure.Receipt.At);
        return index >= 0 && list[index].IsOpenAt(at) ? list[index] : null;
    }

    internal ReceiptTenure? FindReceipt(EntryId id) => receiptIds.TryGetValue(id, out (ToolId Tool, int Index) at) ? receipts[at.Tool][at.Index] : null;

    internal IReadOnlyList<VisitTenure> VisitsOf(KitId kit) => visits.TryGetValue(kit, out List<VisitTenure>? list) ? list : [];

    internal VisitTenure? FindVisit(EntryId id) => visitIds.TryGetValue(id, out (KitId Kit, int Index) at) ? visits[at.Kit][at.Index] : null;

    internal IReadOnlyList<ToolUse> UsesOf(ToolId tool) => uses.TryGetValue(tool, out List<ToolUse>? list) ? list : [];

    internal IReadOnlyList<DispatchNote> NotesOf(ToolId tool) => notes.TryGetValue(tool, out List<DispatchNote>? list) ? list : [];

    internal IReadOnlyList<ZoneClosing> ClosingsOf(Place zone) => closings.TryGetValue(zone, out List<ZoneClosing>? list) ? list : [];

    /// <summary>Every item that was ever logged for a zone by an instant, by item and unit.</summary>
    internal IEnumerable<ZoneBalance> BalanceOf(Place zone, DateTimeOffset at)
    {
        foreach (ZoneItem item in zoneItems.TryGetValue(zone, out List<ZoneItem>? items) ? items : [])
        {
            int index = TimeSearch.LastIndex(zones[item], at, static tally => tally.At);
            if (index >= 0)
            {
                yield return new ZoneBalance(item.Item, item.Unit, zones[item][index].In, zones[item][index].Out);
            }
        }
    }

    /// <summary>Who answers for a kit at an instant: its user, the user of a kit around it, or the tool room.</summary>
    internal (CustodyHolder Holder, KitTenure? Tenure) HolderOf(KitId kit, DateTimeOffset at)
    {
        KitTenure? own = TenureOf(kit, at);
        if (own is { Issue: not null } || !kits.HasSubKits)
        {
            return (own?.Holder ?? CustodyHolder.Of(policy.ToolRoom), own);
        }

        KitId inner = kit;
        for (int depth = 0; depth < KitRegister.MaxSubKitDepth; depth++)
        {
            if (kits.ManifestsWith(inner, at) is not [var outer, ..])
            {
                break;
            }

            inner = outer.Id;
            if (TenureOf(inner, at) is { Issue: not null } around)
            {
                return (around.Holder, around);
            }
        }

        return (own?.Holder ?? CustodyHolder.Of(policy.ToolRoom), own);
    }

    /// <summary>The manifest a kit is out under at an instant, or the one in force.</summary>
    internal KitManifest? ManifestOf(KitId kit, DateTimeOffset at) =>
        TenureOf(kit, at) is { Issue: { } issue } ? kits.Find(kit, issue.Revision) : kits.Find(kit, at);

    /// <summary>The kit a tool is in at an instant, by the manifest it was issued under; null for a tool of no kit.</summary>
    internal KitId? KitOf(ToolId tool, DateTimeOffset at)
    {
        if (kits.KitOf(tool, at) is { } kit && ManifestOf(kit, at)?.FindLine(tool) is not null)
        {
            return kit;
        }

        // A later revision dropped it while the kit was out: it left with the kit all the same.
        foreach (KitId other in tenures.Keys.OrderBy(static id => id.Value, StringComparer.Ordinal))
        {
            if (TenureOf(other, at) is { Issue: not null } && ManifestOf(other, at)?.FindLine(tool) is not null)
            {
                return other;
            }
        }

        return null;
    }

    /// <summary>The kits that a tool belonged to at any instant of a stretch of time: by a manifest in force, or by the one that the kit was out under.</summary>
    internal IEnumerable<KitId> KitsListing(ToolId tool, DateTimeOffset from, DateTimeOffset to) =>
        kits.Listing(tool, from, to, manifest => IsOutUnder(manifest, from, to)).Select(static manifest => manifest.Id);

    /// <summary>Kits, and those that contained them at any instant of a stretch of time: what a kit is taken to, its sub-kits are taken to.</summary>
    internal IReadOnlyList<KitId> WithOuter(IEnumerable<KitId> inner, DateTimeOffset from, DateTimeOffset to)
    {
        List<KitId> found = [.. inner.Distinct()];
        for (int i = 0; i < found.Count && kits.HasSubKits; i++)
        {
            foreach (KitManifest outer in kits.Listing(found[i], from, to, manifest => IsOutUnder(manifest, from, to)))
            {
                if (!found.Contains(outer.Id))
                {
                    found.Add(outer.Id);
                }
            }
        }

        return found;
    }

    private bool IsOutUnder(KitManifest manifest, DateTimeOffset from, DateTimeOffset to)
    {
        IReadOnlyList<KitTenure> list = TenuresOf(manifest.Id);
        for (int i = 0; i < list.Count && list[i].From <= to; i++)
        {
            if (list[i].Issue?.Revision == manifest.Revision && (i + 1 == list.Count || list[i + 1].From > from))
            {
                return true;
            }
        }

        return false;
    }

    internal void Begin(KitId kit, KitTenure tenure)
    {
        mentioned.Add(kit);
        tenures.ListOf(kit).Add(tenure);
    }

    internal void Add(ToolReceipt receipt)
    {
        if (!receipt.Kit.IsEmpty)
        {
            mentioned.Add(receipt.Kit);
        }

        List<ReceiptTenure> list = receipts.ListOf(receipt.Tool);
        receiptIds[receipt.Id] = (receipt.Tool, list.Count);
        list.Add(new ReceiptTenure(receipt, null));
    }

    internal void Close(ReceiptClosure closure)
    {
        (ToolId tool, int index) = receiptIds[closure.Receipt];
        receipts[tool][index] = receipts[tool][index] with { Closure = closure };
    }

    internal void Add(JobVisit visit)
    {
        List<VisitTenure> list = visits.ListOf(visit.Kit);
        visitIds[visit.Id] = (visit.Kit, list.Count);
        list.Add(new VisitTenure(visit, null));
    }

    internal void End(JobDeparture departure)
    {
        (KitId kit, int index) = visitIds[departure.Visit];
        visits[kit][index] = visits[kit][index] with { Departure = departure };
    }

    internal void Add(ZoneEntry entry)
    {
        var item = new ZoneItem(entry.Zone, entry.Item, entry.Quantity.Unit);
        if (!zones.TryGetValue(item, out List<ZoneTally>? tallies))
        {
            zones.Add(item, tallies = []);
            zoneItems.ListOf(entry.Zone).Add(item);
        }

        ZoneTally last = tallies.Count > 0 ? tallies[^1] : default;
        bool isIn = entry.Direction == CarriedDirection.In;
        tallies.Add(new ZoneTally(entry.At, last.In + (isIn ? entry.Quantity.Amount : 0), last.Out + (isIn ? 0 : entry.Quantity.Amount)));
    }

    internal void Add(ToolUse use) => uses.ListOf(use.Tool).Add(use);

    internal void Add(DispatchNote note)
    {
        if (!note.Kit.IsEmpty)
        {
            mentioned.Add(note.Kit);
        }

        notes.ListOf(note.Tool).Add(note);
    }

    internal void Add(ZoneClosing closing) => closings.ListOf(closing.Zone).Add(closing);

    internal void Add(PersonalItem item) => personalItems.Add(item);

    internal void Add(ToolRoomInventory inventory) => inventories.Add(inventory);
}
