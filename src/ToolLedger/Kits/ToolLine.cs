using System;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Kits;

/// <summary>A line that lists one tool, of one or several pieces.</summary>
/// <remarks>Immutable and thread-safe; compared by reference.</remarks>
public sealed class ToolLine : ManifestLine
{
    /// <summary>The tool.</summary>
    /// <exception cref="ArgumentNullException">The tool is null.</exception>
    public new required Tool Tool { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }

    private protected override string ListedDescription => Tool.Description;

    private protected override Quantity ListedQuantity => new(1, Unit.Each);

    private protected override Tool ListedTool => Tool;
}
