using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Custody;
using ToolLedger.Records;

namespace ToolLedger.Holds;

/// <summary>Which holds stand at any instant, on what, since when, and what is still to be done before a person may end them.</summary>
/// <remarks>
/// Entries take effect in the order of their times, whatever order they are given in. Nothing but a release by a person of the configured role ends a hold: no read, no count, no lapse of time, no later
/// entry of another kind. What is affected follows from the exposure and from what people add; only a named decision takes something away. Immutable and thread-safe, unless it is the
/// <see cref="HoldBook.Live"/> view of a book.
/// </remarks>
public sealed class HoldRegister
{
    private readonly HoldState state;
    private readonly EntryReplay<HoldEntry> replay;

    /// <summary>Makes a register.</summary>
    /// <param name="policy">Who may do what.</param>
    /// <param name="roster">Who holds which role.</param>
    /// <param name="exposure">What things were near.</param>
    /// <param name="entries">The entries in any order.</param>
    /// <exception cref="ArgumentNullException">An argument or an entry is null.</exception>
    public HoldRegister(HoldPolicy policy, RoleRoster roster, ExposureMap exposure, IEnumerable<HoldEntry> entries)
    {
        ArgumentNullException.ThrowIfNull(policy);
        ArgumentNullException.ThrowIfNull(roster);
        ArgumentNullException.ThrowIfNull(exposure);
        ArgumentNullException.ThrowIfNull(entries);
        HoldEntry[] copy = [.. entries];
        foreach (HoldEntry entry in copy)
        {
            ArgumentNullException.ThrowIfNull(entry, nameof(entries));
        }

        Policy = policy;
        ExposureMap = exposure;
        state = new HoldState();
        replay = HoldReplay.Of(new HoldJudge(state, policy, roster, exposure.Custody.Kits), copy);
    }

    internal HoldRegister(HoldPolicy policy, ExposureMap exposure, HoldState state, EntryReplay<HoldEntry> replay)
    {
        Policy = policy;
        ExposureMap = exposure;
        this.state = state;
        this.replay = replay;
    }

    /// <summary>The policy that decided.</summary>
    public HoldPolicy Policy { get; }

    /// <summary>What things were near.</summary>
    public ExposureMap ExposureMap { get; }

    /// <summary>The entries that took effect, in the order they did.</summary>
    public IReadOnlyList<HoldEntry> Entries => replay.Applied;

    /// <summary>The entries that took no effect, each with every rule that speaks against it.</summary>
    public IReadOnlyList<RefusedEntry> Refused => replay.Refused;

    /// <summary>SHA-256 over the digests of all entries, those that took no effect too; computed at each call.</summary>
    public Digest Digest => EntryDigests.Of([.. Entries, .. Refused.Select(static one => one.Entry)]);

    /// <summary>Every hold that was declared by an instant, standing or released, in the order declared.</summary>
    /// <param name="asOf">The instant.</param>
    /// <returns>One status a hold.</returns>
    public IReadOnlyList<HoldStatus> StatusAt(DateTimeOffset asOf) =>
        [.. state.InOrder.Where(item => item.Declaration.At <= asOf).Select(item => HoldAssessment.Of(item, Policy, ExposureMap, asOf))];

    /// <summary>The holds that stand at an instant, in the order declared.</summary>
    /// <param name="asOf">The instant.</param>
    /// <returns>One status a hold.</returns>
    public IReadOnlyList<HoldStatus> HeldAt(DateTimeOffset asOf) => [.. StatusAt(asOf).Where(static status => status.IsHeld)];

    /// <summary>One hold at an instant.</summary>
    /// <param name="hold">The id of its declaration.</param>
    /// <param name="asOf">The instant.</param>
    /// <returns>The status, or null if it was not declared by then.</returns>
    public HoldStatus? Find(EntryId hold, DateTimeOffset asOf) =>
        state.Holds.TryGetValue(hold, out HeldItem? item) && item.Declaration.At <= asOf ? HoldAssessment.Of(item, Policy, ExposureMap, asOf) : null;

    /// <summary>Whether some equipment, job or place is held at an instant.</summary>
    /// <param name="thing">What is asked for.</param>
    /// <param name="asOf">The instant.</param>
    /// <returns>The holds that affect it.</returns>
    public IReadOnlyList<HoldStatus> HoldsOn(AffectedThing thing, DateTimeOffset asOf) =>
        [.. HeldAt(asOf).Where(status => status.Affected.Any(affected => thing.Covers(affected) || affected.Covers(thing)))];

    /// <summary>The declarations that something was found that stand at an instant: those not withdrawn.</summary>
    /// <param name="asOf">The instant.</param>
    /// <returns>The declarations, in time order.</returns>
    public IReadOnlyList<FoundDeclaration> FoundAt(DateTimeOffset asOf) => [.. Entries.OfType<FoundDeclaration>()
        .Where(found => found.At <= asOf && !(state.Withdrawals.TryGetValue(found.Id, out FoundWithdrawal? withdrawal) && withdrawal.At <= asOf))];

    /// <summary>What is known to be somewhere it cannot be reached or was dropped, and has not been recovered; it is carried until it is.</summary>
    /// <param name="asOf">The instant.</param>
    /// <returns>Entries of the kinds <see cref="LeftInPlace"/> and <see cref="DropRecord"/>, in time order.</returns>
    public IReadOnlyList<HoldEntry> CarriedAt(DateTimeOffset asOf) =>
        [.. Entries.Where(entry => entry is LeftInPlace or DropRecord && entry.At <= asOf && !state.IsRecoveredAt(entry.Id, asOf))];
}
