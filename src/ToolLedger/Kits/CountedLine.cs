using System;
using ToolLedger.Records;

namespace ToolLedger.Kits;

/// <summary>A line that lists untagged items by number, such as rags.</summary>
/// <remarks>It has no tag: a person must count it. Immutable and thread-safe; compared by reference.</remarks>
public sealed class CountedLine : ManifestLine
{
    /// <summary>What it is, 1 to 200 printable characters.</summary>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public new required string Description
    {
        get;
        init => field = RecordText.Require(value, MaxDescriptionLength, nameof(value));
    }

    /// <summary>How many the kit must contain. <see cref="KitManifest"/> refuses an amount of 0 and an empty unit.</summary>
    public required Quantity Quantity { get; init; }

    private protected override string ListedDescription => Description;

    private protected override Quantity ListedQuantity => Quantity;
}
