using System;
using System.Runtime.InteropServices;

namespace ToolLedger.Reads;

/// <summary>One pass of a presentation: the bag in one position, start included, end excluded.</summary>
/// <remarks>The default value is pass 0 of no length. Immutable.</remarks>
/// <param name="Number">The number of the pass, from 1.</param>
/// <param name="From">Its start.</param>
/// <param name="To">Its end, which is the start of the next pass or the end of the session.</param>
/// <param name="LookLimit">The most looks a tag could have had: time slots begun, times antennas of the station.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct ReadPass(int Number, DateTimeOffset From, DateTimeOffset To, long LookLimit);
