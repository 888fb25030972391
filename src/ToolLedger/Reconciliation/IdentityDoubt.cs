using System;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>A reason to doubt a tool's identity and the time of the read that raised it.</summary>
internal readonly record struct IdentityDoubt(Reason Reason, DateTimeOffset At);
