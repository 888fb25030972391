using System;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Inventory;

/// <summary>A person closed a kit with a numbered seal after an inventory of it.</summary>
/// <remarks>
/// Whether a kit may be accepted by its seal is a rule of the site, see <see cref="InventoryPolicy.SealsAccepted"/>. A seal says that nothing went in or out since; it never
/// shortens how long equipment was exposed to a tool. Immutable and thread-safe.
/// </remarks>
public sealed class SealRecord
{
    /// <summary>The kit that was sealed.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required KitId Kit { get; init => field = EntryChecks.Checked(value, EntryChecks.Present(value.IsEmpty, InventoryRules.EntryWithoutKit), nameof(Kit)); }

    /// <summary>The number on the seal, 1 to 64 printable characters; compared ordinally.</summary>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public required string Number { get; init => field = RecordText.Require(value, IdText.MaxLength, nameof(value)); }

    /// <summary>The instant of the inventory after which it was sealed. An <see cref="InventorySheet"/> refuses one later than <see cref="At"/>.</summary>
    /// <exception cref="ArgumentException">The year is outside 1970 to 2999 (UTC).</exception>
    public required DateTimeOffset InventoriedAt { get; init => field = EntryChecks.Checked(value, EntryChecks.Time(value, InventoryRules.EntryWithoutTime), nameof(InventoriedAt)); }

    /// <summary>The person who applied the seal.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required PersonId By { get; init => field = EntryChecks.Checked(value, EntryChecks.Present(value.IsEmpty, InventoryRules.EntryNotSigned), nameof(By)); }

    /// <summary>When.</summary>
    /// <exception cref="ArgumentException">The year is outside 1970 to 2999 (UTC).</exception>
    public required DateTimeOffset At { get; init => field = EntryChecks.Checked(value, EntryChecks.Time(value, InventoryRules.EntryWithoutTime), nameof(At)); }

    /// <summary>A second person who was there; empty (the default) if none is recorded. An <see cref="InventorySheet"/> refuses the one who sealed as the witness.</summary>
    public PersonId Witness { get; init; }
}
