using System;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Kits;

/// <summary>One entry of a manifest: something the kit must contain, where it sits, and how many.</summary>
/// <remarks>
/// One of <see cref="ToolLine"/>, <see cref="SetLine"/>, <see cref="CountedLine"/>, <see cref="ConsumableLine"/> and <see cref="SubKitLine"/>; later
/// versions may add kinds. Immutable and thread-safe; compared by reference.
/// </remarks>
public abstract class ManifestLine
{
    /// <summary>Highest line number.</summary>
    public const int MaxNumber = 9_999;

    /// <summary>Longest description of a line that names no tool, in characters.</summary>
    public const int MaxDescriptionLength = 200;

    private protected ManifestLine()
    {
    }

    /// <summary>The number of the line, 1 to 9,999; unique within the manifest.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is outside the range.</exception>
    public required int Number
    {
        get;
        init => field = value is >= 1 and <= MaxNumber
            ? value
            : throw new ArgumentOutOfRangeException(nameof(value), value, "A line number is 1 to 9,999.");
    }

    /// <summary>Where in the kit it sits (drawer, cut-out), 1 to 64 printable characters; null if not stated.</summary>
    /// <exception cref="ArgumentException">The text breaks that rule.</exception>
    public string? Location { get; init => field = RecordText.RequireOrNull(value, IdText.MaxLength, nameof(value)); }

    /// <summary>What the line lists, in words.</summary>
    public string Description => ListedDescription;

    /// <summary>How many the kit must contain.</summary>
    public Quantity Expected => ListedQuantity;

    /// <summary>The tool that may carry a tag: the listed tool, the container of a set, or the case of a sub-kit; null if a person must count.</summary>
    public Tool? Tool => ListedTool;

    private protected abstract string ListedDescription { get; }

    private protected abstract Quantity ListedQuantity { get; }

    private protected virtual Tool? ListedTool => null;

    /// <summary>Number, description and expected quantity.</summary>
    /// <returns>Text for people.</returns>
    public override string ToString() => FormattableString.Invariant($"line {Number}: {Description}, {Expected}");
}
