using System.Runtime.InteropServices;

namespace ToolLedger.Presence;

/// <summary>What a pass showed of one tag, as the detection model weighs it: how many looks it offered and in how many the tag was read.</summary>
/// <param name="Looks">Distinct looks offered (antennas x time slots); 0 to 65,535. A pass without looks says nothing.</param>
/// <param name="Reads">Those of them with a read; 0 to <paramref name="Looks"/>.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct PassLooks(int Looks, int Reads)
{
    /// <summary>Passes of one number had the same surroundings: whatever stood near in one stood near in all. Another number is the caller's word that the
    /// surroundings were changed in between, so that whether the tag is a stray nearby is a new question. The default is 0.</summary>
    public int Surroundings { get; init; }

    /// <summary>Which model of a <see cref="StatedRiskPolicy"/> weighs it: 0 (the default) for <see cref="StatedRiskPolicy.Model"/>, n for the n-th of <see cref="StatedRiskPolicy.Models"/>.</summary>
    public int Model { get; init; }

    /// <summary>True where the session was degraded: its reads then never speak for the tool, and its silence speaks against it.</summary>
    public bool IsDegraded { get; init; }
}
