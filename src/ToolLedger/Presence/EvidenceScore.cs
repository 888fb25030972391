using System.Runtime.InteropServices;

namespace ToolLedger.Presence;

/// <summary>The score of a tag's evidence at the cautious corner of the box, in steps of log-odds: the least over all corners.</summary>
/// <param name="Least">The score.</param>
/// <param name="Corner">The corner: a bit for each model among the passes, in the order in which they come up, set where its obscured share is at the high end.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct EvidenceScore(int Least, int Corner)
{
    /// <summary>Whether the obscured share of a model, by its place among those of the passes, is at the high end.</summary>
    public static bool IsHigh(int corner, int slot) => (corner >> slot & 1) != 0;
}
