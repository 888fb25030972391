using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Custody;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>A custody entry seen by what it is about, whether it took effect or was refused: a refusal moves nothing, but somebody did something.</summary>
/// <remarks>Tool-room inventories, personal items and the closing of a zone are about no tool of a kit: that a box is present says nothing of what is in it.</remarks>
internal sealed class CustodyMention
{
    public required CustodyEntry Entry { get; init; }

    public bool IsRefused { get; private init; }

    public IReadOnlyList<KitId> Kits { get; private init; } = [];

    public IReadOnlyList<ToolId> Tools { get; private init; } = [];

    /// <summary>True where it names an entry that nobody has: it may be about anything.</summary>
    public bool IsOfUnknown { get; private init; }

    /// <summary>When a visit or a use ended, where the entry says so itself.</summary>
    public DateTimeOffset? Until { get; private init; }

    /// <summary>When a visit ended by a departure on record.</summary>
    public DateTimeOffset? Departed { get; private init; }

    /// <summary>All entries of a register.</summary>
    public static IReadOnlyList<CustodyMention> Of(CustodyRegister custody)
    {
        if (custody.IsEmpty)
        {
            return [];
        }

        (CustodyEntry Entry, bool IsRefused)[] all =
            [.. custody.Entries.Select(static entry => (entry, false)), .. custody.Refused.Select(static one => ((CustodyEntry)one.Entry, true))];
        ILookup<EntryId, CustodyEntry> named = all.Where(static one => one.Entry is ToolReceipt or JobVisit).ToLookup(static one => one.Entry.Id, static one => one.Entry);
        ILookup<EntryId, JobDeparture> ends = custody.Entries.OfType<JobDeparture>().ToLookup(static departure => departure.Visit);
        return [.. all.Select(one => Of(one.Entry, one.IsRefused, named, ends))];
    }

    public bool Concerns(HashSet<KitId> kits, HashSet<ToolId> tools) => IsOfUnknown || Kits.Any(kits.Contains) || Tools.Any(tools.Contains);

    private static CustodyMention Of(CustodyEntry entry, bool isRefused, ILookup<EntryId, CustodyEntry> named, ILookup<EntryId, JobDeparture> ends)
    {
        CustodyMention About(KitId[] kits, ToolId[] tools, DateTimeOffset? until = null, DateTimeOffset? departed = null, bool isOfUnknown = false) => new()
        {
            Entry = entry,
            IsRefused = isRefused,
            Kits = Array.FindAll(kits, static kit => !kit.IsEmpty),
            Tools = tools,
            Until = until,
            Departed = departed,
            IsOfUnknown = isOfUnknown,
        };

        switch (entry)
        {
            case KitIssue issue:
                return About([issue.Kit], []);
            case KitTurnIn turnIn:
                return About([turnIn.Kit], []);
            case KitTransfer transfer:
                return About([transfer.Kit], []);
            case JobVisit visit:
                return About([visit.Kit], [], visit.Until, isRefused ? null : ends[visit.Id].FirstOrDefault()?.At);
            case JobDeparture departure:
                JobVisit[] visits = [.. named[departure.Visit].OfType<JobVisit>()];
                return About([.. visits.Select(static visit => visit.Kit)], [], isOfUnknown: visits.Length == 0);
            case ToolReceipt receipt:
                return About(KitsOf(receipt), [receipt.Tool]);
            case ReceiptClosure closure:
                ToolReceipt[] receipts = [.. named[closure.Receipt].OfType<ToolReceipt>()];
                return About([closure.ToKit, .. receipts.SelectMany(KitsOf)], [.. receipts.Select(static receipt => receipt.Tool)], isOfUnknown: receipts.Length == 0);
            case DispatchNote note:
                return About([note.Kit], [note.Tool]);
            case ToolUse use:
                return About([], [use.Tool], use.Until);
            case ZoneEntry carried:
                // The item is the id of the tool where it has one.
                return About([], ToolId.TryCreate(carried.Item, out ToolId item) ? [item] : []);
            default:
                return About([], []);
        }
    }

    private static KitId[] KitsOf(ToolReceipt receipt) => receipt is ToolLoan loan ? [loan.Kit, loan.ToKit] : [receipt.Kit];
}
