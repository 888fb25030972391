using System;
using System.Collections.Generic;
using System.Collections.ObjectModel;
using System.Linq;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Kits;

/// <summary>A line that lists one tool, of one or several pieces.</summary>
/// <remarks>Immutable and thread-safe; compared by reference.</remarks>
public sealed class ToolLine : ManifestLine
{
    /// <summary>Most alternates of one line.</summary>
    public const int MaxAlternateCount = 16;

    /// <summary>The tool.</summary>
    /// <exception cref="ArgumentNullException">The tool is null.</exception>
    public new required Tool Tool { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }

    /// <summary>Tools of the same form, fit and function that may take its place when a person records the swap, at most 16. The default is none.</summary>
    /// <remarks>
    /// An alternate stands for one line only. A <see cref="KitManifest"/> refuses one of another
    /// <see cref="Tools.Tool.SegregationClass"/> than the tool's, or one that another line of it lists.
    /// </remarks>
    /// <exception cref="ArgumentNullException">The list or a tool is null.</exception>
    /// <exception cref="ArgumentException">There are more than 16.</exception>
    public IReadOnlyList<Tool> Alternates { get; init => field = Copy(value); } = [];

    /// <summary>Finds an alternate by its id.</summary>
    /// <param name="tool">The id.</param>
    /// <returns>The alternate, or null.</returns>
    public Tool? FindAlternate(ToolId tool) => Alternates.FirstOrDefault(alternate => alternate.Id == tool);

    private protected override string ListedDescription => Tool.Description;

    private protected override Quantity ListedQuantity => new(1, Unit.Each);

    private protected override Tool ListedTool => Tool;

    private static ReadOnlyCollection<Tool> Copy(IReadOnlyList<Tool> value)
    {
        ArgumentNullException.ThrowIfNull(value);
        if (value.Count == 0)
        {
            return ReadOnlyCollection<Tool>.Empty;
        }

        if (value.Count > MaxAlternateCount)
        {
            throw new ArgumentException("A line has at most 16 alternates.", nameof(value));
        }

        Tool[] copy = [.. value];
        foreach (Tool alternate in copy)
        {
            ArgumentNullException.ThrowIfNull(alternate, nameof(value));
        }

        return Array.AsReadOnly(copy);
    }
}
