using System;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Inventory;

/// <summary>A person counted what a line of a kit holds: how many, in which unit, who, when.</summary>
/// <remarks>The count says what was counted, never what should be there. Immutable and thread-safe.</remarks>
public sealed class LineCount
{
    /// <summary>The kit whose line was counted.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required KitId Kit { get; init => field = EntryChecks.Checked(value, EntryChecks.Present(value.IsEmpty, InventoryRules.CountWithoutKit), nameof(Kit)); }

    /// <summary>The number of the line on the manifest.</summary>
    /// <value>1 to 9999.</value>
    /// <exception cref="ArgumentException">The number is outside the range.</exception>
    public required int LineNumber { get; init => field = EntryChecks.Checked(value, EntryChecks.Line(value, InventoryRules.CountWithoutLine), nameof(LineNumber)); }

    /// <summary>How many were counted, in the unit that was counted in. Zero is a count too.</summary>
    /// <exception cref="ArgumentException">The quantity has no unit.</exception>
    public required Quantity Quantity { get; init => field = EntryChecks.Checked(value, EntryChecks.Present(value.Unit.IsEmpty, InventoryRules.CountWithoutUnit), nameof(Quantity)); }

    /// <summary>The person who counted.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required PersonId By { get; init => field = EntryChecks.Checked(value, EntryChecks.Present(value.IsEmpty, InventoryRules.CountNotSigned), nameof(By)); }

    /// <summary>When it was counted.</summary>
    /// <exception cref="ArgumentException">The year is outside 1970 to 2999 (UTC).</exception>
    public required DateTimeOffset At { get; init => field = EntryChecks.Checked(value, EntryChecks.Time(value, InventoryRules.CountWithoutTime), nameof(At)); }

    /// <summary>A second person who was there; empty (the default) if none is recorded. An <see cref="InventorySheet"/> refuses the counter as the witness.</summary>
    public PersonId Witness { get; init; }

    /// <summary>How many parts of items, such as halves of a rag, were counted beside the whole ones of <see cref="Quantity"/>. With any, the count settles nothing until a <see cref="JoiningStatement"/> says what they make.</summary>
    /// <value>0 (the default) to 999.</value>
    /// <exception cref="ArgumentException">The number is outside the range.</exception>
    public int Parts { get; init => field = EntryChecks.Checked(value, EntryChecks.Parts(value, 0), nameof(Parts)); }
}
