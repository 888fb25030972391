using System;
using System.Globalization;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Kits;

/// <summary>A line that lists another kit by one signed revision of its manifest: a kit inside the kit.</summary>
/// <remarks>
/// What the sub-kit must contain stands on its own manifest, which a <see cref="KitRegister"/> finds. A read of the case says
/// nothing about what is in it. Immutable and thread-safe; compared by reference.
/// </remarks>
public sealed class SubKitLine : ManifestLine
{
    /// <summary>The kit that is inside; not empty, and not the kit that lists it.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required KitId Kit
    {
        get;
        init => field = value.IsEmpty ? throw new ArgumentException("A sub-kit needs an id.", nameof(value)) : value;
    }

    /// <summary>The revision of its manifest that was meant when this one was signed, 1 to 1,000,000.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is outside the range.</exception>
    public required int Revision
    {
        get;
        init => field = value is >= 1 and <= KitManifest.MaxRevision
            ? value
            : throw new ArgumentOutOfRangeException(nameof(value), value, "A revision is 1 to 1,000,000.");
    }

    /// <summary>The box, pouch or roll the sub-kit comes in; it may carry a tag. Null (the default) if nothing beside its contents is under accountability.</summary>
    public Tool? Case { get; init; }

    private protected override string ListedDescription =>
        string.Create(CultureInfo.InvariantCulture, $"sub-kit {Kit.Value} revision {Revision}");

    private protected override Quantity ListedQuantity => new(1, Unit.Each);

    private protected override Tool? ListedTool => Case;
}
