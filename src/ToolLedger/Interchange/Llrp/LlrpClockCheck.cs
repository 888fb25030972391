using System;
using System.Runtime.InteropServices;

namespace ToolLedger.Interchange.Llrp;

/// <summary>What the host's clock showed at a known uptime of the reader: the only way from uptimes to instants.</summary>
/// <remarks>The default value puts the start of the reader at 0001-01-01T00:00:00Z, before every time that is taken. Immutable.</remarks>
/// <param name="UptimeMicroseconds">The uptime that the reader stated, for example in an event.</param>
/// <param name="At">The time at the host at that moment.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct LlrpClockCheck(ulong UptimeMicroseconds, DateTimeOffset At);
