using System;
using System.Collections.Generic;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Custody;

/// <summary>Takes custody entries one by one and answers at once; what may not take effect is refused with every rule that speaks against it.</summary>
/// <remarks>
/// An entry that comes in late, with a time before others, takes effect where it belongs; entries after it that it leaves no room for are then listed as refused, so that a person can look into them.
/// What such an entry costs grows with the number of entries; one in time order costs the same however many there are. Not thread-safe.
/// </remarks>
public sealed class CustodyBook
{
    /// <summary>The most entries of a book.</summary>
    public const int MaxEntryCount = 10_000_000;

    private readonly CustodyPolicy policy;
    private readonly KitRegister kits;
    private CustodyReplay replay;

    /// <summary>Makes an empty book.</summary>
    /// <param name="policy">Who may sign for what.</param>
    /// <param name="kits">The manifests of all kits.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public CustodyBook(CustodyPolicy policy, KitRegister kits)
        : this(policy, kits, [])
    {
    }

    /// <summary>Makes a book of entries recorded before. None is turned away: those that may not take effect stand under <see cref="CustodyRegister.Refused"/>.</summary>
    /// <param name="policy">Who may sign for what.</param>
    /// <param name="kits">The manifests of all kits.</param>
    /// <param name="entries">The entries in any order.</param>
    /// <exception cref="ArgumentNullException">An argument or an entry is null.</exception>
    public CustodyBook(CustodyPolicy policy, KitRegister kits, IEnumerable<CustodyEntry> entries)
    {
        ArgumentNullException.ThrowIfNull(policy);
        ArgumentNullException.ThrowIfNull(kits);
        ArgumentNullException.ThrowIfNull(entries);
        this.policy = policy;
        this.kits = kits;
        CustodyEntry[] copy = [.. entries];
        foreach (CustodyEntry entry in copy)
        {
            ArgumentNullException.ThrowIfNull(entry, nameof(entries));
        }

        replay = CustodyReplay.Of(policy, kits, copy);
        Live = View();
    }

    /// <summary>What the book says now; the view changes as entries are recorded.</summary>
    public CustodyRegister Live { get; private set; }

    /// <summary>Hands in an entry.</summary>
    /// <param name="entry">The entry.</param>
    /// <param name="issues">Every rule that speaks against it; empty unless it was refused.</param>
    /// <returns>What became of it.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="entry"/> is null.</exception>
    public RecordAnswer Record(CustodyEntry entry, out IReadOnlyList<RecordIssue> issues)
    {
        ArgumentNullException.ThrowIfNull(entry);
        issues = [];
        if (replay.Find(entry.Id) is { } known)
        {
            if (known.Digest == entry.Digest)
            {
                return RecordAnswer.AlreadyThere;
            }

            issues = [new RecordIssue("$.id", new Reason(CustodyRules.IdTaken, ("id", entry.Id.Value)))];
            return RecordAnswer.Refused;
        }

        if (replay.Applied.Count + replay.Refused.Count >= MaxEntryCount)
        {
            issues = [new RecordIssue("$", new Reason(CustodyRules.TooManyEntries, ("limit", "10,000,000")))];
            return RecordAnswer.Refused;
        }

        if (replay.Last is { } last && CustodyReplay.Order.Compare(entry, last) < 0)
        {
            return RecordLate(entry, out issues);
        }

        CustodyEntry? before = replay.Last;
        issues = replay.Try(entry);
        if (issues.Count == 0)
        {
            return RecordAnswer.Recorded;
        }

        replay.ForgetRefused(entry, before);
        return RecordAnswer.Refused;
    }

    /// <summary>What the book says now, as a register that no later entry changes.</summary>
    /// <returns>A new register; what it costs grows with the number of entries.</returns>
    public CustodyRegister ToRegister()
    {
        CustodyReplay copy = CustodyReplay.Of(policy, kits, replay.All);
        return new CustodyRegister(copy.State, () => copy.Applied, () => copy.Refused);
    }

    private RecordAnswer RecordLate(CustodyEntry entry, out IReadOnlyList<RecordIssue> issues)
    {
        CustodyReplay with = CustodyReplay.Of(policy, kits, [.. replay.All, entry]);
        foreach (RefusedEntry one in with.Refused)
        {
            if (ReferenceEquals(one.Entry, entry))
            {
                issues = one.Issues;
                return RecordAnswer.Refused;
            }
        }

        replay = with;
        Live = View();
        issues = [];
        return RecordAnswer.Recorded;
    }

    private CustodyRegister View() => new(replay.State, () => replay.Applied, () => replay.Refused);
}
