using System;

namespace ToolLedger.Kits;

/// <summary>One difference between two revisions of a manifest.</summary>
/// <remarks>Immutable and thread-safe; equal if all parts are, the lines by reference.</remarks>
/// <param name="Kind">What happened.</param>
/// <param name="Before">The line of the earlier revision; null if it was added.</param>
/// <param name="After">The line of the later revision; null if it was removed.</param>
/// <param name="Member">The member as the stored form names it, such as <c>tool.mark</c>; <c>line</c> for a move, empty for a line added or removed.</param>
/// <param name="Old">The value before, as stored; null if there was none.</param>
/// <param name="New">The value after, as stored; null if there is none.</param>
public sealed record ManifestChange(ManifestChangeKind Kind, ManifestLine? Before, ManifestLine? After, string Member, string? Old, string? New)
{
    /// <summary>For example "line 3, tool.mark: K1-3 is now K1-3B".</summary>
    /// <returns>Text for people.</returns>
    public override string ToString() => Kind switch
    {
        ManifestChangeKind.Added => $"added {After}",
        ManifestChangeKind.Removed => $"removed {Before}",
        ManifestChangeKind.Moved => FormattableString.Invariant($"line {Before?.Number} is now line {After?.Number}: {After?.Description}"),
        _ => FormattableString.Invariant($"line {After?.Number}, {Member}: {Old ?? "nothing"} is now {New ?? "nothing"}"),
    };
}
