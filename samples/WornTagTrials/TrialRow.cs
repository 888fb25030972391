using System;
using System.Runtime.InteropServices;
using ToolLedger.Reads;

namespace WornTagTrials;

/// <summary>One reading of the file.</summary>
/// <param name="Trial">Name of the trial.</param>
/// <param name="Time">Time from the start of the trial.</param>
/// <param name="Antenna">The antenna.</param>
/// <param name="Strength">Signal strength.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct TrialRow(string Trial, TimeSpan Time, AntennaPort Antenna, Rssi Strength);
