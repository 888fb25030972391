using System;
using System.Runtime.InteropServices;
using ToolLedger.Reads;

namespace ToolLedger.Testing.Simulation;

/// <summary>How much of the reading one antenna does, against the other antennas of the station.</summary>
/// <remarks>The default value is no antenna with no share.</remarks>
[StructLayout(LayoutKind.Auto)]
public readonly record struct AntennaCoverage
{
    /// <summary>States the share of one antenna.</summary>
    /// <param name="antenna">The antenna.</param>
    /// <param name="weight">0 (hears nothing) to 1000; only the ratio to the other antennas' weights counts.</param>
    /// <exception cref="ArgumentOutOfRangeException">The weight is outside its range.</exception>
    public AntennaCoverage(AntennaPort antenna, double weight)
    {
        Antenna = antenna;
        Weight = weight is >= 0 and <= 1000 ? weight
            : throw new ArgumentOutOfRangeException(nameof(weight), weight, "The weight of an antenna must be 0 to 1000.");
    }

    /// <summary>The antenna.</summary>
    public AntennaPort Antenna { get; }

    /// <summary>Its weight, 0 to 1000.</summary>
    public double Weight { get; }
}
