using System.Runtime.InteropServices;

namespace ToolLedger.Presence;

/// <summary>The score of a tag's evidence at both ends of the obscured share, in steps of log-odds; the lower decides.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct EvidenceScore(int Low, int High)
{
    public int Least => int.Min(Low, High);

    /// <summary>True where the low end of the obscured share is the cautious one.</summary>
    public bool IsLowEnd => Low <= High;

    public static EvidenceScore operator +(EvidenceScore left, EvidenceScore right) => new(left.Low + right.Low, left.High + right.High);

    public static EvidenceScore Min(EvidenceScore left, EvidenceScore right) => new(int.Min(left.Low, right.Low), int.Min(left.High, right.High));
}
