using System;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Inventory;

/// <summary>A person counted the pieces of a tool: how many, or that the number cannot be known; who and when.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class PieceCount
{
    /// <summary>The tool whose pieces were counted.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required ToolId Tool { get; init => field = EntryChecks.Checked(value, EntryChecks.Present(value.IsEmpty, InventoryRules.PieceCountWithoutTool), nameof(Tool)); }

    /// <summary>The number of pieces counted.</summary>
    /// <value>0 to 999; null if the number of pieces is not known, as with a shattered tool: such a count never completes a line.</value>
    /// <exception cref="ArgumentException">The number is outside the range.</exception>
    public required int? Pieces { get; init => field = EntryChecks.Checked(value, EntryChecks.Pieces(value), nameof(Pieces)); }

    /// <summary>The person who counted.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required PersonId By { get; init => field = EntryChecks.Checked(value, EntryChecks.Present(value.IsEmpty, InventoryRules.PieceCountNotSigned), nameof(By)); }

    /// <summary>When it was counted.</summary>
    /// <exception cref="ArgumentException">The year is outside 1970 to 2999 (UTC).</exception>
    public required DateTimeOffset At { get; init => field = EntryChecks.Checked(value, EntryChecks.Time(value, InventoryRules.PieceCountWithoutTime), nameof(At)); }

    /// <summary>A second person who was there; empty (the default) if none is recorded. An <see cref="InventorySheet"/> refuses the counter as the witness.</summary>
    public PersonId Witness { get; init; }
}
