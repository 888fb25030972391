using System;
using System.Runtime.InteropServices;

namespace ToolLedger.Reads;

/// <summary>One look at one tag: a time slot of a pass in which one antenna read it at least once.</summary>
/// <remarks>The default value is no look of any pass. Immutable.</remarks>
/// <param name="Pass">The number of the pass, from 1.</param>
/// <param name="Antenna">The antenna; the default value when the reader did not say.</param>
/// <param name="Slot">The number of the time slot, from 0, counted from the start of the session in steps of <see cref="SessionPolicy.SlotLength"/>.</param>
/// <param name="From">The start of that slot, corrected, in UTC; a slot that two passes share starts before the later of them.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct Look(int Pass, AntennaPort Antenna, int Slot, DateTimeOffset From);
