using System;
using System.Runtime.InteropServices;
using ToolLedger.Kits;

namespace ToolLedger.Reads;

/// <summary>A kit that was not presented but stood within reach of the antennas, for example a neighbour's open bag, as somebody noted it.</summary>
/// <remarks>It is never evidence for a tool. It shows which passes had the kit nearby and which had not: a tag heard only while it stood there is explained
/// by it. The default value names no kit. Immutable.</remarks>
/// <param name="Kit">The kit.</param>
/// <param name="From">From when it stood there; included.</param>
/// <param name="Until">When it was moved away; excluded. Null when it was not, or when nobody noted it.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct NearbyKit(KitId Kit, DateTimeOffset From, DateTimeOffset? Until = null)
{
    /// <summary>Did it stand there at any instant of a time?</summary>
    /// <param name="from">The start, included.</param>
    /// <param name="to">The end, excluded.</param>
    /// <returns>The answer.</returns>
    public bool Overlaps(DateTimeOffset from, DateTimeOffset to) => From < to && (Until is not { } until || until > from);
}
