using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Records;

namespace ToolLedger.Custody;

/// <summary>Lets entries take effect one after the other in their order, and keeps those that may not.</summary>
internal sealed class EntryReplay<TEntry>(EntryOrder order, Func<TEntry, IReadOnlyList<RecordIssue>> apply)
    where TEntry : RecordEntry
{
    private readonly Dictionary<EntryId, TEntry> ids = [];
    private readonly List<TEntry> applied = [];
    private readonly List<RefusedEntry> refused = [];

    internal IReadOnlyList<TEntry> Applied => applied;

    internal IReadOnlyList<RefusedEntry> Refused => refused;

    /// <summary>The entry that was tried last; null before the first.</summary>
    internal TEntry? Last { get; private set; }

    internal IEnumerable<TEntry> All => applied.Concat(refused.Select(static one => (TEntry)one.Entry));

    internal EntryOrder Order => order;

    internal EntryReplay<TEntry> With(IEnumerable<TEntry> entries)
    {
        TEntry[] ordered = [.. entries];
        Array.Sort(ordered, order);
        foreach (TEntry entry in ordered)
        {
            Try(entry);
        }

        return this;
    }

    /// <summary>The entry known under an id, or null.</summary>
    internal TEntry? Find(EntryId id) => ids.GetValueOrDefault(id);

    /// <summary>Lets an entry that comes after all before it take effect, or keeps it as refused.</summary>
    internal IReadOnlyList<RecordIssue> Try(TEntry entry)
    {
        Last = entry;
        if (!ids.TryAdd(entry.Id, entry))
        {
            // The same fact twice is one fact; another fact under its id is none.
            return ids[entry.Id].Digest == entry.Digest ? [] : Refuse(entry, [IdTaken(entry)]);
        }

        IReadOnlyList<RecordIssue> issues = apply(entry);
        if (issues.Count > 0)
        {
            return Refuse(entry, issues);
        }

        applied.Add(entry);
        return issues;
    }

    /// <summary>Takes a refused entry out again: what was refused at the door is not part of the record.</summary>
    internal void ForgetRefused(TEntry entry, TEntry? before)
    {
        Last = before;
        refused.RemoveAll(one => ReferenceEquals(one.Entry, entry));
        if (ids.TryGetValue(entry.Id, out TEntry? known) && ReferenceEquals(known, entry))
        {
            ids.Remove(entry.Id);
        }
    }

    internal static RecordIssue IdTaken(TEntry entry) => new("$.id", new Reason(CustodyRules.IdTaken, ("id", entry.Id.Value)));

    private IReadOnlyList<RecordIssue> Refuse(TEntry entry, IReadOnlyList<RecordIssue> issues)
    {
        refused.Add(new RefusedEntry(entry, issues));
        return issues;
    }
}
