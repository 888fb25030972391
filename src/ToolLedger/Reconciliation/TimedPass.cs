using System;
using ToolLedger.Presence;
using ToolLedger.Reads;

namespace ToolLedger.Reconciliation;

/// <summary>A pass with where and when it took place.</summary>
internal readonly record struct TimedPass(StationId Station, DateTimeOffset From, DateTimeOffset To, PassEvidence Evidence);
