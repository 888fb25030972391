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
    public const int MaxEntryCount = EntryIntake<CustodyEntry>.MaxEntryCount;

    private readonly CustodyPolicy policy;
    private readonly KitRegister kits;
    private readonly EntryIntake<CustodyEntry> intake;
    private CustodyState state;

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
        state = new CustodyState(policy, kits);
        intake = new EntryIntake<CustodyEntry>(Replay, entries);
    }

    /// <summary>What the book says now; to be asked for again after each entry.</summary>
    public CustodyRegister Live => new(state, intake.Replay);

    /// <summary>Hands in an entry.</summary>
    /// <param name="entry">The entry.</param>
    /// <param name="issues">Every rule that speaks against it; empty unless it was refused.</param>
    /// <returns>What became of it.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="entry"/> is null.</exception>
    public RecordAnswer Record(CustodyEntry entry, out IReadOnlyList<RecordIssue> issues) => intake.Record(entry, out issues);

    /// <summary>What the book says now, as a register that no later entry changes.</summary>
    /// <returns>A new register; what it costs grows with the number of entries.</returns>
    public CustodyRegister ToRegister()
    {
        var copy = new CustodyState(policy, kits);
        return new CustodyRegister(copy, CustodyReplay.Of(copy, intake.Replay.All));
    }

    /// <summary>Every replay builds a state of its own, and the last one is the book's.</summary>
    private EntryReplay<CustodyEntry> Replay(IEnumerable<CustodyEntry> entries)
    {
        state = new CustodyState(policy, kits);
        return CustodyReplay.Of(state, entries);
    }
}
