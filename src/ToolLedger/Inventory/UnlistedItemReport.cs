using System;
using System.Collections.Generic;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Inventory;

/// <summary>A person reports that something is gone that stands on no list: a phone, a pen, a rag brought along.</summary>
/// <remarks>
/// Half of what one published review found left behind was on no list (UK CAA Paper 2007/04, 6.2.2, as quoted in a newsletter), so the event must be possible without a
/// manifest. What the report means is for the people whom local rules name; nothing here draws a conclusion from it. Immutable and thread-safe.
/// </remarks>
public sealed class UnlistedItemReport
{
    /// <summary>Longest description, in characters.</summary>
    public const int MaxDescriptionLength = 200;

    /// <summary>Most places and jobs of one report.</summary>
    public const int MaxTouchedCount = 100;

    /// <summary>What it is, 1 to 200 printable characters.</summary>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public required string Description { get; init => field = RecordText.Require(value, MaxDescriptionLength, nameof(Description)); }

    /// <summary>Whose it is; empty (the default) if not known.</summary>
    public PersonId Owner { get; init; }

    /// <summary>The person who reports it.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required PersonId By { get; init => field = EntryChecks.Checked(value, EntryChecks.Present(value.IsEmpty, InventoryRules.EntryNotSigned), nameof(By)); }

    /// <summary>When it was reported.</summary>
    /// <exception cref="ArgumentException">The year is outside 1970 to 2999 (UTC).</exception>
    public required DateTimeOffset At { get; init => field = EntryChecks.Checked(value, EntryChecks.Time(value, InventoryRules.EntryWithoutTime), nameof(At)); }

    /// <summary>The kit in whose work it was noticed; empty (the default) if none, and then every kit reconciled with the sheet shows it.</summary>
    public KitId Kit { get; init; }

    /// <summary>When it was last seen; null (the default) if not known.</summary>
    /// <exception cref="ArgumentException">The year is outside 1970 to 2999 (UTC).</exception>
    public DateTimeOffset? LastSeenAt
    {
        get;
        init => field = value is { } seen ? EntryChecks.Checked(seen, EntryChecks.Time(seen, InventoryRules.EntryWithoutTime), nameof(LastSeenAt)) : null;
    }

    /// <summary>Where it was last seen; empty (the default) if not known.</summary>
    public Place LastSeenWhere { get; init; }

    /// <summary>Jobs, equipment and places touched since it was last seen, in the reporter's words; empty (the default) if not stated, which limits nothing. An <see cref="InventorySheet"/> refuses more than 100.</summary>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    public IReadOnlyList<Place> TouchedSince { get; init => field = Array.AsReadOnly<Place>([.. value ?? throw new ArgumentNullException(nameof(value))]); } = [];
}
