using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Custody;

/// <content>What else is asked of the entries: visits, uses, zones, what is overdue, what the tool room holds.</content>
public sealed partial class CustodyRegister
{
    /// <summary>Where a kit was taken between two instants.</summary>
    /// <param name="kit">The kit.</param>
    /// <param name="from">The first instant.</param>
    /// <param name="to">The last instant, which is also the instant the answer is for: what was recorded to happen later is not known.</param>
    /// <returns>Every visit that goes on at some instant from the first to the last, both included, with its end if it has one by then, in time order.</returns>
    public IReadOnlyList<(JobVisit Visit, DateTimeOffset? Until)> VisitsOf(KitId kit, DateTimeOffset from, DateTimeOffset to) =>
        [.. state.VisitsOf(kit).TakeWhile(one => one.Visit.At <= to).Where(one => !(one.Until < from)).Select(one => (one.Visit, one.Until <= to ? one.Until : null))];

    /// <summary>The uses of a tool up to an instant, in time order.</summary>
    /// <param name="tool">The tool.</param>
    /// <param name="asOf">The instant.</param>
    /// <returns>The uses that began by then.</returns>
    public IReadOnlyList<ToolUse> UsesOf(ToolId tool, DateTimeOffset asOf) => [.. state.UsesOf(tool).TakeWhile(use => use.At <= asOf)];

    /// <summary>Notes that a tool was sent somewhere, up to an instant; they move nothing.</summary>
    /// <param name="tool">The tool.</param>
    /// <param name="asOf">The instant.</param>
    /// <returns>The notes, in time order.</returns>
    public IReadOnlyList<DispatchNote> NotesOf(ToolId tool, DateTimeOffset asOf) => [.. state.NotesOf(tool).TakeWhile(note => note.At <= asOf)];

    /// <summary>The log of a zone, added up: one balance for each item and unit that was ever logged, those that balance too.</summary>
    /// <param name="zone">The zone.</param>
    /// <param name="asOf">The instant.</param>
    /// <returns>The balances in the order the items first came up.</returns>
    public IReadOnlyList<ZoneBalance> BalanceOf(Place zone, DateTimeOffset asOf) => [.. state.BalanceOf(zone, asOf)];

    /// <summary>The closings of a zone up to an instant.</summary>
    /// <param name="zone">The zone.</param>
    /// <param name="asOf">The instant.</param>
    /// <returns>The closings, in time order.</returns>
    public IReadOnlyList<ZoneClosing> ClosingsOf(Place zone, DateTimeOffset asOf) => [.. state.ClosingsOf(zone).TakeWhile(closing => closing.At <= asOf)];

    /// <summary>The kits that are out later than they were to be back, one entry a kit, with who answers.</summary>
    /// <param name="asOf">The instant.</param>
    /// <returns>The kits in ordinal order.</returns>
    public IReadOnlyList<(KitId Kit, CustodyHolder Holder, DateTimeOffset Due)> KitsOverdueAt(DateTimeOffset asOf) =>
        [.. state.KitsSignedOut
            .Select(kit => (Kit: kit, Tenure: state.TenureOf(kit, asOf)))
            .Where(one => one.Tenure is { Issue: not null, Due: { } due } && due < asOf)
            .OrderBy(static one => one.Kit.Value, StringComparer.Ordinal)
            .Select(static one => (one.Kit, one.Tenure!.Holder, one.Tenure.Due!.Value))];

    /// <summary>The receipts that are open at an instant, overdue ones and others.</summary>
    /// <param name="asOf">The instant.</param>
    /// <returns>The receipts by tool, ordinal.</returns>
    public IReadOnlyList<ToolReceipt> ReceiptsOpenAt(DateTimeOffset asOf) =>
        [.. state.ToolsOnReceipt.OrderBy(static tool => tool.Value, StringComparer.Ordinal).Select(tool => state.ReceiptOf(tool, asOf)?.Receipt).OfType<ToolReceipt>()];

    /// <summary>What people carried in of their own and have not carried out again, added up by owner, item and unit.</summary>
    /// <param name="asOf">The instant.</param>
    /// <returns>Owner and balance of whatever is not balanced.</returns>
    public IReadOnlyList<(PersonId Owner, ZoneBalance Balance)> PersonalItemsAt(DateTimeOffset asOf) =>
        [.. state.PersonalItems
            .TakeWhile(item => item.At <= asOf)
            .GroupBy(static item => (item.Owner, item.Item, item.Quantity.Unit))
            .Select(static group => (group.Key.Owner, Balance: new ZoneBalance(
                group.Key.Item,
                group.Key.Unit,
                group.Where(static item => item.Direction == CarriedDirection.In).Sum(static item => item.Quantity.Amount),
                group.Where(static item => item.Direction == CarriedDirection.Out).Sum(static item => item.Quantity.Amount))))
            .Where(static one => !one.Balance.IsBalanced)
            .OrderBy(static one => one.Owner.Value, StringComparer.Ordinal).ThenBy(static one => one.Balance.Item, StringComparer.Ordinal)];

    /// <summary>The last tool-room inventory up to an instant.</summary>
    /// <param name="asOf">The instant.</param>
    /// <returns>The inventory, or null if there is none.</returns>
    public ToolRoomInventory? InventoryAt(DateTimeOffset asOf) => state.Inventories.LastOrDefault(inventory => inventory.At <= asOf);

    /// <summary>Where every kit of the manifests is at an instant by the last tool-room inventory and by who signed: here, out, or unexplained. The presence of a box says nothing of its contents.</summary>
    /// <param name="asOf">The instant.</param>
    /// <returns>One answer a kit, in ordinal order.</returns>
    public IReadOnlyList<KitPresence> PresenceAt(DateTimeOffset asOf)
    {
        ToolRoomInventory? inventory = InventoryAt(asOf);
        HashSet<KitId> here = [.. inventory?.Present ?? []];
        return [.. Kits.KitIds.Where(kit => Kits.Find(kit, asOf) is not null).Select(kit =>
        {
            (CustodyHolder holder, KitTenure? tenure) = state.HolderOf(kit, asOf);
            KitPresenceState at = here.Contains(kit)
                ? holder.IsPerson && inventory!.At >= tenure!.From ? KitPresenceState.Contradicted : holder.IsPerson ? KitPresenceState.Out : KitPresenceState.Present
                : holder.IsPerson ? KitPresenceState.Out : KitPresenceState.Unexplained;
            return new KitPresence(kit, at, holder, inventory?.At);
        })];
    }
}
