using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Custody;

/// <summary>Lets entries take effect one after the other.</summary>
internal sealed class CustodyReplay
{
    internal static readonly EntryOrder Order = new(static entry => RankOf((CustodyEntry)entry));

    private readonly CustodyJudge judge;
    private readonly Dictionary<EntryId, CustodyEntry> ids = [];
    private readonly List<CustodyEntry> applied = [];
    private readonly List<RefusedEntry> refused = [];

    private CustodyReplay(CustodyPolicy policy, KitRegister kits)
    {
        State = new CustodyState(policy, kits);
        judge = new CustodyJudge(State);
    }

    internal CustodyState State { get; }

    internal IReadOnlyList<CustodyEntry> Applied => applied;

    internal IReadOnlyList<RefusedEntry> Refused => refused;

    /// <summary>The entry that was tried last; null before the first.</summary>
    internal CustodyEntry? Last { get; private set; }

    internal static CustodyReplay Of(CustodyPolicy policy, KitRegister kits, IEnumerable<CustodyEntry> entries)
    {
        var replay = new CustodyReplay(policy, kits);
        CustodyEntry[] ordered = [.. entries];
        Array.Sort(ordered, Order);
        foreach (CustodyEntry entry in ordered)
        {
            replay.Try(entry);
        }

        return replay;
    }

    /// <summary>The entry known under an id, or null.</summary>
    internal CustodyEntry? Find(EntryId id) => ids.GetValueOrDefault(id);

    /// <summary>Lets an entry that comes after all before it take effect, or keeps it as refused.</summary>
    internal IReadOnlyList<RecordIssue> Try(CustodyEntry entry)
    {
        Last = entry;
        if (!ids.TryAdd(entry.Id, entry))
        {
            // The same fact twice is one fact; another fact under its id is none.
            if (ids[entry.Id].Digest == entry.Digest)
            {
                return [];
            }

            return Refuse(entry, [new RecordIssue("$.id", new Reason(CustodyRules.IdTaken, ("id", entry.Id.Value)))]);
        }

        IReadOnlyList<RecordIssue> issues = judge.Apply(entry);
        if (issues.Count > 0)
        {
            return Refuse(entry, issues);
        }

        applied.Add(entry);
        return issues;
    }

    /// <summary>Takes a refused entry out again: what was refused at the door is not part of the record.</summary>
    internal void ForgetRefused(CustodyEntry entry, CustodyEntry? before)
    {
        Last = before;
        refused.RemoveAll(one => ReferenceEquals(one.Entry, entry));
        if (ids.TryGetValue(entry.Id, out CustodyEntry? known) && ReferenceEquals(known, entry))
        {
            ids.Remove(entry.Id);
        }
    }

    internal IEnumerable<CustodyEntry> All => applied.Concat(refused.Select(static one => (CustodyEntry)one.Entry));

    private IReadOnlyList<RecordIssue> Refuse(CustodyEntry entry, IReadOnlyList<RecordIssue> issues)
    {
        refused.Add(new RefusedEntry(entry, issues));
        return issues;
    }

    private static int RankOf(CustodyEntry entry) => entry switch
    {
        ReceiptClosure => 0,
        KitTurnIn => 1,
        JobDeparture => 2,
        KitTransfer => 3,
        KitIssue => 4,
        ToolReceipt => 5,
        JobVisit => 6,
        ZoneEntry { Direction: CarriedDirection.In } => 7,
        PersonalItem { Direction: CarriedDirection.In } => 7,
        ZoneEntry or PersonalItem => 8,
        ZoneClosing => 9,
        _ => 10,
    };
}
