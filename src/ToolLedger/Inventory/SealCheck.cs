using System;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Inventory;

/// <summary>A person looked at the seal of a kit: which number it bears, and whether it is intact.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class SealCheck
{
    /// <summary>The kit whose seal was looked at.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required KitId Kit { get; init => field = EntryChecks.Checked(value, EntryChecks.Present(value.IsEmpty, InventoryRules.EntryWithoutKit), nameof(Kit)); }

    /// <summary>The number as read on the seal, 1 to 64 printable characters.</summary>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public required string NumberRead { get; init => field = RecordText.Require(value, IdText.MaxLength, nameof(value)); }

    /// <summary>True if the seal was found intact.</summary>
    public required bool IsIntact { get; init; }

    /// <summary>The person who looked.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required PersonId By { get; init => field = EntryChecks.Checked(value, EntryChecks.Present(value.IsEmpty, InventoryRules.EntryNotSigned), nameof(By)); }

    /// <summary>When.</summary>
    /// <exception cref="ArgumentException">The year is outside 1970 to 2999 (UTC).</exception>
    public required DateTimeOffset At { get; init => field = EntryChecks.Checked(value, EntryChecks.Time(value, InventoryRules.EntryWithoutTime), nameof(At)); }
}
