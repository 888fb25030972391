using System;
using System.Collections.Generic;
using ToolLedger.Custody;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Benchmarks.Ledger;

/// <summary>The least that could answer "who has the kit": a dictionary of ids, and one of lists of holders by time. No rule is asked, nothing is refused.</summary>
internal sealed class PlainRecord
{
    private readonly Dictionary<EntryId, CustodyEntry> ids = [];
    private readonly Dictionary<KitId, List<(DateTimeOffset At, PersonId Holder)>> holders = [];

    internal int Count => ids.Count;

    internal void Add(CustodyEntry entry)
    {
        ids.Add(entry.Id, entry);
        switch (entry)
        {
            case KitIssue issue:
                Append(issue.Kit, issue.At, issue.ReceivedBy!.By);
                break;
            case KitTurnIn turnIn:
                Append(turnIn.Kit, turnIn.At, default);
                break;
        }
    }

    internal PersonId HolderOf(KitId kit, DateTimeOffset at)
    {
        List<(DateTimeOffset At, PersonId Holder)> list = holders[kit];
        int low = 0, high = list.Count;
        while (low < high)
        {
            int middle = (low + high) >>> 1;
            (low, high) = list[middle].At <= at ? (middle + 1, high) : (low, middle);
        }

        return low == 0 ? default : list[low - 1].Holder;
    }

    private void Append(KitId kit, DateTimeOffset at, PersonId holder)
    {
        if (!holders.TryGetValue(kit, out List<(DateTimeOffset, PersonId)>? list))
        {
            holders.Add(kit, list = []);
        }

        list.Add((at, holder));
    }
}
