using System;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Inventory;

/// <summary>A tool broke: it is now in more pieces than the manifest says, and each of them must be accounted for.</summary>
/// <remarks>The rules for a lost item cover a portion of a broken tool too (US Air Force Instruction 21-101 of 16 January 2020, paragraph 8.9.2). Immutable and thread-safe.</remarks>
public sealed class Breakage
{
    /// <summary>The tool it is about.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required ToolId Tool { get; init => field = EntryChecks.Checked(value, EntryChecks.Present(value.IsEmpty, InventoryRules.EntryWithoutTool), nameof(Tool)); }

    /// <summary>The number of pieces it is in now.</summary>
    /// <value>0 to 999; null if the number is not known, as with a shattered tool. A number below an earlier one never lowers it.</value>
    /// <exception cref="ArgumentException">The number is outside the range.</exception>
    public required int? Pieces { get; init => field = EntryChecks.Checked(value, EntryChecks.Pieces(value), nameof(Pieces)); }

    /// <summary>The person who reports it.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required PersonId By { get; init => field = EntryChecks.Checked(value, EntryChecks.Present(value.IsEmpty, InventoryRules.EntryNotSigned), nameof(By)); }

    /// <summary>When it broke, or when that was noticed.</summary>
    /// <exception cref="ArgumentException">The year is outside 1970 to 2999 (UTC).</exception>
    public required DateTimeOffset At { get; init => field = EntryChecks.Checked(value, EntryChecks.Time(value, InventoryRules.EntryWithoutTime), nameof(At)); }
}
