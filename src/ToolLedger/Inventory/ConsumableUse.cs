using System;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Inventory;

/// <summary>A job record: how much of a consumable line was used on the job and how much was scrapped.</summary>
/// <remarks>
/// Issued must equal used, returned and scrapped together; what was returned is the count of the line. A later record of the same job and line replaces the earlier
/// one: it states the job's total, so that one use entered twice never hides a shortage. Immutable and thread-safe.
/// </remarks>
public sealed class ConsumableUse
{
    /// <summary>The kit it is about.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required KitId Kit { get; init => field = EntryChecks.Checked(value, EntryChecks.Present(value.IsEmpty, InventoryRules.EntryWithoutKit), nameof(Kit)); }

    /// <summary>The number of the line on the manifest.</summary>
    /// <value>1 to 9999.</value>
    /// <exception cref="ArgumentException">The number is outside the range.</exception>
    public required int LineNumber { get; init => field = EntryChecks.Checked(value, EntryChecks.Line(value, InventoryRules.EntryWithoutLine), nameof(LineNumber)); }

    /// <summary>The job on which it was used, 1 to 64 printable characters.</summary>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public required string Job { get; init => field = RecordText.Require(value, IdText.MaxLength, nameof(Job)); }

    /// <summary>The unit of both amounts.</summary>
    /// <exception cref="ArgumentException">The unit is empty.</exception>
    public required Unit Unit { get; init => field = EntryChecks.Checked(value, EntryChecks.Present(value.IsEmpty, InventoryRules.UseWithoutUnit), nameof(Unit)); }

    /// <summary>How much was used: fitted, consumed, left in place on purpose. 0, with nothing scrapped either, states that the job took nothing, and so withdraws an earlier record of it.</summary>
    /// <value>0 (the default) to 1,000,000 with at most 3 decimals.</value>
    /// <exception cref="ArgumentException">The amount is outside the range.</exception>
    public decimal Used { get; init => field = EntryChecks.Checked(value, EntryChecks.Amount(value), nameof(Used)); }

    /// <summary>How much was scrapped: thrown away under control, with the job as its record.</summary>
    /// <value>0 (the default) to 1,000,000 with at most 3 decimals.</value>
    /// <exception cref="ArgumentException">The amount is outside the range.</exception>
    public decimal Scrapped { get; init => field = EntryChecks.Checked(value, EntryChecks.Amount(value), nameof(Scrapped)); }

    /// <summary>The person who recorded it.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required PersonId By { get; init => field = EntryChecks.Checked(value, EntryChecks.Present(value.IsEmpty, InventoryRules.EntryNotSigned), nameof(By)); }

    /// <summary>When it was used or scrapped.</summary>
    /// <exception cref="ArgumentException">The year is outside 1970 to 2999 (UTC).</exception>
    public required DateTimeOffset At { get; init => field = EntryChecks.Checked(value, EntryChecks.Time(value, InventoryRules.EntryWithoutTime), nameof(At)); }
}
