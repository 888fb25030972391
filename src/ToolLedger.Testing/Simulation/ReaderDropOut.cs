using System;
using System.Runtime.InteropServices;
using ToolLedger.Reads;

namespace ToolLedger.Testing.Simulation;

/// <summary>A stretch of true time in which the reader, or one antenna of it, hears nothing: <paramref name="From"/> included, <paramref name="To"/> excluded.</summary>
/// <param name="From">Start of the silence, true time.</param>
/// <param name="To">End of the silence, true time. Not after <paramref name="From"/> means no silence.</param>
/// <param name="Antenna">The antenna that falls silent; the default value silences all of them.</param>
/// <param name="IsReported">Whether the host is told: the presentation sheet then lists a closed connection, or a disconnected antenna.</param>
/// <remarks>The default value is a silence of no length.</remarks>
[StructLayout(LayoutKind.Auto)]
public readonly record struct ReaderDropOut(DateTimeOffset From, DateTimeOffset To, AntennaPort Antenna = default, bool IsReported = false)
{
    internal bool Covers(DateTimeOffset at, AntennaPort antenna) =>
        at >= From && at < To && (!Antenna.IsKnown || Antenna == antenna);
}
