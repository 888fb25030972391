using System;
using System.Collections.Generic;
using ToolLedger.Custody;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Holds;

/// <summary>Takes entries about holds one by one and answers at once; what may not take effect is refused with every rule that speaks against it.</summary>
/// <remarks>An entry that comes in late, with a time before others, takes effect where it belongs; entries after it that it leaves no room for are then listed as refused. Not thread-safe.</remarks>
public sealed class HoldBook
{
    private readonly HoldPolicy policy;
    private readonly RoleRoster roster;
    private readonly EntryIntake<HoldEntry> intake;
    private readonly Func<ExposureMap> exposure;
    private readonly KitRegister kits;
    private HoldState state = new();

    /// <summary>Makes a book.</summary>
    /// <param name="policy">Who may do what.</param>
    /// <param name="roster">Who holds which role.</param>
    /// <param name="exposure">What things were near.</param>
    /// <param name="entries">Entries recorded before, in any order.</param>
    /// <exception cref="ArgumentNullException">An argument or an entry is null.</exception>
    public HoldBook(HoldPolicy policy, RoleRoster roster, ExposureMap exposure, params IEnumerable<HoldEntry> entries)
    {
        ArgumentNullException.ThrowIfNull(policy);
        ArgumentNullException.ThrowIfNull(roster);
        ArgumentNullException.ThrowIfNull(exposure);
        this.policy = policy;
        this.roster = roster;
        this.exposure = () => exposure;
        kits = exposure.Custody.Kits;
        intake = new EntryIntake<HoldEntry>(Replay, entries);
    }

    /// <summary>A book whose exposure grows beside it.</summary>
    internal HoldBook(HoldPolicy policy, RoleRoster roster, KitRegister kits, Func<ExposureMap> exposure, IEnumerable<HoldEntry> entries)
    {
        this.policy = policy;
        this.roster = roster;
        this.kits = kits;
        this.exposure = exposure;
        intake = new EntryIntake<HoldEntry>(Replay, entries);
    }

    /// <summary>What the book says now; to be asked for again after each entry.</summary>
    public HoldRegister Live => new(policy, exposure(), state, intake.Replay);

    /// <summary>Hands in an entry.</summary>
    /// <param name="entry">The entry.</param>
    /// <param name="issues">Every rule that speaks against it; empty unless it was refused.</param>
    /// <returns>What became of it.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="entry"/> is null.</exception>
    public RecordAnswer Record(HoldEntry entry, out IReadOnlyList<RecordIssue> issues) => intake.Record(entry, out issues);

    /// <summary>Every replay builds a state of its own, and the last one is the book's.</summary>
    private EntryReplay<HoldEntry> Replay(IEnumerable<HoldEntry> entries)
    {
        state = new HoldState();
        return HoldReplay.Of(new HoldJudge(state, policy, roster, kits), entries);
    }
}
