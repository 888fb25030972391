using System;
using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Custody;

/// <summary>Takes entries one by one: in time order at once, late ones by replaying with them.</summary>
internal sealed class EntryIntake<TEntry>
    where TEntry : RecordEntry
{
    internal const int MaxEntryCount = 10_000_000;

    private readonly Func<IEnumerable<TEntry>, EntryReplay<TEntry>> replayOf;

    internal EntryIntake(Func<IEnumerable<TEntry>, EntryReplay<TEntry>> replayOf, IEnumerable<TEntry> entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        TEntry[] copy = [.. entries];
        foreach (TEntry entry in copy)
        {
            ArgumentNullException.ThrowIfNull(entry, nameof(entries));
        }

        this.replayOf = replayOf;
        Replay = replayOf(copy);
    }

    /// <summary>What the entries come to; another object after a late entry was taken.</summary>
    internal EntryReplay<TEntry> Replay { get; private set; }

    internal RecordAnswer Record(TEntry entry, out IReadOnlyList<RecordIssue> issues)
    {
        ArgumentNullException.ThrowIfNull(entry);
        issues = [];
        if (Replay.Find(entry.Id) is { } known)
        {
            if (known.Digest == entry.Digest)
            {
                return RecordAnswer.AlreadyThere;
            }

            issues = [EntryReplay<TEntry>.IdTaken(entry)];
            return RecordAnswer.Refused;
        }

        if (Replay.Applied.Count + Replay.Refused.Count >= MaxEntryCount)
        {
            issues = [new RecordIssue("$", new Reason(CustodyRules.TooManyEntries, ("limit", "10,000,000")))];
            return RecordAnswer.Refused;
        }

        TEntry? before = Replay.Last;
        if (before is not null && Replay.Order.Compare(entry, before) < 0)
        {
            return RecordLate(entry, out issues);
        }

        issues = Replay.Try(entry);
        if (issues.Count == 0)
        {
            return RecordAnswer.Recorded;
        }

        Replay.ForgetRefused(entry, before);
        return RecordAnswer.Refused;
    }

    private RecordAnswer RecordLate(TEntry entry, out IReadOnlyList<RecordIssue> issues)
    {
        EntryReplay<TEntry> with = replayOf([.. Replay.All, entry]);
        foreach (RefusedEntry one in with.Refused)
        {
            if (ReferenceEquals(one.Entry, entry))
            {
                issues = one.Issues;

                // Replaying may have bound what it built to this attempt; the former is built again.
                Replay = replayOf(Replay.All);
                return RecordAnswer.Refused;
            }
        }

        Replay = with;
        issues = [];
        return RecordAnswer.Recorded;
    }
}
