using System;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Kits;

/// <summary>A line that lists several small items by their total number, the container counted as one of them.</summary>
/// <remarks>
/// Nine keys and their holder are ten items (US Air Force Instruction 21-101 of 16 January 2020, paragraph 8.3.6.6). A read
/// of the container's tag says nothing about the items in it. Immutable and thread-safe; compared by reference.
/// </remarks>
public sealed class SetLine : ManifestLine
{
    /// <summary>Smallest total: a container and one item.</summary>
    public const int MinTotalCount = 2;

    /// <summary>Largest total.</summary>
    public const int MaxTotalCount = 999;

    /// <summary>The holder, case or pouch; it may carry a tag.</summary>
    /// <exception cref="ArgumentNullException">The container is null.</exception>
    public required Tool Container { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }

    /// <summary>What the container holds, 1 to 200 printable characters.</summary>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public required string Contents
    {
        get;
        init => field = RecordText.Require(value, MaxDescriptionLength, nameof(value));
    }

    /// <summary>All items, the container included, 2 to 999.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is outside the range.</exception>
    public required int TotalCount
    {
        get;
        init => field = value is >= MinTotalCount and <= MaxTotalCount
            ? value
            : throw new ArgumentOutOfRangeException(nameof(value), value, "A set has 2 to 999 items, its container included.");
    }

    private protected override string ListedDescription => Contents;

    private protected override Quantity ListedQuantity => new(TotalCount, Unit.Each);

    private protected override Tool ListedTool => Container;
}
