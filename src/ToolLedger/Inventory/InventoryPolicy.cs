using System;

namespace ToolLedger.Inventory;

/// <summary>How far what people say may settle lines; a part of the site policy.</summary>
/// <remarks>The default values are the P0 values of this library: examples, to be replaced by the organisation's own rules. Immutable and thread-safe.</remarks>
public sealed partial record InventoryPolicy
{
    private const int MaxPersonsNeeded = 4;
    private static readonly TimeSpan ShortestAge = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan LongestAge = TimeSpan.FromDays(366);

    /// <summary>The default values (P0).</summary>
    public static InventoryPolicy Default { get; } = new();

    /// <summary>Whether people may complete a kit without any usable read session.</summary>
    /// <value>The default is true.</value>
    public bool ManualInventoryAllowed { get; init; } = true;

    /// <summary>How many different persons must have looked, counted, witnessed or signed before a kit is complete while any of its lines rests on people alone. Ids that differ only in case, spaces or punctuation count as one.</summary>
    /// <value>Persons; 1 to 4. The default is 2.</value>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside the range.</exception>
    public int ManualInventoryPersonsNeeded
    {
        get;
        init => field = value is >= 1 and <= MaxPersonsNeeded ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "The persons needed for a manual inventory must be 1 to 4.");
    } = 2;

    /// <summary>The greatest age of a sighting or count at the instant of reconciliation; an older one is not used.</summary>
    /// <value>1 second to 366 days. The default is 1 hour (ours: what was seen at the start of a shift says nothing of its end).</value>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside the range.</exception>
    public TimeSpan EvidenceAgeMax
    {
        get;
        init => field = value >= ShortestAge && value <= LongestAge ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "The greatest age of what people say must be 1 second to 366 days.");
    } = TimeSpan.FromHours(1);
}
