using ToolLedger.Tools;

namespace ToolLedger.Reads;

/// <summary>A tag fixed in an antenna's field for good. As long as it answers, the antenna is known to work.</summary>
/// <remarks>The default value has an empty tag and is refused by a station. Immutable.</remarks>
/// <param name="Tag">The tag.</param>
/// <param name="Antenna">The antenna that must hear it; the default value means every antenna of the station.</param>
public readonly record struct ControlTag(TagId Tag, AntennaPort Antenna = default);
