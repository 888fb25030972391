using System;

namespace ToolLedger.Custody;

/// <summary>What had gone into a zone and come out of it by an instant.</summary>
internal readonly record struct ZoneTally(DateTimeOffset At, decimal In, decimal Out);
