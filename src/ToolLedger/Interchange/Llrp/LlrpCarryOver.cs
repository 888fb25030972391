using System;

namespace ToolLedger.Interchange.Llrp;

/// <summary>Which values of a tag report mean "as before" when they are absent. LLRP lets a reader leave away an enabled value that has not
/// changed; only the host knows what it enabled, so nothing is carried over unless it says so.</summary>
[Flags]
public enum LlrpCarryOver
{
    /// <summary>Absent is absent.</summary>
    None = 0,

    /// <summary>The antenna is enabled in every report.</summary>
    AntennaId = 1,

    /// <summary>The strongest signal is enabled in every report.</summary>
    PeakRssi = 2,

    /// <summary>The first sighting is enabled in every report.</summary>
    FirstSeen = 4,

    /// <summary>The last sighting is enabled in every report.</summary>
    LastSeen = 8,

    /// <summary>The number of sightings is enabled in every report.</summary>
    TagSeenCount = 16,
}
