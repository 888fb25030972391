using ToolLedger.Reads;

namespace ToolLedger.Presence;

/// <summary>Looks of one tag on one antenna of one station, over all usable sessions of the kit.</summary>
/// <param name="Station">The station.</param>
/// <param name="Antenna">The antenna; the default value stands for reports that named none.</param>
/// <param name="IsDegraded">True where the looks come from degraded sessions only.</param>
/// <param name="LookCount">Distinct looks, 1 or more.</param>
public readonly record struct AntennaEvidence(StationId Station, AntennaPort Antenna, bool IsDegraded, int LookCount)
{
    /// <summary>Those of the looks that are of sessions in which the tag's chip number (TID) was reported, 0 to <see cref="LookCount"/>.</summary>
    public int TidLookCount { get; init; }
}
