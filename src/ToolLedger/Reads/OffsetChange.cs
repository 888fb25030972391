using System;
using System.Runtime.InteropServices;

namespace ToolLedger.Reads;

/// <summary>From an instant on, a site's clocks show another offset from UTC.</summary>
/// <remarks>The default value is offset zero from 0001-01-01T00:00:00Z. Immutable.</remarks>
/// <param name="From">The first instant with the new offset.</param>
/// <param name="Offset">The new offset: site time minus UTC.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct OffsetChange(DateTimeOffset From, TimeSpan Offset);
