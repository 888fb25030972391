using System;
using System.Runtime.InteropServices;

namespace ToolLedger.Reads;

/// <summary>A loss that the host reported while a session was open.</summary>
/// <remarks>The default value is a buffer overflow at 0001-01-01T00:00:00Z. Immutable.</remarks>
/// <param name="Loss">What was lost.</param>
/// <param name="At">When, by the host's clock.</param>
/// <param name="Antenna">On which antenna; the default value when that is not known or all are meant.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct ReportedLoss(SessionLoss Loss, DateTimeOffset At, AntennaPort Antenna = default);
