using System;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Inventory;

/// <summary>A person states that parts counted on a line together make whole items, such as two halves one rag.</summary>
/// <remarks>Pieces are counted; that they join is a human statement and never assumed. Immutable and thread-safe.</remarks>
public sealed class JoiningStatement
{
    /// <summary>The kit it is about.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required KitId Kit { get; init => field = EntryChecks.Checked(value, EntryChecks.Present(value.IsEmpty, InventoryRules.EntryWithoutKit), nameof(Kit)); }

    /// <summary>The number of the line on the manifest.</summary>
    /// <value>1 to 9999.</value>
    /// <exception cref="ArgumentException">The number is outside the range.</exception>
    public required int LineNumber { get; init => field = EntryChecks.Checked(value, EntryChecks.Line(value, InventoryRules.EntryWithoutLine), nameof(LineNumber)); }

    /// <summary>The number of parts that were joined; must be all parts of the count it speaks of.</summary>
    /// <value>2 to 999.</value>
    /// <exception cref="ArgumentException">The number is outside the range.</exception>
    public required int Parts { get; init => field = EntryChecks.Checked(value, EntryChecks.Parts(value, 2), nameof(Parts)); }

    /// <summary>The number of whole items they make. An <see cref="InventorySheet"/> refuses more than one for two parts.</summary>
    /// <value>1 to 499.</value>
    /// <exception cref="ArgumentException">The number is outside the range.</exception>
    public required int Wholes { get; init => field = EntryChecks.Checked(value, EntryChecks.Wholes(value), nameof(Wholes)); }

    /// <summary>The person who states it.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required PersonId By { get; init => field = EntryChecks.Checked(value, EntryChecks.Present(value.IsEmpty, InventoryRules.EntryNotSigned), nameof(By)); }

    /// <summary>When it was stated.</summary>
    /// <exception cref="ArgumentException">The year is outside 1970 to 2999 (UTC).</exception>
    public required DateTimeOffset At { get; init => field = EntryChecks.Checked(value, EntryChecks.Time(value, InventoryRules.EntryWithoutTime), nameof(At)); }
}
