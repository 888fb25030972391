using System;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Inventory;

/// <summary>A person put an alternate in the place of a tool, or put the tool back.</summary>
/// <remarks>
/// Only the tool of the line and the alternates that its signed manifest names can be put in place; any other record is used for nothing and shown. The latest
/// record of a line stands alone. Immutable and thread-safe.
/// </remarks>
public sealed class Substitution
{
    /// <summary>Longest reason, in characters.</summary>
    public const int MaxReasonLength = 200;

    /// <summary>The kit it is about.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required KitId Kit { get; init => field = EntryChecks.Checked(value, EntryChecks.Present(value.IsEmpty, InventoryRules.EntryWithoutKit), nameof(Kit)); }

    /// <summary>The number of the line on the manifest.</summary>
    /// <value>1 to 9999.</value>
    /// <exception cref="ArgumentException">The number is outside the range.</exception>
    public required int LineNumber { get; init => field = EntryChecks.Checked(value, EntryChecks.Line(value, InventoryRules.EntryWithoutLine), nameof(LineNumber)); }

    /// <summary>The tool that is in place from then on.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required ToolId InPlace { get; init => field = EntryChecks.Checked(value, EntryChecks.Present(value.IsEmpty, InventoryRules.EntryWithoutTool), nameof(InPlace)); }

    /// <summary>Why, 1 to 200 printable characters.</summary>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public required string Reason { get; init => field = RecordText.Require(value, MaxReasonLength, nameof(value)); }

    /// <summary>The person who made the swap.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required PersonId By { get; init => field = EntryChecks.Checked(value, EntryChecks.Present(value.IsEmpty, InventoryRules.EntryNotSigned), nameof(By)); }

    /// <summary>When.</summary>
    /// <exception cref="ArgumentException">The year is outside 1970 to 2999 (UTC).</exception>
    public required DateTimeOffset At { get; init => field = EntryChecks.Checked(value, EntryChecks.Time(value, InventoryRules.EntryWithoutTime), nameof(At)); }
}
